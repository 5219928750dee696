"""Exercises on why the rivet stays inside the second plate, and what the flare of its tail does."""

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import option, same, slip, wrong
from grading.exercises.scenes import scene

HEADING = "Why does the rivet never go through?"

PREDICT_THROUGH = Exercise(
    id="rivet_anatomy.predict_through",
    objective="anatomy",
    title="Predict: the back of the joint",
    prompt="Look at the back of a good riveted joint on {vehicle}. Decide before you look at the picture.",
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
        Choice(
            id="kept_in",
            ask="What keeps the tail of a good joint inside?",
            options=(
                wrong(
                    "hard_plate",
                    "The second plate, which is harder than the rivet.",
                    "The rivet is the hard one. It would go through if nothing turned its tail aside.",
                ),
                wrong(
                    "stop",
                    "The punch, which stops before the tail is through.",
                    "The punch goes on until the head is down. By then the tail has been turned aside.",
                ),
                option("die", "The die, against which the tail spreads while the plate flows into it."),
            ),
        ),
        Choices(
            id="why_bad",
            ask="What is wrong with a tail that came through?",
            options=(
                wrong(
                    "looks",
                    "Only its look.",
                    "A hole at the back is a way in for water, and no plate is left there.",
                ),
                option("water", "Water can creep in between the steel and the aluminium."),
                wrong(
                    "no_hold",
                    "The rivet holds nothing any more.",
                    "The plate above the flare holds the tail. What lies below adds little.",
                ),
                option("no_skin", "Some plate should be left everywhere under the rivet, and here none is."),
                wrong(
                    "weight",
                    "The joint has lost metal.",
                    "No metal is lost. It was pushed aside. What counts is where it is.",
                ),
            ),
        ),
        Choice(
            id="for_removal",
            ask="You want to draw such a rivet out. What does the hole at the back change?",
            options=(
                option("skin", "The skin under the rivet is gone already: inspect the plate first."),
                wrong(
                    "easy",
                    "Nothing, the rivet just comes out more easily.",
                    "The second plate is what you want to keep, and it is already damaged.",
                ),
                wrong(
                    "push",
                    "It can now be pushed out from behind on every car.",
                    "Only where somebody can reach the back. Where nobody can, the stud is used.",
                ),
            ),
        ),
    ),
    draw=scene,
    solve=lambda table: {
        "kept_in": ChoiceKey(right=same(table, "die")),
        "why_bad": ChoicesKey(right=same(table, ("water", "no_skin"))),
        "for_removal": ChoiceKey(right=same(table, "skin")),
    },
    reasons=(
        "The die lets the second plate flow and turns the tail outwards inside it. "
        "The closed back keeps water away from the place where steel and aluminium meet. "
        "A tail that shows at the back has no plate left below it, and the plate may not be worth keeping."
    ),
    read_again=HEADING,
)

SIDES = ("left", "right")


def _draw_flare(draw):
    smaller_mm = draw.decimal("smaller", 0.2, 0.4, 0.05, 2)
    larger_mm = round(smaller_mm + draw.pick("difference", (0.15, 0.2, 0.25)), 2)
    values = (smaller_mm, larger_mm) if draw.pick("larger", SIDES) == "right" else (larger_mm, smaller_mm)
    return (
        scene(draw)
        | {"shank_mm": draw.pick("shank_mm", (5.2, 5.3, 5.4, 5.5))}
        | {f"{side}_mm": value for side, value in zip(SIDES, values, strict=True)}
    )


def _solve_flare(table):
    shank_mm, left_mm, right_mm = table["shank_mm"], table["left_mm"], table["right_mm"]
    return {
        "flare": NumberKey(
            value=shank_mm + left_mm + right_mm,
            slips={
                "one_side": shank_mm + left_mm,
                "twice_left": shank_mm + 2 * left_mm,
                "smaller": shank_mm - left_mm - right_mm,
            },
        ),
        "job": ChoiceKey(right=same(table, "locks")),
    }


FLARE = Exercise(
    id="rivet_anatomy.flare_job",
    objective="anatomy",
    title="How wide is the tail?",
    prompt=(
        "A section from {shop} shows an interlock of {left_mm:.2f} mm on the left and {right_mm:.2f} mm on "
        "the right. The shank measures {shank_mm} mm where it enters the second plate."
    ),
    parts=(
        Number(
            id="flare",
            ask="How wide is the flared tail?",
            unit="mm",
            absolute_tolerance=0.06,
            tolerance_reason="Each interlock is read to a few hundredths of a millimetre.",
            slips=(
                slip("one_side", "The tail spreads on both sides of the shank."),
                slip(
                    "twice_left",
                    "The two sides differ: add each of them once.",
                    credit=0.25,
                ),
                slip("smaller", "The tail is wider than the shank, not narrower."),
            ),
        ),
        Choice(
            id="job",
            ask="What does the flare do?",
            options=(
                option("locks", "It hooks into the second plate and keeps the rivet from coming out."),
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
