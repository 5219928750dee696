"""Exercise on the bond line and the coat under heat: kept, warn, or stop."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Verdicts, VerdictsKey
from grading.exercises.building_blocks import option, same, wrong
from grading.exercises.scenes import scene
from secondplate.softening import HEAT_WORDS, judge_heat, typical_heat_limits
from secondplate.softening_limits import BOND_LINE as BOND
from secondplate.softening_limits import COAT, METAL

HEADING = "What did the heat do?"
LIMITS = typical_heat_limits()
# What was found of each part, by the word that it leads to; for the metal in per cent of its life.
FOUND = {
    BOND: {"kept": (45, 55, 65, 72), "warn": (88, 95, 105, 112), "stop": (128, 140, 160, 190)},
    COAT: {"kept": (90, 120, 150, 168), "warn": (177, 178), "stop": (190, 205, 230)},
    METAL: {"kept": (0.01, 0.2, 1, 2), "warn": (3.5, 4, 4.5), "stop": (7, 12, 30)},
}
ROWS = {
    "bond_near": (BOND, "the bond line 4 mm from the rivet: {bond_near} °C at the most"),
    "coat_near": (COAT, "the cured coat beside the head: {coat_near} °C at the most"),
    "bond_far": (BOND, "the bond line at the next rivet: {bond_far} °C at the most"),
    "metal": (METAL, "the 6xxx-T6 plate: {metal} % of its life at heat used"),
    "coat_far": (COAT, "the cured coat on the far side: {coat_far} °C at the most"),
}


def _draw_parts(draw):
    # All three words occur, two of them twice.
    words = draw.shuffle("words", (*HEAT_WORDS, *draw.shuffle("twice", HEAT_WORDS)[:2]))
    return scene(draw) | {
        row: draw.pick(row, FOUND[part][word])
        for (row, (part, _)), word in zip(ROWS.items(), words, strict=True)
    }


def _solve_parts(table):
    right = {}
    for row, (part, _) in ROWS.items():
        value = np.asarray(table[row], dtype=float) / (100 if part == METAL else 1)
        right[row] = [str(word) for word in judge_heat({part: value})[part]]
    return {
        "words": VerdictsKey(right=right),
        "bond": ChoiceKey(right=same(table, "lost")),
        "fumes": ChoiceKey(right=same(table, "air")),
    }


GLUE_AND_PAINT = Exercise(
    id="second_plate.glue_and_paint",
    objective="heat",
    title="Glue, coat and metal after the heat",
    prompt=(
        "At {shop} a joint of {vehicle} was warmed to part old glue, and every part was watched. "
        "The shop warns above {bond_warn} °C in a bond line and stops above {bond_stop} °C. "
        "For the cured coat it is {coat_warn} and {coat_stop} °C. "
        "For the metal it is {metal_warn} and {metal_stop} % of its life at heat. "
        "These are choices of a shop: what the makers of vehicle and glue say comes first."
    ),
    shown=lambda scenario: {
        "bond_warn": f"{LIMITS[BOND].warn_above:g}",
        "bond_stop": f"{LIMITS[BOND].stop_above:g}",
        "coat_warn": f"{LIMITS[COAT].warn_above:g}",
        "coat_stop": f"{LIMITS[COAT].stop_above:g}",
        "metal_warn": f"{100 * LIMITS[METAL].warn_above:g}",
        "metal_stop": f"{100 * LIMITS[METAL].stop_above:g}",
    },
    parts=(
        Verdicts(
            id="words",
            ask="What does the shop's rule say of each part?",
            points=2.0,
            rows=tuple(option(row, text) for row, (_, text) in ROWS.items()),
            verdicts=(
                option("stop", "stop"),
                option("kept", "limit kept"),
                option("warn", "warn"),
            ),
        ),
        Choice(
            id="bond",
            ask="A bond line that was to stay has gone beyond its stop. What now?",
            options=(
                wrong(
                    "cooled",
                    "Let it cool: glue that has set does not change any more.",
                    "Set glue breaks down when it gets too hot, and does not come back by cooling.",
                ),
                wrong(
                    "rivets",
                    "Go on: the new rivets carry instead.",
                    "A bond line and rivets share the work, and the bond line also keeps water out.",
                ),
                option("lost", "Count it as lost there, bond anew as the maker says, and write it down."),
            ),
        ),
        Choice(
            id="fumes",
            ask="Old glue has to be warmed on purpose. What comes first?",
            options=(
                option("air", "Draw off the fumes, protect eyes and lungs, have an extinguisher at hand."),
                wrong(
                    "flame",
                    "A flame, as it is faster than hot air.",
                    "A flame chars glue, hides in box sections, and heats the plate beyond all limits.",
                ),
                wrong(
                    "open_door",
                    "Open the shop door.",
                    "Fumes have to be drawn off where they rise. By the door they have passed your face.",
                ),
            ),
        ),
    ),
    draw=_draw_parts,
    solve=_solve_parts,
    reasons=(
        "Compare each part with its own two values; glue is the first to suffer, the metal the last. "
        "A bond line beyond its stop counts as lost, whatever it looks like. "
        "Hot glue and paint give off fumes that harm; the data sheets of both say what protects. "
        "By the heat model a short weld on a rivet head stays below these; measure once, and you know."
    ),
    read_again=HEADING,
)

EXERCISES = (GLUE_AND_PAINT,)
