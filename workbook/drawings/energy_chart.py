"""Current against time: each rule's field of start values, lines of equal arc energy, the chosen point."""

import textwrap

import numpy as np

from drawings.charts import chosen_point, heading, plane
from drawings.marks import area, box, dot, leader, line, number, write
from drawings.picture import picture_of
from drawings.rule_fields import rule_fields
from drawings.scales import ROUND_CLOSE, round_up
from drawings.style import (
    AMBER,
    GREY,
    LINE,
    MID_AMBER,
    MID_GREY,
    MID_SLATE,
    PALE_AMBER,
    PALE_GREY,
    PALE_SLATE,
    PAPER,
    SLATE,
    TEXT_GREY,
    sheet_of_paper,
)
from secondplate.arc import arc_energy_j, voltage_band_v
from secondplate.checks import require_between

WIDTH_IN, HEIGHT_IN = 9.2, 5.6
PLOT = (0.085, 0.125, 0.605, 0.8)
FIELD_LOOKS = (
    (PALE_AMBER, AMBER, "\\\\\\"),
    (PALE_SLATE, SLATE, "///"),
    (PALE_GREY, GREY, "xx"),
    (PALE_SLATE, GREY, "--"),
    (PALE_GREY, SLATE, "||"),
)
ANY_TIME_LOOK = (PALE_GREY, GREY, "")
EVEN_J = (20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000, 50000)


def energy_chart(
    *,
    stud_diameter_mm,
    current_a,
    time_ms,
    stud_material="austenitic stainless",
    base="steel rivet head",
    processes=("drawn arc with gas", "short cycle"),
):
    """Draw the plane of time and current: the rules' fields, lines of equal energy, the setting.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter, 3 mm to 12 mm [mm]
    current_a : float
        Chosen current, 50 A to 3000 A [A]
    time_ms : float
        Chosen weld time, 1 ms to 1000 ms [ms]
    stud_material : str
        As in ``secondplate.stud_weld.set_up`` [-]
    base : str
        As in ``secondplate.stud_weld.set_up`` [-]
    processes : tuple of str
        Processes whose rules are shown [-]

    Returns
    -------
    picture : Picture
        The chart [-]

    Raises
    ------
    ValueError
        If a value lies outside its range, or material, base or process is unknown.

    Notes
    -----
    Energy is E = U I t with U the best value of ``secondplate.arc.voltage_band_v``; the fields come from
    ``secondplate.stud_weld.set_up``, which names the source of each rule.

    Examples
    --------
    >>> "540 J" in energy_chart(stud_diameter_mm=6, current_a=600, time_ms=30).alt
    True
    """
    stud_diameter_mm = require_between("stud diameter", stud_diameter_mm, 3, 12, unit="mm")
    current_a = require_between("current", current_a, 50, 3000, unit="A")
    time_ms = require_between("weld time", time_ms, 1, 1000, unit="ms")
    fields = rule_fields(
        stud_diameter_mm=stud_diameter_mm, stud_material=stud_material, base=base, processes=processes
    )
    voltage_v = voltage_band_v().best
    energy_j = arc_energy_j(voltage_v=voltage_v, current_a=current_a, time_ms=time_ms)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = _plane(figure, fields, current_a, time_ms)
        _draw_even_energy(axes, voltage_v, fields, current_a, time_ms)
        _draw_fields(axes, fields, current_a, time_ms)
        chosen_point(axes, time_ms, current_a)
        setting = f"{number(current_a)} A for {number(time_ms)} ms"
        heading(axes, f"{setting}: {number(energy_j, digits=0)} J at {number(voltage_v)} V")
        return picture_of(
            figure, _words(stud_diameter_mm, stud_material, fields, current_a, time_ms, energy_j, voltage_v)
        )


def _words(stud_diameter_mm, stud_material, fields, current_a, time_ms, energy_j, voltage_v):
    """Tell the chart in sentences."""
    told = [
        f"{field.told()}, setting {'inside' if field.holds(current_a, time_ms) else 'outside'}"
        for field in fields
    ]
    rules = "Start values by rule: " + "; ".join(told) + "." if told else "No rule is held for this stud."
    return (
        f"Current against weld time for a {number(stud_diameter_mm)} mm stud of {stud_material}. "
        f"Chosen setting: {number(current_a)} A for {number(time_ms)} ms, an arc energy of "
        f"{number(energy_j, digits=0)} J at {number(voltage_v)} V. {rules}"
    )


def _plane(figure, fields, current_a, time_ms):
    """Return the axes of the plane, large enough for every field and the point."""
    longest = max([time_ms, *(field.time_ms.high for field in fields)])
    largest = max([current_a, *(field.current_a.high for field in fields)])
    ends = {
        "wide": (0, round_up(longest * 1.08, among=ROUND_CLOSE)),
        "high": (0, round_up(largest * 1.08, among=ROUND_CLOSE)),
    }
    return plane(figure, PLOT, across="weld time in ms", up="current in A", **ends)


