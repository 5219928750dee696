"""Rules laid side by side: each rule's band as a bar, so that one sees where they meet and where not."""

import math

from drawings.marks import area, bare_axes, box, dot, line, number, write
from drawings.picture import picture_of
from drawings.scales import round_up
from drawings.style import (
    AMBER,
    GREY,
    MID_GREY,
    MID_SLATE,
    SLATE,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_between

WIDTH_IN = 9.2
LEFT_IN, RIGHT_IN = 4.1, 8.7
ROW_IN, FLOOR_IN, BAR_IN = 0.6, 0.85, 0.24
NARROW_IN = 0.06  # a rule that gives one value is drawn so wide


def rule_bars(advice, *, value=None):
    """Draw what each rule gives for one quantity, and where a chosen value lies among them.

    Parameters
    ----------
    advice : secondplate.advice.Advice
        The rules side by side; one at least [-]
    value : float or None
        A chosen value, in the unit of the advice; None draws none [-]

    Returns
    -------
    picture : Picture
        One bar a rule, its best value as a dot, and the chosen value as a line [-]

    Raises
    ------
    ValueError
        If there is no rule.

    Notes
    -----
    Bands from the library; nothing is made up between rules that do not meet.

    Examples
    --------
    >>> from secondplate.rivet import Sheet, Stack
    >>> from secondplate.rivet_rules import rivet_length_advice_mm
    >>> sheet = Sheet(thickness_mm=2.0)
    >>> advice = rivet_length_advice_mm(Stack(top=sheet, second=sheet), shank_diameter_mm=5.0)
    >>> "7.75 mm" in rule_bars(advice).alt
    True
    """
    require_between("number of rules", len(advice.rules), 1, 20, unit="")
    step, low, high = _scale([rule.band for rule in advice.rules], value)
    top = FLOOR_IN + ROW_IN * len(advice.rules)
    height = top + (0.55 if value is not None else 0.2)

    def place(amount):
        return LEFT_IN + (amount - low) / (high - low) * (RIGHT_IN - LEFT_IN)

    with sheet_of_paper(width_in=WIDTH_IN, height_in=height) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, height))
        for mark in (low + step * count for count in range(round((high - low) / step) + 1)):
            line(axes, [(place(mark), FLOOR_IN), (place(mark), top)], colour=MID_GREY, width=THIN, order=1)
            write(axes, place(mark), FLOOR_IN - 0.19, number(mark))
        line(axes, [(LEFT_IN, FLOOR_IN), (RIGHT_IN, FLOOR_IN)], colour=GREY, width=THIN)
        write(axes, (LEFT_IN + RIGHT_IN) / 2, FLOOR_IN - 0.48, f"{advice.quantity} in {advice.unit}")
        for count, rule in enumerate(advice.rules):
            _draw_rule(axes, top - ROW_IN * (count + 0.5), rule, place, advice.unit)
        if value is not None:
            x = place(value)
            line(axes, [(x, FLOOR_IN), (x, top + 0.1)], colour=AMBER, width=1.6, dashes=(5, 3), order=6)
            told = f"chosen: {number(value)} {advice.unit}"
            write(axes, x, top + 0.26, told, colour=TEXT_AMBER, weight="bold")
        return picture_of(figure, _words(advice, value))


def _scale(bands, value):
    """Return step and ends of a scale in round numbers that holds every band and the value."""
    ends = [end for band in bands for end in (band.low, band.high)] + ([] if value is None else [value])
    step = round_up((max(ends) - min(ends)) / 5 or 1.0)
    low = math.floor(min(ends) / step - 0.25) * step
    return step, max(low, 0.0) if min(ends) >= 0 else low, math.ceil(max(ends) / step + 0.25) * step


def _draw_rule(axes, y, rule, place, unit):
    """Draw one rule: its name and what it rests on, its band, its best value."""
    write(axes, LEFT_IN - 0.2, y + 0.11, rule.rule, across="right", weight="bold")
    write(
        axes,
        LEFT_IN - 0.2,
        y - 0.12,
        f"{_band(rule.band, unit)}, {rule.basis}",
        across="right",
        colour=TEXT_GREY,
    )
    left, right = place(rule.band.low), place(rule.band.high)
    spare = max(NARROW_IN - (right - left), 0) / 2
    area(
        axes,
        box(left - spare, y - BAR_IN / 2, right - left + 2 * spare, BAR_IN),
        fill=MID_SLATE,
        edge=SLATE,
        width=THIN,
    )
    dot(axes, place(rule.band.best), y, colour=SLATE, size=7)


def _band(band, unit):
    """Tell a band with its unit."""
    if band.low == band.high:
        return f"{number(band.low)} {unit}"
    return f"{number(band.low)} to {number(band.high)} {unit}"


def _words(advice, value):
    """Tell the bars in sentences."""
    rules = "; ".join(f"{rule.rule}: {_band(rule.band, advice.unit)}" for rule in advice.rules)
    if advice.agreed is None:
        meet = "They do not all meet."
    else:
        meet = f"All of them allow {_band(advice.agreed, advice.unit)}."
    chosen = "" if value is None else f" Chosen: {number(value)} {advice.unit}."
    return f"What the rules give for the {advice.quantity}. {rules[0].upper()}{rules[1:]}. {meet}{chosen}"
