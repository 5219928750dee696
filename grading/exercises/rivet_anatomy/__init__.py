"""The page ``rivet_anatomy``: its objectives, and its exercises grouped by idea in one module each."""

from grading.exercise import Page
from grading.exercises.rivet_anatomy import (
    age,
    drawing_out,
    guard_bands,
    hold_compared,
    holding,
    inside,
    judging,
    length,
    look,
    old_joint,
    parts,
    pull_stud,
    reading,
    reading_error,
    setting,
    stack,
    stack_reasons,
    stages,
    tail_side,
)

OBJECTIVES = {
    "anatomy": "You can name the parts of a self-piercing rivet and say what each does.",
    "setting": "You can tell the four stages of setting, and why volume and die decide the result.",
    "stack": "You can say which stack can be riveted, which way round, and how long the rivet has to be.",
    "measure": "You can measure a section the way a laboratory does.",
    "judge": "You can judge a joint: accept, reject, or say that the measuring cannot decide.",
    "holding": "You can work out what holds the rivet and what a pull must overcome.",
    "age": "You can say what glue, corrosion and earlier load change.",
}

# In the order of the page.
MODULES = (
    parts,
    inside,
    stages,
    setting,
    stack,
    stack_reasons,
    length,
    reading,
    reading_error,
    judging,
    look,
    guard_bands,
    holding,
    tail_side,
    drawing_out,
    pull_stud,
    hold_compared,
    age,
    old_joint,
)

PAGE = Page(
    id="rivet_anatomy",
    title="Rivet anatomy",
    folder="2_rivet_anatomy",
    notebook="rivet_anatomy.ipynb",
    assignment="2_rivet_anatomy",
    objectives=OBJECTIVES,
    exercises=tuple(exercise for module in MODULES for exercise in module.EXERCISES),
    practical_points=20.0,
    practical_cue=(
        "Double-click here to write, then press Shift and Enter.\n\n"
        "*Write the date, the joint, each measure twice with its unit, how sure you are of it, your verdict "
        "and why. Name the person who watched.*"
    ),
)
