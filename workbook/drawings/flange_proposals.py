"""A flange from above with lettered places where fasteners are proposed, and scales to read them off.

It judges nothing and draws no rule: that is left to whoever looks.
"""

from string import ascii_uppercase

import numpy as np

from drawings.flange_parts import (
    LEFT_IN,
    WIDTH_IN,
    counted,
    draw_fastener,
    draw_flange,
    draw_site,
    explain,
    on_flange,
    require_drawable,
)
from drawings.marks import bare_axes, line, number, write
from drawings.picture import picture_of
from drawings.style import GREY, PAPER, TEXT_GREY, THIN, sheet_of_paper

BOTTOM_IN, ABOVE_FLANGE_IN = 1.35, 0.85
# Where the scales begin below the root and beside the right end, and how long their marks are, in inches.
SCALE_IN, MARK_IN = 0.2, {10: 0.16, 5: 0.11, 1: 0.06}
# Numbers of a scale stand at least this far apart: along the flange, across it.
NUMBERS_IN = (0.45, 0.25)


def flange_proposals(flange, *, hole_diameter_mm, x_mm, y_mm, sites=()):
    """Draw a flange from above with its old sites and proposed fasteners, lettered from A in their order.

    Parameters
    ----------
    flange : secondplate.fastener_layout.Flange
        The flange, 20 mm to 400 mm long and 8 mm to 80 mm wide [-]
    hole_diameter_mm : float
        Hole of the new fasteners, 2 mm to 15 mm [mm]
    x_mm : sequence of float
        Proposed places along the flange, on it, 1 to 26 [mm]
    y_mm : sequence of float
        Places across it, from the root [mm]
    sites : sequence of secondplate.fastener_layout.OldSite
        Old sites, on the flange [-]

    Returns
    -------
    picture : Picture
        One view from above, to scale; its words tell every distance that can be read off [-]

    Raises
    ------
    ValueError
        If a value lies outside its range, a place lies off the flange, or there is no letter for one.

    Examples
    --------
    >>> from secondplate.fastener_layout import Flange
    >>> flange = Flange(flange_length_mm=100, flange_width_mm=24, thickness_mm=1.5)
    >>> "A is 40 mm from the left end" in flange_proposals(
    ...     flange, hole_diameter_mm=5, x_mm=[40], y_mm=[12]).alt
    True
    """
    scale = require_drawable(flange, hole_diameter_mm)
    places = on_flange("proposed fasteners", flange, x_mm, y_mm)
    if not 1 <= len(places) <= len(ascii_uppercase):
        message = f"proposed fasteners must be 1 to {len(ascii_uppercase)}, got {len(places)}"
        raise ValueError(message)
    on_flange("old sites", flange, [site.x_mm for site in sites], [site.y_mm for site in sites])
    height_in = BOTTOM_IN + scale * flange.flange_width_mm + ABOVE_FLANGE_IN
    with sheet_of_paper(width_in=WIDTH_IN, height_in=height_in) as figure:
        left, bottom = LEFT_IN / scale, BOTTOM_IN / scale
        wide, high = (-left, WIDTH_IN / scale - left), (-bottom, height_in / scale - bottom)
        axes = bare_axes(figure, width=wide, height=high)
        draw_flange(axes, flange, scale, heading_in=ABOVE_FLANGE_IN - 0.25)
        _draw_scales(axes, flange, scale)
        for site in sites:
            draw_site(axes, site, flange, None)
        for letter, (x, y) in zip(ascii_uppercase, places, strict=False):
            draw_fastener(axes, x, y, hole_diameter_mm)
            write(axes, x, y + 0.9 * hole_diameter_mm, letter, up="bottom", weight="bold")
        explain(axes, scale, below_in=BOTTOM_IN - 0.2, sites=sites, fastener="proposed")
        return picture_of(figure, _words(flange, hole_diameter_mm, sites, places))


def _draw_scales(axes, flange, scale):
    """Draw a scale along the root and one along the right end, with a grid every 10 mm."""
    length, width = flange.flange_length_mm, flange.flange_width_mm
    below, beside = -SCALE_IN / scale, length + SCALE_IN / scale
    along, across = np.arange(int(length) + 1), np.arange(int(width) + 1)
    _strokes(axes, [[(x, below), (x, below - _mark(x) / scale)] for x in along])
    _strokes(axes, [[(beside, y), (beside + _mark(y) / scale, y)] for y in across])
    upright = [[(x, 0), (x, width)] for x in np.arange(10, length, 10)]
    level = [[(0, y), (length, y)] for y in np.arange(10, width, 10)]
    _strokes(axes, upright + level, colour=PAPER, order=3)
    for x in np.arange(0, length + 0.1, _step(scale, NUMBERS_IN[0])):
        write(axes, x, below - 0.2 / scale, number(x), up="top")
    for y in np.arange(0, width + 0.1, _step(scale, NUMBERS_IN[1])):
        write(axes, beside + 0.2 / scale, y, number(y), across="left")
    write(axes, 0, below - 0.45 / scale, "mm from the left end", across="left", up="top", colour=TEXT_GREY)
    for words, drop in (("mm from", 0.2), ("the root", 0.4)):
        write(axes, beside, -drop / scale, words, across="left", up="top", colour=TEXT_GREY)


def _strokes(axes, ends, *, colour=GREY, order=5):
    """Draw many separate thin strokes as one line with gaps, which is far faster than one by one."""
    if ends:
        gapped = np.full((len(ends), 3, 2), np.nan)
        gapped[:, :2] = ends
        line(axes, gapped.reshape(-1, 2), colour=colour, width=THIN, order=order)


def _mark(place):
    """Return how long the mark of a whole millimetre is, in inches."""
    return next(length for step, length in MARK_IN.items() if place % step == 0)


def _step(scale, room_in):
    """Return the tens of millimetres after which the next number has room."""
    return 10 * int(np.ceil(room_in / (10 * scale)))


def _words(flange, hole, sites, places):
    """Tell the flange, its old sites and each proposed place, with its distances to all that is near."""
    told = [
        f"Flange from above, {number(flange.flange_length_mm)} mm long and "
        f"{number(flange.flange_width_mm)} mm wide, its root below and its free edge above.",
        "All distances run from centres.",
    ]
    if sites:
        listed = "; ".join(
            f"{number(site.affected_diameter_mm)} mm wide, {number(site.x_mm)} mm from the left end and "
            f"{number(site.y_mm)} mm from the root"
            for site in sites
        )
        told.append(f"{counted(len(sites), 'old site')}, crossed: {listed}.")
    told.append(f"{counted(len(places), 'proposed fastener')} in holes of {number(hole)} mm.")
    told += [_place_words(row, flange, sites, places) for row in range(len(places))]
    return " ".join(told)


def _place_words(row, flange, sites, places):
    """Tell where one proposed fastener is, and how far from edges, the nearest old site and the next."""
    x, y = places[row]
    told = (
        f"{ascii_uppercase[row]} is {number(x)} mm from the left end, "
        f"{number(flange.flange_length_mm - x)} mm from the right end, {number(y)} mm from the root and "
        f"{number(flange.flange_width_mm - y)} mm from the free edge"
    )
    if sites:
        off = min(np.hypot(site.x_mm - x, site.y_mm - y) for site in sites)
        told += f", {number(off, digits=1)} mm from the nearest old site"
    others = np.delete(np.arange(len(places)), row)
    if others.size:
        along = np.abs(places[others, 0] - x)
        nearest = others[along.argmin()]
        told += f", and {number(along.min())} mm along the flange from {ascii_uppercase[nearest]}"
    return told + "."
