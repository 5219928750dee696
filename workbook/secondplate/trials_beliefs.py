"""What to believe of a set-up after some pulls, where the belief before them is a beta law.

Such a belief alone never pays for a test: expected loss is a straight line in its mean. A test pays where it
can change what is done, as a wrong set-up that is set right (``trials_policy``).
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_choice
from secondplate.trials_checks import pulls_and_failures, share, whole

PRIORS = {"uniform": 1.0, "Jeffreys": 0.5}


def good_pull_mean(pulls, failures, *, prior):
    """Return the mean of the belief about the share of good pulls: ``(good + a) / (n + 2 a)``.

    Parameters
    ----------
    pulls : int or array
        Pulls n, at least 1 [-]
    failures : int or array
        Failed pulls among them [-]
    prior : str
        Belief before the pulls: ``uniform`` (a 1) or ``Jeffreys`` (a 0.5) [-]

    Returns
    -------
    float or numpy.ndarray
        Mean [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the prior is unknown.

    Notes
    -----
    Source: binomial_law with its conjugate beta prior.

    Examples
    --------
    >>> round(good_pull_mean(5, 0, prior="uniform"), 3), round(good_pull_mean(5, 0, prior="Jeffreys"), 3)
    (0.857, 0.917)
    """
    pulls, failures = pulls_and_failures(pulls, failures)
    added = PRIORS[require_choice("prior", prior, tuple(PRIORS))]
    return plain((pulls - failures + added) / (pulls + 2 * added))


def chance_better_than(reliability, *, pulls, failures, prior):
    """Return the belief that the share of good pulls is above a reliability.

    Parameters
    ----------
    reliability : float or array
        Reliability to beat, 0 to 1 [-]
    pulls : int or array
        Pulls n, at least 1 [-]
    failures : int or array
        Failed pulls among them [-]
    prior : str
        Belief before the pulls: ``uniform`` or ``Jeffreys`` [-]

    Returns
    -------
    float or numpy.ndarray
        Belief [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the prior is unknown.

    Notes
    -----
    Source: binomial_law with its conjugate beta prior.

    Examples
    --------
    >>> round(chance_better_than(0.9, pulls=5, failures=0, prior="uniform"), 4)
    0.4686
    """
    from scipy.special import betaincc

    pulls, failures = pulls_and_failures(pulls, failures)
    added = PRIORS[require_choice("prior", prior, tuple(PRIORS))]
    return plain(betaincc(pulls - failures + added, failures + added, share("reliability", reliability)))


def beta_binomial_chances(pulls, *, first, second):
    """Return the chances of 0 to n good pulls before any is made, where the belief is a beta law.

    Parameters
    ----------
    pulls : int
        Pulls n, at least 1 [-]
    first : float
        First parameter a of the beta law, above 0; weighs good pulls [-]
    second : float
        Second parameter b, above 0; weighs failures [-]

    Returns
    -------
    numpy.ndarray
        Chance of 0, 1, ... n good pulls [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: binomial_law mixed over a beta law.

    Examples
    --------
    >>> beta_binomial_chances(3, first=2, second=1).round(3).tolist()
    [0.1, 0.2, 0.3, 0.4]
    """
    from scipy.special import betaln

    total = int(whole("pulls", pulls, least=1))
    a = require_above("first parameter", first, 0, unit="")
    b = require_above("second parameter", second, 0, unit="")
    good = np.arange(total + 1)
    ways = -np.log(total + 1) - betaln(total - good + 1, good + 1)
    return np.exp(ways + betaln(good + a, total - good + b) - betaln(a, b))
