"""A class in pictures, for the instructor's report: spread of the marks, results by objective, exercises.

They know numbers and names and nothing of marking. Nothing is told by colour alone.
"""

import numpy as np

from drawings.charts import plane
from drawings.marks import area, bare_axes, box, dot, line, number, write
from drawings.picture import picture_of
from drawings.style import (
    AMBER,
    GREY,
    MID_GREY,
    MID_SLATE,
    PALE_AMBER,
    SLATE,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.checks import require_between, require_whole

WIDTH_IN = 9.2
LEFT_IN, RIGHT_IN = 2.3, 8.9
ROW_IN, FLOOR_IN, BAR_IN = 0.42, 0.75, 0.2
FEWEST_FOR_QUARTERS = 5
_DOT_ROWS = (0.0, 0.07, -0.07, 0.14, -0.14)  # inches: equal marks stand beside each other


def marks_spread(counts):
    """Draw how many learners are in each tenth of the marks.

    Parameters
    ----------
    counts : sequence of int
        Learners in each of the ten tenths, lowest first [-]

    Returns
    -------
    picture : Picture
        One bar a tenth with its count on it [-]

    Raises
    ------
    ValueError
        If there are not ten counts, or one is no whole number from 0.
    """
    require_between("number of tenths", len(counts), 10, 10, unit="")
    counts = [int(require_whole("count", each, 0, unit="")) for each in counts]
    high, floor = max(max(counts), 1), 0.75
    left, step, height = 0.5, (WIDTH_IN - 0.7) / 10, 2.0
    with sheet_of_paper(width_in=WIDTH_IN, height_in=floor + height + 0.35) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, floor + height + 0.35))
        line(axes, [(left, floor), (left + 10 * step, floor)], colour=GREY, width=THIN)
        for tenth, count in enumerate(counts):
            x = left + tenth * step
            tall = count / high * height
            if count:
                area(axes, box(x + 0.04, floor, step - 0.08, tall), fill=MID_SLATE, edge=SLATE, width=THIN)
            write(axes, x + step / 2, floor + tall + 0.16, str(count), weight="bold" if count else "normal")
        for tenth in range(11):
            write(axes, left + tenth * step, floor - 0.2, str(10 * tenth))
        write(axes, left + 5 * step, floor - 0.52, "share of the points in %, learners in each tenth")
        return picture_of(figure, _spread_words(counts))


def _spread_words(counts):
    """Tell the spread in a sentence."""
    there = [
        f"{_count(count, 'learner')} from {10 * tenth} to {10 * tenth + 10} %"
        for tenth, count in enumerate(counts)
        if count
    ]
    return f"Learners by share of the points: {'; '.join(there) or 'nobody'}."


def _count(count, word):
    """Write a number with its noun."""
    return f"{count} {word}{'' if count == 1 else 's'}"


def objective_spread(names, shares):
    """Draw results by objective: a dot a learner, a bar over the middle half, a line at the median.

    Parameters
    ----------
    names : sequence of str
        Short names of the objectives [-]
    shares : array
        Share of the points by learner (row) and objective (column); not a number where there is none [-]

    Returns
    -------
    picture : Picture
        One row an objective. Bar and line only where five learners or more stand behind them [-]

    Raises
    ------
    ValueError
        If there are no names, or not one for each column.
    """
    shares = np.asarray(shares, dtype=float)
    require_between("number of objectives", len(names), 1, 40, unit="")
    require_between("number of columns", shares.shape[1], len(names), len(names), unit="")
    top = FLOOR_IN + ROW_IN * len(names)
    columns = [column[~np.isnan(column)] for column in shares.T]
    with sheet_of_paper(width_in=WIDTH_IN, height_in=top + 0.12) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, top + 0.12))
        area(axes, box(LEFT_IN, FLOOR_IN, _at(0.5) - LEFT_IN, top - FLOOR_IN), fill=PALE_AMBER, order=0.5)
        for share in (0, 0.25, 0.5, 0.75, 1):
            line(axes, [(_at(share), FLOOR_IN), (_at(share), top)], colour=MID_GREY, width=THIN, order=1)
            write(axes, _at(share), FLOOR_IN - 0.2, number(100 * share))
        write(axes, _at(0.5), FLOOR_IN - 0.5, "share of the points in %; shaded: below half")
        for row, (name, column) in enumerate(zip(names, columns, strict=True)):
            _objective_row(axes, top - ROW_IN * (row + 0.5), name, column)
        return picture_of(figure, _objective_words(names, columns))


