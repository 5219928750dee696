"""The page ``stud_welding``: its objectives and its exercises, grouped by idea in the modules beside this one."""

from grading.exercise import Page
from grading.exercises.stud_welding import electrics, energy, gas, safety, strength

OBJECTIVES = {
    "set_up": "You can choose the process, set the machine from the chart, and say what to do where rules disagree.",
    "gas": "You can say when gas is needed and which, and plan how much of it a job takes.",
    "energy": "You can work out how much heat a weld puts into the rivet head and say what changes it.",
    "strength": "You can work out what a stud can carry and how hard you may pull and turn it.",
    "electrics": "You can check that the machine and the cables keep up with the job.",
    "sequence": "You can do things in the right order: check, weld one, pull it, adjust, then weld the row.",
    "collar": "You can read a collar, name its cause and choose the correction.",
    "safety": "You can keep people and the car safe from gas, fields and fire.",
}

PAGE = Page(
    id="stud_welding",
    title="Stud welding a pull stud",
    folder="1_stud_welding",
    notebook="stud_welding.ipynb",
    assignment="1_stud_welding",
    objectives=OBJECTIVES,
    exercises=(
        *gas.EXERCISES,
        *energy.EXERCISES,
        *strength.EXERCISES,
        *electrics.EXERCISES,
        *safety.EXERCISES,
    ),
    practical_points=20.0,
)
