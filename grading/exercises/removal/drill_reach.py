"""Exercises on how deep a drill reaches: its point leads the full width, and what it leaves behind."""

from functools import cache

import numpy as np

from grading.exercise import Choice, ChoiceKey, Exercise, Number, NumberKey
from grading.exercises.building_blocks import THREE_FIGURES, chosen, option, slip, wrong
from grading.exercises.removal.ways import rows_of
from grading.exercises.scenes import scene
from secondplate.drilling import point_length_mm
from secondplate.plate import after_drilling

HEADING = "What does a drill do to the second plate?"
USUAL_DEG, FLATTER_DEG = 118, 135
DRILLS_MM = (5.0, 5.2, 5.5, 6.0, 6.5, 7.0, 7.5, 8.0)
CLEAR_MM = 0.1  # a tip that is nearer than this to the far face is given to nobody


def _points_mm(drill_mm):
    """Return the length of the usual and of the flatter point of a drill."""
    return tuple(
        point_length_mm(drill_diameter_mm=drill_mm, point_angle_deg=angle)
        for angle in (USUAL_DEG, FLATTER_DEG)
    )


def _through(metal_mm, tip_mm, drill_mm, angle_deg):
    """Tell where the tip of a drill came through the metal under it."""
    return ~np.asarray(
        after_drilling(
            metal_mm=metal_mm, tip_depth_mm=tip_mm, drill_diameter_mm=drill_mm, point_angle_deg=angle_deg
        ).tight
    )


def _predicted(table):
    """Tell where the tip stands when the full width has just left the top plate."""
    deep = np.asarray(_points_mm(table["drill_mm"])[0])
    return chosen([deep > 0], ["inside"], otherwise="at_the_face")


PREDICT_POINT = Exercise(
    id="removal.predict_point",
    objective="drill",
    title="Predict: where is the tip?",
    prompt=(
        "At {shop} somebody drills a hole of {drill_mm} mm through the top plate of {vehicle}, "
        "with an ordinary twist drill. "
        "The hole in the top plate has just got its full width down to the lower face. "
        "Decide before you read on."
    ),
    parts=(
        Choice(
            id="tip",
            ask="Where is the tip of the drill now?",
            options=(
                wrong(
                    "at_the_face",
                    "At the lower face of the top plate.",
                    "Look at a drill from the side, and at what comes first.",
                ),
                option("inside", "Inside the second plate."),
                wrong(
                    "above",
                    "Still inside the top plate.",
                    "The tip goes ahead of the full width. It cannot be behind it.",
                ),
            ),
        ),
    ),
    draw=lambda draw: scene(draw) | {"drill_mm": draw.pick("drill_mm", DRILLS_MM)},
    solve=lambda table: {"tip": ChoiceKey(right=_predicted(table))},
    reasons=(
        "The end of a drill is a cone, and the tip leads by the length of that cone. "
        "So the full width in the top plate is always paid for in the second plate."
    ),
    read_again=HEADING,
    counts=False,
)


def _who_stays_in(second_mm, drill_mm):
    """Return which of the two points has not come through the second plate, as an id."""
    usual, flatter = _points_mm(drill_mm)
    usual_through = _through(second_mm, usual, drill_mm, USUAL_DEG)
    flatter_through = _through(second_mm, flatter, drill_mm, FLATTER_DEG)
    return chosen([flatter_through, usual_through], ["neither", "flatter"], otherwise="both")


@cache
def _plates():
    """Return drills and plates by which point stays in; tips close to the far face are left out."""
    drill_mm, second_mm = (
        grid.ravel() for grid in np.meshgrid(DRILLS_MM, np.arange(8, 31) / 10, indexing="ij")
    )
    clear = np.min([np.abs(length - second_mm) for length in _points_mm(drill_mm)], axis=0) > CLEAR_MM
    found = {}
    for name, drill, second, plain in zip(
        _who_stays_in(second_mm, drill_mm), drill_mm, second_mm, clear, strict=True
    ):
        if plain:
            found.setdefault(name, []).append({"drill_mm": float(drill), "second_mm": float(second)})
    return found


