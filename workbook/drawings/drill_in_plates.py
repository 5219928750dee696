"""A drill in the two plates, cut through: how far point and full diameter have come, and what is left."""

from drawings.marks import area, bare_axes, box, dimension, leader, line, number, section, write
from drawings.picture import picture_of
from drawings.style import (
    AMBER,
    CENTRE_LINE,
    GREY,
    MID_SLATE,
    PALE_AMBER,
    PALE_GREY,
    PALE_SLATE,
    PAPER,
    SECOND_HATCH,
    SLATE,
    TEXT_AMBER,
    THIN,
    TOP_HATCH,
    sheet_of_paper,
)
from secondplate.checks import require_above, require_at_least
from secondplate.drilling_depth import point_length_mm
from secondplate.plate_states import after_drilling

WIDTH_IN = 8.4
# Millimetres to the left and right of the axis, above and below the plates.
SIDE_MM, OVER_MM, UNDER_MM = 9.0, 3.6, 1.3


def drill_in_plates(
    *, top_plate_mm, second_plate_mm, drilled_depth_mm, drill_diameter_mm, point_angle_deg=118.0
):
    """Draw two plates and the drill at a depth: what the point has done to the second plate.

    Parameters
    ----------
    top_plate_mm : float
        Thickness of the top plate, above 0 [mm]
    second_plate_mm : float
        Thickness of the second plate, above 0 [mm]
    drilled_depth_mm : float
        How far the tip of the drill is below the upper face, at least 0 [mm]
    drill_diameter_mm : float
        Diameter of the drill, above 0 [mm]
    point_angle_deg : float
        Angle of the point, 60 to 170 [deg]

    Returns
    -------
    picture : Picture
        Section on the axis of the drill [-]

    Raises
    ------
    ValueError
        If a size lies outside its range.

    Notes
    -----
    Sizes from ``secondplate.drilling_depth`` and ``secondplate.plate_states``; plates lie flat, the rivet is
    left out.

    Examples
    --------
    >>> plates = {"top_plate_mm": 1.2, "second_plate_mm": 2}
    >>> shown = drill_in_plates(**plates, drilled_depth_mm=2.7, drill_diameter_mm=5)
    >>> "dimple" in shown.alt, "0.5 mm is left" in shown.alt
    (True, True)
    """
    top = require_above("thickness of the top plate", top_plate_mm, 0, unit="mm")
    second = require_above("thickness of the second plate", second_plate_mm, 0, unit="mm")
    depth = require_at_least("depth of the tip", drilled_depth_mm, 0, unit="mm")
    point = point_length_mm(drill_diameter_mm=drill_diameter_mm, point_angle_deg=point_angle_deg)
    left = after_drilling(
        metal_mm=second,
        tip_depth_mm=max(0.0, depth - top),
        drill_diameter_mm=drill_diameter_mm,
        point_angle_deg=point_angle_deg,
    )
    wide = (-SIDE_MM, SIDE_MM)
    high = (-max(top + second, depth) - UNDER_MM, OVER_MM)
    shape = _drill(depth, point, drill_diameter_mm / 2, OVER_MM)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=WIDTH_IN / 18 * (high[1] - high[0])) as figure:
        axes = bare_axes(figure, width=wide, height=high)
        _draw_plates(axes, top, second)
        area(axes, shape, fill=PAPER, order=6)
        section(axes, shape, fill=PALE_SLATE, outline=SLATE, order=7)
        line(
            axes,
            [(0, high[1]), (0, -max(depth, top + second) - 0.2)],
            colour=GREY,
            width=THIN,
            dashes=CENTRE_LINE,
            order=9,
        )
        _write_what_is_left(axes, left, top, second, below=max(0.0, depth - top - second))
        _name(axes, drill_diameter_mm, point, depth)
        words = _words(left, top, second, depth, drill_diameter_mm, point_angle_deg, point)
        return picture_of(figure, words)


def _drill(depth, point, radius, roof):
    """Return the outline of the drill, cut off at the top of the picture."""
    shoulder = min(roof - 0.3, point - depth)
    return [(0, -depth), (radius, shoulder), (radius, roof), (-radius, roof), (-radius, shoulder)]


def _draw_plates(axes, top, second):
    """Draw both plates, and name them at the left."""
    reach = SIDE_MM - 0.2
    section(axes, box(-reach, -top, 2 * reach, top), fill=PALE_AMBER, hatch=TOP_HATCH, hatch_colour=AMBER)
    second_box = box(-reach, -top - second, 2 * reach, second)
    section(axes, second_box, fill=PALE_GREY, hatch=SECOND_HATCH, hatch_colour=MID_SLATE)
    ground = {"facecolor": PAPER, "edgecolor": "none", "pad": 1.5}
    for y, text in ((-top / 2, "top plate"), (-top - second / 2, "second plate")):
        write(axes, -reach + 0.3, y, text, across="left", weight="bold", bbox=ground)


def _write_what_is_left(axes, left, top, second, *, below):
    """Write under the plates what is left, in one of three ways."""
    floor = -top - second
    if left.hole_diameter_mm > 0 or not left.tight:
        text = f"through: a hole of {number(left.hole_diameter_mm)} mm at the back"
    elif left.mark_depth_mm > 0:
        text = f"a dimple: {number(left.least_thickness_mm)} mm is left"
        if left.least_thickness_mm > 0.35:
            x = 0.75 * SIDE_MM
            dimension(axes, (x, floor), (x, floor + left.least_thickness_mm), "", text_at=(x, floor))
            tip = floor + left.least_thickness_mm
            line(axes, [(0, tip), (x + 0.3, tip)], colour=AMBER, width=THIN, dashes=(4, 3), order=10)
    else:
        text = "second plate not touched"
    write(axes, 0, floor - below - 0.45, text, colour=TEXT_AMBER, weight="bold", up="top")


def _name(axes, diameter, point, depth):
    """Name diameter and point of the drill."""
    right = min(diameter / 2 + 1.4, SIDE_MM - 3.6)
    write(axes, right, OVER_MM - 0.55, f"drill {number(diameter)} mm", across="left")
    leader(
        axes,
        f"point, {number(point)} mm long",
        at=(right, OVER_MM - 1.5),
        to=(diameter / 8, min(point * 0.6 - depth, OVER_MM - 1.9)),
    )


def _words(left, top, second, depth, diameter, angle, point):
    """Tell the section in sentences."""
    start = (
        f"Section through a top plate of {number(top)} mm and a second plate of {number(second)} mm with a "
        f"drill of {number(diameter)} mm, point {number(angle)} degrees and {number(point)} mm long. Its "
        f"tip is {number(depth)} mm below the upper face. "
    )
    full = "The full diameter has " + ("" if depth - point >= top else "not ") + "passed the top plate. "
    if not left.tight:
        end = f"The second plate has a hole of {number(left.hole_diameter_mm)} mm at its back."
    elif left.mark_depth_mm > 0:
        end = (
            f"The second plate has a dimple of {number(left.mark_diameter_mm)} mm across; "
            f"{number(left.least_thickness_mm)} mm is left under it."
        )
    else:
        end = "The second plate is not touched."
    return start + full + end
