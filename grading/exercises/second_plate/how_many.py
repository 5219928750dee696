"""Exercises on numbers: how many new fasteners bear what the old ones did, and how unlike ones share."""

from functools import cache
from itertools import product

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
)
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, same, slip, wrong
from grading.exercises.scenes import scene
from secondplate.fasteners import (
    blind_rivet,
    bolt,
    equal_strength_count,
    fastener_loads_n,
    flexibility_mm_n,
)

HEADING = "How many are needed?"
STANDARDS = {"aluminium": "ISO 15977 H", "steel": "ISO 15979", "stainless steel": "ISO 15983"}
# Share of the list's load that a joint of thin aluminium bore in the invented shops' own tests.
JOINT_SHARES = (0.55, 0.6, 0.65, 0.7, 0.75, 0.8)


def _counts(old_n, new_n, listed_n, old, margin):
    """Return the count and what each slip leads to; rounding down is one less wherever it is not exact."""
    loads = {"old_strength_n": old_n, "old_fasteners": old, "required_margin": margin}
    right = equal_strength_count(new_strength_n=new_n, **loads)
    return {
        "right": right,
        "listed": equal_strength_count(new_strength_n=listed_n, **loads),
        "no_margin": equal_strength_count(new_strength_n=new_n, **(loads | {"required_margin": 1.0})),
        "rounded_down": right - 1,
        "one_for_one": old,
    }


@cache
def changes():
    """Return changes of fasteners in which every slip leads to a number of its own."""
    names = ("metal", "share", "old_n", "old", "margin")
    rows = list(
        product(STANDARDS, JOINT_SHARES, range(3400, 6001, 200), (3, 4, 5, 6, 7), (1.15, 1.2, 1.25, 1.3))
    )
    column = dict(zip(names, map(np.array, zip(*rows, strict=True)), strict=True))
    listed = {metal: blind_rivet(name, 4.8).fastener_shear_n for metal, name in STANDARDS.items()}
    listed_n = np.array([listed[metal] for metal in column["metal"].tolist()])
    new_n = np.round(column["share"] * listed_n, -1)
    counts = _counts(column["old_n"], new_n, listed_n, column["old"], column["margin"])
    ordered = np.sort(np.array([np.broadcast_to(count, new_n.shape) for count in counts.values()]), axis=0)
    exact = column["margin"] * column["old_n"] * column["old"] / new_n
    # Where the count is nearly a whole number, rounding on the way could lead to another.
    plain = (np.diff(ordered, axis=0) > 0).all(axis=0) & (np.abs(exact - np.round(exact)) > 0.03)
    plain &= counts["right"] <= 30
    return [
        {"metal": rows[row][0], "new_n": float(new_n[row])} | dict(zip(names[2:], rows[row][2:], strict=True))
        for row in np.flatnonzero(plain)
    ]


def _listed_n(metals):
    """Return the shear of the list for each metal of a column."""
    return np.array([blind_rivet(STANDARDS[str(metal)], 4.8).fastener_shear_n for metal in metals])


def _solve_count(table):
    loads = [table[name] for name in ("old_n", "new_n")]
    counts = _counts(*loads, _listed_n(table["metal"]), table["old"], table["margin"])
    right = counts.pop("right")
    return {
        "count": NumberKey(value=right, slips=counts),
        "again": ChoiceKey(right=same(table, "all")),
    }


EQUAL_STRENGTH = Exercise(
    id="second_plate.equal_strength",
    objective="fasten",
    title="As strong as before",
    prompt=(
        "On {vehicle} {old} old self-piercing rivets were drawn out. "
        "In tests by {shop} one such joint bore {old_n} N in shear. "
        "A joint with a blind rivet of 4.8 mm of {metal}, in the same plates, bore {new_n:.0f} N. "
        "The rivet's list says {listed} N. "
        "The new row has to bear {margin} times what the old one did."
    ),
    shown=lambda scenario: {"listed": f"{_listed_n([scenario['metal']])[0]:.0f}"},
    parts=(
        Number(
            id="count",
            ask="How many blind rivets does it take?",
            unit="rivets",
            absolute_tolerance=0.01,
            tolerance_reason="It is counted: only the whole number is right.",
            slips=(
                slip("listed", "The list's load was used. In these plates the joint gives before the rivet."),
                slip("no_margin", "The margin that is asked for is missing."),
                slip("rounded_down", "It was rounded down. The last part of a rivet needs a whole one."),
                slip("one_for_one", "One for one was planned. The new joint bears less than the old."),
            ),
        ),
        Choice(
            id="again",
            ask="The new row has more fasteners than the old one. What is checked again?",
            options=(
                wrong(
                    "nothing",
                    "Nothing: with this count the strength is proved.",
                    "The count takes every joint as undisturbed. Nearer together each bears less.",
                ),
                wrong(
                    "shear",
                    "The shear of the rivets once more.",
                    "That is in the count already. What has changed is the plate between them.",
                ),
                option("all", "Pitch, edges, old sites, and what the net section bears with all the holes."),
            ),
        ),
    ),
    draw=lambda draw: scene(draw) | draw.pick("change", changes()),
    solve=_solve_count,
    reasons=(
        "Take what the old row bore, times the margin, over what one new joint bears; then round up. "
        "Use the strength of the joint, never that of the list. "
        "Then see whether so many fit: pitch, edges, old sites, net section. "
        "On a car the vehicle maker's procedure names fastener and number, and it comes first."
    ),
    read_again=HEADING,
)

# Round values of the trade, in MPa.
MODULI_MPA = {"aluminium": 70_000, "steel": 210_000}
RIVETS = {"aluminium": "ISO 15977 H", "steel": "ISO 15979"}


