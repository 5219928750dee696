"""Hardness of martensite, of bainite and of ferrite with pearlite by Maynier's formulas."""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_between
from secondplate.weldability_composition import require_within

COOLING_TIMES_S = (0.01, 10_000.0)  # cooling times that the hardness formulas are asked for


def cooling_rate_c_h(cooling_time_800_500_s):
    """Return the mean rate of cooling from 800 to 500 C, in the unit of Maynier's formulas.

    Parameters
    ----------
    cooling_time_800_500_s : float or array
        Time from 800 to 500 C, 0.01 to 10,000 s [s]

    Returns
    -------
    float or array
        Mean rate, taken for the rate at 700 C [C/h]

    Raises
    ------
    ValueError
        If the time is out of its range.

    Notes
    -----
    The rate at 700 C is above the mean by a quarter to a half; that moves martensite by 2 to 4 HV.
    Source: definition.

    Examples
    --------
    >>> cooling_rate_c_h(0.3)
    3600000.0
    """
    return 300 * 3600 / require_between("cooling time", cooling_time_800_500_s, *COOLING_TIMES_S, unit="s")


def _log_rate(cooling_rate_c_h):
    """Return the logarithm of a checked rate."""
    return np.log10(require_between("cooling rate", cooling_rate_c_h, 100, 1.1e8, unit="C/h"))


def maynier_martensite_hv(composition, *, cooling_rate_c_h):
    """Return the hardness of martensite, 127 + 949 C + 27 Si + 11 Mn + 8 Ni + 16 Cr + 21 log10 Vr.

    Parameters
    ----------
    composition : Composition
        Steel of 0.1 to 0.5 % carbon, and within the other limits of the formula [-]
    cooling_rate_c_h : float or array
        Rate of cooling at 700 C, 100 to 1.1e8 C/h [C/h]

    Returns
    -------
    float or array
        Vickers hardness, in the common shape [HV]

    Raises
    ------
    ValueError
        If the steel or the rate is out of its range.

    Notes
    -----
    Beyond about 1e6 C/h the formula is carried on past its data.
    Source: maynier_2004.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(maynier_martensite_hv(composition("36MnB4"), cooling_rate_c_h=1e6), 1)
    614.1
    """
    of = require_within(composition, "Maynier hardness")
    by_elements = (
        949 * of.carbon_percent
        + 27 * of.silicon_percent
        + 11 * of.manganese_percent
        + 8 * of.nickel_percent
        + 16 * of.chromium_percent
    )
    return plain(127 + by_elements + 21 * _log_rate(cooling_rate_c_h))


def maynier_bainite_hv(composition, *, cooling_rate_c_h):
    """Return the hardness of bainite.

    -323 + 185 C + 330 Si + 153 Mn + 65 Ni + 144 Cr + 191 Mo
    + (89 + 53 C - 55 Si - 22 Mn - 10 Ni - 20 Cr - 33 Mo) log10 Vr.

    Parameters
    ----------
    composition : Composition
        Steel of 0.1 to 0.5 % carbon, and within the other limits of the formula [-]
    cooling_rate_c_h : float or array
        Rate of cooling at 700 C, 100 to 1.1e8 C/h [C/h]

    Returns
    -------
    float or array
        Vickers hardness, in the common shape [HV]

    Raises
    ------
    ValueError
        If the steel or the rate is out of its range.

    Notes
    -----
    Source: maynier_2004.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(maynier_bainite_hv(composition("36MnB4"), cooling_rate_c_h=1e5))
    345
    """
    of = require_within(composition, "Maynier hardness")
    fixed = (
        185 * of.carbon_percent
        + 330 * of.silicon_percent
        + 153 * of.manganese_percent
        + 65 * of.nickel_percent
        + 144 * of.chromium_percent
        + 191 * of.molybdenum_percent
    )
    by_rate = (
        53 * of.carbon_percent
        - 55 * of.silicon_percent
        - 22 * of.manganese_percent
        - 10 * of.nickel_percent
        - 20 * of.chromium_percent
        - 33 * of.molybdenum_percent
    )
    return plain(-323 + fixed + (89 + by_rate) * _log_rate(cooling_rate_c_h))


def maynier_ferrite_pearlite_hv(composition, *, cooling_rate_c_h):
    """Return the hardness of ferrite and pearlite.

    42 + 223 C + 53 Si + 30 Mn + 12.6 Ni + 7 Cr + 19 Mo + (10 - 19 Si + 4 Ni + 8 Cr + 130 V) log10 Vr.

    Parameters
    ----------
    composition : Composition
        Steel of 0.1 to 0.5 % carbon, and within the other limits of the formula [-]
    cooling_rate_c_h : float or array
        Rate of cooling at 700 C, 100 to 1.1e8 C/h [C/h]

    Returns
    -------
    float or array
        Vickers hardness, in the common shape [HV]

    Raises
    ------
    ValueError
        If the steel or the rate is out of its range.

    Notes
    -----
    Source: maynier_2004.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(maynier_ferrite_pearlite_hv(composition("36MnB4"), cooling_rate_c_h=1e3))
    187
    """
    of = require_within(composition, "Maynier hardness")
    fixed = (
        223 * of.carbon_percent
        + 53 * of.silicon_percent
        + 30 * of.manganese_percent
        + 12.6 * of.nickel_percent
        + 7 * of.chromium_percent
        + 19 * of.molybdenum_percent
    )
    by_rate = (
        4 * of.nickel_percent + 8 * of.chromium_percent + 130 * of.vanadium_percent - 19 * of.silicon_percent
    )
    return plain(42 + fixed + (10 + by_rate) * _log_rate(cooling_rate_c_h))
