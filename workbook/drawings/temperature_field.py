"""Half a section through a stud weld with the highest temperature of each place, as a few labelled bands.

Every part has its own bands, because temperatures jump at the contacts between parts.
"""

import numpy as np
from matplotlib.patches import Polygon

from drawings.marks import area, bare_axes, box, dot, line, number, write
from drawings.picture import picture_of
from drawings.style import (
    CENTRE_LINE,
    GREY,
    LINE,
    PAPER,
    SLATE,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.heat.joint import PARTS, rivet_radii_mm
from secondplate.heat.joint_body import places

WIDTH_IN, HEIGHT_IN = 9.2, 5.7
WIDE_MM, ABOVE_MM = 10.2, 4.6
LEFT_IN, EDGE_IN, LIST_IN = 0.45, 0.3, 3.3
LEVELS_C = (60, 120, 180, 300, 500, 800)
# From pale to dark, so that grey print keeps the order; the last is the melt.
TINTS = ("#ffffff", "#fcf4ea", "#f8e6d0", "#f0d0aa", "#e2b07c", "#c98a4f", "#a3622c", "#5f3410")
# Places that are told, each with where its number stands from it, in inches across and down.
TOLD = {
    "fusion face": (-0.24, 0.0),
    "web over the bore": (-0.24, 0.0),
    "top plate at the head": (0.25, 0.08),
    "rivet shank": (0.0, 0.0),
    "second plate under the rivet": (0.0, 0.0),
    "button": (-0.24, 0.0),
}
BOND_OFF_IN = (0.0, -0.2)


def temperature_field(weld):
    """Draw half a section through stud, rivet and plates with the highest temperatures of one weld.

    Parameters
    ----------
    weld : secondplate.heat.weld_result.WeldHeatResult
        The computed weld [-]

    Returns
    -------
    picture : Picture
        Bands of the highest temperature, the melt, the outlines, and the peaks at named places [-]

    Notes
    -----
    Temperatures and melt from ``secondplate.heat.weld``; the stud is drawn as it stood before the plunge.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> from secondplate.heat.weld import weld_heat
    >>> from secondplate.heat.weld_settings import charted_settings
    >>> "melted" in temperature_field(weld_heat(default_joint(), charted_settings(default_joint()))).alt
    True
    """
    joint = weld.cells.joint
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = _paper(figure, joint)
        outlines = _outlines(joint)
        for name in ("second plate", "gap", "top plate", "slug", "rivet", "stud"):
            _draw_part(axes, weld, name, outlines[name])
        _draw_edges(axes, outlines, joint)
        _draw_key(axes, joint)
        _tell_places(axes, weld)
        return picture_of(figure, _words(weld))


def _paper(figure, joint):
    """Return axes in mm that hold the section, heights counted downwards."""
    high_mm = ABOVE_MM + joint.button_to_mm
    mm_in = min((WIDTH_IN - LEFT_IN - LIST_IN) / WIDE_MM, (HEIGHT_IN - 2 * EDGE_IN) / high_mm)
    top = -ABOVE_MM - EDGE_IN / mm_in
    left = -LEFT_IN / mm_in
    return bare_axes(figure, width=(left, left + WIDTH_IN / mm_in), height=(top + HEIGHT_IN / mm_in, top))


def _outlines(joint):
    """Return the outline of the right half of each part, rows of radius and height."""
    heights = np.unique(
        np.concatenate(
            [
                np.linspace(0, joint.tail_depth_mm - 1e-6, 40),
                [joint.web_mm, joint.web_mm - 1e-6, joint.head_height_mm, joint.second_plate_from_mm],
            ]
        )
    )
    inner, outer = rivet_radii_mm(joint, heights)
    rivet = np.vstack([np.column_stack([outer, heights]), np.column_stack([inner, heights])[::-1]])
    low, bottom = joint.plates_to_mm, joint.button_to_mm
    button = joint.button_diameter_mm / 2
    flange, stud = joint.flange_diameter_mm / 2, joint.stud_diameter_mm / 2
    rim = -joint.flange_thickness_mm
    slug = heights >= joint.slug_from_mm
    return {
        "stud": [(0, -ABOVE_MM), (stud, -ABOVE_MM), (stud, rim), (flange, rim), (flange, 0), (0, 0)],
        "rivet": rivet,
        "top plate": box(0, 0, WIDE_MM, joint.top_plate_mm),
        "gap": box(0, joint.top_plate_mm, WIDE_MM, joint.gap_mm),
        "second plate": [
            (0, joint.second_plate_from_mm),
            (WIDE_MM, joint.second_plate_from_mm),
            (WIDE_MM, low),
            (button, low),
            (button, bottom),
            (0, bottom),
        ],
        "slug": [
            (0, joint.slug_from_mm),
            *zip(inner[slug], heights[slug], strict=True),
            (0, joint.tail_depth_mm),
        ],
    }


def _in_view(weld):
    """Return the rows and columns of the field that the picture shows, and one beyond."""
    rows = slice(max(0, int(np.searchsorted(weld.height_edges_mm, -ABOVE_MM)) - 2), None)
    columns = slice(0, int(np.searchsorted(weld.radius_edges_mm, WIDE_MM)) + 1)
    return rows, columns


def _filled(field, inside):
    """Return the field with every cell outside a part given the value of the nearest cell of it in line."""
    filled = np.where(inside, field, np.nan)
    columns = np.arange(field.shape[1])
    has = inside.any(axis=1)
    for row in np.flatnonzero(has):
        known = np.flatnonzero(inside[row])
        filled[row] = filled[row, known[np.abs(columns[:, None] - known[None, :]).argmin(axis=1)]]
    nearest = np.flatnonzero(has)[
        np.abs(np.arange(field.shape[0])[:, None] - np.flatnonzero(has)[None, :]).argmin(axis=1)
    ]
    return filled[nearest]


def _draw_part(axes, weld, name, outline):
    """Fill one part with its bands and, in steel, its melt."""
    rows, columns = _in_view(weld)
    inside = weld.cells.part[rows, columns] == PARTS.index(name)
    if not inside.any():
        return
    x = weld.cells.grid.radii_mm[columns]
    y = weld.cells.grid.depths_mm[rows]
    x, y = np.r_[0.0, x], np.r_[y[0] - 2, y, y[-1] + 0.3]
    peak = _padded(_filled(weld.peak_c[rows, columns], inside))
    clip = Polygon(outline, closed=True, transform=axes.transData)
    low = TINTS[int(np.searchsorted(LEVELS_C, np.nanmin(peak[:, :])))]
    area(axes, outline, fill=low, order=2)
    ends = [level for level in LEVELS_C if level < peak.max()]
    if ends:
        bands = axes.contourf(x, y, peak, levels=[*ends, 9999], colors=TINTS[1 : len(ends) + 1], zorder=2.1)
        bands.set_clip_path(clip)
    melt = _padded(_filled(weld.melted_share[rows, columns], inside))
    if melt.max() > 0.5:
        pool = axes.contourf(x, y, melt, levels=[0.5, 2], colors=[TINTS[-1]], zorder=2.2)
        pool.set_clip_path(clip)


def _padded(field):
    """Repeat the first column at the axis, and the outermost rows beyond."""
    wide = np.column_stack([field[:, 0], field])
    return np.vstack([wide[0], wide, wide[-1]])


def _draw_edges(axes, outlines, joint):
    """Draw the bore, the outlines of the parts, and the axis."""
    for name in ("second plate", "top plate"):
        area(axes, outlines[name], edge=GREY, width=THIN, order=3)
    if joint.slug_mm < joint.tail_depth_mm - joint.web_mm:
        heights = np.linspace(joint.web_mm, joint.slug_from_mm - 1e-9, 20)
        inner, _ = rivet_radii_mm(joint, heights)
        hollow = np.vstack([[(0, heights[0])], np.column_stack([inner, heights]), [(0, heights[-1])]])
        area(axes, hollow, fill=PAPER, order=3.1)
        line(axes, [(0, heights[-1]), (inner[-1], heights[-1])], colour=GREY, width=THIN, order=3.2)
    area(axes, outlines["rivet"], edge=SLATE, width=LINE, order=4)
    stud = joint.stud_diameter_mm / 2
    cut = [(stud * share, -ABOVE_MM + 0.12 * (-1) ** step) for step, share in enumerate(np.linspace(0, 1, 7))]
    area(axes, [(0, -ABOVE_MM - 0.3), *cut, (stud + 0.2, -ABOVE_MM - 0.3)], fill=PAPER, order=3.9)
    line(axes, [*cut, *outlines["stud"][2:]], width=LINE, order=4)
    for name, low, thickness in (
        ("top plate", 0.0, joint.top_plate_mm),
        ("second plate", joint.second_plate_from_mm, joint.second_plate_mm),
    ):
        ground = {"facecolor": PAPER, "edgecolor": "none", "pad": 1.5}
        write(axes, WIDE_MM - 0.2, low + 0.5 * thickness, name, across="right", colour=TEXT_GREY, bbox=ground)
    bottom = joint.button_to_mm
    line(axes, [(0, -ABOVE_MM - 0.25), (0, bottom + 0.25)], width=THIN, dashes=CENTRE_LINE, order=5)


def _draw_key(axes, joint):
    """Name the bands from the melt down, right of the stud over the plates."""
    left = joint.flange_diameter_mm / 2 + 1.2
    over = [f"over {level} \N{DEGREE SIGN}C" for level in reversed(LEVELS_C)]
    names = ["melted", *over, f"up to {LEVELS_C[0]} \N{DEGREE SIGN}C"]
    write(axes, left, -ABOVE_MM, "highest temperature", across="left", weight="bold")
    step_mm = (ABOVE_MM - 0.75) / len(names)
    for row, (name, tint) in enumerate(zip(names, reversed(TINTS), strict=True)):
        y = -ABOVE_MM + 0.3 + step_mm * row
        area(axes, box(left, y, 0.75, 0.8 * step_mm), fill=tint, edge=GREY, width=THIN, order=3)
        write(axes, left + 0.95, y + 0.4 * step_mm, name, across="left")


def _told_places(weld):
    """Return radius, height and the number's offset of each place that is told, from the top down."""
    found = places(weld.cells.joint)
    offsets = dict(TOLD)
    for name in weld.traces_c:
        if name.startswith("bond line") and name in found and found[name][0] < WIDE_MM - 0.5:
            offsets[name] = BOND_OFF_IN
    told = [(name, *found[name], offset) for name, offset in offsets.items() if name in weld.traces_c]
    return sorted(told, key=lambda place: (round(place[2], 1), place[1]))


def _tell_places(axes, weld):
    """Number the named places and list their peaks at the right."""
    inch_mm = (axes.get_xlim()[1] - axes.get_xlim()[0]) / WIDTH_IN
    left = axes.get_xlim()[1] - (LIST_IN - 0.15) * inch_mm
    write(axes, left, -ABOVE_MM, "highest, by place, in \N{DEGREE SIGN}C", across="left", weight="bold")
    for row, (name, radius, height, offset) in enumerate(_told_places(weld), start=1):
        x, y = radius + offset[0] * inch_mm, height + offset[1] * inch_mm
        if offset != (0.0, 0.0):
            dot(axes, radius, height, size=5, order=17)
        low = -ABOVE_MM + (0.08 + 0.42 * row) * inch_mm
        for place in ((x, y), (left + 0.13 * inch_mm, low)):
            dot(axes, *place, colour=PAPER, size=15, edge=SLATE, edge_width=1.0, order=18)
            write(axes, *place, str(row), size=12)
        write(axes, left + 0.34 * inch_mm, low, _listed(name), across="left")
        peak = number(weld.peak_at_c(name), digits=0)
        write(axes, left + (LIST_IN - 0.25) * inch_mm, low, peak, across="right", weight="bold")


def _listed(name):
    """Return the name of a place, short enough for the list."""
    return name.replace("second plate under the rivet", "second plate under it")


def _words(weld):
    """Tell the section in sentences."""
    set_to = weld.settings
    peaks = ", ".join(f"{name} {number(weld.peak_at_c(name), digits=0)}" for name, *_ in _told_places(weld))
    web = f"{number(weld.web_left_mm)} mm of the web stay solid"
    levels = ", ".join(str(level) for level in reversed(LEVELS_C))
    return (
        f"Half a section through a stud weld of {number(set_to.current_a)} A for {number(set_to.time_ms)} ms "
        f"with the highest temperature of every place in bands: melted, over {levels} degrees Celsius. "
        f"On average the stud melted {number(weld.stud_depth_mm)} mm deep and the rivet head "
        f"{number(weld.head_depth_mm)} mm; {'the head is burnt through' if weld.burnt_through else web}. "
        f"Highest temperatures by place, in degrees Celsius: {peaks}."
    )