def _stiffness_kn_mm(top_mm, second_mm, diameter_mm, metal, fastened):
    """Return the stiffness of one fastener between aluminium plates, to a tenth."""
    flexibility = flexibility_mm_n(
        (top_mm, second_mm),
        diameter_mm=diameter_mm,
        plate_moduli_mpa=(MODULI_MPA["aluminium"],) * 2,
        fastener_modulus_mpa=MODULI_MPA[metal],
        fastened=fastened,
    )
    return round(1 / flexibility / 1000, 1)


@cache
def mixed_joints():
    """Return joints of a blind rivet and a bolt, by whether the rivet lasts until the bolt bears."""
    found = {"lost": [], "helps": []}
    for metal, top_mm, second_mm in product(RIVETS, (1.0, 1.2, 1.5, 2.0), (1.5, 2.0, 2.5)):
        rivet, screw = blind_rivet(RIVETS[metal], 4.8), bolt("M6")
        rivet_kn_mm = _stiffness_kn_mm(top_mm, second_mm, rivet.diameter_mm, metal, "riveted metal")
        bolt_kn_mm = _stiffness_kn_mm(top_mm, second_mm, screw.diameter_mm, "steel", "bolted metal")
        if bolt_kn_mm < 1.1 * rivet_kn_mm:
            continue
        for play_mm in (0.03, 0.04, 0.05, 0.06, 0.15, 0.2, 0.25, 0.3):
            by_then_n = 1000 * rivet_kn_mm * play_mm
            if abs(by_then_n / rivet.fastener_shear_n - 1) > 0.1:
                joint = {"metal": metal, "top_mm": top_mm, "second_mm": second_mm, "play_mm": play_mm}
                joint |= {"rivet_kn_mm": rivet_kn_mm, "bolt_kn_mm": bolt_kn_mm}
                found["lost" if by_then_n > rivet.fastener_shear_n else "helps"].append(joint)
    return found


def _draw_mixed(draw):
    joint = draw.pick("joint", mixed_joints()[draw.pick("way", ("lost", "helps"))])
    return scene(draw) | joint | {"load_n": draw.whole("load_n", 1000, 1600, 50)}


def _shear_n(metals):
    """Return the shear of the list of the rivet of each metal."""
    return np.array([blind_rivet(RIVETS[str(metal)], 4.8).fastener_shear_n for metal in metals])


def _solve_mixed(table):
    stiffness = 1000 * np.stack([table["rivet_kn_mm"], table["bolt_kn_mm"]], axis=1)
    loads = [
        fastener_loads_n(load, stiffnesses_n_mm=pair)
        for load, pair in zip(table["load_n"].tolist(), stiffness, strict=True)
    ]
    on_rivet, on_bolt = np.transpose(loads)
    by_then_n = stiffness[:, 0] * table["play_mm"]
    return {
        "bolt": NumberKey(value=on_bolt, slips={"half": table["load_n"] / 2, "rivet": on_rivet}),
        "play": NumberKey(
            value=by_then_n,
            slips={
                "bolt": stiffness[:, 1] * table["play_mm"],
                "both": stiffness.sum(axis=1) * table["play_mm"],
            },
        ),
        "then": ChoiceKey(right=chosen([by_then_n > _shear_n(table["metal"])], ["lost"], otherwise="helps")),
    }


MIXED_STIFFNESS = Exercise(
    id="second_plate.mixed_stiffness",
    objective="fasten",
    title="A bolt beside a blind rivet",
    prompt=(
        "On {vehicle} {shop} puts an M6 bolt beside a blind rivet of {metal} of 4.8 mm. "
        "For each millimetre of slip, by a formula from memory, the rivet takes {rivet_kn_mm} kN "
        "and the bolt {bolt_kn_mm} kN. "
        "Together they bear {load_n} N, and the plates slip as one. "
        "First take both holes as filled. "
        "Then let the bolt have {play_mm} mm of play in its hole before it bears. "
        "The rivet shears at {shear} N by its list."
    ),
    shown=lambda scenario: {"shear": f"{_shear_n([scenario['metal']])[0]:.0f}"},
    parts=(
        Number(
            id="bolt",
            ask="With both holes filled, what does the bolt carry?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("half", "The load was shared alike. The stiffer one takes more."),
                slip("rivet", "That is the rivet's part. The bolt's was asked for."),
            ),
        ),
        Number(
            id="play",
            ask="With the play, what does the rivet carry when the bolt begins to bear?",
            unit="N",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("bolt", "The bolt's stiffness was taken. Until its play is used up it carries nothing."),
                slip("both", "Both were counted. Until the play is used up the rivet is alone."),
            ),
        ),
        Choice(
            id="then",
            ask="Overloaded with that play, what happens?",
            options=(
                wrong(
                    "lost",
                    "The rivet shears before the bolt begins to help.",
                    "Hold the rivet's load at that moment against what it shears at.",
                ),
                wrong(
                    "helps",
                    "The bolt begins to help before the rivet shears.",
                    "Hold the rivet's load at that moment against what it shears at.",
                ),
                wrong(
                    "shared",
                    "They share from the start, as with filled holes.",
                    "A bolt with play touches nothing until the plates have slipped that far.",
                ),
            ),
        ),
    ),
    draw=_draw_mixed,
    solve=_solve_mixed,
    reasons=(
        "Fasteners side by side share by stiffness: each takes its own over the sum of both. "
        "With play the rivet is alone until the plates have slipped so far: its stiffness times the play. "
        "A strong bolt that comes too late adds nothing to a rivet that has gone. "
        "So kinds are not mixed in one row, unless the vehicle maker says so."
    ),
    read_again=HEADING,
)

EXERCISES = (EQUAL_STRENGTH, MIXED_STIFFNESS)
