"""Exercise on how many fasteners one row holds, on a bare flange and between old sites."""

import numpy as np

from grading.catalogues import worked_out
from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
)
from grading.exercises.building_blocks import chosen, slip, wrong
from grading.exercises.scenes import scene
from grading.exercises.second_plate.edges import FASTENERS, HEADING
from secondplate.fastener_layout import Flange, OldSite, hole_rules, most_fasteners

RIVETS = ("blind rivets of 4 mm", "blind rivets of 4.8 mm", "blind rivets of 6.4 mm")
LEVELS = ("regular", "minimum")


def _held(rules, length_mm, affected_mm=None):
    """Return how many fasteners the middle line of a flange holds, from end to end or between old sites."""
    flange = Flange(flange_length_mm=length_mm, flange_width_mm=2 * rules.to_edges_mm, thickness_mm=1.5)
    sites = [
        OldSite(x_mm=x, y_mm=rules.to_edges_mm, affected_diameter_mm=affected_mm)
        for x in (0.0, length_mm)
        if affected_mm is not None
    ]
    return most_fasteners(flange, sites=sites, rules=rules)


def _by_hand(length_mm, off_mm, pitch_mm):
    """Return how many whole pitches lie between two places to keep off, and one more."""
    return int(np.floor((length_mm - 2 * off_mm) / pitch_mm + 1e-9)) + 1


def _shown(name, count):
    """Tell whether a count is also one of the sizes that the prompt shows."""
    fastener = FASTENERS[name]
    rules = [hole_rules(fastener.hole_most_mm, level=level) for level in LEVELS]
    sizes = [mm for each in rules for mm in (each.to_ends_mm, each.pitch_mm)]
    return any(abs(mm - count) < 0.02 for mm in (fastener.diameter_mm, *sizes))


@worked_out
def bare_rows(name):
    """Return lengths of bare flanges, and how many they hold, where every slip leads to another number."""
    regular, minimum = (hole_rules(FASTENERS[name].hole_most_mm, level=level) for level in LEVELS)
    found = []
    for length_mm in np.arange(130.0, 245.0, 10.0).tolist():
        held = {
            level: _held(rules, length_mm) for level, rules in zip(LEVELS, (regular, minimum), strict=True)
        }
        by_hand = [_by_hand(length_mm, rules.to_ends_mm, rules.pitch_mm) for rules in (regular, minimum)]
        no_ends = _by_hand(length_mm, 0.0, regular.pitch_mm)
        # Where marks every half millimetre cost a fastener, or two ways of counting meet, nobody is asked.
        told_apart = len({*held.values(), held["regular"] - 1, no_ends}) == 4
        if told_apart and by_hand == list(held.values()) and not _shown(name, held["regular"]):
            found.append({"length_mm": length_mm, "no_ends": no_ends} | held)
    return found


@worked_out
def rows_between(name):
    """Return distances of two old sites, with how many stand between them, where every slip is apart."""
    rules = hole_rules(FASTENERS[name].hole_most_mm)
    found = []
    for apart_mm in np.arange(70.0, 132.0, 4.0).tolist():
        for affected_mm in (5.5, 6.5, 7.5):
            off_mm = rules.site_distance_mm(affected_mm)
            held = _held(rules, apart_mm, affected_mm)
            as_ends = _by_hand(apart_mm, rules.to_ends_mm, rules.pitch_mm)
            by_hand = _by_hand(apart_mm, off_mm, rules.pitch_mm)
            told_apart = held > 1 and len({held, held - 1, as_ends}) == 3
            if told_apart and by_hand == held and not _shown(name, held):
                sizes = {"apart_mm": apart_mm, "affected_mm": affected_mm}
                found.append(sizes | {"between": held, "as_ends": as_ends})
    return found


def _draw_layout(draw):
    name = draw.pick("rivets", RIVETS)
    bare, between = draw.pick("bare", bare_rows(name)), draw.pick("between", rows_between(name))
    kind = draw.pick("kind", (*LEVELS, "neither"))
    numbers = {
        "regular": (bare["regular"] - 1, bare["regular"] - 2),
        "minimum": range(bare["regular"] + 1, bare["minimum"] + 1),
        "neither": (bare["minimum"] + 1, bare["minimum"] + 2),
    }
    needed = [number for number in numbers[kind] if number != between["between"]]
    return scene(draw) | {
        "rivets": name,
        "length_mm": bare["length_mm"],
        "apart_mm": between["apart_mm"],
        "affected_mm": between["affected_mm"],
        "needed": draw.pick("needed", needed),
    }


