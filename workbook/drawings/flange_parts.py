"""Parts of the pictures of a flange from above: the flange, old sites, fasteners, and what the signs mean."""

import numpy as np

from drawings.marks import area, box, line, number, oval, write
from drawings.style import (
    AMBER,
    CENTRE_LINE,
    GREY,
    HEADING_PT,
    LINE,
    PALE_AMBER,
    PALE_GREY,
    PALE_SLATE,
    PAPER,
    SECOND_HATCH,
    SLATE,
    TEXT_GREY,
    THIN,
)
from secondplate.checks import require_between

WIDTH_IN = 9.4
# Room for the drawn flange in inches on paper, and how far it lies from the sheet's left edge.
ROOM_IN, HIGHEST_IN, LEFT_IN = 7.0, 2.0, 1.05


def require_drawable(flange, hole_diameter_mm):
    """Return inches on paper by millimetre of the flange, or raise where it is too long, wide or fine."""
    require_between("flange length", flange.flange_length_mm, 20, 400, unit="mm")
    require_between("flange width", flange.flange_width_mm, 8, 80, unit="mm")
    require_between("hole diameter", hole_diameter_mm, 2, 15, unit="mm")
    return min(ROOM_IN / flange.flange_length_mm, HIGHEST_IN / flange.flange_width_mm)


def on_flange(name, flange, x_mm, y_mm):
    """Return places as rows of x and y, or raise where one lies off the flange or they do not pair."""
    x, y = (np.asarray(values, dtype=float).ravel() for values in (x_mm, y_mm))
    if x.size != y.size:
        message = f"places of {name} along must be as many as across, got {x.size} and {y.size}"
        raise ValueError(message)
    if x.size:
        require_between(f"place of {name} along the flange", x, 0, flange.flange_length_mm, unit="mm")
        require_between(f"place of {name} across the flange", y, 0, flange.flange_width_mm, unit="mm")
    return np.stack([x, y], axis=1)


def draw_flange(axes, flange, scale, *, heading_in):
    """Draw the flange, its root hatched as a bend, name both edges and write its size so far above it."""
    length, width = flange.flange_length_mm, flange.flange_width_mm
    area(axes, box(0, 0, length, width), fill=PALE_SLATE, edge=SLATE, width=LINE, order=2)
    root = box(0, -0.14 / scale, length, 0.14 / scale)
    area(axes, root, fill=PALE_GREY, edge=GREY, width=THIN, hatch=SECOND_HATCH, order=2)
    beside = -0.1 / scale
    write(axes, beside, width, "free edge", across="right", up="center", colour=TEXT_GREY)
    write(axes, beside, -0.1 / scale, "root", across="right", up="center", colour=TEXT_GREY)
    size = f"flange {number(length)} x {number(width)} mm"
    heading = width + heading_in / scale
    write(axes, 0, heading, size, across="left", size=HEADING_PT, weight="bold")


def draw_site(axes, site, flange, rules):
    """Draw an old site as a crossed amber circle, with the ring that the rules keep free."""
    x, y, across = site.x_mm, site.y_mm, max(site.affected_diameter_mm, 1.0)
    if rules is not None:
        reach = rules.site_distance_mm(site.affected_diameter_mm)
        around = np.linspace(0, 2 * np.pi, 181)
        ring = np.stack([x + reach * np.cos(around), y + reach * np.sin(around)], axis=1)
        # Only its part on the flange: beyond the edges the ring forbids nothing.
        size = (flange.flange_length_mm, flange.flange_width_mm)
        ring[((ring < 0) | (ring > size)).any(axis=1)] = np.nan
        line(axes, ring, colour=AMBER, width=THIN, dashes=(5, 3), order=4)
    oval(axes, x, y, across, across, fill=PALE_AMBER, edge=AMBER, edge_width=LINE, order=6)
    reach = 0.35 * across
    for turn in (-1, 1):
        line(axes, [(x - reach, y - turn * reach), (x + reach, y + turn * reach)], colour=AMBER, order=7)


def draw_fastener(axes, x, y, hole):
    """Draw a new fastener as a filled circle with its centre lines."""
    oval(axes, x, y, hole, hole, fill=SLATE, edge=PAPER, edge_width=0.6, order=8)
    reach = 0.85 * hole
    for ends in ([(x - reach, y), (x + reach, y)], [(x, y - reach), (x, y + reach)]):
        line(axes, ends, colour=SLATE, width=THIN, dashes=CENTRE_LINE, order=7)


def explain(axes, scale, *, below_in, sites, fastener="", rules=None):
    """Explain the signs in one line, so far below the root; ``fastener`` is what a new one is called."""
    x, y, across = 0.1 / scale, -below_in / scale, 0.2 / scale
    if fastener:
        draw_fastener(axes, x, y, 0.8 * across)
        write(axes, x + 0.2 / scale, y, fastener, across="left")
        x += 1.7 / scale
    if sites:
        oval(axes, x, y, across, across, fill=PALE_AMBER, edge=AMBER, edge_width=LINE, order=6)
        for turn in (-1, 1):
            half = 0.35 * across
            line(axes, [(x - half, y - turn * half), (x + half, y + turn * half)], colour=AMBER, order=7)
        write(axes, x + 0.2 / scale, y, "old site", across="left")
        x += 1.3 / scale
    if rules is not None:
        line(axes, [(x - 0.1 / scale, y), (x + 0.25 / scale, y)], colour=GREY, width=THIN, dashes=(5, 3))
        write(axes, x + 0.35 / scale, y, f"{rules.name}: no centre beyond", across="left", colour=TEXT_GREY)


def counted(count, name):
    """Write a count with its thing."""
    return f"{count} {name}" if count == 1 else f"{count} {name}s"
