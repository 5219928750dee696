"""Minutes of a row by its number of rivets, one line a way, and where one way overtakes another."""

import numpy as np

from drawings.charts import heading, plane
from drawings.marks import dot, line, number, write
from drawings.picture import picture_of
from drawings.scales import ROUND_CLOSE, round_up
from drawings.style import AMBER, BOLD, SLATE, TEXT_AMBER, TEXT_GREY, sheet_of_paper
from secondplate.checks import require_between
from secondplate.removal_time import first_row_no_slower

WIDTH_IN, HEIGHT_IN = 8.6, 4.6
PLACE = (0.09, 0.16, 0.72, 0.73)
# Told apart by dashes as well as by ink; each line has its name at its end.
_LINES = ((SLATE, None), (TEXT_AMBER, (6, 2)), (TEXT_GREY, (2, 1.6)), (SLATE, (8, 2, 2, 2)))
_NAME_GAP = 0.062


def minutes_chart(times, *, rivet_count):
    """Draw the minutes of up to four ways against the number of rivets.

    Parameters
    ----------
    times : Mapping of str to secondplate.removal_time.JobTimes
        One to four ways by name, no columns; the second is compared with the first [-]
    rivet_count : int
        Rivets of the longest row shown, 2 to 500 [-]

    Returns
    -------
    picture : Picture
        Lines with names; marked from which row on the second is no slower than the first [-]

    Raises
    ------
    ValueError
        If the number of ways or of rivets lies outside its range.

    Notes
    -----
    Minutes from ``secondplate.removal_time``.

    Examples
    --------
    >>> from secondplate.removal_time import JobTimes
    >>> quick = JobTimes(set_up_min=2, first_min=3)
    >>> slow = JobTimes(set_up_min=20, first_min=1)
    >>> "From 9 rivets on, b is no slower" in minutes_chart({"a": quick, "b": slow}, rivet_count=20).alt
    True
    """
    require_between("ways to compare", len(times), 1, len(_LINES), unit="")
    count = int(require_between("rivets", rivet_count, 2, 500, unit=""))
    numbers = np.arange(1, count + 1)
    minutes = {name: np.asarray(each.row_min(numbers), dtype=float) for name, each in times.items()}
    top = round_up(max(each.max() for each in minutes.values()), among=ROUND_CLOSE)
    even = _even(times, count)
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = plane(
            figure,
            PLACE,
            across="rivets in the row",
            up="minutes",
            wide=(0, count),
            high=(0, top),
            guides=True,
        )
        for each, (colour, dashes) in zip(minutes.values(), _LINES, strict=False):
            line(axes, np.column_stack([numbers, each]), colour=colour, width=BOLD, dashes=dashes)
        _name_ends(axes, minutes, count, top)
        if even is not None:
            y = float(next(iter(minutes.values()))[even - 1])
            line(axes, [(even, 0), (even, y)], colour=AMBER, width=1.2, dashes=(4, 3), order=6)
            dot(axes, even, y, colour=AMBER, size=10, edge_width=1.6)
            heading(axes, f"{list(times)[1]}: no slower from {even} rivets on")
        return picture_of(figure, _words(minutes, numbers, even))


def _even(times, count):
    """Return the shortest row for which the second way is no slower, or None where that never changes."""
    if len(times) < 2:
        return None
    first, second = list(times.values())[:2]
    found = first_row_no_slower(second, first, longest=count)
    return None if found == 1 else found


def _name_ends(axes, minutes, count, top):
    """Write each name at the end of its line, moved apart where lines end close together."""
    places, taken = {}, -np.inf
    for name in sorted(minutes, key=lambda name: minutes[name][-1]):
        taken = places[name] = max(minutes[name][-1], taken + _NAME_GAP * top)
    for (name, y), (colour, _) in zip(((name, places[name]) for name in minutes), _LINES, strict=False):
        write(axes, count * 1.015, y, name, across="left", colour=colour, weight="bold")


def _words(minutes, numbers, even):
    """Tell the lines in sentences."""
    at = [0, len(numbers) // 2, len(numbers) - 1]
    told = ". ".join(
        f"{name[0].upper()}{name[1:]}: "
        + ", ".join(f"{number(each[i], digits=0)} min for {numbers[i]} rivet{'s' if i else ''}" for i in at)
        for name, each in minutes.items()
    )
    names = list(minutes)
    if even is not None:
        end = f" From {even} rivets on, {names[1]} is no slower than {names[0]}."
    elif len(names) > 1:
        end = f" Within these rows {names[1]} and {names[0]} do not change places."
    else:
        end = ""
    return f"Minutes by number of rivets. {told}.{end}"
