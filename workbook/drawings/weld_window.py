"""The process window: what becomes of the rivet head over current and time, and where settings lie in it."""

import textwrap
from dataclasses import dataclass

import numpy as np

from drawings.charts import chosen_point, plane
from drawings.marks import area, box, dot, line, number, write
from drawings.picture import picture_of
from drawings.room import roomiest
from drawings.state_map import state_map, strips
from drawings.style import (
    AMBER,
    GREY,
    HEADING_PT,
    LINE,
    MID_AMBER,
    PALE_AMBER,
    PALE_SLATE,
    PAPER,
    SLATE,
    TEXT,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.bench import window as window_of_job
from secondplate.checks import require_between
from secondplate.process_window import (
    CURRENT_LIMITS_A,
    STATES,
    TIME_LIMITS_MS,
    chart_points,
    process_window,
)

WIDTH_IN, HEIGHT_IN = 9.2, 5.6
PLOT = (0.085, 0.125, 0.6, 0.82)
FILLS = {"cold": PALE_SLATE, "sound": PAPER, "hot": PALE_AMBER, "burnt through": MID_AMBER}
NAMES = {"cold": "cold", "sound": "sound", "hot": "hot", "burnt through": "head burnt through"}
MARKS = ("s", "^", "D")
LETTER_IN, LINE_IN = 0.105, 0.27


def weld_window(*, stud_diameter_mm, web_mm, current_a, time_ms, job=None):
    """Draw the plane of weld time and current with cold, sound, hot and burnt through, and settings in it.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter, one of 3, 4, 5 and 6 mm [mm]
    web_mm : float
        Thickness of the web of the rivet head, 0.3 mm to 3 mm; that of the job where one is given [mm]
    current_a : float
        Chosen current, 50 A to 1500 A [A]
    time_ms : float
        Chosen weld time, 2 ms to 200 ms [ms]
    job : secondplate.bench.WeldJob or None
        Rivet and machine of the bench: then currents are as this machine shows them [-]

    Returns
    -------
    picture : Picture
        The map, its doubtful fringe hatched, with the chart's, the shop's and the chosen setting [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    States from ``secondplate.process_window``, settings from its ``chart_points``. The limits
    between the states are judgement.

    Examples
    --------
    >>> "sound" in weld_window(stud_diameter_mm=6, web_mm=1.1, current_a=600, time_ms=30).alt
    True
    """
    current_a = require_between("current", current_a, *_limits_a(job), unit="A")
    time_ms = require_between("weld time", time_ms, *TIME_LIMITS_MS, unit="ms")
    find = _finder(stud_diameter_mm, web_mm, job)
    charts = [point for point in chart_points(stud_diameter_mm) if point.process == "short cycle"]
    settings = _settings(find, charts, current_a, time_ms)
    plan = state_map(
        find,
        longest_ms=max([time_ms * 1.1, 72.0, *(point.time_ms * 1.1 for point in charts)]),
        largest_a=max([current_a * 1.08, 1000.0, *(point.current_a * 1.1 for point in charts)]),
        limits_a=_limits_a(job),
    )
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        ends = {"wide": (0.0, plan.times_ms[-1]), "high": (0.0, plan.currents_a[-1])}
        axes = plane(figure, PLOT, across="weld time in ms", up="current in A", **ends)
        _draw_states(axes, plan)
        _name_states(axes, plan, settings)
        _draw_settings(axes, settings)
        return picture_of(figure, _words(stud_diameter_mm, web_mm, settings, plan, job))


@dataclass(frozen=True, kw_only=True)
class _Setting:
    """One setting and what the library says of it."""

    name: str
    current_a: float
    time_ms: float
    state: str
    doubtful: bool

    def told(self):
        """Return the verdict in a word or two."""
        return NAMES[self.state] + (", doubtful" if self.doubtful else "")

    def words(self):
        """Return the setting and its verdict in words."""
        return f"{self.name} {number(self.current_a)} A for {number(self.time_ms)} ms, {self.told()}"


def _limits_a(job):
    """Return the least and the greatest current of the map; a bench counts them as its machine shows them."""
    share = 1.0 if job is None else float(job.current_share)
    low, high = CURRENT_LIMITS_A
    return max(low, np.ceil(low / share)), min(high, np.floor(high / share))


def _finder(stud_diameter_mm, web_mm, job):
    """Return the map of the library: of any stud and web, or of one bench."""

    def find(current_a, time_ms):
        if job is not None:
            return window_of_job(job, stud_diameter_mm=stud_diameter_mm, current_a=current_a, time_ms=time_ms)
        return process_window(
            stud_diameter_mm=stud_diameter_mm, web_mm=web_mm, current_a=current_a, time_ms=time_ms
        )

    return find


def _settings(find, charts, current_a, time_ms):
    """Return the charts' settings and, last, the chosen one, each with what the library says of it."""
    names = [*(point.rule for point in charts), "chosen setting"]
    currents = np.array([*(point.current_a for point in charts), current_a])
    times = np.array([*(point.time_ms for point in charts), time_ms])
    found = find(currents, times)
    return [
        _Setting(name=name, current_a=current, time_ms=time, state=str(state), doubtful=bool(doubt))
        for name, current, time, state, doubt in zip(
            names, currents, times, found.state, found.doubtful, strict=True
        )
    ]


def _outline(strip):
    """Return the outline of a strip."""
    return np.vstack([strip[:, (0, 1)], strip[::-1, (0, 2)]])


def _draw_states(axes, plan):
    """Paint each state over the one below it, its border, and hatch the doubtful fringe."""
    end, top = axes.get_xlim()[1], axes.get_ylim()[1]
    area(axes, box(0, 0, end, top), fill=FILLS["cold"], order=0.5)
    for level, state in list(enumerate(STATES))[1:]:
        for strip in strips(plan, level - 1):
            area(axes, _outline(strip), fill=FILLS[state], order=0.5 + 0.1 * level)
            line(axes, strip[:, :2], width=LINE, order=2)
    for strip in strips(plan, -1):
        area(axes, _outline(strip), edge=GREY, hatch="////", order=1.5)


def _name_states(axes, plan, settings):
    """Write the name of each state where it has most room, off the settings and, if it can be, the fringe."""
    end, top = axes.get_xlim()[1], axes.get_ylim()[1]
    inch = np.array([end / (PLOT[2] * WIDTH_IN), top / (PLOT[3] * HEIGHT_IN)])
    taken = [(setting.time_ms, setting.current_a) for setting in settings]
    for level, state in enumerate(STATES):
        half = inch * np.array([LETTER_IN * len(NAMES[state]), LINE_IN]) / 2
        for fringe_too, more in ((False, (1.8, 1.3, 1.05)), (True, (1.05,))):

            def holds(times_ms, currents_a, level=level, fringe_too=fringe_too):
                """Tell where the map has this state."""
                index, doubtful = plan.at(currents_a, times_ms)
                return (index == level) & (fringe_too | ~doubtful)

            place = roomiest(
                holds, across=(0, end), up=(0, top), half=half, taken=taken, margin=0.15 * inch, more=more
            )
            if place:
                ground = {"facecolor": FILLS[state], "edgecolor": "none", "pad": 1.5}
                write(axes, *place, NAMES[state], weight="bold", size=HEADING_PT, bbox=ground)
                break


def _draw_settings(axes, settings):
    """Mark each setting and tell it at the right of the plane, over the key to the hatch."""
    end, top = axes.get_xlim()[1], axes.get_ylim()[1]
    *rules, chosen = settings
    chosen_point(axes, chosen.time_ms, chosen.current_a)
    for setting, marker in zip(rules, MARKS, strict=False):
        dot(axes, setting.time_ms, setting.current_a, size=8, marker=marker, edge_width=1.2, order=19)
    marks = [*MARKS[: len(rules)], "o"]
    for place, (setting, marker) in enumerate(zip(settings, marks, strict=True)):
        level, x = top * (0.95 - 0.235 * place), end * 1.05
        own = setting is chosen
        dot(
            axes,
            x,
            level,
            colour=AMBER if own else SLATE,
            size=11 if own else 9,
            marker=marker,
            edge_width=1.2,
        )
        told = "\n".join(
            [
                *textwrap.wrap(setting.name, 23),
                f"{number(setting.current_a)} A, {number(setting.time_ms)} ms:",
                setting.told(),
            ]
        )
        write(
            axes,
            end * 1.09,
            level + 0.027 * top,
            told,
            across="left",
            up="top",
            colour=TEXT_AMBER if own else TEXT,
            weight="bold" if own else "normal",
        )
    area(axes, box(end * 1.03, 0.02 * top, end * 0.05, 0.06 * top), edge=GREY, hatch="////")
    area(axes, box(end * 1.03, 0.02 * top, end * 0.05, 0.06 * top), edge=GREY, width=THIN)
    write(axes, end * 1.11, 0.05 * top, "doubtful: limits\nare judgement", across="left", colour=TEXT_GREY)


def _words(stud_diameter_mm, web_mm, settings, plan, job):
    """Tell the map in sentences."""
    web = number(web_mm if job is None else job.web_mm)
    shown = "" if job is None else " Currents are as this machine shows them."
    return (
        f"Process window of a {number(stud_diameter_mm)} mm stud on a rivet head with a web of {web} mm, "
        f"weld time to {number(plan.times_ms[-1])} ms against current to {number(plan.currents_a[-1])} A."
        f"{shown} {_border_words(plan, settings[-1].time_ms)} "
        f"Settings: {'; '.join(setting.words() for setting in settings)}. "
        "The borders are hatched where they are doubtful, since the limits of the melted depth are judgement."
    )


def _border_words(plan, time_ms):
    """Tell the currents at which one state turns into the next, at the time of the map next to one time."""
    column = int(np.abs(plan.times_ms - time_ms).argmin())
    index = plan.masks[:-1, :, column].sum(axis=0)
    states = [f"{NAMES[STATES[index[0]]]} at first"]
    for row in np.flatnonzero(index[1:] != index[:-1]):
        found = plan.borders_a[:-1, row, column]
        states.append(f"{NAMES[STATES[index[row + 1]]]} from {number(np.nanmax(found), digits=0)} A")
    return f"At {number(plan.times_ms[column], digits=0)} ms with rising current: {', '.join(states)}."
