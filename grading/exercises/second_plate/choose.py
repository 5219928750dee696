"""Exercises on choosing a fastener: grip, hole, the side that can be reached, and what gives first."""

from functools import cache
from itertools import product

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Number,
    NumberKey,
    Range,
    RangeKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, option, same, slip, wrong
from grading.exercises.scenes import scene
from grading.exercises.second_plate.edges import strength_mpa
from secondplate.eurocode9 import GAMMA_M2
from secondplate.fasteners import (
    BLIND_RIVET,
    SECOND_BEARS,
    SECOND_TEARS,
    SHEARED,
    TOP_BEARS,
    TOP_TEARS,
    blind_rivet,
    blind_rivet_length_mm,
    blind_rivet_sizes,
    bolt,
    fastener_joint,
    grip_mm,
    grip_range_mm,
    hole_verdict,
    lock_bolt,
)
from secondplate.rivet import Sheet

HEADING = "Which fastener fits and holds?"
STACKS = ("first", "second", "third", "fourth")

GRIP_DIAMETERS = (4.0, 4.8)
LENGTHS = (8.0, 10.0, 12.0)


def _length_id(diameter_mm, closed_mm, gap_mm):
    """Return the id of the rivet that holds a stack with its gap open and closed, or ``none``."""
    held = {length: grip_range_mm(diameter_mm, rivet_length_mm=length) for length in LENGTHS}
    if not any(low <= closed_mm and closed_mm + gap_mm <= high for low, high in held.values()):
        return "none"
    return f"length_{blind_rivet_length_mm(diameter_mm, closed_grip_mm=closed_mm, gap_mm=gap_mm):.0f}"


@cache
def stacks(diameter_mm):
    """Return stacks by the rivet that holds them; what ends near the end of a range is left out."""
    ends = {end for length in LENGTHS for end in grip_range_mm(diameter_mm, rivet_length_mm=length)}
    found = {}
    sizes = product(
        (1.0, 1.2, 1.5, 2.0, 2.5, 3.0), (1.5, 1.8, 2.0, 2.5, 3.0, 3.5), (0.2, 0.3, 0.5), (0.4, 0.6, 0.8)
    )
    for top_mm, second_mm, adhesive_mm, gap_mm in sizes:
        closed_mm = grip_mm(top_mm, second_mm, adhesive_mm=adhesive_mm)
        if min(abs(one - end) for one in (closed_mm, closed_mm + gap_mm) for end in ends) > 0.08:
            stack = {"top_mm": top_mm, "second_mm": second_mm, "adhesive_mm": adhesive_mm, "gap_mm": gap_mm}
            found.setdefault(_length_id(diameter_mm, closed_mm, gap_mm), []).append(stack)
    return found


def _draw_grip(draw):
    diameter_mm = draw.pick("diameter", GRIP_DIAMETERS)
    found = stacks(diameter_mm)
    wanted = draw.shuffle("wanted", sorted(found))
    scenario = scene(draw) | {"diameter_mm": diameter_mm}
    for row, name in zip(STACKS, wanted, strict=True):
        stack = draw.pick(f"stack {row}", found[name])
        scenario |= {f"{row}_{size}": value for size, value in stack.items()}
    return scenario


def _stack_words(scenario):
    """Return the stacks in words, and the grips of the rivets."""
    rows = {
        f"{row}_words": (
            f"{scenario[f'{row}_top_mm']} on {scenario[f'{row}_second_mm']} mm, "
            f"adhesive {scenario[f'{row}_adhesive_mm']} mm, gap {scenario[f'{row}_gap_mm']} mm"
        )
        for row in STACKS
    }
    grips = {length: grip_range_mm(scenario["diameter_mm"], rivet_length_mm=length) for length in LENGTHS}
    told = [f"{length:g} mm long, {low:g} to {high:g} mm" for length, (low, high) in grips.items()]
    return rows | {"grips": "; ".join(told)}


