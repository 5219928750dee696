"""A flange from above: root, free edge, old sites, new fasteners, and where they are.

It draws what it is given and judges nothing; ``secondplate.fastener_layout`` names the rules that are broken.
"""

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
from drawings.marks import bare_axes, box, line, number, witness, write
from drawings.picture import picture_of
from drawings.style import AMBER, GREY, TEXT_AMBER, TEXT_GREY, THIN, sheet_of_paper

# Room below and above the drawn flange, in inches on paper.
BOTTOM_IN, ABOVE_FLANGE_IN = 1.75, 1.5
# Turned numbers stand this far apart, upright ones need more.
BESIDE_IN, ABOVE_IN = 0.23, 0.25


def flange_layout(flange, *, hole_diameter_mm, sites=(), x_mm=(), y_mm=(), rules=None):
    """Draw a flange from above with its old sites and new fasteners, each place with its dimension.

    Parameters
    ----------
    flange : secondplate.fastener_layout.Flange
        The flange, 20 mm to 400 mm long and 8 mm to 80 mm wide [-]
    hole_diameter_mm : float
        Hole of the new fasteners, 2 mm to 15 mm [mm]
    sites : sequence of secondplate.fastener_layout.OldSite
        Old sites, on the flange [-]
    x_mm : sequence of float
        Places of the new fasteners along the flange, on it [mm]
    y_mm : sequence of float
        Places across it, from the root [mm]
    rules : secondplate.fastener_layout.LayoutRules or None
        Rules whose limits are drawn as dashed lines: edges, and a ring round each old site [-]

    Returns
    -------
    picture : Picture
        One view from above, to scale [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or a place lies off the flange.

    Examples
    --------
    >>> from secondplate.fastener_layout import Flange
    >>> flange = Flange(flange_length_mm=100, flange_width_mm=24, thickness_mm=1.5)
    >>> "2 new fasteners" in flange_layout(flange, hole_diameter_mm=5, x_mm=[40, 60], y_mm=[12, 12]).alt
    True
    """
    scale = require_drawable(flange, hole_diameter_mm)
    places = on_flange("new fasteners", flange, x_mm, y_mm)
    on_flange("old sites", flange, [site.x_mm for site in sites], [site.y_mm for site in sites])
    height_in = BOTTOM_IN + scale * flange.flange_width_mm + ABOVE_FLANGE_IN
    with sheet_of_paper(width_in=WIDTH_IN, height_in=height_in) as figure:
        left, bottom = LEFT_IN / scale, BOTTOM_IN / scale
        wide, high = (-left, WIDTH_IN / scale - left), (-bottom, height_in / scale - bottom)
        axes = bare_axes(figure, width=wide, height=high)
        draw_flange(axes, flange, scale, heading_in=ABOVE_FLANGE_IN - 0.25)
        for site in sites:
            draw_site(axes, site, flange, rules)
        for x, y in places:
            draw_fastener(axes, x, y, hole_diameter_mm)
        if rules is not None:
            _draw_border(axes, flange, rules)
        _number_below(axes, places, scale)
        _number_above(axes, flange, sites, scale)
        _number_beside(axes, flange, places, scale)
        fastener = "new fastener" if len(places) else ""
        explain(axes, scale, below_in=BOTTOM_IN - 0.35, sites=sites, fastener=fastener, rules=rules)
        return picture_of(figure, _words(flange, hole_diameter_mm, sites, places, rules))


def _draw_border(axes, flange, rules):
    """Draw the border inside which a centre keeps its distance to ends and edges, where there is any."""
    low = max(rules.to_edges_mm, flange.root_clearance_mm)
    wide = flange.flange_length_mm - 2 * rules.to_ends_mm
    high = flange.flange_width_mm - rules.to_edges_mm - low
    if min(wide, high) >= 0:
        corners = box(rules.to_ends_mm, low, wide, high)
        line(axes, [*corners, corners[0]], colour=GREY, width=THIN, dashes=(5, 3), order=4)


def _apart(values, least):
    """Return the values from the lowest on that stand far enough apart to be written, and whether all do."""
    kept = []
    for value in np.unique(np.round(values, 6)).tolist():
        if not kept or value - kept[-1] >= least:
            kept.append(value)
    return kept, len(kept) == np.unique(np.round(values, 6)).size


def _caption(text, complete):
    """Say what a row of numbers is, and that some are only in the words where they stand too close."""
    return text if complete else f"{text}; close ones left out"


def _number_below(axes, places, scale):
    """Write how far each new fastener is from the left end, below the flange."""
    if not places.size:
        return
    kept, complete = _apart(places[:, 0], BESIDE_IN / scale)
    for x in kept:
        witness(axes, (x, places[np.isclose(places[:, 0], x), 1].max()), (x, -0.2 / scale), colour=GREY)
        write(axes, x, -0.25 / scale, number(x), up="top", rotation=90)
    text = _caption("new fasteners: mm from the left end", complete)
    write(axes, 0, -0.95 / scale, text, across="left", colour=TEXT_GREY)


def _number_above(axes, flange, sites, scale):
    """Write how far each old site is from the left end, above the flange."""
    if not sites:
        return
    kept, complete = _apart([site.x_mm for site in sites], BESIDE_IN / scale)
    top = flange.flange_width_mm
    for x in kept:
        highest = max(site.y_mm for site in sites if abs(site.x_mm - x) < 1e-5)
        witness(axes, (x, highest), (x, top + 0.1 / scale), colour=AMBER)
        write(axes, x, top + 0.15 / scale, number(x), up="bottom", rotation=90, colour=TEXT_AMBER)
    text = _caption("old sites: mm from the left end", complete)
    write(axes, 0, top + 0.85 / scale, text, across="left", colour=TEXT_AMBER)


def _number_beside(axes, flange, places, scale):
    """Write how far each row is from the root, beside the right end; the width stands in the heading."""
    if not places.size:
        return
    kept, complete = _apart(places[:, 1], ABOVE_IN / scale)
    right = flange.flange_length_mm
    for y in kept:
        witness(
            axes, (places[np.isclose(places[:, 1], y), 0].max(), y), (right + 0.12 / scale, y), colour=GREY
        )
        write(axes, right + 0.17 / scale, y, number(y), across="left")
    for words, drop in (("mm from", 0.35), ("the root" if complete else "the root ...", 0.55)):
        write(axes, right + 0.17 / scale, -drop / scale, words, across="left", colour=TEXT_GREY)


def _listed(pairs):
    """List places as x and y."""
    return "; ".join(f"{number(x)} and {number(y)} mm" for x, y in pairs)


def _words(flange, hole, sites, places, rules):
    """Tell the layout in sentences with every place."""
    told = (
        f"Flange from above, {number(flange.flange_length_mm)} mm long and "
        f"{number(flange.flange_width_mm)} mm wide, its root below and its free edge above. "
        "Places are given from the left end and from the root. "
    )
    if sites:
        old = _listed((site.x_mm, site.y_mm) for site in sites)
        told += f"{counted(len(sites), 'old site')}, crossed: {old}. "
    if len(places):
        told += f"{counted(len(places), 'new fastener')} in holes of {number(hole)} mm: {_listed(places)}. "
    if rules is not None:
        told += (
            f"Dashed lines by {rules.name}: {number(rules.to_ends_mm)} mm to the ends, "
            f"{number(rules.to_edges_mm)} mm to the edges, and a ring round each old site. "
            f"The pitch is at least {number(rules.pitch_mm)} mm."
        )
    return told.strip()
