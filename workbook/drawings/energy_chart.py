"""Current against time: each rule's field of start values, lines of equal arc energy, the chosen point."""

import textwrap

import numpy as np

from drawings.marks import area, box, dot, leader, line, number, write
from drawings.picture import picture_of
from drawings.rule_fields import rule_fields
from drawings.scales import ROUND_CLOSE, round_up
from drawings.style import (
    AMBER,
    GREY,
    HEADING_PT,
    LINE,
    MID_AMBER,
    MID_GREY,
    MID_SLATE,
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
        _draw_point(axes, current_a, time_ms, energy_j, voltage_v)
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
    axes = figure.add_axes(PLOT)
    longest = max([time_ms, *(field.time_ms.high for field in fields)])
    largest = max([current_a, *(field.current_a.high for field in fields)])
    axes.set_xlim(0, round_up(longest * 1.08, among=ROUND_CLOSE))
    axes.set_ylim(0, round_up(largest * 1.08, among=ROUND_CLOSE))
    axes.set_xlabel("weld time in ms")
    axes.set_title("current in A", loc="left", fontsize=axes.xaxis.label.get_size(), color=TEXT)
    return axes


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
    taken = [(f.time_ms.low, f.time_ms.high, f.current_a.low, f.current_a.high) for f in fields]
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
    longest, largest = axes.get_xlim()[1], axes.get_ylim()[1]
    for rank, (field, look) in enumerate(zip(ranked, FIELD_LOOKS, strict=False)):
        _draw_field(axes, field, look)
        holds = field.holds(current_a, time_ms)
        text = (
            textwrap.fill(field.name.replace(" mm", "\N{NO-BREAK SPACE}mm"), 22)
            + f"\nsetting {'inside' if holds else 'outside'}"
        )
        y = largest * (0.97 - 0.94 * (rank + 0.5) / len(ranked))
        low, high = field.current_a.low, field.current_a.high
        to = (field.time_ms.high, np.clip(y, low + 0.2 * (high - low), high - 0.2 * (high - low)))
        leader(axes, text, at=(longest * 1.06, y), to=to, weight="bold" if holds else "normal")


def _draw_field(axes, field, look):
    """Draw one field: pale fill, hatch, outline, and a small cross on its best values."""
    fill, ink, hatch = look
    corner = (field.time_ms.low, field.current_a.low)
    size = (field.time_ms.high - field.time_ms.low, field.current_a.high - field.current_a.low)
    area(axes, box(*corner, *size), fill=fill, order=2).set_alpha(0.75)
    area(axes, box(*corner, *size), edge=MID_SLATE if ink != AMBER else MID_AMBER, hatch=hatch, order=2.1)
    area(axes, box(*corner, *size), edge=ink, width=LINE, order=3)
    dot(
        axes,
        field.time_ms.best,
        field.current_a.best,
        marker="+",
        colour=ink,
        size=9,
        edge=ink,
        edge_width=1.4,
        order=3.5,
    )


def _draw_point(axes, current_a, time_ms, energy_j, voltage_v):
    """Draw the chosen setting, and its numbers over the plane where they hide nothing."""
    dot(axes, time_ms, current_a, colour=AMBER, size=12, edge_width=1.6)
    for foot in ((time_ms, 0), (0, current_a)):
        line(axes, [foot, (time_ms, current_a)], colour=AMBER, width=THIN, dashes=(4, 3))
    text = (
        f"{number(current_a)} A for {number(time_ms)} ms: {number(energy_j, digits=0)} J "
        f"at {number(voltage_v)} V"
    )
    write(
        axes,
        1.0,
        1.018,
        text,
        colour=TEXT_AMBER,
        weight="bold",
        size=HEADING_PT - 0.5,
        across="right",
        up="bottom",
        transform=axes.transAxes,
    )