def _solve_grip(table):
    right = {}
    for row in STACKS:
        sizes = [table[f"{row}_{name}"] for name in ("top_mm", "second_mm", "adhesive_mm", "gap_mm")]
        closed_mm = grip_mm(*sizes[:2], adhesive_mm=sizes[2])
        columns = zip(table["diameter_mm"].tolist(), closed_mm.tolist(), sizes[3].tolist(), strict=True)
        right[row] = [_length_id(*column) for column in columns]
    top_mm, second_mm = table["first_top_mm"], table["first_second_mm"]
    adhesive_mm, gap_mm = table["first_adhesive_mm"], table["first_gap_mm"]
    return {
        "rivet": VerdictsKey(right=right),
        "open": NumberKey(
            value=grip_mm(top_mm, second_mm, adhesive_mm=adhesive_mm, gap_mm=gap_mm),
            slips={
                "no_gap": grip_mm(top_mm, second_mm, adhesive_mm=adhesive_mm),
                "no_adhesive": grip_mm(top_mm, second_mm, gap_mm=gap_mm),
                "sheets": grip_mm(top_mm, second_mm),
            },
        ),
    }


GRIP = Exercise(
    id="second_plate.grip",
    objective="fasten",
    title="Which rivet holds which stack?",
    prompt=(
        "{shop} has blind rivets of {diameter_mm} mm in three lengths. "
        "Their grips by ISO 15981: {grips}. "
        "Four stacks wait, each with adhesive and with a gap that may close when the rivet is set, or stay. "
        "The grip must lie in the range with the gap open and with it closed."
    ),
    shown=_stack_words,
    parts=(
        Verdicts(
            id="rivet",
            ask="Which rivet holds each stack?",
            points=2.0,
            rows=tuple(option(row, "{" + row + "_words}") for row in STACKS),
            verdicts=(
                *(option(f"length_{length:g}", f"{length:g} mm long") for length in LENGTHS),
                option("none", "none of them"),
            ),
        ),
        Number(
            id="open",
            ask="What is the grip of the first stack while its gap is open?",
            unit="mm",
            absolute_tolerance=0.04,
            tolerance_reason="All thicknesses are given to a tenth of a millimetre: less than half of that.",
            slips=(
                slip("no_gap", "That is the closed stack. While the gap is open, it counts."),
                slip("no_adhesive", "The adhesive lies in the grip as well."),
                slip("sheets", "Those are the plates alone. Adhesive and gap lie in the grip too."),
            ),
        ),
    ),
    draw=_draw_grip,
    solve=_solve_grip,
    reasons=(
        "Add plates and adhesive, then the gap, and hold both sums against each range. "
        "A rivet too short does not form its head behind the stack; one too long does not clamp it. "
        "Where open and closed fall into two ranges, close the gap with clamps first, or take another rivet."
    ),
    read_again=HEADING,
)

HOLE_STANDARD = "ISO 15977 H"
HOLE_STEPS = {"too tight": (-0.08, -0.05), "right": (0.14, 0.15, 0.16), "too wide": (0.28, 0.35, 0.5)}


def _draw_hole(draw):
    diameter_mm = draw.pick("diameter", blind_rivet_sizes(HOLE_STANDARD))
    verdict = draw.pick("verdict", tuple(HOLE_STEPS))
    return scene(draw) | {
        "diameter_mm": diameter_mm,
        "measured_mm": round(diameter_mm + draw.pick("step", HOLE_STEPS[verdict]), 2),
        "tip": draw.pick("tip", ("the first hole", "the third hole", "the last hole")),
    }


def _solve_hole(table):
    rivets = [blind_rivet(HOLE_STANDARD, diameter) for diameter in table["diameter_mm"].tolist()]
    low, high = (
        np.array([getattr(rivet, name) for rivet in rivets]) for name in ("hole_least_mm", "hole_most_mm")
    )
    body = table["diameter_mm"]
    verdicts = [
        hole_verdict(hole, fastener=rivet)
        for hole, rivet in zip(table["measured_mm"].tolist(), rivets, strict=True)
    ]
    return {
        "hole": RangeKey(
            low=low,
            high=high,
            slips={
                "as_body": (body, low),
                "each_side": (2 * low - body, 2 * high - body),
            },
        ),
        "measured": ChoiceKey(right=[verdict.replace(" ", "_") for verdict in verdicts]),
    }


