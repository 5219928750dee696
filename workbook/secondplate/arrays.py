"""Keeps the promise "float in, float out; array in, array out" in one place."""

import numpy as np


def plain(value):
    """Return a float for a single number and a float array for several.

    Parameters
    ----------
    value : float or numpy.ndarray
        Result of a formula, in any unit [-]

    Returns
    -------
    float or numpy.ndarray
        The same, without a zero-dimensional array or numpy scalar [-]

    Examples
    --------
    >>> import numpy as np
    >>> plain(np.sqrt(np.float64(4.0)))
    2.0
    """
    array = np.asarray(value, dtype=float)
    return float(array) if array.ndim == 0 else array


def whole_below(value):
    """Return the largest whole number not above the value, forgiving the last digits of arithmetic.

    A ratio such as 0.9 / 0.3 comes out as 2.9999999999999996; it still means three.

    Parameters
    ----------
    value : float or numpy.ndarray
        Positive ratio [-]

    Returns
    -------
    int or numpy.ndarray
        Whole number, of the shape of the input [-]

    Examples
    --------
    >>> whole_below(0.9 / 0.3), whole_below(2.99)
    (3, 2)
    """
    array = np.asarray(value, dtype=float)
    whole = np.floor(array * (1 + 1e-12)).astype(np.int64)
    return int(whole) if whole.ndim == 0 else whole
