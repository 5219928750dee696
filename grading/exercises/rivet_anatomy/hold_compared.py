"""Exercises that compare what holds a tail: steel with aluminium, and a larger interlock with a smaller."""

from functools import cache

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Number,
    NumberKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, option, same, slip, wrong
from grading.exercises.rivet_anatomy.drawing_out import HEADING
from grading.exercises.rivet_anatomy.holding import RIVET, spoken, strength_mpa
from grading.exercises.scenes import scene
from secondplate.clinch_shape import clinch_axial_ratio
from secondplate.pull_out_forces import collar_crush_n
from secondplate.section_limits import typical_limits
from secondplate.tables import values
from secondplate.tail_pull_out import tail_hold

CRUSH_FACTOR = values("pull_out_constants")["crush factor high"]
CLINCH_POWER = values("clinch_shape")["interlock"]
STEELS, ALUMINIUM = ("HX340LAD", "HCT600X"), ("5754-O", "6016-T4", "6016-T6", "6082-T6")
MODE_IDS = {"tube snaps": "tube", "leg closure": "leg", "collar shear": "shear", "collar crush": "crush"}


def _least_interlock_mm(family):
    """Return the interlock that practice asks for at the least."""
    return next(
        limit.limit_mm
        for limit in typical_limits(family)
        if limit.measure == "interlock_mm" and limit.side == "least"
    )


STEEL_LEAST_MM, ALUMINIUM_LEAST_MM = _least_interlock_mm("steel"), _least_interlock_mm("aluminium")


def _hold(table):
    """Return the four ways in which the tails of a table of steel plates can let go."""
    return tail_hold(
        RIVET,
        interlock_mm=table["interlock_mm"],
        penetration_mm=table["penetration_mm"],
        tensile_strength_mpa=strength_mpa(table["steel"]),
    )


def _able(hold):
    """Return for each joint the ids of the ways that can come first, in the order of the options."""
    columns = [hold.can_be_first[name] for name in MODE_IDS]
    return [
        tuple(mode for mode, able in zip(MODE_IDS.values(), row, strict=True) if able)
        for row in np.transpose(columns)
    ]


@cache
def _steel_joints():
    """Return joints by what can come first; those where a band only just reaches another are left out."""
    sizes = {
        "steel": STEELS,
        "interlock_mm": np.round(np.arange(0.15, 0.51, 0.05), 2),
        "penetration_mm": np.round(np.arange(1.0, 2.21, 0.1), 1),
    }
    grid = np.meshgrid(*sizes.values(), indexing="ij")
    table = dict(zip(sizes, (column.ravel() for column in grid), strict=True))
    hold = _hold(table)
    least_high = hold.strength_n.high
    lows = np.array([hold.forces_n[name].low + 0 * least_high for name in MODE_IDS])
    plain = np.all(np.abs(lows - least_high) > 0.05 * least_high, axis=0)
    found = {}
    for row, able in enumerate(_able(hold)):
        if plain[row]:
            found.setdefault(able, []).append({name: column[row].item() for name, column in table.items()})
    return found


def _draw_steel(draw):
    found = _steel_joints()
    return (
        scene(draw)
        | draw.pick("joint", found[draw.pick("able", sorted(found))])
        | {"aluminium": draw.pick("aluminium", ALUMINIUM)}
    )


def _steel_words(scenario):
    """Return the band of each way to let go, and the strengths and interlocks that are compared."""
    hold = _hold({name: np.array([value]) for name, value in scenario.items()})
    steel, aluminium = strength_mpa([scenario["steel"], scenario["aluminium"]])
    tube = hold.forces_n["tube snaps"]
    bands = {"tube": spoken(tube)} | {
        mode: spoken(hold.forces_n[name]) for name, mode in MODE_IDS.items() if mode != "tube"
    }
    return bands | {
        "steel_strength": f"{steel:.0f}",
        "aluminium_strength": f"{aluminium:.0f}",
        "steel_least": f"{STEEL_LEAST_MM}",
        "aluminium_least": f"{ALUMINIUM_LEAST_MM}",
        "shank_mm": f"{RIVET.shank_diameter_mm}",
    }


def _crush(interlock_mm, strength=300.0):
    """Return the crush under a tail; where two are compared, the crush factor drops out."""
    return collar_crush_n(
        RIVET, interlock_mm=interlock_mm, tensile_strength_mpa=strength, crush_factor=CRUSH_FACTOR
    )


def _solve_steel(table):
    steel_mpa, aluminium_mpa = strength_mpa(table["steel"]), strength_mpa(table["aluminium"])
    steel_n, aluminium_n = _crush(STEEL_LEAST_MM, steel_mpa), _crush(ALUMINIUM_LEAST_MM, aluminium_mpa)
    only_interlock = _crush(STEEL_LEAST_MM) / _crush(ALUMINIUM_LEAST_MM)
    return {
        "able": ChoicesKey(right=_able(_hold(table))),
        "at_least": NumberKey(
            value=steel_n / aluminium_n,
            slips={
                "same_interlock": steel_mpa / aluminium_mpa,
                "only_interlock": np.full(len(steel_mpa), only_interlock),
            },
        ),
        "changes": ChoicesKey(right=same(table, ("leg", "stud"))),
    }


