"""Exercises on what it takes to push and turn a drill in a hardened rivet, by two ways that differ."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey, Range, RangeKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.drilling import (
    CUTTING_GROUPS,
    SPLIT_POINT,
    STANDARD_POINT,
    WEAR_FACTORS,
    WORK_MATERIALS,
    ChiselEdge,
    chisel_thrust_n,
    handbook_thrust_n,
    handbook_torque_n_m,
    kienzle_torque_n_m,
)

HEADING = "Can a drill cut this rivet at all?"
STEEL = WORK_MATERIALS["steel 400 HB"]
DRILLS_MM = (4.0, 4.5, 5.0, 5.5, 6.0, 6.5, 7.0, 7.5, 8.0)
FEEDS_MM = (0.04, 0.05, 0.06, 0.08, 0.1, 0.12)
WORN = ("usual drilling", "worn drill")
DRILL_WEIGHT_N = 25.0  # a hand drill of some two and a half kilograms
TO_A_NEWTON = "Powers are rounded on the way and three figures are enough: 2 % covers both."


def _thrust_n(table, edge, *, wear=None, feed_share=1.0):
    """Return the thrust by the handbook's factors, with the wear of the table unless another is told."""
    return handbook_thrust_n(
        work_material_factor=STEEL.work_material_factor,
        drill_diameter_mm=table["drill_mm"],
        feed_mm_rev=table["feed_mm_rev"] * feed_share,
        chisel_edge=edge,
        wear_factor=table["wear"] if wear is None else wear,
    )


def _thrusts(table):
    """Return for both points the thrust and what slips make of it."""
    standard, split = (_thrust_n(table, edge) for edge in (STANDARD_POINT, SPLIT_POINT))
    chisel = chisel_thrust_n(
        work_material_factor=STEEL.work_material_factor,
        drill_diameter_mm=table["drill_mm"],
        wear_factor=table["wear"],
    )
    half_split = ChiselEdge(
        torque_factor=SPLIT_POINT.torque_factor,
        thrust_factor=STANDARD_POINT.thrust_factor,
        chisel_factor=SPLIT_POINT.chisel_factor,
    )
    return {
        "standard": {
            "right": standard,
            "no_chisel": standard - chisel,
            "no_wear": _thrust_n(table, STANDARD_POINT, wear=1.0),
        },
        "split": {
            "right": split,
            "old_factors": standard,
            "chisel_alone": _thrust_n(table, half_split),
            "no_wear": _thrust_n(table, SPLIT_POINT, wear=1.0),
        },
    }


@cache
def _cuts():
    """Return drills, feeds and wear whose thrust and slips can be told apart."""
    sizes = {"drill_mm": DRILLS_MM, "feed_mm_rev": FEEDS_MM, "wear": [WEAR_FACTORS[name] for name in WORN]}
    grid = np.meshgrid(*sizes.values(), indexing="ij")
    table = dict(zip(sizes, (column.ravel() for column in grid), strict=True))
    plain = True
    for sums in _thrusts(table).values():
        rising = np.sort(np.stack(list(sums.values())), axis=0)
        plain &= np.all(np.diff(rising, axis=0) > 0.05 * rising[1:], axis=0)
    return [{name: column[row].item() for name, column in table.items()} for row in np.flatnonzero(plain)]


def _solve_thrust(table):
    sums = _thrusts(table)
    standard, split = sums["standard"].pop("right"), sums["split"].pop("right")
    gentle = _thrust_n(table, STANDARD_POINT, feed_share=0.5)
    return {
        "standard": NumberKey(value=standard, slips=sums["standard"]),
        "split": NumberKey(value=split, slips=sums["split"]),
        "gentle": ChoiceKey(right=chosen([gentle > standard / 2], ["less"], otherwise="half")),
        "supplies": ChoiceKey(right=chosen([split > DRILL_WEIGHT_N], ["hands"], otherwise="weight")),
    }


def _factor_words(scenario):
    """Return the factors of the handbook that the learner puts together."""
    return {
        "steel": f"{STEEL.work_material_factor:.0f}",
        "b_standard": f"{STANDARD_POINT.thrust_factor}",
        "j_standard": f"{STANDARD_POINT.chisel_factor}",
        "b_split": f"{SPLIT_POINT.thrust_factor}",
        "j_split": f"{SPLIT_POINT.chisel_factor}",
    }


