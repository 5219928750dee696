"""A day's pulls one after the other, with the limits within which a set-up that stays the same keeps."""

import numpy as np

from drawings.marks import bare_axes, dot, line, number, write
from drawings.picture import picture_of
from drawings.style import AMBER, GREY, LINE, SLATE, TEXT_AMBER, TEXT_GREY, THIN, sheet_of_paper
from secondplate.checks import require_finite
from secondplate.trials_charts import individuals_charts

WIDTH_IN, HEIGHT_IN = 8.6, 4.0
LEFT_IN, RIGHT_IN, FLOOR_IN, ROOF_IN = 0.5, 6.4, 0.8, 3.55


def pull_control(pull_forces_n, *, limits_from=None):
    """Draw pulls in their order with centre and limits of a chart of single values.

    Parameters
    ----------
    pull_forces_n : array
        Force of each pull in its order, at least 3 [N]
    limits_from : int or None
        The limits rest on so many first pulls; None takes all [-]

    Returns
    -------
    picture : Picture
        Points and limits; what lies outside is a diamond with its number [-]

    Raises
    ------
    ValueError
        If there are fewer than 3 pulls, or those that the limits rest on are all alike.

    Notes
    -----
    Limits from ``secondplate.trials_charts``.

    Examples
    --------
    >>> "Outside: pull 6" in pull_control([4100, 4000, 4150, 4050, 4100, 2900], limits_from=5).alt
    True
    """
    forces = np.asarray(require_finite("pull forces", pull_forces_n, unit="N"), dtype=float)
    if forces.ndim != 1 or len(forces) < 3:
        message = f"pulls must be 3 at least, got {forces.size}"
        raise ValueError(message)
    chart, _ = individuals_charts(forces[:limits_from])
    outside = np.flatnonzero((forces < chart.lower) | (forces > chart.upper))
    low, high = min(forces.min(), chart.lower), max(forces.max(), chart.upper)
    spare = 0.06 * (high - low)
    low, high = low - spare, high + spare

    def place(number_of_pull, force):
        across = LEFT_IN + (number_of_pull - 0.5) / len(forces) * (RIGHT_IN - LEFT_IN)
        return across, FLOOR_IN + (force - low) / (high - low) * (ROOF_IN - FLOOR_IN)

    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, HEIGHT_IN))
        _draw_levels(axes, chart, place)
        line(axes, [place(i + 1, force) for i, force in enumerate(forces)], width=LINE)
        for i, force in enumerate(forces):
            x, y = place(i + 1, force)
            if i in outside:
                dot(axes, x, y, colour=AMBER, size=10, marker="D", edge=SLATE, edge_width=1.2)
                up = 0.2 if force > chart.centre else -0.2
                write(axes, x, y + up, str(i + 1), colour=TEXT_AMBER, weight="bold")
            else:
                dot(axes, x, y, size=6)
        write(axes, (LEFT_IN + RIGHT_IN) / 2, 0.28, "pulls in their order")
        line(axes, [(LEFT_IN, FLOOR_IN - 0.15), (RIGHT_IN, FLOOR_IN - 0.15)], colour=GREY, width=THIN)
        for each in sorted({1, (len(forces) + 1) // 2, len(forces)}):
            write(axes, place(each, 0)[0], FLOOR_IN - 0.3, str(each), up="center", colour=TEXT_GREY)
        return picture_of(figure, _words(forces, chart, outside, limits_from))


def _draw_levels(axes, chart, place):
    """Draw centre and limits, and write them at the right."""
    for name, level, dashes in (
        ("upper limit", chart.upper, (7, 3)),
        ("centre", chart.centre, None),
        ("lower limit", chart.lower, (7, 3)),
    ):
        y = place(0, level)[1]
        line(axes, [(LEFT_IN, y), (RIGHT_IN, y)], colour=GREY, width=1.2, dashes=dashes, order=2)
        write(axes, RIGHT_IN + 0.1, y, f"{name} {number(level / 1000)} kN", across="left")


def _words(forces, chart, outside, limits_from):
    """Tell the chart in sentences."""
    pulls = ", ".join(number(force / 1000) for force in forces)
    rest = "all pulls" if limits_from is None else f"the first {limits_from} pulls"
    names = " and ".join(f"pull {i + 1}" for i in outside) or "none"
    return (
        f"Pulls in their order ({len(forces)}), in kN: {pulls}. Limits from {rest}: "
        f"{number(chart.lower / 1000)} to {number(chart.upper / 1000)} kN about "
        f"{number(chart.centre / 1000)} kN. "
        f"Outside: {names}."
    )
