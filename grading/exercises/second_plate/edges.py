"""Exercise on how near to an edge and to each other new fasteners may stand."""

from functools import cache

import numpy as np

from grading.exercise import (
    Choice,
    ChoiceKey,
    Exercise,
    Number,
    NumberKey,
)
from grading.exercises.building_blocks import clear_of, slip, wrong
from grading.exercises.scenes import scene
from secondplate.eurocode9 import (
    EUROCODE9,
    SPACING_LEVELS,
    least_distance_mm,
    spacing_verdict,
)
from secondplate.fasteners import blind_rivet, bolt, lock_bolt

HEADING = "Where may a new fastener go?"
TENTHS = "Distances are marked out to a tenth of a millimetre: half of that is right."

FASTENERS = {
    "blind rivets of 4 mm": blind_rivet("ISO 15977 H", 4.0),
    "blind rivets of 4.8 mm": blind_rivet("ISO 15977 H", 4.8),
    "blind rivets of 6.4 mm": blind_rivet("ISO 15977 H", 6.4),
    "lock bolts of 4.8 mm": lock_bolt("steel", 4.8),
    "lock bolts of 6.4 mm": lock_bolt("steel", 6.4),
    "M5 bolts": bolt("M5"),
    "M6 bolts": bolt("M6"),
}
# Which distance of the rule runs to the free edge and from fastener to fastener, by how the load runs.
TO_EDGE = {"across": "end distance", "along": "edge distance"}
ALONG_ROW = {"across": "row spacing", "along": "spacing"}
OTHER_WAY = {"across": "along", "along": "across"}


def _by_load(load, distances, hole_mm, *, level="minimum"):
    """Return for each scenario the least distance of the kind that its load asks for."""
    ways = [np.asarray(load) == way for way in distances]
    return np.select(
        ways, [least_distance_mm(kind, hole_mm, level=level) for kind in distances.values()], np.nan
    )


@cache
def marks(name, load):
    """Return distances to mark a centre at, by their verdict, for one fastener and one way of the load."""
    kind, hole_mm = TO_EDGE[load], FASTENERS[name].hole_most_mm
    limits = [least_distance_mm(kind, hole_mm, level=level) for level in SPACING_LEVELS]
    tried = clear_of([round(share * limits[0], 1) for share in np.linspace(0.7, 2.1, 29)], limits)
    found = {}
    for mark, verdict in zip(tried, spacing_verdict(kind, tried, hole_diameter_mm=hole_mm), strict=True):
        found.setdefault(str(verdict), []).append(mark)
    return found


def _draw_rules(draw):
    name, load = draw.pick("fastener", tuple(FASTENERS)), draw.pick("load", tuple(TO_EDGE))
    found = marks(name, load)
    return scene(draw) | {
        "fastener": name,
        "body_mm": FASTENERS[name].diameter_mm,
        "hole_mm": FASTENERS[name].hole_most_mm,
        "load": load,
        "marked_mm": draw.pick("marked", found[draw.pick("verdict", sorted(found))]),
    }


def _rule_words(scenario):
    """Return the factors of the rule in words."""
    return {
        f"{kind.replace(' ', '_')}_{level}": f"{EUROCODE9[f'{level} {kind}']:g}"
        for level in SPACING_LEVELS
        for kind in ("end distance", "edge distance", "spacing", "row spacing")
    }


def _solve_rules(table):
    load, hole_mm, body_mm = table["load"], table["hole_mm"], table["body_mm"]
    edge_mm, pitch_mm = _by_load(load, TO_EDGE, hole_mm), _by_load(load, ALONG_ROW, hole_mm)
    marked = zip(load, table["marked_mm"].tolist(), hole_mm.tolist(), strict=True)
    verdicts = [spacing_verdict(TO_EDGE[way], mark, hole_diameter_mm=hole) for way, mark, hole in marked]
    turned = [OTHER_WAY[way] for way in load]
    return {
        "edge": NumberKey(
            value=edge_mm,
            slips={
                "body": edge_mm * body_mm / hole_mm,
                "rim": edge_mm - hole_mm / 2,
                "regular": _by_load(load, TO_EDGE, hole_mm, level="regular"),
            },
        ),
        "pitch": NumberKey(
            value=pitch_mm,
            slips={
                "turned": _by_load(turned, ALONG_ROW, hole_mm),
                "metal_between": pitch_mm - hole_mm,
                "regular": _by_load(load, ALONG_ROW, hole_mm, level="regular"),
            },
        ),
        "marked": ChoiceKey(right=[str(verdict).replace(" ", "_") for verdict in verdicts]),
    }


EDGE_RULES = Exercise(
    id="second_plate.edge_rules",
    objective="fasten",
    title="How near to the edge, how near to each other",
    prompt=(
        "{shop} sets one row of {fastener} along the flange of {vehicle}, in holes of {hole_mm} mm. "
        "The load runs {load} the flange. "
        "EN 1999-1-1, from memory, counts from hole centres in hole diameters. "
        "Along the load, minimum and regular: {end_distance_minimum} and {end_distance_regular} to the end, "
        "{spacing_minimum} and {spacing_regular} from centre to centre. "
        "Across the load: {edge_distance_minimum} and {edge_distance_regular} to the edge, "
        "{row_spacing_minimum} and {row_spacing_regular} from centre to centre. "
        "One centre is marked {marked_mm} mm from the free edge already."
    ),
    shown=_rule_words,
    parts=(
        Number(
            id="edge",
            ask="How far from the free edge must a centre be at the least?",
            unit="mm",
            absolute_tolerance=0.05,
            tolerance_reason=TENTHS,
            slips=(
                slip("body", "The body of the fastener was counted. The rule counts in holes."),
                slip("rim", "That runs from the rim of the hole. The rule counts from its centre."),
                slip("regular", "That is the regular distance. The least that is allowed was asked for."),
            ),
        ),
        Number(
            id="pitch",
            ask="How far from centre to centre must two of the row be at the least?",
            unit="mm",
            absolute_tolerance=0.05,
            tolerance_reason=TENTHS,
            slips=(
                slip("turned", "Look which way the load runs, and which way the row. The rule differs."),
                slip("metal_between", "That is the metal between two holes. The rule counts from centres."),
                slip("regular", "That is the regular distance. The least that is allowed was asked for."),
            ),
        ),
        Choice(
            id="marked",
            ask="What do you say of the centre that is marked?",
            options=(
                wrong("too_short", "Too near: not allowed.", "Hold it against the minimum, in millimetres."),
                wrong(
                    "regular",
                    "Regular: the full rule is kept.",
                    "Hold it against both distances, minimum and regular.",
                ),
                wrong(
                    "minimum",
                    "Allowed, but the plate bears less there.",
                    "Hold it against both distances, minimum and regular.",
                ),
            ),
        ),
    ),
    draw=_draw_rules,
    solve=_solve_rules,
    reasons=(
        "First ask which way the load runs: that tells which distance is an end and which an edge. "
        "Then multiply by the hole, not by the body. "
        "Between minimum and regular a centre may stand, and bearing is worked out with that distance. "
        "A table from memory is for learning: at work the standard itself and the vehicle maker come first."
    ),
    read_again=HEADING,
)

EXERCISES = (EDGE_RULES,)
