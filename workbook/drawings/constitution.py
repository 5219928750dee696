"""The constitution diagram after Schaeffler, with the way of the weld metal from a stud to a rivet."""

import textwrap
from functools import cache

import numpy as np

from drawings.charts import plane
from drawings.marks import area, dot, line, number, write
from drawings.picture import picture_of
from drawings.room import roomiest
from drawings.style import (
    AMBER,
    BOLD,
    GREY,
    HEADING_PT,
    LINE,
    MID_AMBER,
    PALE_AMBER,
    PALE_GREY,
    PALE_SLATE,
    PAPER,
    SLATE,
    TEXT,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_between, require_choice
from secondplate.weldability import dilution_band
from secondplate.weldability_composition import composition, steel_names
from secondplate.weldability_diagram import (
    CHROMIUM_PERCENT,
    NICKEL_PERCENT,
    REGIONS,
    constitution_region,
    diagram_lines,
)
from secondplate.weldability_dilution import dilution_path, martensite_dilution

WIDTH_IN, HEIGHT_IN = 9.2, 5.7
PLOT = (0.075, 0.125, 0.575, 0.82)
SHORT = {"austenite": "A", "martensite": "M", "ferrite": "F"}
BORDERS = 4
TINTS = {"martensite": PALE_AMBER, "austenite": PALE_SLATE, "ferrite": PALE_GREY}


def constitution_diagram(*, stud, rivet, dilution=None):
    """Draw the constitution diagram with the way of the weld metal from a stud to a rivet.

    Parameters
    ----------
    stud : str
        Steel of the stud, one of ``secondplate.weldability_composition.steel_names("stud")`` [-]
    rivet : str
        Steel of the rivet, one of ``steel_names("rivet")`` [-]
    dilution : float or None
        Share of the rivet in the weld metal, 0 to 1; the usual one where None [-]

    Returns
    -------
    picture : Picture
        Nickel over chromium equivalent, the structures, the way and the chosen weld metal on it [-]

    Raises
    ------
    ValueError
        If a steel is unknown or the dilution out of its range.

    Notes
    -----
    Lines, structures and way from ``secondplate.weldability_diagram`` and ``weldability_dilution``.

    Examples
    --------
    >>> "martensite" in constitution_diagram(stud="304-type", rivet="36MnB4").alt
    True
    """
    require_choice("stud", stud, steel_names("stud"))
    require_choice("rivet", rivet, steel_names("rivet"))
    dilution = require_between(
        "dilution", dilution_band().best if dilution is None else dilution, 0, 1, unit=""
    )
    steels = composition(stud), composition(rivet)
    path = dilution_path(*steels, dilution=np.linspace(0, 1, 11))
    marked = dilution_path(*steels, dilution=[0, dilution, 1])
    alone = martensite_dilution(*steels)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = plane(
            figure,
            PLOT,
            across="chromium equivalent in %",
            up="nickel equivalent in %",
            wide=CHROMIUM_PERCENT,
            high=NICKEL_PERCENT,
        )
        _draw_regions(axes)
        _draw_lines(axes)
        _name_regions(axes, path)
        _draw_path(axes, path, steels)
        _tell_marked(axes, stud, rivet, marked, alone)
        return picture_of(figure, _words(stud, rivet, marked, alone))


def _lines():
    """Return the lines of the diagram by name."""
    return {one.name: one for one in diagram_lines()}


def _draw_regions(axes):
    """Tint the three regions of one structure alone; the mixed ones between them stay white."""
    lines = _lines()
    x = np.linspace(*CHROMIUM_PERCENT, 401)
    top = NICKEL_PERCENT[1]
    martensite, austenite, none, only = (
        np.clip(lines[name].nickel_at(x), 0, top)
        for name in ("martensite line", "austenite line", "ferrite line 0 %", "ferrite line 100 %")
    )
    spans = {
        "martensite": (none, martensite),
        "austenite": (np.maximum(austenite, none), np.full_like(x, top)),
        "ferrite": (np.zeros_like(x), only),
    }
    for name, (low, high) in spans.items():
        there = high > low
        outline = np.vstack([np.column_stack([x, low])[there], np.column_stack([x, high])[there][::-1]])
        area(axes, outline, fill=TINTS[name], order=0.5)
        if name == "martensite":
            area(axes, outline, edge=MID_AMBER, hatch="//", order=0.6)


def _draw_lines(axes):
    """Draw the lines: borders strong, ferrite between them thin, each with its percentage at its end."""
    end, top = axes.get_xlim()[1], axes.get_ylim()[1]
    for one in diagram_lines():
        points = np.column_stack([one.chromium_equivalent_percent, one.nickel_equivalent_percent])
        border = one.ferrite_percent in (None, 0, 100)
        line(axes, points, colour=SLATE if border else GREY, width=LINE if border else THIN, order=2)
        if one.ferrite_percent is None:
            continue
        x, y = points[-1]
        told = f"{number(one.ferrite_percent)} %"
        if y >= top:
            write(axes, x, top * 1.027, told, colour=TEXT_GREY)
        else:
            write(axes, end * 1.012, y, told, across="left", colour=TEXT_GREY)
    write(axes, end * 0.825, top * 1.027, "ferrite", across="right", colour=TEXT_GREY)


def _short(region):
    """Return the name of a region, in letters where it is a mixture."""
    parts = [word for word in region.replace(",", "").split() if word != "and"]
    return region if len(parts) == 1 else " + ".join(SHORT[part] for part in parts)


@cache
def _region_grid():
    """Return the region's place in ``REGIONS`` over a fine grid of the diagram, the lowest row first."""
    x, y = np.linspace(*CHROMIUM_PERCENT, 201), np.linspace(*NICKEL_PERCENT, 151)
    regions = constitution_region(x[None, :], y[:, None])
    return np.select([regions == name for name in REGIONS], range(len(REGIONS)))


def _name_regions(axes, path):
    """Write each region's name where it has most room, off the way of the weld metal."""
    grid = _region_grid()
    way = np.column_stack([path.chromium_equivalent_percent, path.nickel_equivalent_percent])
    for index, region in enumerate(REGIONS):
        name = _short(region)
        place = roomiest(
            lambda x, y, index=index: (
                grid[np.clip(np.rint(y * 5), 0, 150).astype(int), np.clip(np.rint(x * 5), 0, 200).astype(int)]
                == index
            ),
            across=CHROMIUM_PERCENT,
            up=NICKEL_PERCENT,
            half=(0.36 * len(name), 0.55),
            taken=way,
            margin=(1.0, 1.0),
        )
        ground = {"facecolor": TINTS.get(region, PAPER), "edgecolor": "none", "pad": 1.5}
        look = {"weight": "bold", "size": HEADING_PT} if name in SHORT else {}
        if place:
            write(axes, *place, name, bbox=ground, **look)


def _draw_path(axes, path, steels):
    """Draw the way from stud to rivet with a dot at each tenth, strong where welds usually lie."""
    way = np.column_stack([path.chromium_equivalent_percent, path.nickel_equivalent_percent])
    line(axes, way, colour=AMBER, width=LINE, order=6)
    band = dilution_band()
    usual = dilution_path(*steels, dilution=[band.low, band.high])
    line(
        axes,
        np.column_stack([usual.chromium_equivalent_percent, usual.nickel_equivalent_percent]),
        colour=AMBER,
        width=2.4 * BOLD,
        order=5.9,
        solid_capstyle="butt",
    )
    for x, y in way[1:-1]:
        dot(axes, x, y, colour=AMBER, size=5, order=7)


def _tell_marked(axes, stud, rivet, marked, alone):
    """Mark stud, weld metal and rivet, and tell each at the right of the plane."""
    names = (f"stud {stud}", f"{number(100 * marked.dilution[1])} % of rivet", f"rivet {rivet}")
    looks = (("s", SLATE), ("o", AMBER), ("D", SLATE))
    for place, (name, (marker, ink)) in enumerate(zip(names, looks, strict=True)):
        at = marked.chromium_equivalent_percent[place], marked.nickel_equivalent_percent[place]
        dot(
            axes,
            *at,
            colour=ink,
            size=11 if marker == "o" else 9,
            marker=marker,
            edge_width=1.4,
            order=18 + place / 10,
        )
        level = 28.6 - 5.6 * place
        dot(axes, 46.3, level, colour=ink, size=11 if marker == "o" else 9, marker=marker, edge_width=1.4)
        told = "\n".join([name, *_wrapped(_told(marked, place))])
        own = marker == "o"
        write(
            axes,
            47.5,
            level + 0.7,
            told,
            across="left",
            up="top",
            colour=TEXT_AMBER if own else TEXT,
            weight="bold" if own else "normal",
        )
    usual = dilution_band()
    key = [
        "martensite alone",
        f"from {number(100 * alone.best, digits=0)} % of rivet",
        f"({number(100 * alone.low, digits=0)} to {number(100 * alone.high, digits=0)} %)",
        "",
        f"thick: usual, {number(100 * usual.low)} to {number(100 * usual.high)} %",
        "A austenite, F ferrite,",
        "M martensite",
    ]
    write(axes, 45.8, 12.3, "\n".join(key), across="left", up="top", colour=TEXT_GREY)


def _told(marked, place):
    """Tell the structure at one marked place."""
    doubt = ", near a border" if marked.near_border[place] else ""
    return f"{marked.region[place]}{doubt}"


def _wrapped(text):
    """Break a text into lines that fit beside the plane."""
    return textwrap.wrap(text, 22)


def _words(stud, rivet, marked, alone):
    """Tell the way in sentences."""
    at = [
        f"chromium equivalent {number(x, digits=1)} %, nickel equivalent {number(y, digits=1)} %, "
        f"{_told(marked, place)}"
        for place, (x, y) in enumerate(
            zip(marked.chromium_equivalent_percent, marked.nickel_equivalent_percent, strict=True)
        )
    ]
    share = number(100 * marked.dilution[1])
    low, high = (number(100 * end, digits=0) for end in (alone.low, alone.high))
    usual = dilution_band()
    return (
        f"Constitution diagram with the way of the weld metal from a stud of {stud} to a rivet of {rivet}. "
        f"The stud lies at {at[0]}. With {share} % of rivet in it the weld metal lies at {at[1]}. "
        f"The rivet lies at {at[2]}. "
        f"From {number(100 * alone.best, digits=0)} % of rivet on the weld metal is martensite alone "
        f"({low} to {high} %, as the lines are not sure); "
        f"welds usually hold {number(100 * usual.low)} to {number(100 * usual.high)} %."
    )