def _at(share):
    """Return how far across a share stands."""
    return LEFT_IN + share * (RIGHT_IN - LEFT_IN)


def _objective_row(axes, y, name, shares):
    """Draw one objective."""
    write(axes, LEFT_IN - 0.2, y, name, across="right")
    if not len(shares):
        write(axes, LEFT_IN + 0.1, y, "not handed in by anybody", across="left", colour=TEXT_GREY)
        return
    if len(shares) >= FEWEST_FOR_QUARTERS:
        low, middle, high = _quarters(shares)
        area(
            axes,
            box(_at(low), y - BAR_IN / 2, _at(high) - _at(low), BAR_IN),
            fill=MID_SLATE,
            edge=SLATE,
            width=THIN,
        )
        line(axes, [(_at(middle), y - 0.16), (_at(middle), y + 0.16)], colour=AMBER, width=3.2, order=12)
    places, counts = np.unique(np.round(shares, 2), return_counts=True)
    for share, count in zip(places, counts, strict=True):
        # Many at one place: a larger dot, its area with the count.
        dot(axes, _at(share), y, colour=SLATE, size=min(4.2 * np.sqrt(count), 11), order=10)


def _quarters(shares):
    """Return lower quarter, median and upper quarter."""
    return [float(each) for each in np.percentile(shares, (25, 50, 75))]


def _objective_words(names, columns):
    """Tell the rows in sentences."""
    return " ".join(
        f"{name[0].upper()}{name[1:]}: {_row_words(column)}."
        for name, column in zip(names, columns, strict=True)
    )


def _row_words(shares):
    """Tell one row."""
    if len(shares) >= FEWEST_FOR_QUARTERS:
        low, middle, high = (f"{each:.0%}" for each in _quarters(shares))
        return f"median {middle}, the middle half from {low} to {high}"
    return ", ".join(f"{each:.0%}" for each in sorted(shares)) or "nobody handed it in"


def exercise_map(names, difficulties, differences):
    """Draw exercises by how much of their points was earned and how they tell learners apart.

    Parameters
    ----------
    names : sequence of str
        Short names of the exercises [-]
    difficulties : sequence of float
        Mean share of the points, 0 to 1 [-]
    differences : sequence of float
        Upper group less lower group, -1 to 1 [-]

    Returns
    -------
    picture : Picture
        A dot an exercise; those that set nobody apart, or the wrong way round, are named [-]

    Raises
    ------
    ValueError
        If there is no exercise or a value lies outside.
    """
    require_between("number of exercises", len(names), 1, 400, unit="")
    easy = np.atleast_1d(
        require_between("difficulties", np.asarray(difficulties, dtype=float), 0, 1, unit="")
    )
    apart = np.atleast_1d(
        require_between("differences", np.asarray(differences, dtype=float), -1, 1, unit="")
    )
    low = min(-0.2, float(np.floor(apart.min() * 5) / 5))
    high = max(0.6, float(np.ceil(apart.max() * 5) / 5))
    levels = np.round(np.arange(low, high + 0.01, 0.2), 1)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=4.4) as figure:
        axes = plane(
            figure,
            (0.085, 0.17, 0.89, 0.73),
            across="share of the points earned: hard at the left, easy at the right",
            up="upper group less lower group",
            wide=(0, 1),
            high=(low, high),
            levels=levels,
            guides=True,
        )
        area(axes, box(0, low, 1, -low), fill=PALE_AMBER, order=0.5)
        line(axes, [(0, 0), (1, 0)], colour=GREY, width=THIN, order=2)
        for x, y in zip(easy, apart, strict=True):
            dot(axes, x, y, colour=AMBER if y < 0 else SLATE, size=7, marker="v" if y < 0 else "o")
        write(
            axes,
            0.01,
            low + 0.02 * (high - low),
            "the weaker earn more here: look at the question",
            across="left",
            up="bottom",
            colour=TEXT_AMBER,
        )
        return picture_of(figure, _map_words(names, easy, apart))


def _map_words(names, easy, apart):
    """Tell the map in sentences."""
    backwards = [name for name, each in zip(names, apart, strict=True) if each < 0]
    told = f"Below zero: {', '.join(backwards)}." if backwards else "None lies below zero."
    return (
        f"{_count(len(names), 'exercise')} by share of the points earned, {easy.min():.0%} to "
        f"{easy.max():.0%}, and by upper group less lower group, {number(apart.min())} to "
        f"{number(apart.max())}. {told}"
    )
