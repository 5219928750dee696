"""How long a row takes: learning by either of two models, parts of a job, and when one way overtakes another.

The two learning models share a name and an exponent and give different times. No open repair time for these
rivets was found: own timings come first.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between, require_choice
from secondplate.trials_checks import share, whole

# "unit" is the form of Crawford, "cumulative average" that of Wright.
LEARNING_MODELS = ("unit", "cumulative average")
_MOST_PIECES = 100_000


def learning_exponent(learning_rate):
    """Return the exponent of a learning curve: ``b = log2(rate)``.

    Parameters
    ----------
    learning_rate : float or array
        What a time shrinks to when the number of pieces doubles, 0.5 to 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Exponent b, 0 or negative [-]

    Raises
    ------
    ValueError
        If the rate lies outside its range.

    Notes
    -----
    Source: wright_1936.

    Examples
    --------
    >>> round(learning_exponent(0.8), 4)
    -0.3219
    """
    return plain(np.log2(require_between("learning rate", learning_rate, 0.5, 1, unit="")))


def piece_min(number, *, first_min, learning_rate, learning_model):
    """Return the time of one piece of a series.

    Unit model: ``t1 n^b``. Cumulative average: ``t1 (n^(1+b) - (n-1)^(1+b))``.

    Parameters
    ----------
    number : int or array
        Number n of the piece, from 1 on [-]
    first_min : float or array
        Time t1 of the first piece, above 0 [min]
    learning_rate : float or array
        Learning rate, 0.5 to 1 [-]
    learning_model : str
        ``unit`` or ``cumulative average`` [-]

    Returns
    -------
    float or numpy.ndarray
        Time of that piece [min]

    Raises
    ------
    ValueError
        If a value lies outside its range or the model is unknown.

    Notes
    -----
    Source: unit_learning_page; wright_1936 for the cumulative average.

    Examples
    --------
    >>> curve = {"first_min": 50, "learning_rate": 0.8}
    >>> [round(piece_min(2, **curve, learning_model=model)) for model in LEARNING_MODELS]
    [40, 30]
    """
    number = whole("number of the piece", number, least=1, most=_MOST_PIECES)
    first = require_above("time of the first piece", first_min, 0, unit="min")
    exponent = np.asarray(learning_exponent(learning_rate))
    if require_choice("learning model", learning_model, LEARNING_MODELS) == "unit":
        return plain(first * number**exponent)
    before = np.where(number == 1, 0.0, (number - 1) ** (1 + exponent))  # 0 to the power 0 is not meant
    return plain(first * (number ** (1 + exponent) - before))


def series_min(count, *, first_min, learning_rate, learning_model):
    """Return the time of a whole series.

    Unit model: ``t1 sum of i^b``. Cumulative average: ``t1 n^(1+b)``.

    Parameters
    ----------
    count : int or array
        Pieces n, at least 1 [-]
    first_min : float or array
        Time t1 of the first piece, above 0 [min]
    learning_rate : float or array
        Learning rate, 0.5 to 1 [-]
    learning_model : str
        ``unit`` or ``cumulative average`` [-]

    Returns
    -------
    float or numpy.ndarray
        Time of all pieces [min]

    Raises
    ------
    ValueError
        If a value lies outside its range or the model is unknown.

    Notes
    -----
    Source: learning_curve_tables; wright_1936 for the cumulative average.

    Examples
    --------
    >>> round(series_min(10, first_min=1, learning_rate=0.8, learning_model="unit"), 4)
    6.3154
    """
    count = whole("pieces", count, least=1, most=_MOST_PIECES)
    first = require_above("time of the first piece", first_min, 0, unit="min")
    exponent = np.asarray(learning_exponent(learning_rate))
    if require_choice("learning model", learning_model, LEARNING_MODELS) == "unit":
        return plain(first * _sum_of_powers(count, exponent))
    return plain(first * count ** (1 + exponent))


def _sum_of_powers(count, exponent):
    """Return the sum of ``i^b`` for i from 1 to each count."""
    count, exponent = np.broadcast_arrays(count, exponent)
    number = np.arange(1, count.max() + 1)
    if np.all(exponent == exponent.flat[0]):  # one curve serves all counts
        return np.cumsum(number ** exponent.flat[0])[count - 1]
    powers = number ** exponent[..., None]
    return np.where(number <= count[..., None], powers, 0.0).sum(axis=-1)


@dataclass(frozen=True, kw_only=True)
class JobTimes:
    """Times of one way of working, for a row of any length.

    ``T(n) = S + t1 (1+a) sum of i^b + n p r + c``

    Parameters
    ----------
    set_up_min : float or array
        Set-up S, 0 or more [min]
    first_min : float or array
        Time t1 of the first rivet, above 0 [min]
    learning_rate : float or array
        Learning rate of the unit model, 0.5 to 1 [-]
    allowance : float or array
        Share a added for rest and delays, 0 to 1 [-]
    failure_probability : float or array
        Chance p that a rivet has to be done again, 0 to 1 [-]
    rework_min : float or array
        Time r that such a rivet costs more, 0 or more [min]
    clean_up_min : float or array
        Clean-up c at the end, 0 or more [min]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: break_even_examples.

    Examples
    --------
    >>> round(JobTimes(set_up_min=25, first_min=3.5, learning_rate=0.9).row_min(6), 2)
    42.85
    """

    set_up_min: float
    first_min: float
    learning_rate: float = 1.0
    allowance: float = 0.0
    failure_probability: float = 0.0
    rework_min: float = 0.0
    clean_up_min: float = 0.0

    def __post_init__(self):
        """Refuse values out of range."""
        require_above("time of the first rivet", self.first_min, 0, unit="min")
        learning_exponent(self.learning_rate)
        share("allowance", self.allowance)
        share("failure probability", self.failure_probability)
        for name in ("set_up_min", "rework_min", "clean_up_min"):
            words = name.removesuffix("_min").replace("_", " ")
            require_at_least(words, getattr(self, name), 0, unit="min")

    def row_min(self, rivets):
        """Return the time of a row of so many rivets."""
        rivets = whole("rivets", rivets, least=1, most=_MOST_PIECES)
        pieces = series_min(
            rivets, first_min=self.first_min, learning_rate=self.learning_rate, learning_model="unit"
        )
        rework = rivets * self.failure_probability * np.asarray(self.rework_min)
        return plain(self.set_up_min + pieces * (1 + np.asarray(self.allowance)) + rework + self.clean_up_min)


def break_even_rivets(*, less_set_up_min, less_set_up_each_min, more_set_up_min, more_set_up_each_min):
    """Return the count from which the way with more set-up is no slower: ``Q = (S2 - S1) / (v1 - v2)``.

    Parameters
    ----------
    less_set_up_min : float or array
        Set-up S1 of the first way, 0 or more [min]
    less_set_up_each_min : float or array
        Time v1 of each rivet that way [min]
    more_set_up_min : float or array
        Set-up S2 of the second way, above S1 [min]
    more_set_up_each_min : float or array
        Time v2 of each rivet that way, above 0 and below v1 [min]

    Returns
    -------
    float or numpy.ndarray
        Count at which both take as long; the next whole number decides [rivets]

    Raises
    ------
    ValueError
        If the second way has not more set-up and less time for each rivet.

    Notes
    -----
    Source: break_even_examples.

    Examples
    --------
    >>> round(break_even_rivets(less_set_up_min=6, less_set_up_each_min=7.0,
    ...                         more_set_up_min=25, more_set_up_each_min=3.5), 2)
    5.43
    """
    less = require_at_least("set-up of the first way", less_set_up_min, 0, unit="min")
    require_above("time of each rivet", more_set_up_each_min, 0, unit="min")
    more = np.asarray(require_above("added set-up", np.subtract(more_set_up_min, less), 0, unit="min"))
    saved = np.subtract(less_set_up_each_min, more_set_up_each_min)
    return plain(more / require_above("time saved on each rivet", saved, 0, unit="min"))


def first_row_no_slower(way, other, *, longest):
    """Return the shortest row for which one way of working is no slower than another, with learning in both.

    Parameters
    ----------
    way : JobTimes
        The way asked about [-]
    other : JobTimes
        The other way [-]
    longest : int
        Longest row looked at, at least 1 [-]

    Returns
    -------
    int or None
        Rivets, or None where it is slower for every row up to the longest [-]

    Raises
    ------
    ValueError
        If the longest row is no whole number in its range.

    Notes
    -----
    Source: break_even_examples.

    Examples
    --------
    >>> welded = JobTimes(set_up_min=25, first_min=3.5, learning_rate=0.9)
    >>> drilled = JobTimes(set_up_min=6, first_min=7.0, learning_rate=0.95)
    >>> first_row_no_slower(welded, drilled, longest=50)
    6
    """
    rows = np.arange(1, int(whole("longest row", longest, least=1, most=_MOST_PIECES)) + 1)
    no_slower = np.asarray(way.row_min(rows)) <= np.asarray(other.row_min(rows))
    return int(rows[np.argmax(no_slower)]) if no_slower.any() else None
