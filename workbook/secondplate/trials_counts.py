"""How much a number of test pulls proves: success run and exact binomial, each by two conventions.

A car never has enough rivets to prove a reliability (``trials_rows.row_proof``): the test pull finds a wrong
set-up (``trials_policy``).
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_choice
from secondplate.trials_checks import counted, open_share, pulls_and_failures, share, whole

# The two give different answers to the same question, so none is silently taken for the other.
CONVENTIONS = ("binomial", "uniform prior")
_GRACE = 1e-12  # a limit that is just met is not missed by the last binary digit
_MOST_NEEDED = 10_000_000


def _one_more(convention):
    """Return what is added to the pulls: the uniform prior counts as one good pull more."""
    return CONVENTIONS.index(require_choice("convention", convention, CONVENTIONS))


def success_run_reliability(pulls, *, confidence, convention):
    """Return the reliability that pulls without a failure show: ``R = (1-C)^(1/n)``, or with ``n+1``.

    Parameters
    ----------
    pulls : int or array
        Pulls n, all good, at least 1 [-]
    confidence : float or array
        Confidence C, between 0 and 1 [-]
    convention : str
        ``binomial`` (n) or ``uniform prior`` (n+1) [-]

    Returns
    -------
    float or numpy.ndarray
        Least reliability R [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the convention is unknown.

    Notes
    -----
    Source: success_run_tables for n; uniform_prior_run for n+1.

    Examples
    --------
    >>> round(success_run_reliability(5, confidence=0.95, convention="binomial"), 3)
    0.549
    """
    run = whole("pulls", pulls, least=1) + _one_more(convention)
    return plain((1 - open_share("confidence", confidence)) ** (1 / run))


def success_run_pulls(*, reliability, confidence, convention):
    """Return how many pulls without a failure show a reliability: ``n = ln(1-C) / ln R``, rounded up.

    Parameters
    ----------
    reliability : float or array
        Reliability R to show, between 0 and 1 [-]
    confidence : float or array
        Confidence C, between 0 and 1 [-]
    convention : str
        ``binomial``, or ``uniform prior``, which needs one pull less [-]

    Returns
    -------
    int or numpy.ndarray
        Pulls n, at least 1 [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the convention is unknown.

    Notes
    -----
    Source: success_run_tables for n; uniform_prior_run for n+1.

    Examples
    --------
    >>> [success_run_pulls(reliability=0.95, confidence=0.95, convention=name) for name in CONVENTIONS]
    [59, 58]
    """
    exact = np.log1p(-open_share("confidence", confidence)) / np.log(open_share("reliability", reliability))
    return counted(np.maximum(np.ceil(exact * (1 - _GRACE) - _one_more(convention)), 1))


def chance_of_at_most(pulls, failures, *, failure_probability):
    """Return the chance of so many failures or fewer, by the binomial law.

    Seen over the failure probability it is the operating characteristic of the rule "accept at most so many".

    Parameters
    ----------
    pulls : int or array
        Pulls n, at least 1 [-]
    failures : int or array
        Most failures c, at most the pulls [-]
    failure_probability : float or array
        Chance p that one pull fails, 0 to 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Chance [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or failures exceed pulls.

    Notes
    -----
    Source: binomial_law.

    Examples
    --------
    >>> round(chance_of_at_most(20, 1, failure_probability=0.025), 4)
    0.9118
    """
    from scipy.special import bdtr  # here, so that a page without test pulls does not load it

    pulls, failures = pulls_and_failures(pulls, failures)
    failing = share("failure probability", failure_probability)
    return plain(bdtr(failures.astype(float), pulls, failing))


def reliability_shown(pulls, failures, *, confidence, convention):
    """Return the least reliability that pulls with some failures show, by the exact binomial law.

    The lower end of the one-sided interval of Clopper and Pearson, or of the posterior of a uniform prior.

    Parameters
    ----------
    pulls : int or array
        Pulls n, at least 1 [-]
    failures : int or array
        Failed pulls among them [-]
    confidence : float or array
        Confidence C, between 0 and 1 [-]
    convention : str
        ``binomial`` or ``uniform prior`` [-]

    Returns
    -------
    float or numpy.ndarray
        Least reliability; 0 where every pull failed and the convention is binomial [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or failures exceed pulls.

    Notes
    -----
    Source: clopper_pearson_1934 for the binomial convention; binomial_law, beta posterior, for the other.

    Examples
    --------
    >>> round(reliability_shown(22, 0, confidence=0.9, convention="binomial"), 5)
    0.90063
    """
    from scipy.special import betaincinv

    pulls, failures = pulls_and_failures(pulls, failures)
    good = pulls - failures + _one_more(convention)
    least = betaincinv(np.maximum(good, 1), failures + 1, 1 - open_share("confidence", confidence))
    return plain(np.where(good > 0, least, 0.0))


def pulls_needed(*, failures, reliability, confidence, convention):
    """Return the fewest pulls that show a reliability although some failed: ``P(X <= c | n, 1-R) <= 1-C``.

    Parameters
    ----------
    failures : int or array
        Failures c that are allowed, 0 or more [-]
    reliability : float or array
        Reliability R to show, between 0 and 1 [-]
    confidence : float or array
        Confidence C, between 0 and 1 [-]
    convention : str
        ``binomial`` or ``uniform prior`` [-]

    Returns
    -------
    int or numpy.ndarray
        Pulls n [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or more than ten million pulls would be needed.

    Notes
    -----
    Source: success_run_tables; binomial_law.

    Examples
    --------
    >>> pulls_needed(failures=[0, 1, 2, 3], reliability=0.9, confidence=0.9, convention="binomial").tolist()
    [22, 38, 52, 65]
    """
    allowed = whole("failures", failures, least=0)
    reliable, doubt = open_share("reliability", reliability), 1 - open_share("confidence", confidence)
    allowed, reliable, doubt = np.broadcast_arrays(allowed, reliable, doubt)
    more = _one_more(convention)
    fewest = _fewest_pulls(allowed, reliable, doubt * (1 + _GRACE))
    return counted(np.maximum(fewest - more, np.maximum(allowed, 1)))


def _fewest_pulls(allowed, reliable, doubt):
    """Halve the range of pulls until the smallest that leaves no more than the doubt is found."""
    from scipy.special import betainc

    low, high = allowed.astype(np.int64), np.full(allowed.shape, _MOST_NEEDED)  # low is never enough
    if np.any(betainc(high - allowed, allowed + 1.0, reliable) > doubt):
        message = f"pulls needed must be at most {_MOST_NEEDED}, got more: ask for less reliability"
        raise ValueError(message)
    while np.any(high - low > 1):
        middle = (low + high) // 2
        inside = np.maximum(middle - allowed, 1)
        enough = (betainc(inside, allowed + 1.0, reliable) <= doubt) & (middle > allowed)
        low, high = np.where(enough, low, middle), np.where(enough, middle, high)
    return high
