"""A welded stud on its rivet head seen from the front and a little from above, with any shape of collar.

Millimetres; the origin is the middle of the rivet head, y points up the stud. A circle lying flat is seen as
an ellipse of ``FLATTEN`` times its width; heights are drawn at full length.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from matplotlib.collections import LineCollection
from matplotlib.patches import Ellipse, Polygon
from matplotlib.transforms import Affine2D

from drawings.style import AMBER, LINE, MID_GREY, MID_SLATE, PALE_AMBER, PALE_GREY, PAPER, SLATE, THIN

SLOPE = "#e6c193"
FLATTEN = 0.38
HEAD_RADIUS_MM = 3.9
FLANGE_RADIUS_MM = 3.1
FLANGE_MM = 0.9
STUD_RADIUS_MM = 2.6
STUD_TOP_MM = 8.4
# Angles round the stud, 0 at the right, counted so that the front half is 180 to 360 degrees.
AROUND = np.radians(np.linspace(0, 360, 73))
BACK, FRONT = AROUND[:37], AROUND[36:]
# Width of each hole and how far it lies off the middle of the slope, along the front of the collar.
PORES = ((0.55, 0.1), (0.4, -0.25), (0.6, -0.05), (0.4, 0.2), (0.6, -0.2), (0.4, 0.15), (0.6, -0.1), (0.45, 0.1))
# Angle round the stud, distance from its axis and size of each drop of spatter.
DROPS = ((8, 6.1, 0.5), (172, 5.9, 0.42), (200, 6.3, 0.55), (228, 6.6, 0.36), (250, 6.2, 0.5), (283, 6.5, 0.4),
         (305, 6.1, 0.55), (330, 6.4, 0.36), (345, 5.7, 0.3), (215, 5.7, 0.3))


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


def _ring(radius, lift, angles):
    """Return points on a flat ring seen from above: radius and height may differ round the ring."""
    return np.column_stack([radius * np.cos(angles), FLATTEN * radius * np.sin(angles) + lift])


def _fill(axes, points, *, face, edge="none", width=0.0, order, to=None, **more):
    """Fill an outline, moved by ``to`` where that is given."""
    patch = Polygon(points, closed=True, facecolor=face, edgecolor=edge, linewidth=width, zorder=order, **more)
    if to is not None:
        patch.set_transform(to + axes.transData)
    axes.add_patch(patch)


def draw_collar_view(axes, shape):
    """Draw sheet, rivet head, collar and stud."""
    axes.add_patch(Ellipse((0, 0), 14.0, 14.0 * FLATTEN, facecolor=PALE_GREY, edgecolor="none", zorder=1))
    axes.add_patch(Ellipse((0, 0), 2 * HEAD_RADIUS_MM, 2 * HEAD_RADIUS_MM * FLATTEN, facecolor=MID_SLATE,
                           edgecolor=SLATE, linewidth=LINE, zorder=2))
    move = Affine2D().rotate_deg(shape.tilt_deg).translate(shape.offset_mm, 0.55 if shape.gap else 0.0)
    ground = Affine2D().translate(shape.offset_mm, 0)
    _draw_bead(axes, shape, BACK, ground, order=3)
    _draw_stud_body(axes, shape, move)
    _draw_bead(axes, shape, FRONT, ground, order=7)
    _draw_surface(axes, shape, ground)
    if shape.gap:
        _draw_gap(axes, shape)
    if shape.undercut:
        _draw_undercut(axes, ground)
    if shape.spatter:
        _draw_spatter(axes, ground)


def _draw_bead(axes, shape, angles, ground, *, order):
    """Draw half of the collar: the slope that faces out, and over it the paler upper slope."""
    width, height = shape.width_mm(angles), shape.height_mm(angles)
    if width.max() <= 0:
        return
    foot = _ring(FLANGE_RADIUS_MM + width, 0.0, angles)
    crest = _ring(FLANGE_RADIUS_MM + 0.45 * width, 0.8 * height, angles)
    top = _ring(np.full_like(angles, FLANGE_RADIUS_MM), height, angles)
    _fill(axes, np.vstack([foot, top[::-1]]), face=PALE_AMBER, order=order, to=ground)
    _fill(axes, np.vstack([foot, crest[::-1]]), face=SLOPE, order=order + 0.1, to=ground)
    # The upper edge of the back half lies hidden behind the stud; drawn, it would only leave stubs.
    for line in (foot, top) if order > 5 else (foot,):
        axes.plot(*line.T, color=AMBER, linewidth=LINE, zorder=order + 0.3, transform=ground + axes.transData)


def _draw_stud_body(axes, shape, move):
    """Draw flange, thread and end of the stud."""
    end = STUD_TOP_MM + shape.longer_mm
    for radius, low, high, order in ((FLANGE_RADIUS_MM, 0.0, FLANGE_MM, 4), (STUD_RADIUS_MM, FLANGE_MM, end, 5)):
        skin = np.vstack([_ring(radius, low, FRONT), _ring(radius, high, BACK)])
        _fill(axes, skin, face=PAPER, edge=SLATE, width=LINE, order=order, to=move)
        lid = _ring(radius, high, AROUND)
        _fill(axes, lid, face=PAPER if order == 4 else PALE_GREY, edge=SLATE, width=LINE, order=order + 0.2, to=move)
    levels = np.arange(FLANGE_MM + 0.8, end - 0.5, 0.85)
    threads = LineCollection([_ring(STUD_RADIUS_MM, level, FRONT[2:-2]) for level in levels], colors=MID_GREY,
                             linewidths=1.2, zorder=5.3)
    threads.set_transform(move + axes.transData)
    axes.add_collection(threads, autolim=False)


def _draw_surface(axes, shape, ground):
    """Mark the front of the collar as bright (a clean light), dull (stipple) or porous (holes)."""
    width, height = shape.width_mm(FRONT), shape.height_mm(FRONT)
    if width.max() <= 0:
        return
    to_place = ground + axes.transData
    middle = _ring(FLANGE_RADIUS_MM + 0.38 * width, 0.62 * height, FRONT)
    if shape.surface == "bright":
        lit = np.flatnonzero(width > 0.5 * width.max())
        lit = lit[len(lit) // 6 : len(lit) // 2]
        axes.plot(*middle[lit].T, color=PAPER, linewidth=3.0, zorder=8, solid_capstyle="round", transform=to_place)
    elif shape.surface == "dull":
        across = np.array([[0.2, 0.4], [0.5, 0.75], [0.75, 0.15]])
        grains = [_ring(FLANGE_RADIUS_MM + out * width, (1 - out) * height, FRONT)[start::3]
                  for start, outs in enumerate(across) for out in outs]
        axes.plot(*np.vstack(grains).T, linestyle="none", marker="o", markersize=1.3, color=SLATE, zorder=8,
                  transform=to_place)
    else:
        for step, (size, drop) in enumerate(PORES):
            x, y = middle[3 + step * 4]
            axes.add_patch(Ellipse((x, y + drop), size, size * 0.75, facecolor=SLATE, edgecolor=PAPER,
                                   linewidth=THIN, zorder=8, transform=to_place))


def _draw_gap(axes, shape):
    """Shade the gap under a stud that never went down."""
    shadow = Ellipse((shape.offset_mm, 0), 2 * FLANGE_RADIUS_MM, 2 * FLANGE_RADIUS_MM * FLATTEN, facecolor=SLATE,
                     edgecolor="none", zorder=2.5)
    axes.add_patch(shadow)


def _draw_undercut(axes, ground):
    """Draw the notch burnt into the flange at the right front."""
    angles = np.radians(np.linspace(300, 352, 14))
    low = _ring(FLANGE_RADIUS_MM, 0.0, angles)
    bite = 0.75 * np.sin(np.linspace(0, np.pi, 14)) ** 0.7
    high = _ring(FLANGE_RADIUS_MM - 0.1, bite, angles)
    _fill(axes, np.vstack([low, high[::-1]]), face=SLATE, edge=SLATE, width=LINE, order=7.6, to=ground)


def _draw_spatter(axes, ground):
    """Scatter drops of melt round the collar."""
    for angle, radius, size in DROPS:
        x, y = _ring(radius, 0.0, np.radians(angle)).ravel()
        axes.add_patch(Ellipse((x, y), size, size * 0.75, facecolor=AMBER, edgecolor="none", zorder=6,
                               transform=ground + axes.transData))
