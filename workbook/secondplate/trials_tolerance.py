"""Tolerance limits for pull forces: between which limits a stated part of all studs lies, with confidence.

Holds for forces that follow the normal law and one set-up; a re-set starts a new series.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.trials_checks import open_share, require_data, whole

_NODES = 80  # points of the integral over the mean; twice as many change no factor by 1e-9
_FAR = 8.5  # standard deviations of the mean beyond which nothing is left
_MOST_PULLS = 10_000


def _inputs(pulls, content, confidence):
    """Return checked pulls, content and confidence of one shape."""
    pulls = whole("pulls", pulls, least=2, most=_MOST_PULLS)
    parts = np.broadcast_arrays(pulls, open_share("content", content), open_share("confidence", confidence))
    return tuple(np.asarray(part, dtype=float) for part in parts)


def one_sided_tolerance_factor(pulls, *, content, confidence):
    """Return the factor k of a one-sided limit ``mean - k s``: ``k = t'(C; n-1, z_P sqrt(n)) / sqrt(n)``.

    Parameters
    ----------
    pulls : int or array
        Pulls n, 2 to 10 000 [-]
    content : float or array
        Part P of all studs on the right side of the limit, between 0 and 1 [-]
    confidence : float or array
        Confidence C, between 0 and 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Factor k, exact [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: tolerance_table_one_sided; t' is the quantile of the noncentral t law.

    Examples
    --------
    >>> round(one_sided_tolerance_factor(10, content=0.95, confidence=0.95), 3)
    2.911
    """
    from scipy.special import nctdtrit, ndtri  # here, so that a page without test pulls does not load it

    pulls, content, confidence = _inputs(pulls, content, confidence)
    root = np.sqrt(pulls)
    return plain(nctdtrit(pulls - 1, ndtri(content) * root, confidence) / root)


def natrella_one_sided_factor(pulls, *, content, confidence):
    """Return the old approximation to the one-sided factor, which a handbook still prints.

    ``k = (z_P + sqrt(z_P^2 - a b)) / a`` with ``a = 1 - z_C^2 / (2 (n-1))`` and ``b = z_P^2 - z_C^2 / n``.

    Parameters
    ----------
    pulls : int or array
        Pulls n, 2 to 10 000 [-]
    content : float or array
        Part P of all studs on the right side of the limit, between 0 and 1 [-]
    confidence : float or array
        Confidence C, between 0 and 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Factor k, approximate [-]

    Raises
    ------
    ValueError
        If a value lies outside its range, or too few pulls leave no solution.

    Notes
    -----
    Source: nist_handbook, section 7.2.6.3.

    Examples
    --------
    >>> round(natrella_one_sided_factor(43, content=0.9, confidence=0.99), 7)
    1.8751896
    """
    from scipy.special import ndtri

    pulls, content, confidence = _inputs(pulls, content, confidence)
    of_content, of_confidence = ndtri(content), ndtri(confidence)
    a = 1 - of_confidence**2 / (2 * (pulls - 1))
    b = of_content**2 - of_confidence**2 / pulls
    under_root = of_content**2 - a * b
    if np.any(a <= 0) or np.any(under_root < 0):
        message = f"pulls must be enough for the approximation at this confidence, got {np.min(pulls):.0f}"
        raise ValueError(message)
    return plain((of_content + np.sqrt(under_root)) / a)


def two_sided_tolerance_factor(pulls, *, content, confidence):
    """Return the factor k of two-sided limits ``mean -+ k s``, exact.

    k solves ``E[P(chi2 > (n-1) r^2 / k^2)] = C`` over the mean z, where r holds the content P round z.

    Parameters
    ----------
    pulls : int or array
        Pulls n, 2 to 10 000 [-]
    content : float or array
        Part P of all studs between the limits, between 0 and 1 [-]
    confidence : float or array
        Confidence C, between 0 and 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Factor k [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: iso_16269_6, Annex F, one series (m = 1); its tables round the fourth decimal up.

    Examples
    --------
    >>> round(two_sided_tolerance_factor(10, content=0.95, confidence=0.95), 5)
    3.39343
    """
    from scipy.optimize.elementwise import find_root
    from scipy.special import chdtrc, chndtrix

    pulls, content, confidence = _inputs(pulls, content, confidence)
    places, weights = np.polynomial.legendre.leggauss(_NODES)
    far = _FAR * (places + 1) / 2  # the mean in its own standard deviations; both sides are alike
    mass = weights * _FAR / np.sqrt(2 * np.pi) * np.exp(-(far**2) / 2)
    reach = chndtrix(content[..., None], 1, far**2 / pulls[..., None])  # r squared

    def short_of_confidence(log_k, square, freedom, wanted):
        spread = freedom[..., None] * square.reshape(*log_k.shape, _NODES)
        return chdtrc(freedom[..., None], spread * np.exp(-2 * log_k[..., None])) @ mass - wanted

    start = np.log(howe_two_sided_factor(pulls, content=content, confidence=confidence))
    return plain(_solved(find_root, short_of_confidence, start, (reach, pulls - 1, confidence)))


def _solved(find_root, short, start, given):
    """Find the factors round a first guess, one after the other in one flat row."""
    reach, freedom, wanted = given
    flat_reach = reach.reshape(-1, _NODES)
    number = np.arange(flat_reach.shape[0], dtype=float)

    def residual(log_k, which, freedom, wanted):
        return short(log_k, flat_reach[which.astype(int)], freedom, wanted)

    start = np.ravel(start)
    found = find_root(residual, (start - 2, start + 2), args=(number, np.ravel(freedom), np.ravel(wanted)))
    if not np.all(found.success):
        message = "tolerance factor must be solvable for these pulls, content and confidence, got no solution"
        raise ValueError(message)
    return np.exp(found.x).reshape(np.shape(freedom))


def howe_two_sided_factor(pulls, *, content, confidence):
    """Return the usual approximation to the two-sided factor: ``z sqrt((n-1)(1+1/n) / chi2)``.

    Parameters
    ----------
    pulls : int or array
        Pulls n, 2 to 10 000 [-]
    content : float or array
        Part P of all studs between the limits, between 0 and 1 [-]
    confidence : float or array
        Confidence C, between 0 and 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Factor k, approximate; 0.3 % low at ten pulls [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: nist_handbook, section 7.2.6.3.

    Examples
    --------
    >>> round(howe_two_sided_factor(43, content=0.9, confidence=0.99), 7)
    2.2173159
    """
    from scipy.special import chdtri, ndtri

    pulls, content, confidence = _inputs(pulls, content, confidence)
    spread = (pulls - 1) * (1 + 1 / pulls) / chdtri(pulls - 1, confidence)
    return plain(ndtri((1 + content) / 2) * np.sqrt(spread))


@dataclass(frozen=True, kw_only=True)
class ToleranceLimits:
    """Tolerance limits of one series of pull forces.

    Parameters
    ----------
    pulls : int
        Pulls in the series [-]
    mean_n : float
        Mean force [N]
    spread_n : float
        Standard deviation, with n-1 [N]
    lower_n : float
        Limit that the content exceeds, one-sided [N]
    between_n : tuple of float
        Limits that hold the content between them, two-sided [N]
    content : float
        Part of all studs [-]
    confidence : float
        Confidence [-]

    Examples
    --------
    >>> tolerance_limits([2900, 3100, 3000, 2950, 3050], content=0.9, confidence=0.9).pulls
    5
    """

    pulls: int
    mean_n: float
    spread_n: float
    lower_n: float
    between_n: tuple
    content: float
    confidence: float

    def clears(self, force_n):
        """Tell whether the one-sided limit lies at or above a force that every stud should hold."""
        return self.lower_n >= force_n


def tolerance_limits(forces_n, *, content, confidence):
    """Return the tolerance limits of a series of pull forces, with exact factors.

    Parameters
    ----------
    forces_n : array
        Forces of at least 2 pulls of one set-up, not all alike [N]
    content : float
        Part P of all studs, between 0 and 1 [-]
    confidence : float
        Confidence C, between 0 and 1 [-]

    Returns
    -------
    ToleranceLimits
        Mean, spread and limits [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or all forces are alike.

    Notes
    -----
    Source: iso_16269_6; tolerance_table_one_sided.

    Examples
    --------
    >>> limits = tolerance_limits([2900, 3100, 3000, 2950, 3050], content=0.9, confidence=0.9)
    >>> round(limits.lower_n), [round(end) for end in limits.between_n]
    (2783, [2723, 3277])
    """
    forces = require_data("pull forces", forces_n, unit="N", least=2)
    mean, spread = float(forces.mean()), float(forces.std(ddof=1))
    if spread == 0:
        message = f"pull forces must differ, got {forces.size} times {mean:.6g} N"
        raise ValueError(message)
    one = one_sided_tolerance_factor(forces.size, content=content, confidence=confidence)
    two = two_sided_tolerance_factor(forces.size, content=content, confidence=confidence)
    return ToleranceLimits(
        pulls=forces.size,
        mean_n=mean,
        spread_n=spread,
        lower_n=mean - one * spread,
        between_n=(mean - two * spread, mean + two * spread),
        content=content,
        confidence=confidence,
    )
