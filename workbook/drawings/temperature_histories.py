"""Temperatures over time at named places of one weld, both axes by powers of ten, with thresholds."""

import numpy as np

from drawings.charts import heading, powers_plane
from drawings.marks import area, box, dot, line, number, write
from drawings.picture import picture_of
from drawings.style import (
    AMBER,
    GREY,
    MID_GREY,
    PALE_AMBER,
    PAPER,
    SLATE,
    TEXT,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_between, require_choice

WIDTH_IN, HEIGHT_IN = 9.2, 5.4
PLOT = (0.075, 0.12, 0.55, 0.8)
USUAL_PLACES = (
    "fusion face",
    "rivet shank",
    "top plate at the head",
    "bond line 4 mm out",
    "second plate under the rivet",
)
THRESHOLDS_C = (800, 500, 180)
# Line styles told apart without colour: ink, width, dashes.
STYLES = (
    (SLATE, 2.6, None),
    (AMBER, 2.6, (7, 2)),
    (SLATE, 1.8, (2, 2)),
    (AMBER, 1.8, None),
    (GREY, 2.6, (8, 2, 2, 2)),
    (GREY, 1.8, (4, 3)),
)
TIME_MARKS_S = (0.001, 0.01, 0.1, 1, 10, 100)
LEVEL_MARKS_C = (20, 50, 100, 200, 500, 1000, 2000, 5000, 10000)
FIRST_S = 0.001
ROOM_IN = 0.52


def temperature_histories(weld, *, places=USUAL_PLACES, thresholds_c=THRESHOLDS_C):
    """Draw how the temperature rises and falls at named places of one weld.

    Parameters
    ----------
    weld : secondplate.heat.weld_result.WeldHeatResult
        The computed weld [-]
    places : sequence of str
        One to six names of ``weld.traces_c`` [-]
    thresholds_c : sequence of float
        Temperatures to draw a line at, 30 C to 2000 C [C]

    Returns
    -------
    picture : Picture
        A line for each place, named where it is hottest, the arc shaded, the thresholds dashed [-]

    Raises
    ------
    ValueError
        If a place is unknown, there are none or more than six, or a threshold is out of its range.

    Notes
    -----
    Temperatures from ``secondplate.heat.weld``.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> from secondplate.heat.weld import weld_heat
    >>> from secondplate.heat.weld_settings import charted_settings
    >>> weld = weld_heat(default_joint(), charted_settings(default_joint()))
    >>> "rivet shank" in temperature_histories(weld).alt
    True
    """
    places = tuple(places)
    require_between("number of places", len(places), 1, len(STYLES), unit="")
    for place in places:
        require_choice("place", place, tuple(weld.traces_c))
    levels = [require_between("threshold", level, 30, 2000, unit="C") for level in thresholds_c]
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = _plane(figure, weld, places, levels)
        _draw_arc(axes, weld)
        for level in levels:
            _draw_threshold(axes, level)
        for place, style in zip(places, STYLES, strict=False):
            _draw_history(axes, weld, place, style)
        _name_histories(axes, weld, places)
        return picture_of(figure, _words(weld, places, levels))


def _plane(figure, weld, places, levels):
    """Return axes that count in powers of ten of seconds and degrees, with numbers along them."""
    hottest = max([*(weld.traces_c[place].max() for place in places), *levels])
    top = next((mark for mark in LEVEL_MARKS_C[2:] if mark > 1.1 * hottest), LEVEL_MARKS_C[-1])
    last = next((mark for mark in TIME_MARKS_S[3:] if mark >= 0.9 * weld.times_s[-1]), TIME_MARKS_S[-1])
    return powers_plane(
        figure,
        PLOT,
        across="time from the start of the arc in s",
        up="temperature in \N{DEGREE SIGN}C",
        marks=TIME_MARKS_S[: TIME_MARKS_S.index(last) + 1],
        levels=LEVEL_MARKS_C[: LEVEL_MARKS_C.index(top) + 1],
        height=np.log10,
    )


def _draw_arc(axes, weld):
    """Shade the time of the arc."""
    low, high = axes.get_ylim()
    end = np.log10(weld.settings.time_ms / 1000)
    start = axes.get_xlim()[0]
    area(axes, box(start, low, max(end - start, 0.01), high - low), fill=PALE_AMBER, order=0.5)
    settings = weld.settings
    heading(axes, f"arc, shaded: {number(settings.current_a)} A for {number(settings.time_ms)} ms")


def _draw_threshold(axes, level_c):
    """Draw one threshold, its number at the right end over it."""
    y, (start, end) = np.log10(level_c), axes.get_xlim()
    line(axes, [(start, y), (end, y)], colour=GREY, width=1.2, dashes=(6, 3), order=2)
    told = f"{number(level_c)} \N{DEGREE SIGN}C"
    ground = {"facecolor": PAPER, "edgecolor": "none", "pad": 1}
    write(axes, end, y, told, across="right", colour=TEXT_GREY, bbox=ground)


def _draw_history(axes, weld, place, style):
    """Draw one place's temperature."""
    ink, width, dashes = style
    times_s = np.unique(np.clip(weld.times_s, *10.0 ** np.array(axes.get_xlim())))
    levels_c = np.interp(times_s, weld.times_s, weld.traces_c[place])
    points = np.log10([times_s, np.maximum(levels_c, LEVEL_MARKS_C[0])]).T
    line(axes, points, colour=ink, width=width, dashes=dashes, order=6)


def _peak(weld, place):
    """Return when and how hot one place is at its hottest."""
    trace = weld.traces_c[place]
    return max(weld.times_s[trace.argmax()], FIRST_S), trace.max()


def _name_histories(axes, weld, places):
    """Name each line at the right of the plane, with a thin line to its peak, the hottest on top."""
    (start, end), (low, high) = axes.get_xlim(), axes.get_ylim()
    inch_x = (end - start) / (PLOT[2] * WIDTH_IN)
    room = ROOM_IN * (high - low) / (PLOT[3] * HEIGHT_IN)
    ranked = sorted(zip(places, STYLES, strict=False), key=lambda each: -_peak(weld, each[0])[1])
    levels = _spread([np.log10(_peak(weld, place)[1]) for place, _ in ranked], room, low, high)
    for (place, (ink, width, dashes)), level in zip(ranked, levels, strict=True):
        time_s, peak_c = _peak(weld, place)
        at = np.log10([time_s, peak_c])
        line(axes, [at, (end, at[1]), (end + 0.15 * inch_x, level)], colour=MID_GREY, width=THIN, order=5)
        dot(axes, *at, colour=ink, size=6)
        line(
            axes,
            [(end + 0.15 * inch_x, level), (end + 0.6 * inch_x, level)],
            colour=ink,
            width=width,
            dashes=dashes,
            solid_capstyle="butt",
        )
        told = f"{place}\n{number(peak_c, digits=0)} \N{DEGREE SIGN}C after {_seconds(time_s)}"
        write(axes, end + 0.7 * inch_x, level, told, across="left", colour=TEXT)


def _spread(wanted, room, low, high):
    """Return levels, falling, near those wanted, each with room under the one before and all in the plane."""
    levels = []
    for level in wanted:
        levels.append(min(level, levels[-1] - room if levels else high - room / 2))
    short = low + room / 2 - levels[-1]
    if short > 0:
        for index in range(len(levels) - 1, -1, -1):
            least = low + room / 2 + room * (len(levels) - 1 - index)
            levels[index] = max(levels[index], least)
    return levels


def _seconds(time_s):
    """Write a time in ms or s."""
    return f"{number(time_s * 1000, digits=0)} ms" if time_s < 0.1 else f"{number(time_s)} s"


def _words(weld, places, levels):
    """Tell the histories in sentences."""
    told = []
    for place in places:
        time_s, peak_c = _peak(weld, place)
        over = [
            f"over {number(level)} for {_seconds(weld.time_above_s(place, level))}"
            for level in sorted(levels, reverse=True)
            if peak_c > level
        ]
        peak = f"{place} {number(peak_c, digits=0)} degrees after {_seconds(time_s)}"
        told.append(", ".join([peak, *over]))
    return (
        f"Temperature over time at places of a stud weld of {number(weld.settings.current_a)} A for "
        f"{number(weld.settings.time_ms)} ms, in degrees Celsius, both axes by powers of ten. "
        f"Hottest: {'; '.join(told)}."
    )
