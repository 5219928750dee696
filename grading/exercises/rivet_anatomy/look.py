"""Exercises on looking at a joint: a section with a fault, and the button from below."""

from grading.exercise import Choice, ChoiceKey, Choices, ChoicesKey, Exercise, Figure
from grading.exercises.building_blocks import chosen, looked_up, option, same, wrong
from grading.exercises.rivet_anatomy.judging import HEADING
from grading.exercises.rivet_anatomy.reading import SECTIONS, section_figure, seed_text
from grading.exercises.scenes import scene
from secondplate.section import fault

# What a fault does to the joint; common practice, no source.
CONSEQUENCES = {
    "head proud": "seat",
    "head sunk": "seat",
    "uneven flare": "hold",
    "wrong die": "hold",
    "buckled shank": "hold",
    "thin bottom": "leak",
    "crack in button": "leak",
    "plates gapped": "gap",
}
FAULTS_ASKED = tuple(CONSEQUENCES)


def _fault_id(name):
    """Return the id of a fault."""
    return name.replace(" ", "_")


def _fault_option(name):
    """Return a fault to choose; what it would look like stands in its slip."""
    seen = fault(name).seen
    return wrong(_fault_id(name), f"{name.capitalize()}.", f"It would look so: {seen[0].lower()}{seen[1:]}.")


CAUSE_SLIP = "That leads to another fault. Ask what rivet, die and plates did to look like this."


def _cause_option(name):
    """Return the usual cause of a fault to choose."""
    return wrong(_fault_id(name), f"{fault(name).cause}.", CAUSE_SLIP)


def _draw_fault(draw):
    return scene(draw) | {
        "fault": draw.pick("fault", FAULTS_ASKED),
        "section": draw.whole("section", 0, SECTIONS - 1),
    }


def _solve_fault(table):
    right = looked_up(table["fault"], _fault_id)
    return {
        "fault": ChoiceKey(right=right),
        "cause": ChoiceKey(right=right),
        "consequence": ChoiceKey(right=looked_up(table["fault"], CONSEQUENCES.__getitem__)),
    }


NAME_FAULT = Exercise(
    id="rivet_anatomy.name_fault",
    objective="judge",
    title="What is wrong with this joint?",
    prompt="{shop} cuts a trial joint for {vehicle}. One fault shows. Look before you measure.",
    figure=section_figure,
    parts=(
        Choice(
            id="fault",
            ask="Which fault do you see?",
            options=tuple(_fault_option(name) for name in sorted(FAULTS_ASKED)),
        ),
        Choice(
            id="cause",
            ask="What does it usually come from?",
            options=tuple(_cause_option(name) for name in reversed(FAULTS_ASKED)),
        ),
        Choice(
            id="consequence",
            ask="What does it do to the joint above all?",
            options=(
                wrong(
                    "hold", "The tail holds less.", "Look at both sides of the tail and how far it is spread."
                ),
                wrong("seat", "The head does not bear on the top plate as it should.", "Look at the head."),
                wrong("leak", "Moisture may get in from the back.", "Look at the metal under the tail."),
                wrong("gap", "The plates do not lie on each other.", "Follow the line between the plates."),
            ),
        ),
    ),
    draw=_draw_fault,
    solve=_solve_fault,
    reasons=(
        "Go round the section in a fixed order: head, shank, tail at both sides, bottom, button, plates. "
        "The first thing that is not alike at both sides, or not where it belongs, names the fault. "
        "The cause is what is usual; only a trial with one thing changed proves it."
    ),
    read_again=HEADING,
)

BELOW_FAULTS = ("sound", "crack in button")


def _draw_below(draw):
    return scene(draw) | {
        "fault": draw.pick("fault", BELOW_FAULTS),
        "section": draw.whole("section", 0, SECTIONS - 1),
    }


FROM_BELOW = Exercise(
    id="rivet_anatomy.from_below",
    objective="judge",
    title="Without cutting",
    prompt=(
        "On {vehicle} nothing may be cut. At {shop} you look "
        "at the head from above, and with a mirror at the "
        "button from below. The picture shows the button."
    ),
    figure=lambda scenario: Figure(
        name="button", arguments={"seed": seed_text(scenario["section"]), "fault": scenario["fault"]}
    ),
    parts=(
        Choice(
            id="seen",
            ask="What do you note of this button?",
            options=(
                wrong("crack", "There is a crack in it.", "A crack is a dark line that runs into the metal."),
                wrong("whole", "It is whole.", "Look once more along the edge of the button."),
                wrong(
                    "through",
                    "The tail has come through.",
                    "A tail that is through would show as a ring of steel.",
                ),
            ),
        ),
        Choices(
            id="can_be_checked",
            ask="What can be checked without cutting?",
            options=(
                wrong(
                    "interlock",
                    "The interlock.",
                    "It lies inside the joint. Only a cut shows it.",
                ),
                option("head", "Whether the head lies firm on the top plate."),
                option("size", "Whether the button is round and of the die's size."),
                wrong(
                    "bottom",
                    "How thick the metal under the tail is.",
                    "From below you see its outside only, not how thick it is.",
                ),
                option("through", "Whether the tail has come through."),
            ),
        ),
        Choice(
            id="good",
            ask="Somebody finds head and button good. What may be said of the joint?",
            options=(
                wrong(
                    "holds",
                    "It holds: a good button needs a good tail.",
                    "A button can be round over a tail that hardly spread.",
                ),
                wrong(
                    "nothing",
                    "Nothing at all.",
                    "A look finds cracks, loose heads and tails that came through. That is worth having.",
                ),
                option("no_fault", "No fault shows outside; how the tail holds was not seen."),
            ),
        ),
    ),
    draw=_draw_below,
    solve=lambda table: {
        "seen": ChoiceKey(right=chosen([table["fault"] == "crack in button"], ["crack"], otherwise="whole")),
        "can_be_checked": ChoicesKey(right=same(table, ("head", "size", "through"))),
        "good": ChoiceKey(right=same(table, "no_fault")),
    },
    reasons=(
        "From outside: head firm, no cracks, button even and of the die's size, no tail through. "
        "Interlock and bottom thickness are inside and ask for a section. "
        "So a look can reject a joint, and can never prove one."
    ),
    read_again=HEADING,
)

EXERCISES = (NAME_FAULT, FROM_BELOW)