HOLE = Exercise(
    id="second_plate.hole",
    objective="fasten",
    title="The hole that a blind rivet wants",
    prompt=(
        "Blind rivets of {diameter_mm} mm go into a flange of {vehicle}. "
        "From application data, from memory, the hole is one to two tenths of a millimetre wider than the "
        "body. "
        "At {shop} {tip} was measured with a pin: {measured_mm} mm."
    ),
    parts=(
        Range(
            id="hole",
            ask="Between which diameters must the hole lie?",
            unit="mm",
            absolute_tolerance=0.02,
            tolerance_reason="The window is a tenth of a millimetre wide: a fifth of it either way.",
            slips=(
                slip("as_body", "The hole has to be wider than the body by at least the first tenth."),
                slip("each_side", "The play was taken on each side. It is the difference of the diameters."),
            ),
        ),
        Choice(
            id="measured",
            ask="What do you do with the hole that was measured?",
            options=(
                wrong(
                    "too_wide",
                    "No rivet of this size goes in: the next size, or another place, after a new check.",
                    "Hold it against the upper end: the body would still fill it.",
                ),
                wrong("right", "Deburr it and set the rivet.", "Hold the measured hole against both ends."),
                wrong(
                    "too_tight",
                    "Ream it to size first.",
                    "Hold it against the lower end. Reaming makes a hole wider, never narrower.",
                ),
            ),
        ),
    ),
    draw=_draw_hole,
    solve=_solve_hole,
    reasons=(
        "The hole is a little wider than the body, and the body swells to fill it. "
        "In a hole too wide it swells between the plates as well, and shear and tension drop. "
        "A rivet that has to be forced into a hole too tight does not seat. "
        "The maker's sheet of the rivet comes first."
    ),
    read_again=HEADING,
)

CANDIDATES = {
    "weak_blind": blind_rivet("ISO 15977 L", 4.8),
    "bolt": bolt("M6"),
    "strong_blind": blind_rivet("ISO 15983", 4.8),
    "lock_bolt": lock_bolt("steel", 4.8),
}
REACH = {"one side": "only from the front", "both sides": "from both sides"}
# Shear that one fastener has to bear, by the side that can be reached: some of them bear it, not all.
NEEDS_N = {
    "one side": (700, 800, 900, 1200, 1500, 2000, 2500, 3000),
    "both sides": (1200, 1500, 2000, 2500, 3600, 4000, 4500, 5000, 6600, 7000),
}


def _draw_reach(draw):
    reach = draw.pick("reach", tuple(REACH))
    return scene(draw) | {"reach": reach, "need_n": draw.pick("need", NEEDS_N[reach])}


def _reach_words(scenario):
    """Return the side that can be reached, and the loads of the candidates by catalogue."""
    loads = {name: f"{fastener.fastener_shear_n:.0f}" for name, fastener in CANDIDATES.items()}
    return loads | {"from_where": REACH[scenario["reach"]], "gamma": f"{GAMMA_M2:g}"}


def _solve_reach(table):
    right = []
    for reach, need_n in zip(table["reach"].tolist(), table["need_n"].tolist(), strict=True):
        right.append(
            tuple(
                name
                for name, fastener in CANDIDATES.items()
                # A bolt and a lock bolt are closed from the back: nut and collar go on there.
                if (reach == "both sides" or fastener.kind == BLIND_RIVET)
                and fastener.fastener_shear_n / GAMMA_M2 >= need_n
            )
        )
    return {"able": ChoicesKey(right=right), "list": ChoiceKey(right=same(table, "upper"))}


