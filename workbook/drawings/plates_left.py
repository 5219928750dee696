"""What is left of a second plate after each way of removal, as cut plates side by side."""

import numpy as np

from drawings.marks import bare_axes, number, section, write
from drawings.picture import picture_of
from drawings.style import MID_SLATE, PALE_GREY, SECOND_HATCH, TEXT_GREY, sheet_of_paper
from secondplate.plate_states import (
    DRILLED_DIMPLE,
    DRILLED_HOLE,
    PLATE_STATES,
    PULLED_TORN,
    PULLED_WHOLE,
)

INCH_PER_MM = 0.125
HALF_MM, GAP_MM = 7.6, 1.6
OVER_IN, UNDER_IN = 0.4, 0.75


def plates_left(plates, *, second_plate_mm):
    """Draw second plates after removal in section, one beside the other, each with its name below.

    Parameters
    ----------
    plates : sequence of secondplate.plate_states.PlateLeft
        One to five plates as they were left, no columns [-]
    second_plate_mm : float
        Thickness of the plate beside the site [mm]

    Returns
    -------
    picture : Picture
        Sections to one scale [-]

    Raises
    ------
    ValueError
        If there is no plate or more than five.

    Notes
    -----
    Sizes from ``secondplate.plate_states``; how the metal bends between them is drawn, not measured.

    Examples
    --------
    >>> from secondplate.plate_states import after_punching
    >>> left = after_punching(second_plate_mm=1.8, button_diameter_mm=9)
    >>> "punched, button lost: open, 9 mm" in plates_left([left], second_plate_mm=1.8).alt
    True
    """
    plates = list(plates)
    if not 1 <= len(plates) <= len(PLATE_STATES):
        message = f"plates must be 1 to {len(PLATE_STATES)}, got {len(plates)}"
        raise ValueError(message)
    depth = second_plate_mm + max(each.button_depth_mm for each in plates)
    wide = len(plates) * 2 * HALF_MM + (len(plates) - 1) * GAP_MM
    height_in = depth * INCH_PER_MM + OVER_IN + UNDER_IN
    with sheet_of_paper(width_in=(wide + 1) * INCH_PER_MM, height_in=height_in) as figure:
        high = (-depth - UNDER_IN / INCH_PER_MM, OVER_IN / INCH_PER_MM)
        axes = bare_axes(figure, width=(-0.5, wide + 0.5), height=high)
        for count, each in enumerate(plates):
            middle = HALF_MM + count * (2 * HALF_MM + GAP_MM)
            for outline in _outlines(each, second_plate_mm):
                points = np.asarray(outline) + (middle, 0)
                section(axes, points, fill=PALE_GREY, hatch=SECOND_HATCH, hatch_colour=MID_SLATE)
            first, _, rest = each.plate_state.partition(", ")
            write(axes, middle, -depth - 1.9, first, weight="bold")
            write(axes, middle, -depth - 3.9, rest, colour=TEXT_GREY)
        return picture_of(figure, _words(plates, second_plate_mm))


def _outlines(plate, thickness):
    """Return the cut faces of one plate: one where it is whole, two where it is open."""
    button, deep = plate.button_diameter_mm / 2, plate.button_depth_mm
    below = [(HALF_MM, -thickness), (button, -thickness), (0.72 * button, -thickness - deep)]
    if button == 0:
        below = [(HALF_MM, -thickness)]
    hole = plate.hole_diameter_mm / 2
    mark = _mark(plate, thickness)
    if hole == 0:
        right = [(0, -thickness - deep), *below[::-1], (HALF_MM, 0), *mark]
        left = [(-x, y) for x, y in right[::-1]]
        return [[*left, *right]]
    floor = -thickness - (deep if plate.plate_state in (PULLED_TORN, DRILLED_HOLE) else 0)
    right = [(hole, floor), *[point for point in below[::-1] if point[0] > hole], (HALF_MM, 0)]
    right += mark if plate.plate_state == PULLED_TORN else [point for point in mark if point[0] >= hole]
    return [right, [(-x, y) for x, y in right]]


def _mark(plate, thickness):
    """Return the upper edge of the mark from its rim towards the axis."""
    rim, deep = plate.mark_diameter_mm / 2, plate.mark_depth_mm
    if plate.plate_state in (PULLED_WHOLE, PULLED_TORN):
        # The cup widens downwards, as the tail spread, and its floor keeps a hump where the bore was.
        floor = -thickness - plate.button_depth_mm + plate.least_thickness_mm
        rims = [(0.76 * rim, 0), (0.76 * rim, 0.55 * floor)]
        return rims if plate.hole_diameter_mm else [*rims, (rim, floor), (0.6 * rim, 0.8 * floor)]
    if plate.plate_state == DRILLED_DIMPLE:
        return [(rim, 0), (0, -deep)]
    if plate.plate_state == DRILLED_HOLE:
        return [(rim, 0), (plate.hole_diameter_mm / 2, -thickness - plate.button_depth_mm)]
    return [(rim, 0)]


def _words(plates, thickness):
    """Tell the plates in sentences."""
    told = "; ".join(
        f"{each.plate_state}: "
        + (
            f"open, {number(each.hole_diameter_mm)} mm"
            if each.hole_diameter_mm > 0
            else f"tight, {number(each.least_thickness_mm)} mm left at the thinnest"
        )
        for each in plates
    )
    return f"Second plates of {number(thickness)} mm cut through after the rivet is out. In order: {told}."
