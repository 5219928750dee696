"""Deciding with a measuring uncertainty: guard bands, verdicts and the probability of conformity.

What lies inside the limits by more than the guard band conforms, what lies outside by more does not, and what
lies between is not decided. Deviations are taken as normal. The danger in this work is a false "good".
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_at_least, require_between, require_finite, require_truth
from secondplate.failure_modes import NOT_DECIDED

VERDICTS = ("conforms", NOT_DECIDED, "does not conform")
_MOST_MM = 1e6


def guard_band_mm(standard_uncertainty_mm, *, confidence_percent=95.0, two_sided=False):
    """Return how far inside a limit a reading must lie to prove conformity: g = z u.

    Parameters
    ----------
    standard_uncertainty_mm : float or array
        Standard uncertainty of the reading, at least 0 [mm]
    confidence_percent : float
        Confidence of the verdict, 50 to 99.99 [%]
    two_sided : bool
        Whether both limits are near; 95 % then takes 1.960 in place of 1.645 [-]

    Returns
    -------
    float or numpy.ndarray
        Guard band [mm]

    Raises
    ------
    ValueError
        If the uncertainty is below 0, the confidence out of range, or two-sided neither true nor false.

    Notes
    -----
    Source: iso_14253_1, rules for conformity and nonconformity, default confidence 95 %; factor from memory.

    Examples
    --------
    >>> round(guard_band_mm(0.0081), 4)
    0.0133
    """
    from scipy.special import ndtri  # loaded only where a decision asks for it

    uncertainty = require_at_least("standard uncertainty", standard_uncertainty_mm, 0, unit="mm")
    confidence = require_between("confidence", confidence_percent, 50, 99.99, unit="%")
    both = require_truth("two-sided", two_sided)
    level = 0.5 + confidence / 200 if both else confidence / 100
    return plain(np.multiply(uncertainty, ndtri(level)))


def _limits(least_mm, most_mm):
    """Return both limits as arrays, endless where there is none, or raise."""
    if least_mm is None and most_mm is None:
        message = "limits must be at least one of least and most, got neither"
        raise ValueError(message)
    least = -np.inf if least_mm is None else np.asarray(require_finite("least value", least_mm, unit="mm"))
    most = np.inf if most_mm is None else np.asarray(require_finite("greatest value", most_mm, unit="mm"))
    if np.any(least > most):
        message = f"greatest value must be at least the least value in mm, got {most_mm} below {least_mm}"
        raise ValueError(message)
    return least, most


def conformity(reading_mm, *, standard_uncertainty_mm, least_mm=None, most_mm=None, confidence_percent=95.0):
    """Return the verdict on a reading against one or two limits.

    Parameters
    ----------
    reading_mm : float or array
        Reading, or mean of readings [mm]
    standard_uncertainty_mm : float or array
        Standard uncertainty of the reading, at least 0 [mm]
    least_mm : float or array or None
        Lower limit, None where there is none [mm]
    most_mm : float or array or None
        Upper limit, None where there is none [mm]
    confidence_percent : float
        Confidence of the verdict, 50 to 99.99 [%]

    Returns
    -------
    str or numpy.ndarray
        One of ``VERDICTS`` for each reading [-]

    Raises
    ------
    ValueError
        If a value lies outside its range, there is no limit, or the limits cross.

    Notes
    -----
    Source: iso_14253_1, rules for conformity and nonconformity; one-sided guard band at each limit.

    Examples
    --------
    >>> conformity(0.41, standard_uncertainty_mm=0.0081, least_mm=0.40)
    'not decided'
    >>> conformity(0.38, standard_uncertainty_mm=0.0081, least_mm=0.40)
    'does not conform'
    """
    reading = np.asarray(require_finite("reading", reading_mm, unit="mm"))
    band = guard_band_mm(standard_uncertainty_mm, confidence_percent=confidence_percent)
    least, most = _limits(least_mm, most_mm)
    room = np.minimum(reading - least, most - reading)
    # A picometre of grace, so that the last binary digit decides nothing; on the very edge it is decided.
    rank = np.where(room >= band - 1e-9, 0, np.where(room <= -band + 1e-9, 2, 1))
    words = np.array(VERDICTS)[rank]
    return str(words) if words.ndim == 0 else words


def conformity_probability(reading_mm, *, standard_uncertainty_mm, least_mm=None, most_mm=None):
    """Return how likely the true value lies within the limits, given the reading.

    Parameters
    ----------
    reading_mm : float or array
        Reading, or mean of readings [mm]
    standard_uncertainty_mm : float or array
        Standard uncertainty of the reading, above 0 [mm]
    least_mm : float or array or None
        Lower limit, None where there is none [mm]
    most_mm : float or array or None
        Upper limit, None where there is none [mm]

    Returns
    -------
    float or numpy.ndarray
        Probability, 0 to 1 [-]

    Raises
    ------
    ValueError
        If a value lies outside its range, there is no limit, or the limits cross.

    Notes
    -----
    Normal with the reading as mean and nothing known before. Source: jcgm_106, 7.3, from memory.

    Examples
    --------
    >>> round(conformity_probability(0.41, standard_uncertainty_mm=0.0081, least_mm=0.40), 4)
    0.8915
    """
    from scipy.special import ndtr  # loaded only where a decision asks for it

    reading = np.asarray(require_finite("reading", reading_mm, unit="mm"))
    spread = np.asarray(
        require_between("standard uncertainty", standard_uncertainty_mm, 1e-9, _MOST_MM, unit="mm")
    )
    least, most = _limits(least_mm, most_mm)
    below, above = (least - reading) / spread, (reading - most) / spread
    # The smaller tails are exact where the difference of two numbers near 1 is not.
    inside = np.select(
        [below > 0, above > 0],
        [ndtr(-below) - ndtr(above), ndtr(-above) - ndtr(below)],
        default=1 - ndtr(below) - ndtr(above),
    )
    return plain(np.clip(inside, 0, 1))
