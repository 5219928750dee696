"""Exercises on choosing a fastener: from which side it is set, and what gives first in its joint."""

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import (
    Choice,
    ChoiceKey,
    Choices,
    ChoicesKey,
    Exercise,
    Number,
    NumberKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, option, same, slip, wrong
from grading.exercises.scenes import scene
from grading.exercises.second_plate.bearing import strength_mpa
from grading.exercises.second_plate.grip import HEADING
from secondplate.eurocode9 import GAMMA_M2
from secondplate.fasteners import (
    BLIND_RIVET,
    SECOND_BEARS,
    SECOND_TEARS,
    SHEARED,
    TOP_BEARS,
    TOP_TEARS,
    blind_rivet,
    bolt,
    fastener_joint,
    lock_bolt,
)
from secondplate.rivet import Sheet

JOINTS = ("first", "second", "third", "fourth")

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
                    "Its collar goes on from the back, and its load has to lose the partial factor.",
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


@worked_out
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
    for row, way in zip(JOINTS, [*ways, draw.pick("fourth", tuple(sorted(found)))], strict=True):
        scenario |= {f"{row}_{name}": value for name, value in draw.pick(f"joint {row}", found[way]).items()}
    return scenario


def _joint_words(scenario):
    """Return the forces of each joint in words."""
    return {"gamma": f"{GAMMA_M2:g}"} | {
        f"{row}_words": (
            "rivet {shear:.0f}; top plate {top_low:.0f} to {top_high:.0f}; "
            "second plate {second_low:.0f} to {second_high:.0f}; net section {tears:.0f}"
        ).format(**{name: scenario[f"{row}_{name}"] for name in FORCES})
        for row in JOINTS
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
        "gives": VerdictsKey(right={row: _gives(table, row) for row in JOINTS}),
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
            rows=tuple(option(row, "{" + row + "_words}") for row in JOINTS),
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

EXERCISES = (BLIND_OR_BOLT, WEAKEST)
