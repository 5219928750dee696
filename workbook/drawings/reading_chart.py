"""One reading against a limit: where the true value may lie, and the strip in which nothing is decided."""

import numpy as np

from drawings.marks import area, bare_axes, box, line, number, write
from drawings.picture import picture_of
from drawings.style import (
    GREY,
    MID_SLATE,
    PALE_AMBER,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_above, require_finite
from secondplate.measuring import conformity, conformity_probability, guard_band_mm

WIDTH_IN, HEIGHT_IN = 8.6, 3.6
LEFT_IN, RIGHT_IN, FLOOR_IN, TOP_IN = 0.4, 8.2, 0.85, 2.75
_REACH = 4.5  # standard uncertainties to each side


def reading_chart(reading_mm, *, standard_uncertainty_mm, least_mm):
    """Draw a reading as a bell beside a lower limit with its guard band.

    Parameters
    ----------
    reading_mm : float
        The reading [mm]
    standard_uncertainty_mm : float
        Its standard uncertainty, above 0 [mm]
    least_mm : float
        Lower limit [mm]

    Returns
    -------
    picture : Picture
        The bell, the limit, the undecided strip, the verdict [-]

    Raises
    ------
    ValueError
        If a value is not finite or the uncertainty is not above 0.

    Notes
    -----
    Verdict and probability from ``secondplate.measuring``.

    Examples
    --------
    >>> "Verdict: not decided" in reading_chart(0.41, standard_uncertainty_mm=0.0135, least_mm=0.40).alt
    True
    """
    reading = float(require_finite("reading", reading_mm, unit="mm"))
    doubt = float(require_above("standard uncertainty", standard_uncertainty_mm, 0, unit="mm"))
    least = float(require_finite("lower limit", least_mm, unit="mm"))
    given = {"standard_uncertainty_mm": doubt, "least_mm": least}
    verdict, chance = conformity(reading, **given), float(conformity_probability(reading, **given))
    guard = float(guard_band_mm(doubt, confidence_percent=95.0))
    low, high = min(reading, least) - _REACH * doubt, max(reading, least) + _REACH * doubt

    def place(value):
        return LEFT_IN + (value - low) / (high - low) * (RIGHT_IN - LEFT_IN)

    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, HEIGHT_IN))
        strip = box(place(least - guard), FLOOR_IN, place(least + guard) - place(least - guard), 1.9)
        area(axes, strip, fill=PALE_AMBER, order=0.5)
        _draw_bell(axes, reading, doubt, least, place)
        line(axes, [(LEFT_IN, FLOOR_IN), (RIGHT_IN, FLOOR_IN)], colour=GREY, width=THIN)
        line(axes, [(place(least), FLOOR_IN), (place(least), TOP_IN)], colour=TEXT_AMBER, dashes=(7, 3))
        line(axes, [(place(reading), FLOOR_IN), (place(reading), TOP_IN)])
        beside = min(max(place(least), 1.8), WIDTH_IN - 1.8)
        write(axes, beside, FLOOR_IN - 0.22, f"limit {number(least, digits=3)} mm", colour=TEXT_AMBER)
        write(axes, beside, 0.22, "in the strip nothing is decided", colour=TEXT_GREY)
        above = min(max(place(reading), 1.2), WIDTH_IN - 1.2)
        write(axes, above, TOP_IN + 0.16, f"reading {number(reading, digits=3)} mm")
        write(
            axes,
            WIDTH_IN / 2,
            HEIGHT_IN - 0.25,
            f"{verdict}: enough is left with {100 * chance:.0f} %",
            weight="bold",
        )
        return picture_of(figure, _words(reading, doubt, least, guard, verdict, chance))


def _draw_bell(axes, reading, doubt, least, place):
    """Draw the bell of the reading; the part beyond the limit is filled."""
    values = np.linspace(reading - _REACH * doubt, reading + _REACH * doubt, 121)
    heights = FLOOR_IN + 1.75 * np.exp(-((values - reading) ** 2) / (2 * doubt**2))
    curve = np.column_stack([[place(value) for value in values], heights])
    inside = curve[values >= least]
    if len(inside) > 1:
        first = place(max(least, values[0]))
        corners = [(first, FLOOR_IN), (first, inside[0][1]), *inside, (inside[-1][0], FLOOR_IN)]
        area(axes, corners, fill=MID_SLATE, order=1)
    line(axes, curve, width=1.8)


def _words(reading, doubt, least, guard, verdict, chance):
    """Tell the reading in sentences."""
    return (
        f"A reading of {number(reading, digits=3)} mm with a standard uncertainty of "
        f"{number(doubt, digits=4)} mm against a lower limit of {number(least, digits=3)} mm. Between "
        f"{number(least - guard, digits=3)} and {number(least + guard, digits=3)} mm nothing is decided. "
        f"Verdict: {verdict}; enough is left with {100 * chance:.0f} %."
    )
