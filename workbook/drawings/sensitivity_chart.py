"""Which inputs a computed result hangs on: a pair of bars for each, to its low and to its high end."""

import math

from drawings.marks import area, bare_axes, box, line, number, write
from drawings.picture import picture_of
from drawings.scales import round_up
from drawings.style import (
    AMBER,
    GREY,
    LINE,
    MID_GREY,
    MID_SLATE,
    PALE_AMBER,
    SLATE,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_between, require_choice
from secondplate.glossary import GLOSSARY

WIDTH_IN = 9.2
LEFT_IN, RIGHT_IN = 3.75, 7.4
ROW_IN, FLOOR_IN, BAR_IN = 0.56, 0.95, 0.2


def sensitivity_chart(rows, *, result="head depth", most=8):
    """Draw how far one result moves when each input alone moves over its band.

    Parameters
    ----------
    rows : sequence of secondplate.heat.sensitivity.SensitivityRow
        One row an input, the strongest on top [-]
    result : str
        Name in ``secondplate.heat.sensitivity.RESULTS`` [-]
    most : int
        How many inputs are drawn, 1 to 12 [-]

    Returns
    -------
    picture : Picture
        A pair of bars for each input about the line of the best values [-]

    Raises
    ------
    ValueError
        If there are no rows, the result is unknown, or the number is out of its range.

    Notes
    -----
    Rows from ``secondplate.heat.sensitivity``, words from the glossary.

    Examples
    --------
    >>> from secondplate.heat.joint import default_joint
    >>> from secondplate.heat.sensitivity import sensitivity
    >>> from secondplate.heat.weld_settings import charted_settings
    >>> joint = default_joint()
    >>> rows = sensitivity(joint, charted_settings(joint), inputs=("emittance", "voltage_v"))
    >>> "arc voltage" in sensitivity_chart(rows).alt
    True
    """
    # Loaded with the rows anyway; at the top it would load the heat model, and scipy, for every page.
    from secondplate.heat.sensitivity import RESULTS

    require_choice("result", result, tuple(RESULTS))
    require_between("number of inputs", most, 1, 12, unit="")
    require_between("number of rows", len(rows), 1, 1000, unit="")
    unit = {"C": "\N{DEGREE SIGN}C"}.get(RESULTS[result][0], RESULTS[result][0])
    ranked = sorted(rows, key=lambda row: row.effect(result), reverse=True)
    shown, best = ranked[:most], ranked[0].at_best[result]
    names = _names(shown)
    scale = _Scale(shown, result)
    top = FLOOR_IN + ROW_IN * len(shown)
    height = top + 0.75
    with sheet_of_paper(width_in=WIDTH_IN, height_in=height) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, height))
        _draw_scale(axes, scale, top, f"{result} in {unit}")
        for place, (row, name) in enumerate(zip(shown, names, strict=True)):
            _draw_row(axes, top - ROW_IN * (place + 0.5), row, name, result, scale)
        line(axes, [(scale.x(best), FLOOR_IN), (scale.x(best), top + 0.08)], colour=SLATE, width=1.6, order=6)
        told = f"all at best: {_value(best)} {unit}"
        write(axes, scale.x(best), top + 0.22, told, weight="bold")
        _draw_key(axes, top + 0.52, len(ranked) - len(shown))
        return picture_of(figure, _words(shown, names, result, unit, best, len(ranked) - len(shown)))


class _Scale:
    """A scale in round steps that holds the ends of every row."""

    def __init__(self, rows, result):
        """Choose the ends of the scale."""
        ends = [
            value for row in rows for value in (row.at_low[result], row.at_best[result], row.at_high[result])
        ]
        low, high = min(ends), max(ends)
        # Never narrower than a fifth of the value, so that what moves nothing looks like nothing.
        short = max(0.2 * abs(high) - (high - low), 0.0) / 2
        self.step = round_up((high - low + 2 * short) / 5 or 1.0)
        self.low = math.floor((low - short) / self.step + 1e-9) * self.step
        self.high = math.ceil((high + short) / self.step - 1e-9) * self.step

    def x(self, value):
        """Place a value across the sheet, in inches."""
        return LEFT_IN + (value - self.low) / (self.high - self.low) * (RIGHT_IN - LEFT_IN)

    def marks(self):
        """Return the round numbers of the scale."""
        count = round((self.high - self.low) / self.step)
        return [self.low + self.step * index for index in range(count + 1)]


