"""Two-sided intervals for the share of failed pulls: the exact one and the score interval.

The exact interval never covers less than its confidence; the score interval covers it on the average and is
shorter.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.trials_checks import open_share, pulls_and_failures


def clopper_pearson_interval(pulls, failures, *, confidence):
    """Return the exact interval of the failure share, from quantiles of the beta law.

    Parameters
    ----------
    pulls : int or array
        Pulls n, at least 1 [-]
    failures : int or array
        Failed pulls x among them [-]
    confidence : float or array
        Confidence of both ends together, between 0 and 1 [-]

    Returns
    -------
    tuple of float or numpy.ndarray
        Low and high end; 0 where none failed, 1 where all did [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or failures exceed pulls.

    Notes
    -----
    Source: clopper_pearson_1934: ``I^-1(a/2; x, n-x+1)`` and ``I^-1(1-a/2; x+1, n-x)``.

    Examples
    --------
    >>> [round(end, 4) for end in clopper_pearson_interval(20, 0, confidence=0.95)]
    [0.0, 0.1684]
    """
    from scipy.special import betaincinv  # here, so that a page without test pulls does not load it

    pulls, failures = pulls_and_failures(pulls, failures)
    tail = (1 - open_share("confidence", confidence)) / 2
    good = pulls - failures
    low = np.where(failures > 0, betaincinv(np.maximum(failures, 1), good + 1, tail), 0.0)
    high = np.where(good > 0, betaincinv(failures + 1, np.maximum(good, 1), 1 - tail), 1.0)
    return plain(low), plain(high)


def wilson_interval(pulls, failures, *, confidence):
    """Return the score interval of the failure share, without correction for continuity.

    ``(p + z^2/2n -+ z sqrt(p(1-p)/n + z^2/4n^2)) / (1 + z^2/n)``.

    Parameters
    ----------
    pulls : int or array
        Pulls n, at least 1 [-]
    failures : int or array
        Failed pulls among them [-]
    confidence : float or array
        Confidence of both ends together, between 0 and 1 [-]

    Returns
    -------
    tuple of float or numpy.ndarray
        Low and high end [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or failures exceed pulls.

    Notes
    -----
    Source: newcombe_1998, method 3.

    Examples
    --------
    >>> [round(end, 4) for end in wilson_interval(29, 1, confidence=0.95)]
    [0.0061, 0.1718]
    """
    from scipy.special import ndtri

    pulls, failures = pulls_and_failures(pulls, failures)
    z = ndtri((1 + open_share("confidence", confidence)) / 2)
    seen = failures / pulls
    middle = (seen + z**2 / (2 * pulls)) / (1 + z**2 / pulls)
    half = z * np.sqrt(seen * (1 - seen) / pulls + (z / (2 * pulls)) ** 2) / (1 + z**2 / pulls)
    # Both ends meet 0 and 1 exactly where no pull or every pull failed.
    low = np.where(failures == 0, 0.0, np.maximum(middle - half, 0.0))
    high = np.where(failures == pulls, 1.0, np.minimum(middle + half, 1.0))
    return plain(low), plain(high)
