"""Weighted scoring as people do it: weighted sum, pairwise weights, closeness to the ideal.

Shown for comparison only. A score lets a refused method win, and its order can turn with the normalisation or
with an option nobody wants; ``removal_decision`` compares minutes and damage instead.
"""

from dataclasses import dataclass

import numpy as np

from secondplate import tables
from secondplate.checks import require_above, require_between, require_choice, require_finite

NORMALISATIONS = ("vector", "min-max", "none")
_INDEX = {(row.keys["table"], int(row.keys["size"])): row.number for row in tables.load("random_index")}
RANDOM_INDEX_TABLES = tuple(dict.fromkeys(table for table, _ in _INDEX))
_RECIPROCAL = 0.02  # how far a matrix may be from reciprocal: printed thirds are rounded
USUAL_LIMIT = 0.1  # consistency ratio that is usually still accepted


def _options(scores):
    """Return scores as a table of options by criteria."""
    table = np.asarray(require_finite("scores", scores, unit=""))
    if table.ndim != 2 or table.shape[0] < 2:
        message = f"scores must be rows of at least 2 options by criteria, got the shape {table.shape}"
        raise ValueError(message)
    return table


def _weights(weights, count):
    """Return weights that are not negative and sum to 1."""
    given = np.asarray(require_between("weight", weights, 0, 1, unit=""))
    if given.shape != (count,) or abs(given.sum() - 1) > 1e-6:
        message = f"weights must be {count} numbers that sum to 1, got {given.tolist()}"
        raise ValueError(message)
    return given


def weighted_sum(scores, *, weights):
    """Return the weighted sum of the scores of each option: ``sum of w x``.

    Parameters
    ----------
    scores : array
        One option a row, one criterion a column, all on one scale where more is better [-]
    weights : array
        Weight of each criterion, together 1 [-]

    Returns
    -------
    numpy.ndarray
        Sum for each option [-]

    Raises
    ------
    ValueError
        If scores are no table, or weights do not fit them or do not sum to 1.

    Notes
    -----
    Source: weighted_scores_example. The numbers of the scale are taken for lengths, which they rarely are.

    Examples
    --------
    >>> weighted_sum([[4, 3, 5, 2], [2, 5, 2, 4]], weights=[0.4, 0.2, 0.25, 0.15]).round(2).tolist()
    [3.75, 2.9]
    """
    table = _options(scores)
    return table @ _weights(weights, table.shape[1])


def _pairwise(matrix):
    """Return a matrix of comparisons that is square, positive and reciprocal."""
    pairs = np.asarray(require_above("comparison", matrix, 0, unit=""))
    if pairs.ndim != 2 or pairs.shape[0] != pairs.shape[1] or pairs.shape[0] < 2:
        message = f"comparisons must be a square of at least 2 by 2, got the shape {pairs.shape}"
        raise ValueError(message)
    product = pairs * pairs.T
    if np.any(np.abs(product - 1) > _RECIPROCAL):
        row, column = np.argwhere(np.abs(product - 1) > _RECIPROCAL)[0]
        message = (
            f"comparison {row + 1} with {column + 1} must be one over {column + 1} with {row + 1}, "
            f"got {pairs[row, column]:.6g} and {pairs[column, row]:.6g}"
        )
        raise ValueError(message)
    return pairs


@dataclass(frozen=True, kw_only=True)
class PairwiseWeights:
    """Weights from pairwise comparisons, and how far the comparisons contradict each other.

    Parameters
    ----------
    weights : numpy.ndarray
        Weights, together 1 [-]
    greatest_eigenvalue : float
        Greatest eigenvalue; as large as the matrix where nothing contradicts [-]

    Examples
    --------
    >>> pairwise_weights([[1, 3, 5], [1 / 3, 1, 3], [1 / 5, 1 / 3, 1]]).weights.round(3).tolist()
    [0.637, 0.258, 0.105]
    """

    weights: np.ndarray
    greatest_eigenvalue: float

    @property
    def consistency_index(self):
        """``(greatest eigenvalue - n) / (n - 1)``."""
        size = self.weights.size
        return (self.greatest_eigenvalue - size) / (size - 1)

    def consistency_ratio(self, table):
        """Return the index over that of random matrices; the two tables in use give two answers."""
        require_choice("random index table", table, RANDOM_INDEX_TABLES)
        size = int(require_between("size of the matrix", self.weights.size, 3, 10, unit=""))
        return self.consistency_index / _INDEX[table, size]


