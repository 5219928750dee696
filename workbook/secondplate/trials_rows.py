"""Test pulls from a row that ends: chances without replacement, by the hypergeometric law.

Pulling some rivets of a short row tells more about the rest than the binomial law grants; still a car never
has enough rivets to prove a reliability. The test pull finds a wrong set-up (``trials_policy``).
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.trials_checks import counted, open_share, pulls_and_failures, whole
from secondplate.trials_counts import success_run_pulls, success_run_reliability

_MOST_ROW = 10_000


def _row(row_rivets, **parts):
    """Return row and parts as whole numbers of one shape, each part at most the row."""
    row = whole("row of rivets", row_rivets, least=1, most=_MOST_ROW)
    names = {"bad": "bad rivets", "pulls": "pulls", "failures": "failures"}
    least = {"bad": 0, "pulls": 1, "failures": 0}
    counts = [whole(names[name], value, least=least[name], most=_MOST_ROW) for name, value in parts.items()]
    row, *counts = np.broadcast_arrays(row, *counts)
    for name, count in zip(parts, counts, strict=True):
        over = np.atleast_1d(count > row)
        if over.any():
            first = np.argmax(over)
            message = (
                f"{names[name]} must be at most the {row.flat[first]} rivets of the row, "
                f"got {count.flat[first]}"
            )
            raise ValueError(message)
    return row, *counts


def chance_of_at_most_in_row(row_rivets, *, bad, pulls, failures):
    """Return the chance of so many failures or fewer when some rivets of a row are pulled.

    Parameters
    ----------
    row_rivets : int or array
        Rivets N in the row, at least 1 [-]
    bad : int or array
        Bad ones D among them [-]
    pulls : int or array
        Rivets n pulled, at least 1 [-]
    failures : int or array
        Most failures c [-]

    Returns
    -------
    float or numpy.ndarray
        Chance [-]

    Raises
    ------
    ValueError
        If a count is no whole number in its range.

    Notes
    -----
    Source: hypergeometric_law.

    Examples
    --------
    >>> round(chance_of_at_most_in_row(120, bad=22, pulls=20, failures=1), 10)
    0.0762970752
    """
    from scipy.stats import hypergeom  # here, so that a page without short rows does not load it

    row, bad, pulls, failures = _row(row_rivets, bad=bad, pulls=pulls, failures=failures)
    return plain(hypergeom.cdf(failures, row, bad, pulls))


def pulls_to_find(row_rivets, *, bad, confidence):
    """Return how many rivets of a row must be pulled to meet at least one bad one.

    Parameters
    ----------
    row_rivets : int
        Rivets N in the row, at least 1 [-]
    bad : int
        Bad ones D among them, at least 1 [-]
    confidence : float
        Chance C to meet one, between 0 and 1 [-]

    Returns
    -------
    int
        Smallest n with a chance of no bad one of at most 1-C [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: hypergeometric_law.

    Examples
    --------
    >>> pulls_to_find(12, bad=2, confidence=0.9), pulls_to_find(20, bad=2, confidence=0.9)
    (8, 14)
    """
    row = int(whole("row of rivets", row_rivets, least=1, most=_MOST_ROW))
    bad = int(whole("bad rivets", bad, least=1, most=row))
    pulls = np.arange(1, row + 1)
    missed = np.atleast_1d(chance_of_at_most_in_row(row, bad=bad, pulls=pulls, failures=0))
    doubt = (1 - float(open_share("confidence", confidence))) * (1 + 1e-12)
    return counted(pulls[np.argmax(missed <= doubt)])


def most_bad_left(row_rivets, *, pulls, failures, confidence):
    """Return the most bad ones that may still be in a row after some were pulled.

    The greatest number D of bad rivets for which so few failures still have a chance above 1-C, less those
    found.

    Parameters
    ----------
    row_rivets : int
        Rivets N in the row, at least 1 [-]
    pulls : int
        Rivets pulled, at most the row [-]
    failures : int
        Failures among them [-]
    confidence : float
        Confidence C, between 0 and 1 [-]

    Returns
    -------
    int
        Bad ones among the rivets left, at most [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or failures exceed pulls.

    Notes
    -----
    Source: hypergeometric_law.

    Examples
    --------
    >>> [most_bad_left(12, pulls=pulls, failures=0, confidence=0.9) for pulls in (1, 8)]
    [10, 1]
    """
    pulls_and_failures(pulls, failures)
    row, pulls, failures = (int(count) for count in _row(row_rivets, pulls=pulls, failures=failures))
    bad = np.arange(failures, row - pulls + failures + 1)
    chance = np.atleast_1d(chance_of_at_most_in_row(row, bad=bad, pulls=pulls, failures=failures))
    doubt = 1 - float(open_share("confidence", confidence))
    return counted(bad[chance > doubt].max(initial=failures) - failures)


@dataclass(frozen=True, kw_only=True)
class RowProof:
    """What the rivets of one row could prove at most, and what a test pull is for.

    Parameters
    ----------
    row_rivets : int
        Rivets in the row [-]
    pulls_needed : int
        Pulls without a failure that the proof takes [-]
    reliability_shown : float
        Reliability shown if every rivet of the row came out [-]
    enough : bool
        Whether the row has as many rivets as the proof takes [-]
    finding : str
        What follows, in words [-]

    Examples
    --------
    >>> row_proof(12, reliability=0.9, confidence=0.9).enough
    False
    """

    row_rivets: int
    pulls_needed: int
    reliability_shown: float
    enough: bool
    finding: str


def row_proof(row_rivets, *, reliability, confidence):
    """Say what a row of rivets can prove: nothing that helps this car, for a test pull uses up its rivet.

    Parameters
    ----------
    row_rivets : int
        Rivets in the row, at least 1 [-]
    reliability : float
        Reliability that someone asks to be proved, between 0 and 1 [-]
    confidence : float
        Confidence asked for, between 0 and 1 [-]

    Returns
    -------
    RowProof
        Pulls needed, what the whole row would show, and the finding [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: success_run_tables, binomial convention.

    Examples
    --------
    >>> print(row_proof(12, reliability=0.9, confidence=0.9).finding)
    The row has 12 rivets and the proof takes 22 good pulls in a row: a car never has enough rivets to prove
    a reliability. The test pull finds a wrong set-up.
    """
    row = int(whole("row of rivets", row_rivets, least=1))
    needed = success_run_pulls(reliability=reliability, confidence=confidence, convention="binomial")
    shown = success_run_reliability(row, confidence=confidence, convention="binomial")
    start = f"The row has {row} rivets and the proof takes {needed} good pulls in a row"
    if row < needed:
        finding = f"{start}: a car never has enough rivets to prove a reliability."
    else:
        finding = f"{start}: then {row - needed} rivets are left, and on the next car it proves nothing."
    finding += " The test pull finds a wrong set-up."
    return RowProof(
        row_rivets=row,
        pulls_needed=needed,
        reliability_shown=shown,
        enough=row >= needed,
        finding=finding,
    )