def _draw_point(draw):
    plates = _plates()
    return scene(draw) | draw.pick("plate", plates[draw.pick("stays", sorted(plates))])


def _point_key(length_mm, drill_mm, angle_deg):
    """Return the key of one point's length, with the ways in which the cone is drawn wrongly."""
    half = np.tan(np.radians(angle_deg / 2))
    return NumberKey(
        value=length_mm,
        slips={
            "diameter": 2 * length_mm,
            "whole_angle": drill_mm / 2 / abs(np.tan(np.radians(angle_deg))),
            "multiplied": drill_mm / 2 * half,
        },
    )


def _solve_point(table):
    drill_mm = table["drill_mm"]
    usual, flatter = _points_mm(drill_mm)
    return {
        "usual": _point_key(usual, drill_mm, USUAL_DEG),
        "flatter": _point_key(flatter, drill_mm, FLATTER_DEG),
        "stays_in": ChoiceKey(right=_who_stays_in(table["second_mm"], drill_mm)),
    }


CONE_SLIPS = (
    slip("diameter", "The diameter was used. The cone's slope starts from the axis: take the radius."),
    slip("whole_angle", "The whole point angle was used. The axis cuts it in half."),
    slip("multiplied", "Radius times tangent is too much: the flatter the point, the shorter it is."),
)

POINT_LENGTH = Exercise(
    id="removal.point_length",
    objective="drill",
    title="How long is the point?",
    prompt=(
        "{shop} has two drills of {drill_mm} mm for {vehicle}: one with a point of {usual}°, "
        "one with a point of {flatter}°. "
        "The point is a cone: its length is the radius of the drill ÷ tan(half the point angle). "
        "Each drills until the top plate is cut at full width and not a hair deeper. "
        "Below lies a second plate of {second_mm} mm; take it as flat and in contact."
    ),
    shown=lambda scenario: {"usual": f"{USUAL_DEG}", "flatter": f"{FLATTER_DEG}"},
    parts=(
        Number(
            id="usual",
            ask="How long is the point of the first drill?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=CONE_SLIPS,
        ),
        Number(
            id="flatter",
            ask="How long is the point of the second drill?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=CONE_SLIPS,
        ),
        Choice(
            id="stays_in",
            ask="Which drill has not come through the second plate?",
            options=(
                option("neither", "Neither: both points are longer than the plate is thick."),
                option("flatter", "Only the one with the flatter point."),
                option("both", "Both are still inside it."),
            ),
        ),
    ),
    draw=_draw_point,
    solve=_solve_point,
    reasons=(
        "Halve the diameter and divide by the tangent of half the point angle. "
        "That length stands in the second plate, whoever drills and however carefully. "
        "A flatter point is shorter, but only a flat-bottomed cutter has none. "
        "A plate that is not pierced is still notched: what is left there is thinner."
    ),
    read_again=HEADING,
)

LUNGES_MM = tuple(step / 10 for step in range(3, 36, 2))


def _tip_mm(drill_mm, angle_deg, short_mm):
    """Return how far the tip stands in the second plate when the full width is short of it."""
    return point_length_mm(drill_diameter_mm=drill_mm, point_angle_deg=angle_deg) - short_mm


def _left(table, further_mm=0.0):
    """Return what the drill leaves, with the tip so much further than planned."""
    sizes = {name: table[name] for name in ("drill_mm", "angle_deg", "short_mm")}
    return after_drilling(
        metal_mm=table["metal_mm"],
        tip_depth_mm=_tip_mm(**sizes) + further_mm,
        drill_diameter_mm=table["drill_mm"],
        point_angle_deg=table["angle_deg"],
    )


def _what_is_seen(table):
    """Return what the deeper of the two sites looks like, as an id."""
    deeper = _left(table, table["further_mm"])
    width = np.asarray(deeper.hole_diameter_mm)
    return chosen(
        [np.asarray(deeper.tight), width >= table["drill_mm"]],
        ["dimple", "full_hole"],
        otherwise="small_hole",
    )


