"""A row of studs after its run: one mark and one word for each, with tests, re-sets and harmed places."""

import numpy as np

from drawings.marks import area, bare_axes, box, dot, line, write
from drawings.picture import picture_of
from drawings.style import (
    AMBER,
    BOLD,
    GREY,
    LINE,
    PALE_GREY,
    PAPER,
    SLATE,
    TEXT_AMBER,
    TEXT_GREY,
    THIN,
    sheet_of_paper,
)
from secondplate.bench import CAME, MODES

PER_LINE = 10
CELL_IN, HIGH_IN = 0.9, 1.2
LEFT_IN, FOOT_IN = 0.1, 0.5
WIDTH_IN = 2 * LEFT_IN + PER_LINE * CELL_IN
SHORT = {
    "rivet out clean": "out",
    "stud broke": "broke",
    "weld peeled": "peeled",
    "head tore": "tore",
    "top plate dished": "dished",
    "second plate torn": "torn",
    "other method": "other",
}
CAME_OUT = ("rivet out clean", "top plate dished", "second plate torn")


def row_strip(runs, *, row=0):
    """Draw what came of each stud of one row, ten to a line.

    Parameters
    ----------
    runs : secondplate.bench.RowRuns
        Rows that were run by a plan [-]
    row : int
        Which of them [-]

    Returns
    -------
    picture : Picture
        Studs in their order: a disc came, a cross did not, a square went another way [-]

    Raises
    ------
    ValueError
        If there is no such row.

    Examples
    --------
    >>> from secondplate.bench import RowPlan, example_day, run_rows
    >>> plan = RowPlan(test_first=2, test_after_reset=1, weld_at_once=0, reset_at=1, most_resets=1)
    >>> row_strip(run_rows(plan, example_day(), seed=b"a row")).alt.startswith("Row of 20 rivets")
    True
    """
    count, rows = runs.came.shape
    if not 0 <= row < rows:
        message = f"row must be one of the {rows} that were run, counted from 0, got {row}"
        raise ValueError(message)
    lines = -(-count // PER_LINE)
    height = FOOT_IN + lines * HIGH_IN + 0.1
    with sheet_of_paper(width_in=WIDTH_IN, height_in=height) as figure:
        axes = bare_axes(figure, width=(0, WIDTH_IN), height=(0, height))
        for place in range(count):
            along, down = place % PER_LINE, place // PER_LINE
            x = LEFT_IN + (along + 0.5) * CELL_IN
            y = height - 0.05 - (down + 0.5) * HIGH_IN
            _draw_stud(axes, x, y, place, runs, row)
        _draw_key(axes)
        return picture_of(figure, _words(runs, row))


def _draw_stud(axes, x, y, place, runs, row):
    """Draw one stud: number above, mark in the middle, word below."""
    came, mode = CAME[runs.came[place, row]], MODES[runs.mode[place, row]]
    if mode == "tested":
        area(axes, box(x - 0.42, y - 0.55, 0.84, 1.04), fill=PALE_GREY, edge=GREY, width=THIN, order=1)
    if runs.reset_before[place, row]:
        line(axes, [(x - 0.45, y - 0.58), (x - 0.45, y + 0.52)], colour=AMBER, width=BOLD, order=8)
    write(axes, x, y + 0.34, str(place + 1), colour=TEXT_GREY)
    _draw_mark(axes, x, y + 0.02, came)
    write(axes, x, y - 0.36, SHORT[came], weight="normal" if came in (CAME[0], CAME[-1]) else "bold")
    if runs.harmed[place, row]:
        write(axes, x + 0.3, y + 0.1, "!", colour=TEXT_AMBER, weight="bold", size=17)


def _draw_mark(axes, x, y, came):
    """Draw a disc, a cross or a square: what came of it is told by the word too."""
    if came in CAME_OUT:
        dot(axes, x, y, size=17)
        if came == "top plate dished":
            bend = np.linspace(-1, 1, 15)
            line(axes, np.stack([x + 0.26 * bend, y - 0.1 - 0.1 * (1 - bend**2)], axis=1), width=LINE)
        elif came == "second plate torn":
            ways = [
                (-0.26, -0.14),
                (-0.13, -0.2),
                (-0.05, -0.12),
                (0.05, -0.22),
                (0.13, -0.12),
                (0.26, -0.16),
            ]
            line(axes, [(x + dx, y + dy) for dx, dy in ways], width=LINE)
    elif came == CAME[-1]:
        area(axes, box(x - 0.13, y - 0.13, 0.26, 0.26), fill=PAPER, edge=SLATE, width=LINE, order=4)
        area(axes, box(x - 0.13, y - 0.13, 0.26, 0.26), edge=GREY, hatch="////", order=4.1)
    else:
        for way in (-1, 1):
            line(axes, [(x - 0.13, y - 0.13 * way), (x + 0.13, y + 0.13 * way)], colour=AMBER, width=3.2)


def _draw_key(axes):
    """Say what frame, bar and mark mean."""
    area(axes, box(LEFT_IN + 0.05, 0.14, 0.26, 0.22), fill=PALE_GREY, edge=GREY, width=THIN)
    write(axes, LEFT_IN + 0.42, 0.25, "tested alone", across="left")
    line(axes, [(2.05, 0.1), (2.05, 0.4)], colour=AMBER, width=BOLD)
    write(axes, 2.18, 0.25, "machine set again before it", across="left")
    write(axes, 5.0, 0.25, "!", colour=TEXT_AMBER, weight="bold", size=17)
    write(axes, 5.14, 0.25, "place harmed", across="left")
    area(axes, box(6.75, 0.15, 0.2, 0.2), fill=PAPER, edge=SLATE, width=THIN, order=4)
    area(axes, box(6.75, 0.15, 0.2, 0.2), edge=GREY, hatch="////", order=4.1)
    write(axes, 7.06, 0.25, "other method", across="left")


def _words(runs, row):
    """Tell the row in sentences: for each outcome the places that show it."""
    came = runs.came[:, row]
    told = [
        f"{word.capitalize()}: {_places(came == number)}."
        for number, word in enumerate(CAME)
        if (came == number).any()
    ]
    tested = runs.mode[:, row] == MODES.index("tested")
    for name, where in (
        ("Tested alone", tested),
        ("Machine set again before", runs.reset_before[:, row]),
        ("Place harmed", runs.harmed[:, row]),
    ):
        if where.any():
            told.append(f"{name}: {_places(where)}.")
    return f"Row of {len(came)} rivets, numbered in the order of work. {' '.join(told)}"


def _places(where):
    """Write places as numbers from 1 on, neighbours as from to."""
    numbers = np.flatnonzero(where) + 1
    groups = np.split(numbers, np.flatnonzero(np.diff(numbers) > 1) + 1)
    return ", ".join(f"{each[0]}" if len(each) == 1 else f"{each[0]} to {each[-1]}" for each in groups)
