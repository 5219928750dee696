"""Exercises on judging a joint: by measures, by a section with a fault, from below, by which limits."""

from functools import cache

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Figure,
    Number,
    NumberKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import chosen, looked_up, option, same, slip, wrong
from grading.exercises.rivet_anatomy.reading import SECTIONS, section_figure, seed_text
from grading.exercises.scenes import scene
from secondplate.measuring_decision import guard_band_mm
from secondplate.section import VERDICTS, Measured, fault, judge, typical_limits

HEADING = "Is this joint good enough?"
JOINTS = ("first", "second", "third", "fourth")
GIVEN = ("left", "right", "bottom", "head")
MEASURED = ("interlock_mm", "remaining_thickness_mm", "head_flushness_mm")
UNCERTAINTIES_MM = (0.03, 0.05, 0.08)
FAMILIES = ("aluminium", "steel")


def _limit_mm(measure, side, family="aluminium"):
    """Return one limit of typical practice."""
    limits = typical_limits(family)
    return next(limit.limit_mm for limit in limits if (limit.measure, limit.side) == (measure, side))


def verdicts(left, right, bottom, head, *, family, uncertainty_mm):
    """Return the verdict on joints of which four measures are given and the others are sound."""
    measured = Measured(
        interlock_left_mm=left,
        interlock_right_mm=right,
        remaining_thickness_mm=bottom,
        head_flushness_mm=head,
        tail_diameter_mm=6.3,
        button_diameter_mm=9.0,
        button_depth_mm=1.5,
        buckle_mm=0.0,
        crack_mm=0.0,
        gap_mm=0.0,
    )
    # Only what is given is judged: nothing is said of evenness, cracks, buckles and gaps.
    limits = [limit for limit in typical_limits(family) if limit.measure in MEASURED]
    words = judge(measured, limits, uncertainty_mm=uncertainty_mm).overall
    return np.char.replace(np.asarray(words), " ", "_")


@cache
def joints(family, uncertainty_mm):
    """Return joints by verdict: measures that leave only one of them near or beyond its limit."""
    least = _limit_mm("interlock_mm", "least", family)
    bottom_least = _limit_mm("remaining_thickness_mm", "least", family)
    lowest = _limit_mm("head_flushness_mm", "least", family)
    highest = _limit_mm("head_flushness_mm", "most", family)
    # Distances from the limit in hundredths, none so close to the uncertainty that rounding decides.
    steps = (-0.16, -0.12, -0.1, -0.02, -0.01, 0.01, 0.02, 0.1, 0.12, 0.16)
    good = {"left": least + 0.15, "right": least + 0.18, "bottom": bottom_least + 0.2, "head": 0.05}
    found = {}
    for name, limit, sign in (
        ("left", least, 1),
        ("right", least, 1),
        ("bottom", bottom_least, 1),
        ("head", lowest, 1),
        ("head", highest, -1),
    ):
        for step in steps:
            for more in (0.0, 0.03, 0.06):
                joint = {measure: value + more for measure, value in good.items()}
                joint[name] = limit + sign * step
                joint = {measure: round(value, 2) for measure, value in joint.items()}
                word = str(verdicts(**joint, family=family, uncertainty_mm=uncertainty_mm))
                found.setdefault(word, []).append(joint)
    return found


def _draw_measures(draw):
    family = draw.pick("family", FAMILIES)
    uncertainty_mm = draw.pick("uncertainty_mm", UNCERTAINTIES_MM)
    words = [word.replace(" ", "_") for word in VERDICTS]
    wanted = draw.shuffle("wanted", [*words, draw.pick("fourth", words)])
    scenario = scene(draw) | {"family": family, "uncertainty_mm": uncertainty_mm}
    for row, word in zip(JOINTS, wanted, strict=True):
        joint = draw.pick(f"joint {row}", joints(family, uncertainty_mm)[word])
        scenario |= {f"{row}_{measure}": joint[measure] for measure in GIVEN}
    return scenario


def _joint_words(scenario):
    """Return the four joints in words, and the limits."""
    family = scenario["family"]
    rows = {
        f"{row}_words": (
            f"interlock left {scenario[f'{row}_left']:.2f}, right {scenario[f'{row}_right']:.2f}; "
            f"bottom {scenario[f'{row}_bottom']:.2f}; head {scenario[f'{row}_head']:+.2f}"
        )
        for row in JOINTS
    }
    return rows | {
        "least": f"{_limit_mm('interlock_mm', 'least', family):g}",
        "thinnest": f"{_limit_mm('remaining_thickness_mm', 'least', family):g}",
        "lowest": f"{_limit_mm('head_flushness_mm', 'least', family):+g}",
        "highest": f"{_limit_mm('head_flushness_mm', 'most', family):+g}",
    }


def _solve_measures(table):
    family, uncertainty_mm = table["family"], table["uncertainty_mm"]
    right = {}
    for row in JOINTS:
        given = [table[f"{row}_{measure}"] for measure in GIVEN]
        of_family = {name: verdicts(*given, family=name, uncertainty_mm=uncertainty_mm) for name in FAMILIES}
        right[row] = [str(of_family[str(name)][number]) for number, name in enumerate(family)]
    return {
        "verdicts": VerdictsKey(right=right),
        "undecided": ChoiceKey(right=same(table, "better")),
    }