@cache
def _sites():
    """Return sites by what the deeper one looks like; those where looks run together are left out."""
    sizes = {
        "drill_mm": DRILLS_MM,
        "angle_deg": (118, 130, 135, 140),
        "short_mm": (0.2, 0.3, 0.4, 0.5, 0.6),
        "metal_mm": (1.4, 1.8, 2.2, 2.6, 3.0),
        "further_mm": LUNGES_MM,
    }
    grid = np.meshgrid(*(np.array(values) for values in sizes.values()), indexing="ij")
    table = dict(zip(sizes, (column.ravel() for column in grid), strict=True))
    tip = _tip_mm(table["drill_mm"], table["angle_deg"], table["short_mm"])
    point = tip + table["short_mm"]
    kept = (tip > 0.4) & (table["metal_mm"] - point > 0.2)
    deepest = tip + table["further_mm"]
    for limit in (table["metal_mm"], table["metal_mm"] + point):
        kept &= np.abs(deepest - limit) > CLEAR_MM
    table = {name: column[kept] for name, column in table.items()}
    found = {}
    for site, seen in zip(rows_of(table), _what_is_seen(table), strict=True):
        found.setdefault(seen, []).append(site)
    return found


def _draw_overrun(draw):
    sites = _sites()
    return scene(draw) | draw.pick("site", sites[draw.pick("seen", sorted(sites))])


def _solve_overrun(table):
    planned = _left(table)
    width, depth = planned.mark_diameter_mm, planned.mark_depth_mm
    return {
        "dimple": NumberKey(
            value=width,
            slips={
                "radius": width / 2,
                "drill": table["drill_mm"],
                "divided": 2 * depth / np.tan(np.radians(table["angle_deg"] / 2)),
            },
        ),
        "left": NumberKey(
            value=planned.least_thickness_mm,
            slips={
                "whole_point": planned.least_thickness_mm - table["short_mm"],
                "no_point": table["metal_mm"],
            },
        ),
        "deeper": ChoiceKey(right=_what_is_seen(table)),
    }


OVERRUN = Exercise(
    id="removal.overrun",
    objective="drill",
    title="A little too deep",
    prompt=(
        "{shop} drills with a depth stop. "
        "The {drill_mm} mm drill has a point of {angle_deg}°. "
        "Its full width ends {short_mm} mm above the second plate. "
        "On the axis there are {metal_mm} mm of second plate under the tip. "
        "At one site of {vehicle} the stop held. "
        "At the next the plates gave way and the drill went {further_mm} mm further. "
        "How far the tip is in, and how wide a cone is at that depth, both follow from the point."
    ),
    parts=(
        Number(
            id="dimple",
            ask="Where the stop held: how wide is the dimple at the face of the second plate?",
            unit="mm",
            relative_tolerance=0.02,
            tolerance_reason=THREE_FIGURES,
            slips=(
                slip("radius", "That is from the axis to the rim. The width goes from rim to rim."),
                slip("drill", "The full width has not arrived there. Only a part of the cone has."),
                slip("divided", "A cone gets wider with depth times tangent, not divided by it."),
            ),
        ),
        Number(
            id="left",
            ask="Where the stop held: how much metal is left under the tip?",
            unit="mm",
            absolute_tolerance=0.03,
            tolerance_reason="Depths are given to a tenth of a millimetre: a third of that.",
            slips=(
                slip("whole_point", "The whole point was taken off. A part of it is still in the top plate."),
                slip("no_point", "The full width has not arrived, but the tip has. How long is the point?"),
            ),
        ),
        Choice(
            id="deeper",
            ask="What do you find at the site where the drill went further?",
            options=(
                option("full_hole", "A hole as wide as the drill."),
                option("dimple", "A deeper dimple with metal under it."),
                option("small_hole", "A hole that is narrower than the drill."),
            ),
        ),
    ),
    draw=_draw_overrun,
    solve=_solve_overrun,
    reasons=(
        "The tip is in by the length of the point less what the full width is short. "
        "The dimple is twice that depth times the tangent of half the angle. "
        "Add the slip of the stop: once the tip is deeper than the metal, there is a hole, "
        "and it grows until the whole point has passed. "
        "A first small hole is a leak already."
    ),
    read_again=HEADING,
)

EXERCISES = (PREDICT_POINT, POINT_LENGTH, OVERRUN)
