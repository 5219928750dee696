"""Exercises on why the rivet stays inside the second plate, and what the flare of its tail does."""

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import option, same, slip, wrong
from grading.exercises.scenes import scene

HEADING = "Why does the rivet never go through?"

PREDICT_THROUGH = Exercise(
    id="rivet_anatomy.predict_through",
    objective="anatomy",
    title="Predict: the back of the joint",
    prompt="You look at the back of a good riveted joint on {vehicle}. Decide before you look at the picture.",
    parts=(
        Choice(
            id="back",
            ask="What do you see there?",
            options=(
                wrong(
                    "tail",
                    "The end of the rivet, spread like a flower.",
                    "Then water could follow it in. The tail spreads inside the second plate.",
                ),
                option("button", "A round bulge of the second plate, without a hole."),
                wrong("flat", "Nothing: the back is flat.", "The die lets the second plate bulge."),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {"back": ChoiceKey(right=same(table, "button"))},
    reasons="The tail spreads inside the second plate. At the back only a closed button shows.",
    read_again=HEADING,
    counts=False,
)

NOT_THROUGH = Exercise(
    id="rivet_anatomy.why_not_through",
    objective="anatomy",
    title="What a closed back is good for",
    prompt="A joint cut at {shop} shows the tail through the back of the second plate.",
    parts=(
        Choices(
            id="why_bad",
            ask="What is wrong with that?",
            options=(
                option("water", "Water gets in along the steel."),
                option("less_hold", "Less of the second plate lies below the flare to hold it."),
                wrong(
                    "looks",
                    "Only the look of it.",
                    "A hole at the back is a way in for water, and it says that little plate is left.",
                ),
                wrong(
                    "weight",
                    "The joint has become lighter.",
                    "No metal is lost. What counts is where it is.",
                ),
            ),
        ),
        Choice(
            id="for_removal",
            ask="You want to draw such a rivet out. What does the hole at the back change?",
            options=(
                option("skin", "The skin under the rivet is gone already: inspect before you decide to keep it."),
                wrong(
                    "easy",
                    "Nothing, the rivet just comes out more easily.",
                    "The second plate is what you want to keep, and it is already damaged.",
                ),
                wrong(
                    "push",
                    "It can now be pushed out from behind on every car.",
                    "Only where somebody can reach the back, which is why the stud is used at all.",
                ),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {
        "why_bad": ChoicesKey(right=same(table, ("water", "less_hold"))),
        "for_removal": ChoiceKey(right=same(table, "skin")),
    },
    reasons=(
        "The closed back keeps water out and leaves plate below the flare. "
        "A tail that shows at the back means that the bottom is too thin, and a plate that may not be worth "
        "keeping."
    ),
    read_again=HEADING,
)


def _draw_flare(draw):
    return scene(draw) | {
        "shank_mm": draw.pick("shank_mm", (5.3, 5.4, 5.5)),
        "interlock_mm": draw.decimal("interlock_mm", 0.25, 0.6, 0.05, 2),
    }


def _solve_flare(table):
    shank_mm, interlock_mm = table["shank_mm"], table["interlock_mm"]
    flare_mm = shank_mm + 2 * interlock_mm
    return {
        "flare": NumberKey(
            value=flare_mm,
            slips={"one_side": shank_mm + interlock_mm, "smaller": shank_mm - 2 * interlock_mm},
        ),
        "job": ChoiceKey(right=same(table, "locks")),
    }


FLARE = Exercise(
    id="rivet_anatomy.flare_job",
    objective="anatomy",
    title="How wide is the tail?",
    prompt=(
        "A section from {shop} shows an interlock of {interlock_mm} mm on either side. "
        "The shank measures {shank_mm} mm where it enters the second plate."
    ),
    parts=(
        Number(
            id="flare",
            ask="How wide is the flared tail?",
            unit="mm",
            absolute_tolerance=0.06,
            tolerance_reason="Interlock is read to a twentieth of a millimetre on each side.",
            slips=(
                slip("one_side", "The interlock lies on both sides of the shank."),
                slip("smaller", "The tail is wider than the shank, not narrower."),
            ),
        ),
        Choice(
            id="job",
            ask="What does the flare do?",
            options=(
                option("locks", "It hooks under the second plate, so the rivet cannot come straight out."),
                wrong(
                    "fills",
                    "It fills the hole so that no water gets in.",
                    "There is no hole in the second plate to fill.",
                ),
                wrong(
                    "clamps",
                    "It presses the head down on the top plate.",
                    "The head is pressed down by the punch. The flare keeps it there.",
                ),
            ),
        ),
    ),
    draw=_draw_flare,
    solve=_solve_flare,
    reasons=(
        "The tail is the shank plus the interlock on the left plus the interlock on the right. "
        "This hook is what a pull has to overcome: it must open the aluminium above the flare."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_THROUGH, NOT_THROUGH, FLARE)