def _free_place(axes, even_j, voltage_v, taken):
    """Return a place on a line of equal energy for its number, off every taken rectangle, or None."""
    longest, largest = axes.get_xlim()[1], axes.get_ylim()[1]
    half = (0.36 / (PLOT[2] * WIDTH_IN) * longest, 0.13 / (PLOT[3] * HEIGHT_IN) * largest)
    crossing = np.sqrt(even_j * 1000 / voltage_v * longest / largest)
    for stretch in (1.0, 0.85, 1.18, 0.72, 1.4, 0.6, 1.65):
        x = crossing * stretch
        y = even_j * 1000 / (voltage_v * x)
        inside = half[0] < x < longest - half[0] and half[1] < y < largest - half[1]
        if inside and all(
            x + half[0] < left or x - half[0] > right or y + half[1] < low or y - half[1] > high
            for left, right, low, high in taken
        ):
            taken.append((x - half[0], x + half[0], y - half[1], y + half[1]))
            return x, y
    return None


def _draw_even_energy(axes, voltage_v, fields, current_a, time_ms):
    """Draw lines of equal energy, each with its number near the diagonal of the plane."""
    longest, largest = axes.get_xlim()[1], axes.get_ylim()[1]
    times = np.linspace(longest / 400, longest, 400)
    energy_j = current_a * time_ms * voltage_v / 1000
    axes.plot(times, current_a * time_ms / times, color=AMBER, linewidth=LINE, zorder=4)
    taken = [
        (field.time_ms.low, field.time_ms.high, field.current_a.low, field.current_a.high)
        for field in fields
        if not field.any_time
    ]
    taken.append(
        (
            time_ms - 0.03 * longest,
            time_ms + 0.03 * longest,
            current_a - 0.04 * largest,
            current_a + 0.04 * largest,
        )
    )
    for even_j in EVEN_J:
        if not 0.005 < even_j * 1000 / (voltage_v * longest * largest) < 0.95:
            continue
        axes.plot(times, even_j * 1000 / (voltage_v * times), color=MID_GREY, linewidth=1.0, zorder=1)
        # Beside the line of the chosen energy a number could be read as that line's.
        place = _free_place(axes, even_j, voltage_v, taken) if not 0.8 < even_j / energy_j < 1.25 else None
        if place:
            write(
                axes,
                *place,
                f"{number(even_j)} J",
                colour=TEXT_GREY,
                bbox={"facecolor": PAPER, "edgecolor": "none", "pad": 1.5},
            )


def _draw_fields(axes, fields, current_a, time_ms):
    """Draw each rule's field and name it at the right of the plane, the highest field first."""
    ranked = sorted(fields, key=lambda field: -field.current_a.best)
    looks = iter(FIELD_LOOKS)
    for field in ranked:
        _draw_field(axes, field, ANY_TIME_LOOK if field.any_time else next(looks))
    holds = [field.holds(current_a, time_ms) for field in ranked]
    texts = [_field_name(field, inside) for field, inside in zip(ranked, holds, strict=True)]
    longest, largest = axes.get_xlim()[1], axes.get_ylim()[1]
    for field, inside, text, share in zip(ranked, holds, texts, _spread(texts), strict=True):
        low, high = field.current_a.low, field.current_a.high
        level = largest * share
        to = (field.time_ms.high, np.clip(level, low + 0.2 * (high - low), high - 0.2 * (high - low)))
        leader(axes, text, at=(longest * 1.06, level), to=to, weight="bold" if inside else "normal")


def _field_name(field, inside):
    """Return the rule's name in short lines, with where the setting lies."""
    name = field.name.replace(" mm", "\N{NO-BREAK SPACE}mm")
    return f"{textwrap.fill(name, 22)}\nsetting {'inside' if inside else 'outside'}"


def _spread(texts):
    """Return the middles of the texts up the plane, from the top, each given room for its lines."""
    rooms = np.array([text.count("\n") + 2.0 for text in texts])
    ends = np.cumsum(rooms)
    return 1 - (ends - rooms / 2) / ends[-1] if len(texts) else []


def _draw_field(axes, field, look):
    """Draw one field: pale fill, hatch, outline, and a small cross on its best values."""
    fill, ink, hatch = look
    corners = box(
        field.time_ms.low,
        field.current_a.low,
        field.time_ms.high - field.time_ms.low,
        field.current_a.high - field.current_a.low,
    )
    if field.any_time:
        area(axes, corners, fill=fill, order=0.5)
        line(axes, [*corners, corners[0]], colour=ink, width=1.2, dashes=(2, 2), order=1.5)
        return
    area(axes, corners, fill=fill, order=2).set_alpha(0.75)
    area(axes, corners, edge=MID_AMBER if ink == AMBER else MID_SLATE, hatch=hatch, order=2.1)
    area(axes, corners, edge=ink, width=LINE, order=3)
    cross = {"marker": "+", "size": 9, "edge_width": 1.4, "order": 3.5}
    dot(axes, field.time_ms.best, field.current_a.best, colour=ink, edge=ink, **cross)
