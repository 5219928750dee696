"""Exact temperatures of bodies of finite size: wall, cylinder and rod.

Lengths are relative to the body, times to its size squared over the diffusivity: one solution serves all.
"""

from functools import cache

import numpy as np
from scipy.special import j0, j1, jn_zeros

from secondplate.arrays import plain
from secondplate.checks import require_between, require_choice

_TERMS = 60  # exp(-(60 pi)^2 / 1000) is below 1e-15
_EARLIEST = 0.001  # relative time down to which that many terms are enough
_SIGNS = np.where(np.arange(_TERMS) % 2, -1.0, 1.0)  # every second wave rises where the others fall


def _bisected(low, high, rises):
    """Return the roots of a function that rises through zero between two arrays of limits."""
    for _ in range(60):  # 2^-60 of the bracket
        middle = (low + high) / 2
        above = rises(middle) > 0
        low, high = np.where(above, low, middle), np.where(above, middle, high)
    return (low + high) / 2


@cache
def _wall_terms(biot):
    """Return roots and weights of the wall's series."""
    low = np.pi * np.arange(_TERMS)
    roots = _bisected(low, low + np.pi / 2, lambda z: _SIGNS * (z * np.sin(z) - biot * np.cos(z)))
    return roots, 4 * np.sin(roots) / (2 * roots + np.sin(2 * roots))


@cache
def _cylinder_terms(biot):
    """Return roots and weights of the cylinder's series."""
    low = np.concatenate(([0.0], jn_zeros(1, _TERMS - 1)))
    high = jn_zeros(0, _TERMS)
    roots = _bisected(low, high, lambda z: _SIGNS * (z * j1(z) - biot * j0(z)))
    return roots, 2 * j1(roots) / (roots * (j0(roots) ** 2 + j1(roots) ** 2))


def _biot(biot_number):
    """Check one Biot number."""
    return float(require_between("Biot number", float(biot_number), 1e-4, 1e4, unit=""))


def wall_series(biot_number, *, terms=3):
    """Return the first roots zeta tan zeta = Bi of a wall with film, and the weights of its series.

    Parameters
    ----------
    biot_number : float
        Film coefficient times half thickness over conductivity, 1e-4 to 1e4 [-]
    terms : int
        How many, 1 to 60 [-]

    Returns
    -------
    tuple of numpy.ndarray
        Roots and weights, each of shape (terms,) [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 3.11, from memory.

    Examples
    --------
    >>> wall_series(1.0)[0].round(4)
    array([0.8603, 3.4256, 6.4373])
    """
    count = int(require_between("terms", terms, 1, _TERMS, unit=""))
    return tuple(each[:count].copy() for each in _wall_terms(_biot(biot_number)))


def cylinder_series(biot_number, *, terms=3):
    """Return the first roots zeta J1(zeta) = Bi J0(zeta) of a cylinder with film, and its weights.

    Parameters
    ----------
    biot_number : float
        Film coefficient times radius over conductivity, 1e-4 to 1e4 [-]
    terms : int
        How many, 1 to 60 [-]

    Returns
    -------
    tuple of numpy.ndarray
        Roots and weights, each of shape (terms,) [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 7.7, from memory.

    Examples
    --------
    >>> cylinder_series(1.0)[0].round(4)
    array([1.2558, 4.0795, 7.1558])
    """
    count = int(require_between("terms", terms, 1, _TERMS, unit=""))
    return tuple(each[:count].copy() for each in _cylinder_terms(_biot(biot_number)))


def _summed(terms, shape, relative_place, relative_time):
    """Sum a series over its last axis for all places and times."""
    place = require_between("relative place", relative_place, 0, 1, unit="")
    time = require_between("relative time", relative_time, _EARLIEST, 1e6, unit="")
    roots, weights = terms
    decays = np.exp(-np.multiply.outer(time, roots**2))
    return plain((weights * decays * shape(np.multiply.outer(place, roots))).sum(axis=-1))


def wall_temperature(relative_place, relative_time, *, biot_number):
    """Return the part of its first excess that a wall still has after it was put into a cool stream.

    Parameters
    ----------
    relative_place : float or array
        Distance from the middle over half the thickness, 0 to 1 [-]
    relative_time : float or array
        Fourier number, time by diffusivity over half thickness squared, 0.001 to 1e6 [-]
    biot_number : float
        Film coefficient times half thickness over conductivity, 1e-4 to 1e4 [-]

    Returns
    -------
    float or array
        Excess over first excess, in the common shape [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 3.11, from memory.

    Examples
    --------
    >>> round(wall_temperature(0, 0.5, biot_number=1), 4)
    0.7725
    """
    return _summed(_wall_terms(_biot(biot_number)), np.cos, relative_place, relative_time)


def cylinder_temperature(relative_place, relative_time, *, biot_number):
    """Return the part of its first excess that a long cylinder still has in a cool stream.

    A cylinder of finite length has the product of this and of ``wall_temperature`` along its axis.

    Parameters
    ----------
    relative_place : float or array
        Distance from the axis over the radius, 0 to 1 [-]
    relative_time : float or array
        Fourier number, time by diffusivity over radius squared, 0.001 to 1e6 [-]
    biot_number : float
        Film coefficient times radius over conductivity, 1e-4 to 1e4 [-]

    Returns
    -------
    float or array
        Excess over first excess, in the common shape [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 7.7, from memory.

    Examples
    --------
    >>> round(cylinder_temperature(0, 0.5, biot_number=1), 4)
    0.5486
    """
    return _summed(_cylinder_terms(_biot(biot_number)), j0, relative_place, relative_time)


_FAR_ENDS = ("insulated", "cold")


def rod_flux_rise(relative_place, relative_time, *, far_end):
    """Return the rise of a rod with constant flux on its near end, as k dT / (q L).

    Far end insulated: Fo + (3 (1-X)^2 - 1)/6 - (2/pi^2) sum (-1)^n/n^2 exp(-n^2 pi^2 Fo) cos(n pi (1-X)).
    Far end cold: (1-X) - (8/pi^2) sum exp(-m^2 pi^2 Fo/4) cos(m pi X/2)/m^2, m odd.

    Parameters
    ----------
    relative_place : float or array
        Distance X from the heated end over the length, 0 to 1 [-]
    relative_time : float or array
        Fourier number Fo, time by diffusivity over length squared, 0.001 to 1e6 [-]
    far_end : str
        ``insulated`` or ``cold``, held at the first temperature [-]

    Returns
    -------
    float or array
        Rise over flux times length over conductivity, in the common shape [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 3.8, from memory.

    Examples
    --------
    >>> round(rod_flux_rise(1, 0.5, far_end="insulated"), 4)
    0.3348
    """
    require_choice("far end", far_end, _FAR_ENDS)
    place = require_between("relative place", relative_place, 0, 1, unit="")
    time = require_between("relative time", relative_time, _EARLIEST, 1e6, unit="")
    n = np.arange(1, _TERMS + 1)
    if far_end == "insulated":
        waves = (-1.0) ** n / n**2 * np.exp(-np.multiply.outer(time, (n * np.pi) ** 2))
        series = waves * np.cos(np.multiply.outer(1 - np.asarray(place), n * np.pi))
        return plain(time + (3 * (1 - place) ** 2 - 1) / 6 - 2 / np.pi**2 * series.sum(axis=-1))
    odd = 2 * n - 1
    waves = np.exp(-np.multiply.outer(time, (odd * np.pi / 2) ** 2)) / odd**2
    series = waves * np.cos(np.multiply.outer(place, odd * np.pi / 2))
    return plain(1 - place - 8 / np.pi**2 * series.sum(axis=-1))
