"""Standard uncertainty of one input of a measurement: from readings (type A) or from all else (type B)."""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between, require_choice, require_whole

# Share of the half width that is the standard deviation of each shape.
_SHAPES = {"rectangle": 1 / np.sqrt(3), "triangle": 1 / np.sqrt(6), "arcsine": 1 / np.sqrt(2)}
SHAPES = tuple(_SHAPES)


def repeated_uncertainty(*, standard_deviation, readings_count):
    """Return the standard uncertainty of a mean of readings (type A): s over the root of n.

    Parameters
    ----------
    standard_deviation : float or array
        Standard deviation of single readings, at least 0, in the unit of the readings [-]
    readings_count : int or array
        How many readings the mean is of, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Standard uncertainty, in the unit of the readings [-]

    Raises
    ------
    ValueError
        If the standard deviation is below 0 or the readings are no whole number from 1.

    Notes
    -----
    Source: jcgm_100, 4.2.3.

    Examples
    --------
    >>> round(repeated_uncertainty(standard_deviation=0.010, readings_count=5), 5)
    0.00447
    """
    deviation = require_at_least("standard deviation", standard_deviation, 0, unit="")
    return plain(deviation / np.sqrt(require_whole("number of readings", readings_count, 1, unit="")))


def limits_uncertainty(*, half_width, shape="rectangle"):
    """Return the standard uncertainty of a value that is known to lie between two limits (type B).

    Parameters
    ----------
    half_width : float or array
        Half the distance of the limits, at least 0, in the unit of the value [-]
    shape : str
        One of ``SHAPES``: rectangle if nothing more is known, triangle if the middle is likelier, arcsine if
        the value swings to and fro [-]

    Returns
    -------
    float or numpy.ndarray
        Standard uncertainty, in the unit of the value [-]

    Raises
    ------
    ValueError
        If the half width is below 0 or the shape is unknown.

    Notes
    -----
    Divisors: root of 3, of 6 and of 2. Source: jcgm_100, 4.3.7 and 4.3.9; arcsine in H.1.3.

    Examples
    --------
    >>> round(limits_uncertainty(half_width=0.010), 5)
    0.00577
    """
    width = require_at_least("half width", half_width, 0, unit="")
    return plain(np.multiply(width, _SHAPES[require_choice("shape", shape, SHAPES)]))


def resolution_uncertainty(step):
    """Return the standard uncertainty from the last digit of a display (type B): step over the root of 12.

    Parameters
    ----------
    step : float or array
        Smallest step of the display, at least 0, in the unit of the reading [-]

    Returns
    -------
    float or numpy.ndarray
        Standard uncertainty, in the unit of the reading [-]

    Raises
    ------
    ValueError
        If the step is below 0.

    Notes
    -----
    Source: jcgm_100, F.2.2.1.

    Examples
    --------
    >>> round(resolution_uncertainty(0.01), 5)
    0.00289
    """
    return plain(np.divide(require_at_least("step of the display", step, 0, unit=""), np.sqrt(12)))


def certificate_uncertainty(*, expanded_uncertainty, coverage_factor=2.0):
    """Return the standard uncertainty from a calibration certificate (type B): U over k.

    Parameters
    ----------
    expanded_uncertainty : float or array
        Expanded uncertainty as printed, at least 0, in the unit of the value [-]
    coverage_factor : float or array
        Coverage factor as printed, above 0 [-]

    Returns
    -------
    float or numpy.ndarray
        Standard uncertainty, in the unit of the value [-]

    Raises
    ------
    ValueError
        If the uncertainty is below 0 or the factor not above 0.

    Notes
    -----
    Source: jcgm_100, 4.3.3.

    Examples
    --------
    >>> certificate_uncertainty(expanded_uncertainty=0.004)
    0.002
    """
    expanded = require_at_least("expanded uncertainty", expanded_uncertainty, 0, unit="")
    return plain(expanded / np.asarray(require_above("coverage factor", coverage_factor, 0, unit="")))


def degrees_from_doubt(relative_doubt):
    """Return the degrees of freedom of a type B uncertainty that is itself only known to some per cent.

    Parameters
    ----------
    relative_doubt : float or array
        Doubt on the uncertainty as a share of it, above 0 and at most 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Degrees of freedom [-]

    Raises
    ------
    ValueError
        If the doubt lies outside its range.

    Notes
    -----
    One over twice the square of the doubt. Source: jcgm_100, G.4.2 (G.3).

    Examples
    --------
    >>> degrees_from_doubt(0.25)
    8.0
    """
    doubt = np.asarray(require_between("doubt on the uncertainty", relative_doubt, 1e-6, 1, unit=""))
    return plain(1 / (2 * doubt**2))
