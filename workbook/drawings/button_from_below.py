"""The button of a set rivet seen from below: what can be looked at without cutting."""

import numpy as np

from drawings.marks import area, bare_axes, line, oval
from drawings.picture import picture_of
from drawings.style import (
    GREY,
    LINE,
    MID_AMBER,
    PALE_AMBER,
    PALE_GREY,
    SLATE,
    THIN,
    sheet_of_paper,
)
from secondplate.section import measure
from secondplate.section_places import require_single

HALF_MM = 7.4
INCH_PER_MM = 0.3
_JAGS = np.array([0.0, 0.16, -0.1, 0.2, -0.14, 0.1, -0.05, 0.0])  # a crack is never straight
_SPREAD_DEG = 62  # how far a crack runs round the button; drawn, not measured


def button_from_below(section):
    """Draw the back of a joint: second plate, button, floor of the die, and a crack where there is one.

    Parameters
    ----------
    section : secondplate.section.Section
        One section, no column [-]

    Returns
    -------
    picture : Picture
        The button; no fault is named [-]

    Raises
    ------
    ValueError
        If the section is a column.

    Notes
    -----
    Diameters and cracks from ``secondplate.section``; how a crack runs round the button is drawn freely.

    Examples
    --------
    >>> from secondplate.section import build_section, usual_parameters
    >>> "without a break" in button_from_below(build_section(usual_parameters())).alt
    True
    """
    require_single(section)
    measured, columns = measure(section), section.parameters.columns()
    radius = measured.button_diameter_mm / 2
    floor = radius - float(columns["corner_mm"][0])
    tip = 0.45 * radius if section.parameters.die.die_tip_mm > 0 else 0.0
    cracks = [float(columns[f"crack_{side}_mm"][0]) for side in ("left", "right")]
    size = 2 * HALF_MM * INCH_PER_MM
    with sheet_of_paper(width_in=size, height_in=size) as figure:
        axes = bare_axes(figure, width=(-HALF_MM, HALF_MM), height=(-HALF_MM, HALF_MM))
        edge = HALF_MM - 0.2
        corners = [(-edge, -edge), (edge, -edge), (edge, edge), (-edge, edge)]
        area(axes, corners, fill=PALE_GREY, edge=GREY, width=THIN, order=1)
        oval(axes, 0, 0, 2 * radius, 2 * radius, fill=MID_AMBER, edge=SLATE, edge_width=LINE, order=2)
        oval(axes, 0, 0, 2 * floor, 2 * floor, fill=PALE_AMBER, edge=GREY, edge_width=THIN, order=3)
        if tip:
            oval(axes, 0, 0, 2 * tip, 2 * tip, fill=MID_AMBER, edge=GREY, edge_width=THIN, order=4)
        for middle_deg, depth in zip((180, 0), cracks, strict=True):
            if depth > 0:
                _draw_crack(axes, middle_deg, radius - 0.35 * (radius - floor), depth)
        return picture_of(figure, _words(measured, cracks))


def _draw_crack(axes, middle_deg, radius, depth):
    """Draw a crack round a part of the button, wider where it is deeper."""
    angle = np.deg2rad(middle_deg + np.linspace(-_SPREAD_DEG / 2, _SPREAD_DEG / 2, len(_JAGS)))
    points = (radius + _JAGS)[:, None] * np.stack([np.cos(angle), np.sin(angle)], axis=-1)
    line(axes, points, colour=SLATE, width=2.0 + 2.0 * min(depth, 1.0), order=6)


def _words(measured, cracks):
    """Tell what is to be seen, without a verdict."""
    open_sides = [side for side, depth in zip(("left", "right"), cracks, strict=True) if depth > 0]
    seen = (
        f"a dark jagged line runs round its {' and '.join(open_sides)} side"
        if open_sides
        else "its rim runs round without a break"
    )
    return (
        f"The back of a riveted joint: a round button {measured.button_diameter_mm:.1f} mm across, raised "
        f"{measured.button_depth_mm:.1f} mm from the second plate; {seen}; "
        "the metal is of one colour throughout."
    )
