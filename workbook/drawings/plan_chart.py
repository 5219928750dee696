"""Expected minutes of a row for plans side by side: weld all, test first, or set up anew."""

import numpy as np

from drawings.charts import chosen_point, heading, plane
from drawings.marks import line, number, write
from drawings.picture import picture_of
from drawings.scales import ROUND_CLOSE, round_up
from drawings.style import BOLD, MID_SLATE, SLATE, TEXT_GREY, sheet_of_paper
from secondplate.checks import require_between
from secondplate.trials_policy import best_policy
from secondplate.trials_value import plan_with_tests_min, reset_first_min, weld_all_min

WIDTH_IN, HEIGHT_IN = 8.6, 4.6
PLACE = (0.09, 0.16, 0.66, 0.73)
_LINES = ((SLATE, None), (SLATE, (6, 2)), (TEXT_GREY, (2, 1.6)))
_NAME_GAP = 0.07


def plan_chart(model, *, row_rivets, longest=40, tests=1):
    """Draw the expected minutes of three plans, and of the best that can be done, against the row's length.

    Parameters
    ----------
    model : secondplate.trials_policy.RowModel
        Minutes and beliefs, no columns [-]
    row_rivets : int
        Row to mark, 1 to ``longest`` [-]
    longest : int
        Rivets at the right end, 5 to 200 [-]
    tests : int
        Test pulls of the plan that tests, 1 to 5 [-]

    Returns
    -------
    picture : Picture
        Lines of the plans, the best as a broad pale line behind them [-]

    Raises
    ------
    ValueError
        If a count lies outside its range.

    Notes
    -----
    Minutes from ``secondplate.trials_value`` and ``secondplate.trials_policy``: expected, not promised.

    Examples
    --------
    >>> from secondplate.trials_policy import RowModel
    >>> model = RowModel(wrong_probability=0.2, good_failure_probability=0.02,
    ...                  wrong_failure_probability=0.6, failed_pull_min=15, test_delay_min=4, reset_min=25)
    >>> "Best for 12 rivets: test 1, 20.4 min" in plan_chart(model, row_rivets=12).alt
    True
    """
    longest = int(require_between("rivets at the right end", longest, 5, 200, unit=""))
    row = int(require_between("rivets", row_rivets, 1, longest, unit=""))
    tests = int(require_between("test pulls", tests, 1, 5, unit=""))
    rows = np.arange(tests, longest + 1)
    plans = {
        "weld the row": np.asarray(weld_all_min(rows, model)),
        f"test {tests}, then decide": np.asarray(plan_with_tests_min(rows, model, tests=tests)),
        "set up anew first": np.asarray(reset_first_min(rows, model)),
    }
    best = best_policy(np.arange(1, longest + 1), model)
    top = round_up(max(each.max() for each in plans.values()), among=ROUND_CLOSE)
    words, minutes = str(best.words[row - 1]), float(best.expected_min[row - 1])
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = plane(
            figure,
            PLACE,
            across="rivets in the row",
            up="expected minutes lost",
            wide=(0, longest),
            high=(0, top),
            guides=True,
        )
        line(axes, np.column_stack([best.row_rivets, best.expected_min]), colour=MID_SLATE, width=7, order=2)
        for each, (colour, dashes) in zip(plans.values(), _LINES, strict=True):
            line(axes, np.column_stack([rows, each]), colour=colour, width=BOLD, dashes=dashes)
        _name_ends(axes, plans, float(best.expected_min[-1]), longest, top)
        chosen_point(axes, row, minutes)
        heading(axes, f"{row} rivets: {words}, {number(minutes, digits=1)} min")
        return picture_of(figure, _words(plans, rows, row, words, minutes))


def _name_ends(axes, plans, best, longest, top):
    """Write each name at the end of its line, moved apart where lines end close together."""
    ends = {name: (each[-1], colour) for (name, each), (colour, _) in zip(plans.items(), _LINES, strict=True)}
    ends["best: as pulls tell"] = (best, TEXT_GREY)
    taken = -np.inf
    for name, (end, colour) in sorted(ends.items(), key=lambda item: item[1][0]):
        taken = max(end, taken + _NAME_GAP * top)
        write(axes, longest * 1.02, taken, name, across="left", colour=colour, weight="bold")


def _words(plans, rows, row, words, minutes):
    """Tell the plans in sentences."""
    place = int(np.clip(row - rows[0], 0, len(rows) - 1))
    told = "; ".join(f"{name} {number(each[place], digits=1)} min" for name, each in plans.items())
    return (
        f"Expected minutes lost by length of the row. For {rows[place]} rivets: {told}. "
        f"Best for {row} rivets: {words}, {number(minutes, digits=1)} min."
    )