BLIND_OR_BOLT = Exercise(
    id="second_plate.blind_or_bolt",
    objective="fasten",
    title="Blind rivet, lock bolt or bolt?",
    prompt=(
        "A joint of {vehicle} can be reached {from_where}. "
        "Each fastener has to bear a shear of {need_n} N by design, which is the list's load over {gamma}. "
        "{shop} has blind rivets of 4.8 mm with {weak_blind} N (ISO 15977, class L, aluminium) and "
        "{strong_blind} N (ISO 15983, stainless), lock bolts of 4.8 mm with {lock_bolt} N, "
        "and M6 bolts 8.8 with {bolt} N. "
        "Loads are from memory or from one seller's sheet."
    ),
    shown=_reach_words,
    parts=(
        Choices(
            id="able",
            ask="Which of them can be set here and bear the shear?",
            options=(
                wrong(
                    "weak_blind",
                    "The aluminium blind rivet",
                    "Take the partial factor off its load, then compare with the need.",
                ),
                wrong("bolt", "The bolt with its nut", "Ask where the nut goes, and who holds it."),
                wrong(
                    "strong_blind",
                    "The stainless blind rivet",
                    "Take the partial factor off its load, then compare with the need.",
                ),
                wrong(
                    "lock_bolt",
                    "The lock bolt",
                    "Its collar is swaged on from the back. Ask whether you get there.",
                ),
            ),
        ),
        Choice(
            id="list",
            ask="The loads in the lists hold for hard test plates. What do they tell about your joint?",
            options=(
                option("upper", "The most that it can bear: thin aluminium may give way before."),
                wrong(
                    "exact",
                    "Just what it bears, for the fastener is the same.",
                    "The fastener is, the plates are not. Bearing of your plate may come first.",
                ),
                wrong(
                    "least",
                    "The least: it bears more in any other plate.",
                    "Hard plates bring out all of the fastener. Softer ones give way earlier.",
                ),
            ),
        ),
    ),
    draw=_draw_reach,
    solve=_solve_reach,
    reasons=(
        "First ask what can be reached: nut and collar need the back, a blind rivet does not. "
        "Then compare the load by design with the need. "
        "A list tells what the fastener bears; a joint bears the least of fastener, bearing and net section. "
        "Stainless in aluminium also needs to be kept dry and apart: that is a later heading."
    ),
    read_again=HEADING,
)

GIVES = {
    SHEARED: "rivet",
    TOP_BEARS: "top",
    SECOND_BEARS: "second",
    TOP_TEARS: "tears",
    SECOND_TEARS: "tears",
}
JOINT_STANDARDS = ("ISO 15977 L", "ISO 15977 H", "ISO 15979", "ISO 15983")
JOINT_ALLOYS = ("5754-O", "6016-T6", "6082-T6")
JOINT_SIZES = {
    "top_mm": (1.0, 1.2, 1.5, 2.0),
    "second_mm": (1.5, 2.0, 2.5),
    "width_mm": (12.0, 20.0),
    "top_mpa": tuple(strength_mpa(JOINT_ALLOYS).tolist()),
    "second_mpa": tuple(strength_mpa(JOINT_ALLOYS).tolist()),
}
FORCES = ("shear", "top_low", "top_high", "second_low", "second_high", "tears")


def _joints(standard):
    """Return what blind rivets of 4.8 mm bear in joints of all sizes: what gives first, and the forces."""
    size = dict(zip(JOINT_SIZES, np.meshgrid(*JOINT_SIZES.values(), indexing="ij"), strict=True))
    size = {name: column.ravel() for name, column in size.items()}
    joint = fastener_joint(
        blind_rivet(standard, 4.8),
        top=Sheet(thickness_mm=size["top_mm"], tensile_strength_mpa=size["top_mpa"]),
        second=Sheet(thickness_mm=size["second_mm"], tensile_strength_mpa=size["second_mpa"]),
        end_distance_mm=10.0,
        edge_distance_mm=9.0,
        width_mm=size["width_mm"],
    )
    bands = joint.modes.forces_n
    shear = np.full(len(size["top_mm"]), blind_rivet(standard, 4.8).fastener_shear_n)
    tears = np.minimum(bands[TOP_TEARS].low, bands[SECOND_TEARS].low)
    ends = (bands[TOP_BEARS].low, bands[TOP_BEARS].high, bands[SECOND_BEARS].low, bands[SECOND_BEARS].high)
    columns = dict(zip(FORCES, np.round([shear, *ends, tears]), strict=True))
    return joint.weakest, columns


@cache
def joints():
    """Return joints by what gives first; those in which another way comes close are left out."""
    found = {}
    for standard in JOINT_STANDARDS:
        weakest, forces = _joints(standard)
        by_design = [forces["shear"] / GAMMA_M2, forces["top_low"], forces["second_low"], forces["tears"]]
        least, next_least = np.sort(by_design, axis=0)[:2]
        plain = next_least > 1.08 * least
        # The list's load must not be mistaken for another force that somebody may plan with.
        for name in ("top_low", "top_high", "second_low", "second_high"):
            plain &= np.abs(forces["shear"] / forces[name] - 1) > 0.06
        for row in np.flatnonzero(plain):
            joint = {name: float(column[row]) for name, column in forces.items()}
            kept = found.setdefault(GIVES[str(weakest[row])], [])
            if joint not in kept:
                kept.append(joint)
    return found


