"""Calls of the pictures of a pull and of a row: a rivet that comes, breaks at either peak, every outcome."""

from dataclasses import replace

import numpy as np

import drawings
from secondplate.bench import (
    CAME,
    RowPlan,
    RowRuns,
    StudPull,
    draw_site,
    example_day,
    run_rows,
)

SITE = draw_site(b"example of a day")
DAY = example_day()
PLAN = RowPlan(test_first=2, test_after_reset=1, weld_at_once=8, reset_at=2, most_resets=1)
RUNS = run_rows(PLAN, DAY, seed=b"a row")


def _one(pool, index):
    """Return one pull of a pool."""
    return StudPull(**{name: column[index].item() for name, column in vars(pool).items()})


OUT = _one(DAY.right, int(np.argmax(DAY.right.rivet_out)))
PEELED = _one(DAY.wrong, int(np.argmin(DAY.wrong.rivet_out)))
LATE = replace(
    OUT, rivet_out=False, result="stud broke", force_n=2100.0, first_peak_n=1900.0, second_peak_n=2500.0
)
HARMED = replace(OUT, result="second plate torn", top_plate_dished=True, second_plate_torn=True)


def made_up(words, *, tested=(), reset=(), harmed=()):
    """Return a row in which each stud came to a given word; places count from 1."""
    places = np.arange(1, len(words) + 1)[:, None]
    came = np.array([[CAME.index(word)] for word in words])
    other = came == len(CAME) - 1
    empty = np.zeros(1)
    return RowRuns(
        minutes=empty,
        out_at_once=empty,
        failures=empty,
        by_other_method=empty,
        damaged=empty,
        resets=empty,
        came=came,
        mode=np.where(other, 2, np.where(np.isin(places, tested), 0, 1)),
        reset_before=np.isin(places, reset),
        harmed=np.isin(places, harmed),
        pool_index=came,
        was_wrong=other,
    )


EVERY_WORD = made_up([*CAME, *CAME[::-1]], tested=(1, 2, 3), reset=(3,), harmed=(5, 6, 7))

USUAL = {
    "pull_trace": (
        drawings.pull_trace,
        {"pulled": OUT, "site": SITE},
        (f"First peak {OUT.first_peak_n / 1000:.2f} kN", "not measured", "no harm is seen"),
    ),
    "pull_trace broken": (
        drawings.pull_trace,
        {"pulled": PEELED, "site": SITE},
        (f"Weld peeled at {PEELED.force_n / 1000:.2f} kN", "before the first peak", "falls to nothing"),
    ),
    "pull_trace broken late": (
        drawings.pull_trace,
        {"pulled": LATE, "site": SITE},
        ("First peak 1.9 kN", "Stud broke at 2.1 kN", "before the second peak"),
    ),
    "pull_trace with harm": (
        drawings.pull_trace,
        {"pulled": HARMED, "site": SITE},
        ("top plate dished and second plate torn",),
    ),
    "row_strip": (
        drawings.row_strip,
        {"runs": RUNS},
        ("Row of 20 rivets", "Tested alone: 1 to 2"),
    ),
    "row_strip of every word": (
        drawings.row_strip,
        {"runs": EVERY_WORD},
        (
            "Row of 14 rivets",
            "Rivet out clean: 1, 14.",
            "Other method: 7 to 8.",
            "Tested alone: 1 to 3.",
            "Machine set again before: 3.",
            "Place harmed: 5 to 7.",
        ),
    ),
    "row_strip of one": (drawings.row_strip, {"runs": made_up(["head tore"])}, ("Head tore: 1.",)),
}
REFUSED = (
    (drawings.row_strip, {"runs": RUNS, "row": 1}, "row must be one of the 1 that were run"),
    (drawings.pull_trace, {"pulled": DAY.right, "site": SITE}, "pull to draw must be one, got 400"),
)
