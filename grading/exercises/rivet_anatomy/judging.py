"""Exercise on judging joints by their measures: accept, reject, or not decided."""

from functools import cache

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import option, same, wrong
from grading.exercises.scenes import scene
from secondplate.section import VERDICTS, Measured, judge, typical_limits

HEADING = "Is this joint good enough?"
JOINTS = ("first", "second", "third", "fourth")
GIVEN = ("left", "right", "bottom", "head")
MEASURED = ("interlock_mm", "remaining_thickness_mm", "head_flushness_mm")
UNCERTAINTIES_MM = (0.03, 0.05, 0.08)
FAMILIES = ("aluminium", "steel")


def limit_mm(measure, side, family="aluminium"):
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
    least = limit_mm("interlock_mm", "least", family)
    bottom_least = limit_mm("remaining_thickness_mm", "least", family)
    lowest = limit_mm("head_flushness_mm", "least", family)
    highest = limit_mm("head_flushness_mm", "most", family)
    # Distances from the limit in hundredths, none so close to the uncertainty that rounding decides.
    steps = (-0.16, -0.12, -0.1, -0.02, -0.01, 0.01, 0.02, 0.1, 0.12, 0.16)
    good = {"left": least + 0.15, "right": least + 0.18, "bottom": bottom_least + 0.2, "head": 0.05}
    made = []
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
                made.append({measure: round(value, 2) for measure, value in joint.items()})
    measures = {measure: np.array([joint[measure] for joint in made]) for measure in GIVEN}
    found = {}
    for joint, word in zip(
        made, verdicts(**measures, family=family, uncertainty_mm=uncertainty_mm), strict=True
    ):
        found.setdefault(str(word), []).append(joint)
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
        "least": f"{limit_mm('interlock_mm', 'least', family):g}",
        "thinnest": f"{limit_mm('remaining_thickness_mm', 'least', family):g}",
        "lowest": f"{limit_mm('head_flushness_mm', 'least', family):+g}",
        "highest": f"{limit_mm('head_flushness_mm', 'most', family):+g}",
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

EXERCISES = (JUDGE_MEASURES,)