def pairwise_weights(matrix):
    """Return the weights from a matrix of pairwise comparisons: its principal eigenvector.

    Parameters
    ----------
    matrix : array
        How many times as important each criterion is as each other one; reciprocal [-]

    Returns
    -------
    PairwiseWeights
        Weights and greatest eigenvalue [-]

    Raises
    ------
    ValueError
        If the matrix is not square, positive and reciprocal.

    Notes
    -----
    Source: saaty_2008.

    Examples
    --------
    >>> found = pairwise_weights([[1, 3, 5], [1 / 3, 1, 3], [1 / 5, 1 / 3, 1]])
    >>> [round(found.consistency_ratio(table), 4) for table in RANDOM_INDEX_TABLES]
    [0.0332, 0.037]
    """
    values, vectors = np.linalg.eig(_pairwise(matrix))
    principal = int(np.argmax(values.real))
    weights = np.abs(vectors[:, principal].real)
    return PairwiseWeights(weights=weights / weights.sum(), greatest_eigenvalue=float(values[principal].real))


def column_mean_weights(matrix):
    """Return the classroom shortcut for the weights: mean over the columns, each scaled to 1.

    Parameters
    ----------
    matrix : array
        How many times as important each criterion is as each other one; reciprocal [-]

    Returns
    -------
    numpy.ndarray
        Weights, near those of the eigenvector where little contradicts [-]

    Raises
    ------
    ValueError
        If the matrix is not square, positive and reciprocal.

    Notes
    -----
    Source: hierarchy_small_example.

    Examples
    --------
    >>> column_mean_weights([[1, 3, 5], [1 / 3, 1, 3], [1 / 5, 1 / 3, 1]]).round(3).tolist()
    [0.633, 0.26, 0.106]
    """
    pairs = _pairwise(matrix)
    return (pairs / pairs.sum(axis=0)).mean(axis=1)


def closeness_to_ideal(scores, *, weights, more_is_better, normalisation):
    """Return the closeness of each option to the ideal: ``d- / (d+ + d-)``.

    Parameters
    ----------
    scores : array
        One option a row, one criterion a column, each in its own unit [-]
    weights : array
        Weight of each criterion, together 1 [-]
    more_is_better : array of bool
        Whether more is better, by criterion [-]
    normalisation : str
        ``vector`` (over the root of the sum of squares), ``min-max``, or ``none`` [-]

    Returns
    -------
    numpy.ndarray
        Closeness, 0 to 1 [-]

    Raises
    ------
    ValueError
        If weights or directions do not fit the scores, or a criterion does not tell the options apart.

    Notes
    -----
    Source: tzeng_huang_2011 for vector, opricovic_tzeng_2004 for min-max. The order may turn with the choice.

    Examples
    --------
    >>> job = {"scores": [[1, 3000], [2, 3750], [5, 4500]], "weights": [0.5, 0.5],
    ...        "more_is_better": [False, True]}
    >>> [closeness_to_ideal(**job, normalisation=name).round(3).tolist() for name in ("vector", "min-max")]
    [[0.762, 0.722, 0.238], [0.5, 0.617, 0.5]]
    """
    table = _options(scores)
    require_choice("normalisation", normalisation, NORMALISATIONS)
    weights = _weights(weights, table.shape[1])
    better = np.asarray(more_is_better)
    if better.dtype != bool or better.shape != weights.shape:
        message = f"more_is_better must be {weights.size} times true or false, got {more_is_better!r}"
        raise ValueError(message)
    weighted = _normalised(table, better, normalisation) * weights
    upright = better | (normalisation == "min-max")  # which that way has turned already
    best = np.where(upright, weighted.max(axis=0), weighted.min(axis=0))
    worst = np.where(upright, weighted.min(axis=0), weighted.max(axis=0))
    to_best, to_worst = (np.linalg.norm(weighted - end, axis=1) for end in (best, worst))
    if np.any(to_best + to_worst == 0):
        message = "scores must tell the options apart, got rows that are all alike"
        raise ValueError(message)
    return to_worst / (to_best + to_worst)


def _normalised(table, better, normalisation):
    """Bring the criteria to one scale."""
    if normalisation == "none":
        return table
    least, most = table.min(axis=0), table.max(axis=0)
    size = np.linalg.norm(table, axis=0) if normalisation == "vector" else most - least
    if np.any(size == 0):
        message = (
            f"criterion {int(np.argmax(size == 0)) + 1} must tell the options apart, got scores all alike"
        )
        raise ValueError(message)
    if normalisation == "vector":
        return table / size
    return np.where(better, table - least, most - table) / size


def order(scores):
    """Return the options from the best to the worst score, counted from 0; ties keep their order.

    Parameters
    ----------
    scores : array
        Score of each option [-]

    Returns
    -------
    list of int
        Numbers of the options [-]

    Raises
    ------
    ValueError
        If the scores are no numbers.

    Notes
    -----
    Common practice, no source.

    Examples
    --------
    >>> order([0.5, 0.617, 0.4])
    [1, 0, 2]
    """
    return np.argsort(-np.asarray(require_finite("scores", scores, unit="")), kind="stable").tolist()
