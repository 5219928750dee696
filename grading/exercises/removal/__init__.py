"""The page ``removal``: its objectives, and its exercises grouped by idea in one module each."""

from grading.exercise import Page
from grading.exercises.removal import (
    after_pull,
    cards_closed,
    cards_open,
    cards_other_metal,
    chain,
    decision,
    drift,
    drill_cutting,
    drill_depth,
    drill_reach,
    drill_thrust,
    force,
    minutes,
    nose,
    proof,
    pull_chart,
    row,
    row_policy,
    scoring,
    tool,
    ways,
)

OBJECTIVES = {
    "ways": "You can say which ways out there are, and which of them the car rules out.",
    "force": "You can work out what a pull takes and where its chain breaks.",
    "tool": "You can check that tool and nose give the pull without harming the top plate.",
    "drill": "You can say what a drill does to rivet and second plate, and where its tables end.",
    "time": "You can compare ways by time and risk instead of by habit.",
    "proof": "You can say what test pulls prove, and what they never will.",
    "plan": "You can plan a row: test, weld, pull, stop.",
}

# In the order of the page.
MODULES = (
    ways,
    force,
    chain,
    tool,
    nose,
    drill_reach,
    drill_depth,
    drill_thrust,
    drill_cutting,
    minutes,
    decision,
    scoring,
    proof,
    row_policy,
    after_pull,
    pull_chart,
    drift,
    cards_closed,
    cards_open,
    cards_other_metal,
    row,
)

PAGE = Page(
    id="removal",
    title="Extraction or drill-out",
    folder="3_removal",
    notebook="extraction_or_drill_out.ipynb",
    assignment="3_removal",
    objectives=OBJECTIVES,
    exercises=tuple(exercise for module in MODULES for exercise in module.EXERCISES),
    practical_points=20.0,
    practical_cue=(
        "Double-click here to write, then press Shift and Enter.\n\n"
        "*Write the date, the coupons, your setting, each pull with its force and what came off, when you "
        "stopped and why. Name the person who watched.*"
    ),
)