THRUST = Exercise(
    id="removal.thrust",
    objective="drill",
    title="How hard must you push?",
    prompt=(
        "{shop} drills a rivet of {vehicle} with a drill of {drill_mm} mm, at {feed_mm_rev} mm a turn. "
        "A handbook gives: thrust in N = 0.05 × K × W × B × f^0.8 × D^0.8 + 0.007 × K × W × J × D², "
        "feed f in mm a turn, drill D in mm. "
        "Take K = {steel} for steel of 400 HB, the nearest row for a rivet, and W = {wear} for wear. "
        "A standard point has B = {b_standard} and J = {j_standard}; "
        "a split point has B = {b_split} and J = {j_split}."
    ),
    shown=_factor_words,
    parts=(
        Number(
            id="standard",
            ask="Which thrust does the standard point need?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=TO_A_NEWTON,
            slips=(
                slip(
                    "no_chisel", "That is the lips alone. The chisel edge in the middle has to be pushed too."
                ),
                slip("no_wear", "That is a drill fresh from the grinder. This one is worn."),
            ),
        ),
        Number(
            id="split",
            ask="Which thrust does the split point need?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=TO_A_NEWTON,
            slips=(
                slip(
                    "old_factors", "That is the standard point again. The split point has factors of its own."
                ),
                slip("chisel_alone", "Only J was changed. The split point has another B as well."),
                slip("no_wear", "That is a drill fresh from the grinder. This one is worn."),
            ),
        ),
        Choice(
            id="gentle",
            ask="Somebody halves the feed to spare the arms. What does the thrust of the standard point do?",
            options=(
                wrong(
                    "half",
                    "It falls to a half, or lower.",
                    "The feed stands there with a power below one, and the chisel edge has no feed at all.",
                ),
                wrong(
                    "stays",
                    "It stays as it is: hardness alone counts.",
                    "The lips take a thinner chip. Look at where the feed stands in the rule.",
                ),
                option("less", "It falls, but not to a half."),
            ),
        ),
        Choice(
            id="supplies",
            ask="With a drill held in the hand, who supplies the thrust?",
            options=(
                wrong(
                    "motor",
                    "The motor.",
                    "The motor turns the drill. Nothing in it pushes forward.",
                ),
                option("hands", "The arms of whoever drills, all the way to the break-through."),
                wrong(
                    "weight",
                    "The weight of the machine.",
                    "A hand drill weighs some twenty or thirty newtons. Compare that with the thrust.",
                ),
            ),
        ),
    ),
    draw=lambda draw: scene(draw) | draw.pick("cut", _cuts()),
    solve=_solve_thrust,
    reasons=(
        "Work out both terms and add them: the lips by the feed, the chisel edge at any feed. "
        "A split point cuts in the middle too, so it needs plainly less. "
        "Halving the feed halves neither term. "
        "What pushes by hand falls forward at the break-through, into the second plate: "
        "so use a stand or a guide with a stop."
    ),
    read_again=HEADING,
)

HARD_GROUP = STEEL.cutting_groups[-1]
FINE_FEEDS_MM = tuple(step / 100 for step in range(4, 13))
TEXT_NUMBERS = (1.0, STANDARD_POINT.torque_factor, 1.8, 2.0)


def _kienzle_n_m(table):
    """Return the torque by specific cutting force in the hardest group."""
    return kienzle_torque_n_m(
        specific_cutting_force_mpa=CUTTING_GROUPS[HARD_GROUP].specific_cutting_force_mpa,
        force_exponent=CUTTING_GROUPS[HARD_GROUP].force_exponent,
        drill_diameter_mm=table["drill_mm"],
        feed_mm_rev=table["feed_mm_rev"],
    )


def _ends(first, second):
    """Return two torques as the low and the high end of a band."""
    return np.minimum(first, second), np.maximum(first, second)