def _draw_weakest(draw):
    found = joints()
    ways = [draw.pick("bearing", ("top", "second")), *draw.shuffle("ways", ("rivet", "tears"))]
    scenario = scene(draw) | {"rivets": draw.whole("rivets", 3, 9)}
    for row, way in zip(STACKS, [*ways, draw.pick("fourth", tuple(sorted(found)))], strict=True):
        scenario |= {f"{row}_{name}": value for name, value in draw.pick(f"joint {row}", found[way]).items()}
    return scenario


def _joint_words(scenario):
    """Return the forces of each joint in words."""
    return {"gamma": f"{GAMMA_M2:g}"} | {
        f"{row}_words": (
            "rivet {shear:.0f}; top plate {top_low:.0f} to {top_high:.0f}; "
            "second plate {second_low:.0f} to {second_high:.0f}; net section {tears:.0f}"
        ).format(**{name: scenario[f"{row}_{name}"] for name in FORCES})
        for row in STACKS
    }


def _gives(table, row):
    """Return what gives first in the joints of one row."""
    lows = [table[f"{row}_{name}"] for name in ("shear", "top_low", "second_low", "tears")]
    least = np.argmin([lows[0] / GAMMA_M2, *lows[1:]], axis=0)
    return [("rivet", "top", "second", "tears")[way] for way in least.tolist()]


def _solve_weakest(table):
    rivets, first = table["rivets"], {name: table[f"first_{name}"] for name in FORCES}
    top_first = first["top_low"] < first["second_low"]
    low = np.where(top_first, first["top_low"], first["second_low"])
    high = np.where(top_first, first["top_high"], first["second_high"])
    return {
        "gives": VerdictsKey(right={row: _gives(table, row) for row in STACKS}),
        "plan": NumberKey(
            value=rivets * low,
            slips={
                "catalogue": rivets * first["shear"],
                "high_end": rivets * high,
                "one": low,
            },
        ),
    }


WEAKEST = Exercise(
    id="second_plate.weakest",
    objective="fasten",
    title="What gives first?",
    prompt=(
        "For four joints of {vehicle}, each with blind rivets of 4.8 mm in one row, {shop} worked out forces "
        "in N for one rivet. "
        "The rivet's is the shear of the list, still without the partial factor {gamma}. "
        "Bearing of both plates is by design, from the lowest code to the highest; the net section is the "
        "weaker plate's, by design. "
        "The first joint gets {rivets} rivets. Each joint is planned with its least force by any code."
    ),
    shown=_joint_words,
    parts=(
        Verdicts(
            id="gives",
            ask="What gives first, as planned? All forces are in N.",
            points=2.0,
            rows=tuple(option(row, "{" + row + "_words}") for row in STACKS),
            verdicts=(
                option("rivet", "the rivet shears"),
                option("top", "the hole in the top plate stretches"),
                option("second", "the hole in the second plate stretches"),
                option("tears", "a plate tears through the hole"),
            ),
        ),
        Number(
            id="plan",
            ask="What may the whole first joint be planned with?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("catalogue", "That is the list's load of the rivets. The joint gives before them."),
                slip("high_end", "That is the code that promises most. A plan takes the least."),
                slip("one", "That is one rivet. The whole joint was asked for."),
            ),
        ),
    ),
    draw=_draw_weakest,
    solve=_solve_weakest,
    reasons=(
        "Take the partial factor off the list's load, then the low end of each band, and look for the least. "
        "A strong rivet in a thin plate is no stronger than the plate. "
        "A hole that stretches is seen in time; a rivet that shears or a strip that tears comes at once. "
        "So a plan that lets the plate bear first is the kinder one."
    ),
    read_again=HEADING,
)

EXERCISES = (GRIP, HOLE, BLIND_OR_BOLT, WEAKEST)
