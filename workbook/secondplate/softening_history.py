"""Integrates rates that rise steeply with temperature over histories of temperature.

A history is straight between its points, as the heat model gives it. One call takes many histories.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_between, require_finite

# Aluminium is solid up to 660 C at most; no history of a weld starts colder than a winter's night.
LOWEST_C, HIGHEST_C = -100.0, 660.0
GAS_CONSTANT_J_MOLK = 8.314462618
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(5)
# Rates of 160 kJ/mol rise by less than a factor of 3 over this step, which five nodes take to 1e-8.
_STEP_K = 25.0


def checked_history(times_s, temperatures_c):
    """Return times and temperatures as arrays, or raise.

    Parameters
    ----------
    times_s : array
        Rising times, two or more [s]
    temperatures_c : array
        Temperatures at these times, -100 to 660; further histories along the first directions [C]

    Returns
    -------
    tuple of numpy.ndarray
        Times in s and temperatures in C [-]

    Raises
    ------
    ValueError
        If times do not rise, the two do not match, or a temperature lies outside its range.

    Notes
    -----
    Source: aluminium is molten above 660 C, basic_data_aluminium.

    Examples
    --------
    >>> checked_history([0, 1], [20, 300])[1].tolist()
    [20.0, 300.0]
    """
    times = np.asarray(require_finite("time of a history", times_s, unit="s"))
    temperatures = np.asarray(
        require_between("temperature of a history", temperatures_c, LOWEST_C, HIGHEST_C, unit="C")
    )
    if times.ndim != 1 or len(times) < 2 or np.any(np.diff(times) <= 0):
        message = f"times of a history must be two or more rising times in s, got {times.tolist()!r:.60}"
        raise ValueError(message)
    if temperatures.ndim == 0 or temperatures.shape[-1] != len(times):
        message = (
            f"temperatures of a history must be one for each of {len(times)} times, got {temperatures.shape}"
        )
        raise ValueError(message)
    return times, temperatures


def integral_over_history(rate_1_s, times_s, temperatures_c):
    """Return the integral of a rate over histories of temperature.

    Parameters
    ----------
    rate_1_s : callable
        Rate in 1/s from temperatures in C, for arrays [1/s]
    times_s : array
        Rising times, two or more [s]
    temperatures_c : array
        Temperatures at these times, -100 to 660; further histories along the first directions [C]

    Returns
    -------
    float or numpy.ndarray
        Integral, one number a history [-]

    Raises
    ------
    ValueError
        If times do not rise, the two do not match, or a temperature lies outside its range.

    Notes
    -----
    Gauss-Legendre with five nodes on pieces of at most 25 K. Source: plane_geometry, quadrature.

    Examples
    --------
    >>> import numpy as np
    >>> round(integral_over_history(lambda found: np.full_like(found, 0.5), [0, 4], [20, 400]), 9)
    2.0
    """
    times, temperatures = checked_history(times_s, temperatures_c)
    rises = np.diff(temperatures, axis=-1)
    pieces = max(1, int(np.ceil(np.abs(rises).max() / _STEP_K)))
    total = 0.0
    for piece in range(pieces):  # one at a time, so that many histories do not fill the memory
        for node, weight in zip(_NODES, _WEIGHTS, strict=True):
            place = (piece + (node + 1) / 2) / pieces
            total = total + weight / 2 * rate_1_s(temperatures[..., :-1] + place * rises)
    return plain(np.sum(total * np.diff(times), axis=-1) / pieces)
