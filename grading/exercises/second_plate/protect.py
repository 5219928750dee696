"""Exercise on keeping metals apart: the steps in their order, and why each stands where it does."""

from grading.exercise import Choice, ChoiceKey, Exercise, Order, OrderKey
from grading.exercises.building_blocks import option, same, wrong
from grading.exercises.scenes import scene
from secondplate.corrosion import ISOLATION_STEP_NAMES, ISOLATION_STEPS

HEADING = "What will eat it?"
STEP_IDS = dict(
    zip(
        ISOLATION_STEP_NAMES,
        ("deburr", "clean", "conversion", "primer", "sealer", "wet", "top_coat", "wax"),
        strict=True,
    )
)
SHOWN_STEPS = ("wet", "conversion", "wax", "deburr", "top_coat", "clean", "sealer", "primer")
# Steps whose reason does not name the step.
ASKED_STEPS = ("sealer", "clean", "primer", "wet")
STEPS = {STEP_IDS[step.name]: step for step in ISOLATION_STEPS}


def sentence(words):
    """Return words as a sentence."""
    return words[0].upper() + words[1:] + "."


ISOLATION = Exercise(
    id="second_plate.isolation",
    objective="protect",
    title="Keep the metals apart",
    prompt=(
        "The flange of {vehicle} is joined again at {shop}. New fasteners with a coat of their own go in, "
        "the plates were bare in places, and the box behind can be reached by a wax lance only. "
        "The maker names the materials; the order of the work is yours. "
        "One step is asked about on its own: {step_words}."
    ),
    parts=(
        Order(
            id="steps",
            ask="Put the steps in the order in which they are done.",
            options=tuple(option(name, STEPS[name].name) for name in SHOWN_STEPS),
            points=2.0,
        ),
        Choice(
            id="reason",
            ask="Why is the step that is asked about done, and why there?",
            options=tuple(option(name, sentence(STEPS[name].reason)) for name in ASKED_STEPS),
        ),
        Choice(
            id="spray",
            ask="A seller promises 1000 h in salt spray for a coat. What does that tell you?",
            options=(
                wrong(
                    "years",
                    "How many years it lasts on the road, by a factor from a table.",
                    "A chamber is never dry and never cold. No factor turns its hours into years.",
                ),
                option("ranks", "How it stands against other coats in the same chamber, and no more."),
                wrong(
                    "nothing",
                    "Nothing at all: a chamber has nothing to do with a car.",
                    "It sorts coats that were sprayed alike. That is something, if not years.",
                ),
            ),
        ),
    ),
    draw=lambda draw: scene(draw) | {"step": draw.pick("step", ASKED_STEPS)},
    solve=lambda table: {
        "steps": OrderKey(right=same(table, tuple(STEP_IDS[name] for name in ISOLATION_STEP_NAMES))),
        "reason": ChoiceKey(right=[str(name) for name in table["step"]]),
        "spray": ChoiceKey(right=same(table, "ranks")),
    },
    shown=lambda scenario: {"step_words": STEPS[scenario["step"]].name},
    reasons=(
        "First make the metal whole and clean, then coat it, then part the metals, then close the joint. "
        "What goes between the plates goes on before they meet; wax comes after the paint. "
        "One step in the wrong place undoes the one before it. "
        "Salt spray ranks coats; it does not count years."
    ),
    read_again=HEADING,
)

EXERCISES = (ISOLATION,)
