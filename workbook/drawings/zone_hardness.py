"""Hardness of the rivet's heat-affected zone against cooling time, with published hardnesses beside it."""

import textwrap

import numpy as np

from drawings.charts import heading, powers_plane
from drawings.marks import area, box, dot, line, number, write
from drawings.picture import picture_of
from drawings.style import (
    AMBER,
    GREY,
    LINE,
    MID_SLATE,
    PALE_AMBER,
    PALE_GREY,
    PALE_SLATE,
    PAPER,
    SLATE,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.bands import Band
from secondplate.checks import require_choice
from secondplate.weldability import hardness_limit_hv, rivet_zone_hardness_hv
from secondplate.weldability_composition import composition, steel_names
from secondplate.weldability_hardness import yurioka_hardness, zone_hardness
from secondplate.weldability_published import published_hardnesses

WIDTH_IN, HEIGHT_IN = 9.2, 5.4
PLOT = (0.085, 0.12, 0.52, 0.8)
TIMES_S = (0.01, 0.1, 1, 10, 100, 1000)
LEVELS_HV = (0, 100, 200, 300, 400, 500, 600, 700)
BAR_IN, BARS_FROM_IN, LIST_FROM_IN = 0.24, 0.12, 1.38


def zone_hardness_chart(*, rivet, cooling_time_800_500_s):
    """Draw the hardness of a rivet's heat-affected zone by two formulas against the cooling time.

    Parameters
    ----------
    rivet : str
        Steel of the rivet, one of ``secondplate.weldability_composition.steel_names("rivet")`` [-]
    cooling_time_800_500_s : Band
        Time from 800 to 500 C of this weld, 0.01 to 1000 s [s]

    Returns
    -------
    picture : Picture
        Both formulas, the range of the grade, this weld, the limit for seams, published values as bars [-]

    Raises
    ------
    ValueError
        If the rivet is unknown or a time is out of the formulas' range.

    Notes
    -----
    Hardness from ``secondplate.weldability_hardness`` and ``weldability``, bars from
    ``weldability_published``.

    Examples
    --------
    >>> times = Band(low=0.2, best=0.4, high=0.8, basis="computed weld")
    >>> "martensite alone" in zone_hardness_chart(rivet="36MnB4", cooling_time_800_500_s=times).alt
    True
    """
    require_choice("rivet", rivet, steel_names("rivet"))
    steel, at = composition(rivet), cooling_time_800_500_s
    here = zone_hardness(steel, cooling_time_800_500_s=at.best)
    band = rivet_zone_hardness_hv(rivet, cooling_time_800_500_s=at)
    alone_s = yurioka_hardness(steel, cooling_time_800_500_s=at.best).martensite_time_s
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = powers_plane(
            figure,
            PLOT,
            across="time from 800 to 500 \N{DEGREE SIGN}C in s",
            up="hardness in HV",
            marks=TIMES_S,
            levels=LEVELS_HV,
        )
        _draw_limit(axes)
        _draw_formulas(axes, rivet, steel)
        _draw_martensite(axes, alone_s)
        _draw_weld(axes, at, here)
        _draw_published(axes)
        heading(axes, f"{_span(at.low, at.high, digits=2)} s: {_span(band.low, band.high)} HV")
        return picture_of(figure, _words(rivet, at, here, band, alone_s))


def _span(low, high, *, digits=0):
    """Write a span, or one number where both ends round to it."""
    ends = [number(end, digits=digits) for end in (low, high)]
    return ends[0] if ends[0] == ends[1] else " to ".join(ends)


def _draw_limit(axes):
    """Shade the limit for seams, from its lowest to its highest."""
    limit = hardness_limit_hv()
    (start, end), inch = axes.get_xlim(), _inch_x(axes)
    area(axes, box(start, limit.low, end - start, limit.high - limit.low), fill=PALE_GREY, order=0.5)
    line(axes, [(start, limit.best), (end, limit.best)], colour=GREY, dashes=(6, 3), order=1)
    told = f"limit for seams {number(limit.best)} HV"
    ground = {"facecolor": PALE_GREY, "edgecolor": "none", "pad": 1}
    write(axes, start + 0.1 * inch, limit.best, told, across="left", colour=TEXT_GREY, bbox=ground)


def _inch_x(axes):
    """Return an inch of the sheet in the units of the plane, across."""
    start, end = axes.get_xlim()
    return (end - start) / (PLOT[2] * WIDTH_IN)


def _draw_formulas(axes, rivet, steel):
    """Draw both formulas for the usual cast, and the range of the grade behind them."""
    times = np.geomspace(TIMES_S[0], TIMES_S[-1], 121)
    grade = rivet_zone_hardness_hv(
        rivet, cooling_time_800_500_s=Band(low=times, best=times, high=times, basis="all times of the chart")
    )
    x = np.log10(times)
    outline = np.vstack([np.column_stack([x, grade.low]), np.column_stack([x, grade.high])[::-1]])
    area(axes, outline, fill=PALE_SLATE, order=1.5)
    both = zone_hardness(steel, cooling_time_800_500_s=times)
    line(axes, np.column_stack([x, both.maynier_hv]), colour=SLATE, width=2.2, order=6)
    line(axes, np.column_stack([x, both.yurioka_hv]), colour=SLATE, width=2.2, dashes=(7, 2), order=6)
    inch, start = _inch_x(axes), axes.get_xlim()[0]
    left = start + 0.1 * inch
    for level, name, dashes in ((250, "after Maynier", None), (200, "after Yurioka", (7, 2))):
        line(axes, [(left, level), (left + 0.5 * inch, level)], width=2.2, dashes=dashes)
        write(axes, left + 0.6 * inch, level, name, across="left")
    area(axes, box(left, 135, 0.5 * inch, 30), fill=PALE_SLATE, edge=MID_SLATE, width=THIN)
    write(axes, left + 0.6 * inch, 150, "all casts of the grade", across="left")


def _draw_martensite(axes, alone_s):
    """Draw the longest time that leaves martensite alone."""
    x = np.log10(alone_s)
    line(axes, [(x, 0), (x, LEVELS_HV[-1])], colour=GREY, width=1.2, dashes=(2, 2), order=4)
    told = f"martensite alone up to {number(alone_s, digits=1)} s"
    ground = {"facecolor": PAPER, "edgecolor": "none", "pad": 1}
    write(axes, x, 60, told, colour=TEXT_GREY, bbox=ground)


def _draw_weld(axes, at, here):
    """Draw where this weld lies, its doubt shaded."""
    low, best, high = np.log10([at.low, at.best, at.high])
    area(axes, box(low, 470, high - low, LEVELS_HV[-1] - 470), fill=PALE_AMBER, order=1.6)
    line(axes, [(best, 470), (best, LEVELS_HV[-1])], colour=AMBER, dashes=(4, 3), order=5)
    for hardness in (here.maynier_hv, here.yurioka_hv):
        dot(axes, best, hardness, colour=AMBER, size=10, edge_width=1.4, order=18)


def _draw_published(axes):
    """Draw published hardnesses as bars at the right of the plane, numbered, and list them."""
    inch, end = _inch_x(axes), axes.get_xlim()[1]
    write(axes, end + LIST_FROM_IN * inch, 690, "published", across="left", weight="bold")
    for place, found in enumerate(published_hardnesses()):
        low = found.high_hv - 12 if found.low_hv is None else found.low_hv
        left = end + (BARS_FROM_IN + 0.31 * place) * inch
        corners = box(left, low, BAR_IN * inch, found.high_hv - low)
        area(axes, corners, fill=MID_SLATE if found.what == "weld" else PALE_SLATE, edge=SLATE, width=LINE)
        if found.what == "rivet":
            area(axes, corners, edge=SLATE, hatch="//", order=3.1)
        write(axes, left + BAR_IN * inch / 2, found.high_hv + 22, str(place + 1), weight="bold")
        told = [
            *textwrap.wrap(f"{place + 1} {found.name}", 23, subsequent_indent="   "),
            f"   {_published_span(found)}",
        ]
        write(axes, end + LIST_FROM_IN * inch, 645 - 112 * place, "\n".join(told), across="left", up="top")
    told = "filled: stud welds\nhatched: rivets"
    write(axes, end + LIST_FROM_IN * inch, 175, told, across="left", up="top", colour=TEXT_GREY)


def _published_span(found):
    """Tell one published hardness."""
    if found.low_hv is None:
        return f"up to {number(found.high_hv)} HV"
    return f"{_span(found.low_hv, found.high_hv)} HV"


def _words(rivet, at, here, band, alone_s):
    """Tell the chart in sentences."""
    published = "; ".join(f"{found.name} {_published_span(found)}" for found in published_hardnesses())
    limit = hardness_limit_hv()
    structure = "martensite alone" if bool(here.all_martensite) else "not martensite alone"
    return (
        f"Hardness of the heat-affected zone of a rivet of {rivet} against the time from 800 to 500 degrees. "
        f"This weld takes {_span(at.low, at.high, digits=2)} s, best {number(at.best)} s: {structure}, "
        f"{number(here.maynier_hv, digits=0)} HV after Maynier and {number(here.yurioka_hv, digits=0)} HV "
        f"after Yurioka for a usual cast, {_span(band.low, band.high)} HV over the grade. "
        f"Martensite alone is left by up to {number(alone_s, digits=1)} s. "
        f"The limit for seams is {number(limit.best)} HV ({_span(limit.low, limit.high)}). "
        f"Published: {published}."
    )
