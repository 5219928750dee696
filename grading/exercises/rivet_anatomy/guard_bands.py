"""Exercise on how far inside a limit a reading has to lie."""

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import looked_up, option, same, slip, wrong
from grading.exercises.rivet_anatomy.judging import FAMILIES, HEADING, limit_mm
from grading.exercises.scenes import scene
from secondplate.measuring_decision import guard_band_mm

UM = 1000  # um in 1 mm


def _draw_limits(draw):
    return scene(draw) | {
        "family": draw.pick("family", FAMILIES),
        "uncertainty_um": draw.whole("uncertainty_um", 20, 50, 2),
    }


def _solve_limits(table):
    spread_mm = table["uncertainty_um"] / UM
    guard_mm = guard_band_mm(spread_mm)
    least = np.array(looked_up(table["family"], lambda name: limit_mm("interlock_mm", "least", name)))
    highest = limit_mm("head_flushness_mm", "most")
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
        "least": f"{limit_mm('interlock_mm', 'least', scenario['family']):g}",
        "highest": f"{limit_mm('head_flushness_mm', 'most'):g}",
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

EXERCISES = (LIMITS,)