def _term(name):
    """Return the glossary's term and unit for a field."""
    found = next((entry for entry in GLOSSARY if name in entry.names), None)
    return (found.term, found.unit) if found else (name.replace("_", " "), "")


def _names(rows):
    """Return the glossary's term for each row; rows that share one are told by the words of their field."""
    terms = [_term(row.name)[0] for row in rows]
    return [
        row.name.rpartition("_w_")[0].replace("_", " ") if terms.count(term) > 1 else term
        for row, term in zip(rows, terms, strict=True)
    ]


def _band(row):
    """Tell the band of an input with its unit."""
    unit = {"C": "\N{DEGREE SIGN}C", "-": ""}.get(_term(row.name)[1], _term(row.name)[1])
    return f"{number(row.band.low)} to {number(row.band.high)} {unit}".strip()


def _value(value):
    """Write a result: hundredths below ten, whole numbers above."""
    return f"{value:.2f}" if abs(value) < 10 else number(value, digits=0)


def _draw_scale(axes, scale, top, name):
    """Draw the scale under the bars."""
    line(axes, [(LEFT_IN, FLOOR_IN), (RIGHT_IN, FLOOR_IN)], colour=GREY, width=THIN)
    for mark in scale.marks():
        x = scale.x(mark)
        line(axes, [(x, FLOOR_IN), (x, top)], colour=MID_GREY, width=THIN, order=1)
        write(axes, x, FLOOR_IN - 0.19, number(mark, digits=3))
    write(axes, (LEFT_IN + RIGHT_IN) / 2, FLOOR_IN - 0.48, name)


def _draw_row(axes, y, row, name, result, scale):
    """Draw one input: name and band, a bar to its low end over one to its high end, the ends in numbers."""
    write(axes, LEFT_IN - 0.15, y + 0.11, name, across="right", weight="bold")
    write(axes, LEFT_IN - 0.15, y - 0.12, _band(row), across="right", colour=TEXT_GREY)
    zero = scale.x(row.at_best[result])
    for value, low, hatched in ((row.at_low[result], y, True), (row.at_high[result], y - BAR_IN, False)):
        x = scale.x(value)
        corners = box(min(zero, x), low, abs(x - zero), BAR_IN)
        area(axes, corners, fill=PALE_AMBER if hatched else MID_SLATE, order=3)
        if hatched:
            area(axes, corners, edge=AMBER, hatch="////", order=3.1)
        area(axes, corners, edge=AMBER if hatched else SLATE, width=LINE, order=4)
    ends = f"{_value(row.at_low[result])} \N{RIGHTWARDS ARROW} {_value(row.at_high[result])}"
    write(axes, RIGHT_IN + 0.2, y, ends, across="left")


def _draw_key(axes, y, left_out):
    """Say what the two bars are, and how many inputs are not drawn."""
    area(axes, box(0.15, y - 0.09, 0.4, 0.18), fill=PALE_AMBER, order=3)
    area(axes, box(0.15, y - 0.09, 0.4, 0.18), edge=AMBER, hatch="////", width=LINE, order=3.1)
    write(axes, 0.65, y, "input at its low end", across="left", colour=TEXT_AMBER)
    area(axes, box(2.75, y - 0.09, 0.4, 0.18), fill=MID_SLATE, edge=SLATE, width=LINE, order=3)
    write(axes, 3.25, y, "at its high end", across="left")
    write(axes, RIGHT_IN + 0.2, y, "low \N{RIGHTWARDS ARROW} high", across="left", weight="bold")
    if left_out:
        write(axes, 0.15, 0.3, f"{left_out} more move it less", across="left", colour=TEXT_GREY)


def _words(rows, names, result, unit, best, left_out):
    """Tell the bars in sentences."""
    told = "; ".join(
        f"{name}, {_band(row)}: {_value(row.at_low[result])} to {_value(row.at_high[result])}"
        for row, name in zip(rows, names, strict=True)
    )
    more = f" Left out as weaker: {left_out}." if left_out else ""
    unit = unit.replace("\N{DEGREE SIGN}C", "degrees Celsius")
    return (
        f"What the {result} hangs on, each input moved alone from its low to its high end, strongest first. "
        f"With all at their best values it is {_value(best)} {unit}. {told[0].upper()}{told[1:]}.{more}"
    )
