"""A welded stud on its rivet head seen from the front and a little from above, with any shape of collar.

Millimetres; the origin is the middle of the rivet head, y points up the stud. A circle lying flat is seen as
an ellipse of ``FLATTEN`` times its width; heights are drawn at full length.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from matplotlib.collections import LineCollection
from matplotlib.transforms import Affine2D

from drawings.marks import area, dot, line, oval, put
from drawings.style import AMBER, LINE, MID_GREY, MID_SLATE, PALE_AMBER, PALE_GREY, PAPER, SLATE, THIN

SLOPE = "#e6c193"
FLATTEN = 0.38
GAP_MM = 0.55
STUD_TOP_MM = 6.9
# Angles round the stud, 0 at the right, counted so that the front half is 180 to 360 degrees.
AROUND = np.radians(np.linspace(0, 360, 73))
BACK, FRONT = AROUND[:37], AROUND[36:]
# The front half of a collar reaches a little round the sides, so that no seam shows.
FRONT_AND_SIDES = np.radians(np.linspace(174, 366, 39))
# Width of each hole and how far it lies off the middle of the slope, along the front of the collar.
PORES = (
    (0.55, 0.1),
    (0.4, -0.25),
    (0.6, -0.05),
    (0.4, 0.2),
    (0.6, -0.2),
    (0.4, 0.15),
    (0.6, -0.1),
    (0.45, 0.1),
)
# Angle round the stud, distance from its axis and size of each drop of spatter.
DROPS = (
    (8, 6.1, 0.5),
    (172, 5.9, 0.42),
    (200, 6.3, 0.55),
    (228, 6.6, 0.36),
    (250, 6.2, 0.5),
    (283, 6.5, 0.4),
    (305, 6.1, 0.55),
    (330, 6.4, 0.36),
    (345, 5.7, 0.3),
    (215, 5.7, 0.3),
)


@dataclass(frozen=True, kw_only=True)
class ViewSize:
    """Sizes of what is seen, and where a hole or drops of melt begin.

    Parameters
    ----------
    plate_radius_mm : float
        How far the plate is drawn [mm]
    head_radius_mm : float
        Radius of the rivet head [mm]
    flange_radius_mm : float
        Radius of the stud's flange [mm]
    flange_mm : float
        Thickness of the flange [mm]
    stud_radius_mm : float
        Radius of the stud [mm]
    neck_mm : float
        How high a drawn-in collar is drawn [mm]
    drops_out_mm : float
        How much further out than usual the drops lie [mm]
    """

    plate_radius_mm: float = 7.0
    head_radius_mm: float = 3.9
    flange_radius_mm: float = 3.1
    flange_mm: float = 0.9
    stud_radius_mm: float = 2.6
    neck_mm: float = 1.3
    drops_out_mm: float = 0.0


@dataclass(frozen=True, kw_only=True)
class CollarShape:
    """What a collar looks like.

    Parameters
    ----------
    width_mm : callable
        Takes angles in radians, returns how far the collar reaches out of the flange [mm]
    height_mm : callable
        Takes angles in radians, returns how high the collar climbs [mm]
    longer_mm : float
        How much longer the welded stud is than it should be; negative is shorter [mm]
    offset_mm : float
        Distance of the stud's axis from the middle of the head [mm]
    tilt_deg : float
        Lean of the stud, to the left positive [deg]
    surface : str
        One of bright, dull, porous [-]
    spatter : bool
        Drops lie round the collar [-]
    gap : bool
        The stud stands clear of the head [-]
    undercut : bool
        The flange is eaten away at the right, where the collar is missing [-]
    waist : bool
        The collar is drawn in at half its height [-]
    hole : bool
        A ragged hole is burnt through the head at the right front [-]
    size : ViewSize
        Sizes of stud, head and plate [-]
    """

    width_mm: Callable
    height_mm: Callable
    longer_mm: float = 0.0
    offset_mm: float = 0.0
    tilt_deg: float = 0.0
    surface: str = "bright"
    spatter: bool = False
    gap: bool = False
    undercut: bool = False
    waist: bool = False
    hole: bool = False
    size: ViewSize = ViewSize()


def _ring(radius, lift, angles):
    """Return points on a flat ring seen from above: radius and height may differ round the ring."""
    return np.column_stack([radius * np.cos(angles), FLATTEN * radius * np.sin(angles) + lift])


def _disc(axes, radius, *, fill, order, move, edge_width=0.0, height=0.0):
    """Draw a flat round face seen from above at a height."""
    size = (2 * radius, 2 * radius * FLATTEN)
    oval(axes, 0, height, *size, fill=fill, edge=SLATE, edge_width=edge_width, order=order, move=move)


def draw_collar_view(axes, shape, *, at=(0.0, 0.0), grain_pt=2.6):
    """Draw plate, rivet head, collar and stud with the middle of the head ``at`` a place."""
    size = shape.size
    plate = Affine2D().translate(*at)
    ground = Affine2D().translate(at[0] + shape.offset_mm, at[1])
    stud = Affine2D().rotate_deg(shape.tilt_deg).translate(at[0] + shape.offset_mm, at[1] + _raised_mm(shape))
    _disc(axes, size.plate_radius_mm, fill=PALE_GREY, order=1, move=plate)
    _disc(axes, size.head_radius_mm, fill=MID_SLATE, edge_width=LINE, order=2, move=plate)
    if shape.gap:
        _disc(axes, size.flange_radius_mm, fill=SLATE, order=2.5, move=ground)
    if shape.waist:
        _draw_neck(axes, size, ground)
    if shape.width_mm(AROUND).max() > 0:
        _draw_bead(axes, shape, BACK, ground, order=3)
        _draw_bead(axes, shape, FRONT_AND_SIDES, ground, order=7)
        _draw_surface(axes, shape, ground, grain_pt)
    _draw_stud_body(axes, shape, stud)
    if shape.undercut:
        _draw_undercut(axes, size, ground)
    if shape.spatter:
        _draw_spatter(axes, size, ground)
    if shape.hole:
        _draw_hole(axes, size, ground)


def _raised_mm(shape):
    """Return how far the flange stands off the head."""
    return GAP_MM if shape.gap else shape.size.neck_mm if shape.waist else 0.0


def _draw_bead(axes, shape, angles, ground, *, order):
    """Draw half of the collar: the slope that faces out, and over it the paler upper slope."""
    width, height = shape.width_mm(angles), shape.height_mm(angles)
    inner = shape.size.flange_radius_mm
    foot = _ring(inner + width, 0.0, angles)
    crest = _ring(inner + 0.45 * width, 0.8 * height, angles)
    top = _ring(np.full_like(angles, inner), height, angles)
    area(axes, np.vstack([foot, top[::-1]]), fill=PALE_AMBER, order=order, move=ground)
    area(axes, np.vstack([foot, crest[::-1]]), fill=SLOPE, order=order + 0.1, move=ground)
    if order < 5:
        # Drawn under the fills, at double width: only what stands out behind stays to be seen.
        for edge in (foot, crest):
            line(
                axes,
                edge,
                colour=AMBER,
                width=2 * LINE,
                order=order - 0.1,
                move=ground,
                solid_capstyle="butt",
            )
        return
    line(axes, foot, colour=AMBER, order=order + 0.3, move=ground)
    line(axes, top[1:-1], colour=AMBER, order=order + 0.3, move=ground)


def _draw_stud_body(axes, shape, stud):
    """Draw flange, thread and end of the stud."""
    size = shape.size
    end = STUD_TOP_MM + shape.longer_mm - _raised_mm(shape)
    for radius, low, high, order in (
        (size.flange_radius_mm, 0.0, size.flange_mm, 4),
        (size.stud_radius_mm, size.flange_mm, end, 5),
    ):
        skin = np.vstack([_ring(radius, low, FRONT), _ring(radius, high, BACK)])
        area(axes, skin, fill=PAPER, edge=SLATE, width=LINE, order=order, move=stud)
        lid = PAPER if order == 4 else PALE_GREY
        _disc(axes, radius, fill=lid, edge_width=LINE, order=order + 0.2, move=stud, height=high)
    levels = np.arange(size.flange_mm + 0.8, end - 0.5, 0.85)
    threads = [_ring(size.stud_radius_mm, level, FRONT[2:-2:2]) for level in levels]
    put(axes, LineCollection(threads, colors=MID_GREY, linewidths=1.2, zorder=5.3), move=stud)


def _draw_surface(axes, shape, ground, grain_pt):
    """Mark the front of the collar as bright (a clean light), dull (stipple) or porous (holes)."""
    width, height = shape.width_mm(FRONT), shape.height_mm(FRONT)
    inner = shape.size.flange_radius_mm
    middle = _ring(inner + 0.38 * width, 0.62 * height, FRONT)
    if shape.surface == "bright":
        lit = np.flatnonzero(width > 0.5 * width.max())
        line(axes, middle[lit[len(lit) // 6 : len(lit) // 2]], colour=PAPER, width=3.0, order=8, move=ground)
    elif shape.surface == "dull":
        outs = (0.2, 0.5, 0.75)
        grains = [
            _ring(inner + out * width, (1 - out) * height, FRONT)[start::3] for start, out in enumerate(outs)
        ]
        dot(axes, *np.vstack(grains).T, size=grain_pt, edge="none", order=8, move=ground)
    else:
        for step, (size, drop) in enumerate(PORES):
            x, y = middle[3 + step * 4]
            oval(
                axes,
                x,
                y + drop,
                size,
                size * 0.75,
                fill=SLATE,
                edge=PAPER,
                edge_width=THIN,
                order=8,
                move=ground,
            )


def _draw_neck(axes, size, ground):
    """Draw the drawn-in melt between head and raised flange as a waisted column, with a light on its left."""
    height = np.linspace(0, 1, 15)
    radius = size.flange_radius_mm + 0.5 - 2.7 * height + 2.1 * height**2
    side = np.column_stack([radius, height * size.neck_mm])
    base = _ring(radius[0], 0.0, FRONT[::-1])
    rim = _ring(radius[-1], size.neck_mm, FRONT)
    column = np.vstack([side * (-1, 1), rim, side[::-1], base])
    area(axes, column, fill=SLOPE, edge=AMBER, width=LINE, order=3.5, move=ground)
    light = _ring(radius.min() + 0.15, 0.3 * size.neck_mm, FRONT[6:16])
    line(axes, light, colour=PAPER, width=3.0, order=3.6, move=ground)


def _draw_undercut(axes, size, ground):
    """Draw the notch burnt into the flange at the right front."""
    angles = np.radians(np.linspace(300, 352, 14))
    low = _ring(size.flange_radius_mm, 0.0, angles)
    bite = 0.75 * np.sin(np.linspace(0, np.pi, 14)) ** 0.7
    high = _ring(size.flange_radius_mm - 0.1, bite, angles)
    area(axes, np.vstack([low, high[::-1]]), fill=SLATE, edge=SLATE, width=LINE, order=7.6, move=ground)


def _draw_spatter(axes, size, ground):
    """Scatter drops of melt round the collar."""
    for angle, radius, width in DROPS:
        x, y = _ring(radius + size.drops_out_mm, 0.0, np.radians(angle)).ravel()
        oval(axes, x, y, width, width * 0.75, fill=AMBER, order=6, move=ground)


def _draw_hole(axes, size, ground):
    """Draw a ragged hole through the head beside the flange at the right front, with a rim of melt."""
    angles = np.radians(np.linspace(288, 350, 18))
    ragged = 0.22 * np.array([0, 1, -1] * 6)
    outer = size.flange_radius_mm + 1.9 * np.sin(np.linspace(0.25, np.pi - 0.25, 18)) ** 0.6 + ragged
    inner = _ring(size.flange_radius_mm - 0.6, 0.25, angles)
    outline = np.vstack([inner, _ring(outer, 0.0, angles)[::-1]])
    area(axes, outline, fill=SLATE, edge=AMBER, width=2 * LINE, order=8.5, move=ground)