JUDGE_MEASURES = Exercise(
    id="rivet_anatomy.judge_measures",
    objective="judge",
    title="Accept, reject, or not decided",
    prompt=(
        "Four sections from {vehicle}, second plate of {family}, were measured. "
        "Each reading may be off by {uncertainty_mm} mm either way. "
        "Limits in mm, typical practice from memory: interlock of the smaller side at least {least}, "
        "bottom at least {thinnest}, head from {lowest} to {highest}. "
        "Everything else is sound. A limit must be kept, or broken, by what the measuring may be off."
    ),
    shown=_joint_words,
    parts=(
        Verdicts(
            id="verdicts",
            ask="What do you say of each joint? All measures are in mm.",
            points=3.0,
            rows=tuple(option(row, "{" + row + "_words}") for row in JOINTS),
            verdicts=(
                option("accept", "accept"),
                option("not_decidable", "this measuring cannot decide"),
                option("reject", "reject"),
            ),
        ),
        Choice(
            id="undecided",
            ask="One joint could not be decided. What now?",
            options=(
                option("better", "Measure with less uncertainty, or take it as not proved good."),
                wrong(
                    "benefit",
                    "Accept it: nobody has shown that it is bad.",
                    "What nobody has shown to be good holds a car together. The doubt counts against it.",
                ),
                wrong(
                    "again",
                    "Read it once more and take the reading that suits.",
                    "Choosing among readings makes them worth nothing. All of them count.",
                ),
            ),
        ),
    ),
    draw=_draw_measures,
    solve=_solve_measures,
    reasons=(
        "Take each measure on its own, and the smaller interlock of the two. "
        "Accept asks that every limit is kept by at least the uncertainty. "
        "Reject asks that one is broken by more. "
        "What lies between is not decided, and an honest report says so."
    ),
    read_again=HEADING,
)

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

UM = 1000  # um in 1 mm


def _draw_limits(draw):
    return scene(draw) | {
        "family": draw.pick("family", FAMILIES),
        "uncertainty_um": draw.whole("uncertainty_um", 20, 50, 2),
    }


def _solve_limits(table):
    spread_mm = table["uncertainty_um"] / UM
    guard_mm = guard_band_mm(spread_mm)
    least = np.array(looked_up(table["family"], lambda name: _limit_mm("interlock_mm", "least", name)))
    highest = _limit_mm("head_flushness_mm", "most")
    return {
        "interlock": NumberKey(
            value=least + guard_mm,
            slips={"wrong_way": least - guard_mm, "no_factor": least + spread_mm, "no_guard": least},
        ),
        "head": NumberKey(
            value=highest - guard_mm,
            slips={"wrong_way": highest + guard_mm, "no_factor": highest - spread_mm},
        ),
        "basis": ChoiceKey(right=same(table, "maker")),
    }


LIMITS = Exercise(
    id="rivet_anatomy.limits",
    objective="judge",
    title="How far inside the limit?",
    prompt=(
        "The second plate of a joint from {vehicle} is {family}. "
        "Limits of typical practice, from memory: interlock at least {least} mm, "
        "head at most {highest} mm proud. "
        "The standard uncertainty of a reading at {shop} is {uncertainty_um} um. "
        "To be 95 % sure on one side, {factor} times that is kept as a guard band."
    ),
    shown=lambda scenario: {
        "least": f"{_limit_mm('interlock_mm', 'least', scenario['family']):g}",
        "highest": f"{_limit_mm('head_flushness_mm', 'most'):g}",
        "factor": f"{guard_band_mm(1.0):.3f}",
    },
    parts=(
        Number(
            id="interlock",
            ask="Which reading of the interlock is the least that you accept?",
            unit="mm",
            absolute_tolerance=0.003,
            tolerance_reason="Guard bands are worked out to a hundredth; 3 um covers rounding on the way.",
            slips=(
                slip("wrong_way", "The guard band makes it harder to accept, not easier."),
                slip("no_factor", "The standard uncertainty was kept. Use the factor for 95 %."),
                slip("no_guard", "A reading on the limit proves nothing. Keep the guard band."),
            ),
        ),
        Number(
            id="head",
            ask="Which reading is the most proud head that you accept?",
            unit="mm",
            absolute_tolerance=0.003,
            tolerance_reason="Guard bands are worked out to a hundredth; 3 um covers rounding on the way.",
            slips=(
                slip("wrong_way", "This limit is an upper one. The guard band lies below it."),
                slip("no_factor", "The standard uncertainty was kept. Use the factor for 95 %."),
            ),
        ),
        Choice(
            id="basis",
            ask="Where do the limits for a car that you work on come from?",
            options=(
                wrong(
                    "practice",
                    "From typical practice, as here.",
                    "These values were remembered, and no published text with them was at hand.",
                ),
                option("maker", "From the vehicle maker's procedure."),
                wrong(
                    "standard",
                    "From the standards for shear and cross tension.",
                    "Those say how to test. They hold no limit for a section.",
                ),
            ),
        ),
    ),
    draw=_draw_limits,
    solve=_solve_limits,
    reasons=(
        "The guard band goes inwards from every limit: up from a lower one, down from an upper one. "
        "It is the factor for the wanted certainty times the standard uncertainty. "
        "The limits themselves are the maker's; those here are for practice only."
    ),
    read_again=HEADING,
)

EXERCISES = (JUDGE_MEASURES, NAME_FAULT, FROM_BELOW, LIMITS)