def _layout_words(scenario):
    """Return the limits of both rules for the rivets of one scenario."""
    hole_mm = FASTENERS[scenario["rivets"]].hole_most_mm
    regular, minimum = (hole_rules(hole_mm, level=level) for level in LEVELS)
    return {
        "hole": f"{hole_mm:g}",
        "ends": f"{regular.to_ends_mm:.4g}",
        "pitch": f"{regular.pitch_mm:.4g}",
        "site": f"{regular.site_distance_mm(scenario['affected_mm']):.4g}",
        "least_ends": f"{minimum.to_ends_mm:.4g}",
        "least_pitch": f"{minimum.pitch_mm:.4g}",
        "length": f"{scenario['length_mm']:g}",
        "apart": f"{scenario['apart_mm']:g}",
        "affected": f"{scenario['affected_mm']:g}",
    }


def _solve_layout(table):
    names = table["rivets"].tolist()
    bare = [
        next(row for row in bare_rows(name) if row["length_mm"] == length_mm)
        for name, length_mm in zip(names, table["length_mm"].tolist(), strict=True)
    ]
    between = [
        next(row for row in rows_between(name) if [row["apart_mm"], row["affected_mm"]] == sizes)
        for name, *sizes in zip(names, table["apart_mm"].tolist(), table["affected_mm"].tolist(), strict=True)
    ]
    bare = {name: np.array([row[name] for row in bare]) for name in ("no_ends", *LEVELS)}
    between = {name: np.array([row[name] for row in between]) for name in ("between", "as_ends")}
    fits = [table["needed"] <= bare[level] for level in LEVELS]
    return {
        "bare": NumberKey(
            value=bare["regular"],
            slips={
                "no_plus_one": bare["regular"] - 1,
                "no_ends": bare["no_ends"],
                "minimum": bare["minimum"],
            },
        ),
        "between": NumberKey(
            value=between["between"],
            slips={"no_plus_one": between["between"] - 1, "as_ends": between["as_ends"]},
        ),
        "enough": ChoiceKey(right=chosen(fits, LEVELS, otherwise="neither")),
    }


NO_PLUS_ONE = "Those are the spaces. There is one fastener more than spaces between them."
COUNTED = "It is counted: only the whole number is right."

LAYOUT = Exercise(
    id="second_plate.layout",
    objective="fasten",
    title="How many fit in one row?",
    prompt=(
        "{shop} plans one straight row of {rivets}, in holes of {hole} mm, on a flange {length} mm long. "
        "The load runs across the flange. "
        "Regular distances from centres: {ends} mm to the ends, {pitch} mm from one to the next, "
        "{site} mm to an old site of {affected} mm. "
        "Minimum distances: {least_ends} mm to the ends, {least_pitch} mm from one to the next. "
        "At another place of the row two such old sites lie {apart} mm apart. "
        "The bare flange needs {needed} rivets."
    ),
    shown=_layout_words,
    parts=(
        Number(
            id="bare",
            ask="How many does the bare flange hold at regular distances?",
            unit="rivets",
            absolute_tolerance=0.01,
            tolerance_reason=COUNTED,
            slips=(
                slip("no_plus_one", NO_PLUS_ONE),
                slip("no_ends", "The row was run to the very ends. Both ends ask for their distance."),
                slip("minimum", "That is at minimum distances. The regular ones were asked for."),
            ),
        ),
        Number(
            id="between",
            ask="How many stand between the two old sites at regular distances?",
            unit="rivets",
            absolute_tolerance=0.01,
            tolerance_reason=COUNTED,
            slips=(
                slip("no_plus_one", NO_PLUS_ONE),
                slip("as_ends", "An old site was treated like an end. It asks for more room than that."),
            ),
        ),
        Choice(
            id="enough",
            ask="Does the bare flange hold what it needs?",
            options=(
                wrong(
                    "neither",
                    "No: another fastener, another place, or a question to the vehicle maker.",
                    "Count the row at minimum distances too, before you give it up.",
                ),
                wrong(
                    "regular",
                    "Yes, at regular distances.",
                    "Count the row at regular distances, and hold it against the number needed.",
                ),
                wrong(
                    "minimum",
                    "Yes, but only nearer together: work out again what each bears there.",
                    "Count the row at both distances, regular and minimum.",
                ),
            ),
        ),
    ),
    draw=_draw_layout,
    solve=_solve_layout,
    reasons=(
        "Take the distance to keep off both ends, divide the rest by the pitch, drop the fraction, add one. "
        "Between old sites the same is done with the distance that an old site asks for. "
        "Minimum distances are allowed, but the plate bears less at each fastener. "
        "Where even they do not fit, no rule may be bent: it needs another plan."
    ),
    read_again=HEADING,
)

EXERCISES = (LAYOUT,)
