"""Charts with a memory, for small lasting shifts in a day's pulls: weighted moving means and cumulative sums.

They need a target and a scatter from before; ``trials_charts`` finds both from the day itself.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between, require_finite
from secondplate.trials_charts import ControlChart
from secondplate.trials_checks import require_data


def _series(observed, target, scatter):
    """Return checked values, target and scatter."""
    observed = require_data("values", observed, unit="", least=1)
    return (
        observed,
        require_finite("target", target, unit=""),
        require_above("scatter", scatter, 0, unit=""),
    )


def weighted_mean_chart(observed, *, target, scatter, weight=0.2, width=3.0):
    """Return the chart of weighted moving means: ``z_i = w x_i + (1-w) z_(i-1)``, starting from the target.

    The weights of older values fall exponentially. Limits ``target -+ L s sqrt(w/(2-w) (1-(1-w)^(2i)))``.

    Parameters
    ----------
    observed : array
        Values in the order of the pulls, in any one unit [-]
    target : float
        Value to keep, in the same unit [-]
    scatter : float
        Standard deviation of one value, above 0, in the same unit [-]
    weight : float
        Weight w of the newest value, 0.01 to 1 [-]
    width : float
        Width L of the limits in standard deviations, 1 to 5 [-]

    Returns
    -------
    ControlChart
        Weighted means with limits for each of them [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: control_textbook, weighted moving mean, from memory.

    Examples
    --------
    >>> chart = weighted_mean_chart([3000, 2900, 2850, 2800], target=3000, scatter=60)
    >>> chart.plotted.round().tolist(), chart.signals.tolist()
    ([3000.0, 2980.0, 2954.0, 2923.0], [3])
    """
    observed, target, scatter = _series(observed, target, scatter)
    weight = require_between("weight", weight, 0.01, 1, unit="")
    width = require_between("width", width, 1, 5, unit="")
    plotted, last = np.empty(observed.size), target
    for place, value in enumerate(observed):
        last = weight * value + (1 - weight) * last
        plotted[place] = last
    order = np.arange(1, observed.size + 1)
    half = width * scatter * np.sqrt(weight / (2 - weight) * (1 - (1 - weight) ** (2 * order)))
    return ControlChart(
        plotted=plotted, centre=target, lower=target - half, upper=target + half, scatter=scatter
    )


def standardised_sums(observed, *, target, scatter, subgroup=1):
    """Return running sums of distances from a target: ``S_i = S_(i-1) + (x_i - T) sqrt(n) / s``.

    Parameters
    ----------
    observed : array
        Values, or means of subgroups, in any one unit [-]
    target : float
        Target T, in the same unit [-]
    scatter : float
        Standard deviation s of one value, above 0, in the same unit [-]
    subgroup : int
        Values n behind each of them, at least 1 [-]

    Returns
    -------
    numpy.ndarray
        Sums [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: quality_package_guide.

    Examples
    --------
    >>> standardised_sums([8.09375, 8.0925], target=8.1, scatter=0.05, subgroup=4).round(2).tolist()
    [-0.25, -0.55]
    """
    observed, target, scatter = _series(observed, target, scatter)
    count = require_at_least("subgroup", subgroup, 1, unit="")
    return np.cumsum((observed - target) * np.sqrt(count) / scatter)


@dataclass(frozen=True, kw_only=True)
class CumulativeSums:
    """Two one-sided cumulative sums in standard deviations, with the interval they signal at.

    Parameters
    ----------
    above : numpy.ndarray
        Sums for a rise [-]
    below : numpy.ndarray
        Sums for a fall [-]
    run_above : numpy.ndarray
        How many values in a row the sum for a rise has been above 0 [-]
    run_below : numpy.ndarray
        The same for a fall [-]
    interval : float
        Sum above which the chart signals [-]

    Examples
    --------
    >>> cumulative_sums([0.0, 4.0, 4.0], target=0.0, scatter=1.0).signals.tolist()
    [2]
    """

    above: np.ndarray
    below: np.ndarray
    run_above: np.ndarray
    run_below: np.ndarray
    interval: float

    @property
    def signals(self):
        """Numbers of the values at which a sum is beyond the interval, counted from 0."""
        return np.flatnonzero((self.above > self.interval) | (self.below > self.interval))


def cumulative_sums(observed, *, target, scatter, slack=0.5, interval=5.0):
    """Return the tabular cumulative sums: ``C+ = max(0, z - k + C+)``, ``C- = max(0, -z - k + C-)``.

    Parameters
    ----------
    observed : array
        Values in the order of the pulls, in any one unit [-]
    target : float
        Value to keep, in the same unit [-]
    scatter : float
        Standard deviation of one value, above 0, in the same unit [-]
    slack : float
        Slack k in standard deviations, 0 to 3; half the shift that matters [-]
    interval : float
        Decision interval h in standard deviations, 0.5 to 20 [-]

    Returns
    -------
    CumulativeSums
        Both sums, how long each has run, and the interval [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: control_textbook, example 9.1.

    Examples
    --------
    >>> cumulative_sums([9.45, 7.99, 9.29, 11.66, 12.16], target=10, scatter=1).above.round(2).tolist()
    [0.0, 0.0, 0.0, 1.16, 2.82]
    """
    observed, target, scatter = _series(observed, target, scatter)
    slack = require_between("slack", slack, 0, 3, unit="")
    interval = require_between("interval", interval, 0.5, 20, unit="")
    distance = (observed - target) / scatter
    above, run_above = _one_sided(distance - slack)
    below, run_below = _one_sided(-distance - slack)
    return CumulativeSums(
        above=above, below=below, run_above=run_above, run_below=run_below, interval=interval
    )


def _one_sided(steps):
    """Add steps up, from 0 again wherever the sum would fall below it; count how long it stayed above."""
    sums, runs, total, run = np.empty(steps.size), np.empty(steps.size, dtype=int), 0.0, 0
    for place, step in enumerate(steps):
        total = max(0.0, total + step)
        run = run + 1 if total > 0 else 0
        sums[place], runs[place] = total, run
    return sums, runs


def cumulative_sum_run_length(*, shift, slack=0.5, interval=5.0, both_sides=False):
    """Return how many values a cumulative sum takes to signal, on the average.

    ``(exp(-2 D b) + 2 D b - 1) / (2 D^2)`` with ``D = shift - k`` and ``b = h + 1.166``; ``b^2`` at D 0.

    Parameters
    ----------
    shift : float or array
        Shift of the mean in standard deviations, -5 to 5 [-]
    slack : float
        Slack k, 0 to 3 [-]
    interval : float
        Decision interval h, 0.5 to 20 [-]
    both_sides : bool
        Whether sums for rise and fall are both watched [-]

    Returns
    -------
    float or numpy.ndarray
        Average number of values up to the signal [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: siegmund_1985, approximation.

    Examples
    --------
    >>> round(cumulative_sum_run_length(shift=0, both_sides=True))
    469
    >>> round(cumulative_sum_run_length(shift=1), 1)
    10.3
    """
    shift = np.asarray(require_between("shift", shift, -5, 5, unit=""), dtype=float)
    slack = require_between("slack", slack, 0, 3, unit="")
    reach = require_between("interval", interval, 0.5, 20, unit="") + 1.166
    up = _run_length(shift - slack, reach)
    return plain(1 / (1 / up + 1 / _run_length(-shift - slack, reach)) if both_sides else up)


def _run_length(drift, reach):
    """Return the run length of a one-sided sum; without drift it is the square of the reach."""
    still = np.abs(drift) < 1e-9
    moving = np.where(still, 1.0, drift)
    length = (np.exp(-2 * moving * reach) + 2 * moving * reach - 1) / (2 * moving**2)
    return np.where(still, reach**2, length)