STEEL = Exercise(
    id="rivet_anatomy.steel_below",
    objective="holding",
    title="What if the second plate is steel?",
    prompt=(
        "On {vehicle} the second plate is {steel}, of {steel_strength} N/mm². "
        "An interlock of {interlock_mm} mm was measured. "
        "Worked out for it: the shank snaps at {tube}, the leg bends inward at {leg}, "
        "the collar is sheared at {shear} or crushed at {crush}. "
        "Typical practice asks for an interlock of {steel_least} mm in steel and {aluminium_least} mm in "
        "aluminium. "
        "Compare with {aluminium}, of {aluminium_strength} N/mm²; the shank is {shank_mm} mm."
    ),
    shown=_steel_words,
    parts=(
        Choices(
            id="able",
            ask="Which ways can come first?",
            options=(
                wrong(
                    "tube",
                    "The shank snaps.",
                    "Before that force is reached, another way has let go for certain.",
                ),
                option("leg", "The leg bends inward."),
                option("shear", "The collar is sheared."),
                option("crush", "The collar is crushed."),
            ),
        ),
        Number(
            id="at_least",
            ask=(
                "Crush goes with strength × (shank + interlock) × interlock. "
                "With just the interlock that practice asks for, how many times as much as the aluminium "
                "does this steel take?"
            ),
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("same_interlock", "That compares the strengths alone. The interlocks differ as well."),
                slip("only_interlock", "That compares the interlocks alone. The strengths differ as well."),
            ),
        ),
        Choices(
            id="changes",
            ask="At the same interlock, what does a steel plate below change against an aluminium one?",
            options=(
                wrong(
                    "thinner",
                    "The stud may be thinner, because steel bears the pull.",
                    "The pull goes through the stud all the same, and it is a higher one.",
                ),
                option("leg", "The rivet's leg may give before the plate does."),
                wrong(
                    "exact",
                    "The force is known to a few per cent, because steel is well known.",
                    "The strength is, how a tail lets go is not: the bands are as wide as before.",
                ),
                option("stud", "Stud and weld may have to bear more."),
            ),
        ),
    ),
    draw=_draw_steel,
    solve=_solve_steel,
    reasons=(
        "A way can come first where its low end is not above the lowest of all high ends. "
        "Steel holds the tail so well that the leg can be the one to give. "
        "Half the interlock is asked for in steel, and its strength makes up for much of that. "
        "The limits are practice and no law: those of the vehicle maker come first."
    ),
    read_again=HEADING,
)


def _draw_interlock(draw):
    small_mm = draw.pick("small_mm", (0.2, 0.22, 0.24, 0.26, 0.28, 0.3))
    return scene(draw) | {
        "small_mm": small_mm,
        "large_mm": round(small_mm * draw.pick("ratio", (1.6, 1.8, 2.0, 2.2, 2.4)), 2),
    }


def _solve_interlock(table):
    small_mm, large_mm = table["small_mm"], table["large_mm"]
    ratio, shank_mm = large_mm / small_mm, RIVET.shank_diameter_mm
    return {
        "crush": NumberKey(
            value=_crush(large_mm) / _crush(small_mm),
            slips={
                "tail": (shank_mm + 2 * large_mm) / (shank_mm + 2 * small_mm),
                "square": ratio**2,
            },
        ),
        "clinch": NumberKey(
            value=clinch_axial_ratio(interlock_ratio=ratio),
            slips={"proportional": ratio, "multiplied": CLINCH_POWER * ratio},
        ),
        "say": ChoiceKey(right=same(table, "between")),
    }


INTERLOCK = Exercise(
    id="rivet_anatomy.interlock_counts",
    objective="holding",
    title="What is more interlock worth?",
    prompt=(
        "Two sections from {shop} show an interlock of {small_mm} mm and of {large_mm} mm, all else equal. "
        "The shank is {shank_mm} mm. "
        "By mechanics the crush goes with (shank + interlock) × interlock. "
        "Simulated clinch joints, which have no rivet, grew with the interlock to the power {power}. "
        "For rivets that are drawn out no such figure was found."
    ),
    shown=lambda scenario: {"power": f"{CLINCH_POWER}", "shank_mm": f"{RIVET.shank_diameter_mm}"},
    parts=(
        Number(
            id="crush",
            ask="By mechanics, how many times as much does the larger interlock hold?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip(
                    "tail", "That compares the tails across. What holds is the narrow ring of the interlock."
                ),
                slip("square", "The interlock counts once here, not squared."),
            ),
        ),
        Number(
            id="clinch",
            ask="By the clinch joints, how many times as much?",
            unit="times",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("proportional", "That is in proportion. The power is below one, so it is less."),
                slip("multiplied", "The power is an exponent, not a factor."),
            ),
        ),
        Choice(
            id="say",
            ask="What do you tell the shop?",
            options=(
                wrong(
                    "mechanics",
                    "The value by mechanics, for it was derived for rivets.",
                    "Derived is not tried. Nothing says that it is nearer to the truth.",
                ),
                option("between", "More interlock holds more; how much more lies about between the two."),
                wrong(
                    "nothing",
                    "Nothing: without a test on rivets no word can be said.",
                    "Both ways agree that more holds more, and that is worth knowing.",
                ),
            ),
        ),
    ),
    draw=_draw_interlock,
    solve=_solve_interlock,
    reasons=(
        "By mechanics the hold grows nearly in proportion to the interlock. "
        "For the clinch joints divide the interlocks and raise the result to the power. "
        "The two ways disagree on how much, not on which way it goes. "
        "So the smaller interlock of a section is a reason to expect an easier pull, and no more than that."
    ),
    read_again=HEADING,
)

EXERCISES = (STEEL, INTERLOCK)
