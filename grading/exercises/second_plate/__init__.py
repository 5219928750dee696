"""The page ``second_plate``: its objectives, and its exercises grouped by idea in one module each."""

from grading.exercise import Page
from grading.exercises.second_plate import (
    bearing,
    budget,
    choose,
    dome,
    edges,
    fatigue,
    flange,
    gauges,
    glue,
    glue_and_paint,
    grip,
    how_many,
    judge,
    layout,
    left_behind,
    metals,
    missed_crack,
    net_section,
    penetrant,
    protect,
    record,
    residual,
    seam_heat,
    stop_rule,
    sure,
    warm,
    whole_job,
)

OBJECTIVES = {
    "inspect": "You can say what each way of removal leaves, and what an inspection can and cannot tell.",
    "measure": "You can measure a plate and say how sure you are.",
    "reform": "You can judge whether a plate may be reformed, and when to stop.",
    "heat": "You can judge what the weld's heat did to plate, glue and paint.",
    "fasten": "You can choose and place new fasteners by the rules.",
    "bond": "You can say what glue carries and what the rivet carries.",
    "protect": "You can protect the joint from corrosion and leave a record.",
}

# In the order of the page.
MODULES = (
    left_behind,
    residual,
    penetrant,
    missed_crack,
    budget,
    sure,
    gauges,
    dome,
    stop_rule,
    judge,
    warm,
    seam_heat,
    glue_and_paint,
    edges,
    bearing,
    net_section,
    flange,
    layout,
    grip,
    choose,
    how_many,
    glue,
    metals,
    protect,
    record,
    fatigue,
    whole_job,
)

PAGE = Page(
    id="second_plate",
    title="Preserving the second plate",
    folder="4_second_plate",
    notebook="second_plate.ipynb",
    assignment="4_second_plate",
    objectives=OBJECTIVES,
    exercises=tuple(exercise for module in MODULES for exercise in module.EXERCISES),
    practical_points=20.0,
    practical_cue=(
        "Double-click here to write, then press Shift and Enter.\n\n"
        "*Write the record of one plate: what you found, each measure with its unit and its doubt, your "
        "verdict, what you did, and how the joint was protected. Name the person who watched.*"
    ),
)
