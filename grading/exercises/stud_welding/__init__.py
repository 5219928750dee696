"""The page ``stud_welding``: its objectives, and its exercises grouped by idea in one module each."""

from grading.exercise import Page
from grading.exercises.stud_welding import (
    air,
    bench,
    collars,
    cooling,
    distances,
    electrics,
    energy,
    fields_and_fire,
    gas_need,
    gas_use,
    heat_reach,
    heat_share,
    melting,
    metal,
    off_centre,
    polarity,
    process,
    ready,
    settings,
    strength,
    stud_choice,
    torque,
    trial_pull,
    window,
)

OBJECTIVES = {
    "set_up": (
        "You can choose the process, set the machine from the chart, and say what to do where rules disagree."
    ),
    "gas": "You can say when gas is needed and which, and plan how much of it a job takes.",
    "energy": "You can work out how much heat a weld puts into the rivet head and say what changes it.",
    "strength": "You can work out what a stud can carry and how hard you may pull and turn it.",
    "metal": "You can say why the weld is hard and brittle, and what such a weld may be used for.",
    "electrics": "You can check that the machine and the cables keep up with the job.",
    "sequence": "You can do things in the right order: check, weld one, pull it, adjust, then weld the row.",
    "collar": "You can read a collar, name its cause and choose the correction.",
    "safety": "You can keep people and the car safe from gas, fields and fire.",
}

# In the order of the page.
MODULES = (
    process,
    settings,
    window,
    distances,
    polarity,
    gas_need,
    gas_use,
    energy,
    heat_share,
    melting,
    heat_reach,
    strength,
    torque,
    stud_choice,
    off_centre,
    metal,
    cooling,
    electrics,
    air,
    fields_and_fire,
    ready,
    collars,
    trial_pull,
    bench,
)

PAGE = Page(
    id="stud_welding",
    title="Stud welding a pull stud",
    folder="1_stud_welding",
    notebook="stud_welding.ipynb",
    assignment="1_stud_welding",
    objectives=OBJECTIVES,
    exercises=tuple(exercise for module in MODULES for exercise in module.EXERCISES),
    practical_points=20.0,
    practical_cue=(
        "Double-click here to write, then press Shift and Enter.\n\n"
        "*Write the date, the setting you began with, what the collar showed, what broke, the one "
        "thing you changed and why. Name the person who watched.*"
    ),
)
