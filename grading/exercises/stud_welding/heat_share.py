"""Exercise on the share of the heat that the rivet head takes."""

from grading.exercise import Choices, ChoicesKey, Exercise, Range, RangeKey
from grading.exercises.building_blocks import option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate import arc

HEADING = "How much heat goes in?"


def _draw_share(draw):
    return scene(draw) | {"energy_j": draw.whole("energy_j", 300, 700, 10)}


def _solve_share(table):
    energy_j = table["energy_j"]
    share = arc.heat_to_face_j(1.0)  # the heat is in proportion to the energy of the arc
    return {
        "head_heat": RangeKey(
            low=share.low * energy_j,
            high=share.high * energy_j,
            slips={
                "whole_energy": (energy_j, energy_j),
                "half_and_no_loss": (0.5 * energy_j, 0.5 * energy_j),
            },
        ),
        "less_heat": ChoicesKey(right=same(table, ("shorter", "smaller_stud"))),
    }


HEAT_SHARE = Exercise(
    id="stud_welding.heat_share",
    objective="energy",
    title="What the rivet head takes",
    prompt=(
        "An arc at {shop} sets {energy_j:.0f} J free on {vehicle}. "
        "Some of it is lost, the rest is shared between the stud and the rivet head."
    ),
    parts=(
        Range(
            id="head_heat",
            ask="Between which two values does the heat lie that goes into the rivet head?",
            unit="J",
            relative_tolerance=0.03,
            tolerance_reason="The shares are known to one figure only, so 3 % either way is right.",
            slips=(
                slip("whole_energy", "That is the whole arc. Some heat is lost and the stud takes its part."),
                slip(
                    "half_and_no_loss",
                    "That is one half with no loss, as one number. "
                    "Both the loss and the split are known only as a band.",
                ),
            ),
        ),
        Choices(
            id="less_heat",
            ask=(
                "The aluminium round the rivet must stay cooler. "
                "Which changes put less heat into the rivet head?"
            ),
            options=(
                wrong(
                    "second_weld",
                    "Weld a second stud on the same head straight after the first.",
                    "A second weld on a warm head adds its heat to the first.",
                ),
                option("shorter", "A shorter time at the same current, if the test stud still holds."),
                wrong(
                    "more_gas",
                    "A longer gas pre-flow.",
                    "Gas before the arc keeps air away. It takes no heat out of the weld.",
                ),
                option(
                    "smaller_stud",
                    "A smaller stud with its own, lower setting, if it can still pull the rivet.",
                ),
                wrong(
                    "more_current",
                    "More current at the same time, so that it is over sooner.",
                    "The timer ends the arc, not the current. More current is more heat.",
                ),
            ),
        ),
    ),
    draw=_draw_share,
    solve=_solve_share,
    reasons=(
        "First take off what is lost to light, fume and spatter. "
        "Then split what is left between the stud and the head: about half each, known only to one part in "
        "five. "
        "Multiply the low shares for the low value and the high shares for the high value. "
        "Less energy in the arc, by time or by a smaller stud, is what cools the head."
    ),
    read_again=HEADING,
)

EXERCISES = (HEAT_SHARE,)
