"""Exercises on the length of a blind rivet and on its hole."""

from functools import cache
from itertools import product

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
    Range,
    RangeKey,
    Verdicts,
    VerdictsKey,
)
from grading.exercises.building_blocks import option, slip, wrong
from grading.exercises.scenes import scene
from secondplate.fasteners import (
    blind_rivet,
    blind_rivet_length_mm,
    blind_rivet_sizes,
    grip_mm,
    grip_range_mm,
    hole_verdict,
)

HEADING = "Which fastener fits and holds?"
STACKS = ("first", "second", "third", "fourth")

GRIP_DIAMETERS = (4.0, 4.8)
LENGTHS = (8.0, 10.0, 12.0)


@cache
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

EXERCISES = (GRIP, HOLE)
