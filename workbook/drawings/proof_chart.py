"""What a series of good pulls shows: the share of good rivets that is at least there, by number of pulls."""

import numpy as np

from drawings.charts import chosen_point, heading, plane
from drawings.marks import line, number, write
from drawings.picture import picture_of
from drawings.style import BOLD, SLATE, TEXT_GREY, sheet_of_paper
from secondplate.checks import require_between
from secondplate.trials_counts import CONVENTIONS, reliability_shown

WIDTH_IN, HEIGHT_IN = 8.6, 4.4
PLACE = (0.09, 0.16, 0.72, 0.73)
_CONFIDENCES = ((0.5, TEXT_GREY, (2, 1.6)), (0.9, SLATE, None), (0.95, SLATE, (6, 2)))
_EXACT = CONVENTIONS[0]


def proof_chart(*, pulls, failures=0, longest=60):
    """Draw the reliability that pulls show, at three confidences, against the number of pulls.

    Parameters
    ----------
    pulls : int
        Pulls to mark, 1 to ``longest`` [-]
    failures : int
        How many of them failed, 0 to ``pulls`` less 1 [-]
    longest : int
        Pulls at the right end, 10 to 200 [-]

    Returns
    -------
    picture : Picture
        Three curves, the marked pulls on that of 90 % [-]

    Raises
    ------
    ValueError
        If a count lies outside its range.

    Notes
    -----
    Reliability from ``secondplate.trials_counts``, exact binomial.

    Examples
    --------
    >>> "22 pulls without a failure show 90.1 % at 90 % confidence" in proof_chart(pulls=22).alt
    True
    """
    longest = int(require_between("pulls at the right end", longest, 10, 200, unit=""))
    pulls = int(require_between("pulls", pulls, 1, longest, unit=""))
    failures = int(require_between("failed pulls", failures, 0, pulls - 1, unit=""))
    numbers = np.arange(failures + 1, longest + 1)
    shown = {
        confidence: 100 * np.asarray(_shown(numbers, failures, confidence)) for confidence, *_ in _CONFIDENCES
    }
    with sheet_of_paper(width_in=WIDTH_IN, height_in=HEIGHT_IN) as figure:
        axes = plane(
            figure,
            PLACE,
            across=f"pulls, {_failed(failures)}",
            up="good rivets are at least, in %",
            wide=(0, longest),
            high=(0, 100),
            levels=range(0, 101, 20),
            guides=True,
        )
        for place, (confidence, colour, dashes) in zip((1, -6.5, -14), _CONFIDENCES, strict=True):
            line(
                axes, np.column_stack([numbers, shown[confidence]]), colour=colour, width=BOLD, dashes=dashes
            )
            text = f"{number(100 * confidence)} % sure"
            y = shown[0.9][-1] + place
            write(axes, 1.015 * longest, y, text, across="left", colour=colour, weight="bold")
        value = float(100 * np.asarray(_shown(pulls, failures, 0.9)))
        chosen_point(axes, pulls, value)
        heading(axes, f"{pulls} pulls: {number(value, digits=1)} % at 90 % confidence")
        write(axes, 0.98 * longest, 6, "of this set-up, on this metal", across="right", colour=TEXT_GREY)
        return picture_of(figure, _words(pulls, failures))


def _shown(pulls, failures, confidence):
    """Return the reliability that the pulls show."""
    return reliability_shown(pulls, failures, confidence=confidence, convention=_EXACT)


def _failed(failures):
    """Say how many failed."""
    return {0: "no failure", 1: "1 failure"}.get(failures, f"{failures} failures")


def _words(pulls, failures):
    """Tell the marked pulls in sentences."""
    how = "without a failure" if not failures else f"with {_failed(failures)}"
    told = ", ".join(
        f"{number(100 * float(_shown(pulls, failures, confidence)), digits=1)} % at "
        f"{number(100 * confidence)} % confidence"
        for confidence in (0.9, 0.95, 0.5)
    )
    return (
        f"Share of good rivets that pulls show, by number of pulls. {pulls} pulls {how} show {told}. "
        "Every curve climbs fast over the first pulls and slowly after."
    )
