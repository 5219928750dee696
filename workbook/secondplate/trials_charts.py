"""Control charts for a day's pulls: single values with their moving ranges, means and ranges of subgroups.

A chart says that something changed, not what; set-up, studs or gas are looked at where it signals.
Small lasting shifts show sooner in ``trials_sums``.
"""

from dataclasses import dataclass

import numpy as np

from secondplate import tables
from secondplate.checks import require_finite
from secondplate.trials_checks import require_data

_CONSTANTS = {
    (row.keys["constant"], int(row.keys["subgroup"])): row.number for row in tables.load("chart_constants")
}
SUBGROUPS = tuple(sorted(size for name, size in _CONSTANTS if name == "d2"))
_WIDTH = 3.0  # standard deviations from the centre to a limit


@dataclass(frozen=True, kw_only=True)
class ControlChart:
    """Points of a chart with their centre and limits, all in the unit of what was measured.

    Parameters
    ----------
    plotted : numpy.ndarray
        Plotted values [-]
    centre : float
        Centre line [-]
    lower : float or numpy.ndarray
        Lower limit [-]
    upper : float or numpy.ndarray
        Upper limit [-]
    scatter : float
        Standard deviation of one value that the limits rest on [-]

    Examples
    --------
    >>> import numpy as np
    >>> chart = ControlChart(plotted=np.array([1.0, 9.0]), centre=2.0, lower=0.0, upper=4.0, scatter=0.7)
    >>> chart.signals.tolist()
    [1]
    """

    plotted: np.ndarray
    centre: float
    lower: float
    upper: float
    scatter: float

    @property
    def signals(self):
        """Numbers of the plotted values outside the limits, counted from 0."""
        return np.flatnonzero((self.plotted < self.lower) | (self.plotted > self.upper))


def _range_chart(ranges, subgroup, *, below, above):
    """Return the chart of ranges with its limits as parts of the mean range."""
    mean = float(ranges.mean())
    if mean == 0:
        message = "values must differ within the series or subgroups, got ranges that are all 0"
        raise ValueError(message)
    return ControlChart(
        plotted=ranges,
        centre=mean,
        lower=mean * below,
        upper=mean * above,
        scatter=mean / _CONSTANTS["d2", subgroup],
    )


def individuals_charts(observed):
    """Return the charts of single values and of their moving ranges.

    Limits ``mean -+ 2.66 MR``; upper limit of the moving range ``3.267 MR``, with the factors as printed.

    Parameters
    ----------
    observed : array
        Values in the order of the pulls, at least 2, in any one unit [-]

    Returns
    -------
    tuple of ControlChart
        Chart of the values, chart of the moving ranges [-]

    Raises
    ------
    ValueError
        If there are fewer than 2 numbers or all are alike.

    Notes
    -----
    Source: control_chart_constants.

    Examples
    --------
    >>> values, ranges = individuals_charts([2900.0, 3000.0, 2950.0, 3100.0])
    >>> round(values.lower), round(values.upper), round(ranges.upper)
    (2722, 3254, 327)
    """
    observed = require_data("values", observed, unit="", least=2)
    above = _CONSTANTS["moving range", 2]
    ranges = _range_chart(np.abs(np.diff(observed)), 2, below=0.0, above=above)
    mean = float(observed.mean())
    half = _CONSTANTS["single value", 2] * ranges.centre
    values = ControlChart(
        plotted=observed, centre=mean, lower=mean - half, upper=mean + half, scatter=ranges.scatter
    )
    return values, ranges


def mean_and_range_charts(subgroups):
    """Return the charts of means and of ranges of subgroups: ``mean of means -+ 3 R / (d2 sqrt(n))``.

    Limits of the ranges: ``R (1 -+ 3 d3 / d2)``, none below 0.

    Parameters
    ----------
    subgroups : array
        One subgroup a row, 2 to 10 values each, at least 2 rows, in any one unit [-]

    Returns
    -------
    tuple of ControlChart
        Chart of the means, chart of the ranges [-]

    Raises
    ------
    ValueError
        If the values are no numbers in rows of 2 to 10, or all alike within each row.

    Notes
    -----
    Source: control_chart_constants.

    Examples
    --------
    >>> means, ranges = mean_and_range_charts([[2900, 3000, 2950], [3100, 3000, 2950], [2980, 2940, 3010]])
    >>> round(means.centre), round(means.upper), round(ranges.upper)
    (2981, 3090, 275)
    """
    rows = np.asarray(require_finite("values", subgroups, unit=""))
    if rows.ndim != 2 or rows.shape[0] < 2 or rows.shape[1] not in SUBGROUPS:
        message = (
            f"subgroups must be at least 2 rows of {SUBGROUPS[0]} to {SUBGROUPS[-1]} values, "
            f"got the shape {rows.shape}"
        )
        raise ValueError(message)
    size = rows.shape[1]
    part = _WIDTH * _CONSTANTS["d3", size] / _CONSTANTS["d2", size]
    ranges = _range_chart(np.ptp(rows, axis=1), size, below=max(1 - part, 0.0), above=1 + part)
    means = rows.mean(axis=1)
    centre, half = float(means.mean()), _WIDTH * ranges.scatter / np.sqrt(size)
    chart = ControlChart(
        plotted=means, centre=centre, lower=centre - half, upper=centre + half, scatter=ranges.scatter
    )
    return chart, ranges