def _both(table):
    """Return the torque by the handbook and by specific cutting force."""
    by_handbook = handbook_torque_n_m(
        work_material_factor=STEEL.work_material_factor,
        drill_diameter_mm=table["drill_mm"],
        feed_mm_rev=table["feed_mm_rev"],
    )
    return by_handbook, _kienzle_n_m(table)


@cache
def _turned():
    """Return drills and feeds whose torques differ from every number of the text."""
    drill_mm, feed_mm_rev = (each.ravel() for each in np.meshgrid(DRILLS_MM, FINE_FEEDS_MM, indexing="ij"))
    torques = np.stack(_both({"drill_mm": drill_mm, "feed_mm_rev": feed_mm_rev}))
    in_text = np.stack([drill_mm, *(np.full(drill_mm.shape, number) for number in TEXT_NUMBERS)])
    near = np.abs(torques[:, None] - in_text) < 0.04 * torques[:, None]
    return [
        {"drill_mm": float(drill_mm[row]), "feed_mm_rev": float(feed_mm_rev[row])}
        for row in np.flatnonzero(~near.any(axis=(0, 1)))
    ]


def _solve_torques(table):
    by_handbook, by_force = _both(table)
    force_mpa = CUTTING_GROUPS[HARD_GROUP].specific_cutting_force_mpa
    thick_chip = force_mpa * table["feed_mm_rev"] * table["drill_mm"] ** 2 / 8000
    low, high = _ends(by_handbook, by_force)
    return {
        "torque": RangeKey(
            low=low,
            high=high,
            slips={
                "double": _ends(by_handbook, 2 * by_force),
                "thick_chip": _ends(by_handbook, thick_chip),
            },
        ),
        "plan": ChoiceKey(right=same(table, "higher")),
    }


def _torque_words(scenario):
    """Return what the learner needs for both ways."""
    group = CUTTING_GROUPS[HARD_GROUP]
    return {
        "steel": f"{STEEL.work_material_factor:.0f}",
        "a_standard": f"{STANDARD_POINT.torque_factor}",
        "force": f"{group.specific_cutting_force_mpa:.0f}",
        "exponent": f"{group.force_exponent}",
    }


TWO_TORQUES = Exercise(
    id="removal.two_torques",
    objective="drill",
    title="Two ways to a torque",
    prompt=(
        "{shop} asks what torque a sharp {drill_mm} mm drill needs in a hardened rivet of {vehicle}. "
        "The point has 118°, the feed is {feed_mm_rev} mm a turn. "
        "A handbook: torque in N m = 0.000025 × K × A × f^0.8 × D^1.8, K = {steel} and A = {a_standard}. "
        "The other way: the chip is f ÷ 2 × sin(59°) thick, and a chip 1 mm thick takes {force} N/mm². "
        "A thinner one takes that ÷ thickness^{exponent}; the torque is that force × f × D² ÷ 8000. "
        "The first was made for softer steel, the second for harder, with an exponent that was assumed."
    ),
    shown=_torque_words,
    parts=(
        Range(
            id="torque",
            ask="Between which two torques do the two ways put it?",
            unit="N m",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("double", "The second way came out twice too large: look at what it is divided by."),
                slip("thick_chip", "The force of a chip 1 mm thick was used. This chip is far thinner."),
            ),
            points=2.0,
        ),
        Choice(
            id="plan",
            ask="The two differ. What do you plan with?",
            options=(
                option(
                    "higher",
                    "The higher one, and both on the sheet: how far apart they are is what is known.",
                ),
                wrong(
                    "mean",
                    "The mean of both.",
                    "Nobody measured the mean. The two rest on different tests in different steel.",
                ),
                wrong(
                    "handbook",
                    "The handbook's, because it is printed.",
                    "Both are printed. This one was made for steel softer than the rivet.",
                ),
            ),
        ),
    ),
    draw=lambda draw: scene(draw) | draw.pick("cut", _turned()),
    solve=_solve_torques,
    reasons=(
        "Put feed and diameter into each rule. "
        "In the second the chip is thin, so its force is well above that of a thick one. "
        "Two honest ways that differ by a quarter or more: that is how well it is known. "
        "Plan for the higher, and hold the machine for a kick at the break-through."
    ),
    read_again=HEADING,
)

EXERCISES = (THRUST, TWO_TORQUES)
