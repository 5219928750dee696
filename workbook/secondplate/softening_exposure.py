"""Over-ageing of 6xxx-T6 by an exposure index: how much of its life at heat a history has used.

The life is the time until the proof stress has fallen to the specified minimum. Measured from 177 to 218 C
over hours; everything above is extrapolated by one activation energy. Leaves out dissolution, which comes
first above about 300 C, and what later ageing at room temperature brings back.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_at_least, require_between
from secondplate.softening_history import (
    GAS_CONSTANT_J_MOLK,
    HIGHEST_C,
    LOWEST_C,
    integral_over_history,
)
from secondplate.tables import values
from secondplate.units import k_from_c

_VALUES = values("softening")
_SECONDS_PER_HOUR = 3600.0


def _c_from_f(temperature_f):
    """Return degrees Celsius from degrees Fahrenheit."""
    return (temperature_f - 32) / 1.8


_FIRST_C, _SECOND_C = (_c_from_f(_VALUES[f"{place} measured temperature"]) for place in ("first", "second"))
_FIRST_S = _VALUES["first measured time"] * _SECONDS_PER_HOUR
_FITTED_J_MOL = (
    GAS_CONSTANT_J_MOLK
    * np.log(_VALUES["first measured time"] / _VALUES["second measured time"])
    / (1 / k_from_c(_FIRST_C) - 1 / k_from_c(_SECOND_C))
)
ACTIVATION_ENERGY_J_MOL = Band(
    low=_VALUES["least activation energy"],
    best=float(_FITTED_J_MOL),
    high=_VALUES["greatest activation energy"],
    basis="derived: two measured points of 6061-T6 (donovan_2015); ends from other alloys and rules",
)
MEASURED_C = (_c_from_f(350), _SECOND_C)
_ENERGY_LIMITS = (50_000.0, 300_000.0)


def _energy(activation_energy_j_mol):
    """Return the activation energy, that of the fit where none is given, or raise."""
    given = ACTIVATION_ENERGY_J_MOL.best if activation_energy_j_mol is None else activation_energy_j_mol
    return require_between("activation energy", given, *_ENERGY_LIMITS, unit="J/mol")


def heat_life_s(temperature_c, *, activation_energy_j_mol=None):
    """Return how long 6061-T6 bears a temperature until its proof stress is at the specified minimum.

    Parameters
    ----------
    temperature_c : float or array
        Temperature, -100 to 660 [C]
    activation_energy_j_mol : float or None
        Activation energy, 50 000 to 300 000; that of two measured points unless told [J/mol]

    Returns
    -------
    float or numpy.ndarray
        Time [s]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    ``t = t1 exp(Q/R (1/T - 1/T1))`` from 16 h at 390 F. Source: donovan_2015, re-heating curves; Q derived.

    Examples
    --------
    >>> round(heat_life_s(218.3333) / 3600, 3), round(heat_life_s(400), 2)
    (4.0, 1.64)
    """
    temperature = require_between("temperature", temperature_c, LOWEST_C, HIGHEST_C, unit="C")
    energy = _energy(activation_energy_j_mol) / GAS_CONSTANT_J_MOLK
    return plain(_FIRST_S * np.exp(energy * (1 / k_from_c(temperature) - 1 / k_from_c(_FIRST_C))))


def equivalent_time_s(time_s, *, from_c, to_c, activation_energy_j_mol=None):
    """Return the time at another temperature that does the same: t2 = t1 exp(Q/R (1/T2 - 1/T1)).

    Parameters
    ----------
    time_s : float or array
        Time at the first temperature, at least 0 [s]
    from_c : float or array
        First temperature, -100 to 660 [C]
    to_c : float or array
        Other temperature, -100 to 660 [C]
    activation_energy_j_mol : float or None
        Activation energy, 50 000 to 300 000; that of two measured points unless told [J/mol]

    Returns
    -------
    float or numpy.ndarray
        Time at the other temperature [s]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: donovan_2015, activation energy derived.

    Examples
    --------
    >>> round(equivalent_time_s(3600, from_c=200, to_c=225))
    623
    """
    time = require_at_least("time", time_s, 0, unit="s")
    lives = [heat_life_s(each, activation_energy_j_mol=activation_energy_j_mol) for each in (to_c, from_c)]
    return plain(np.multiply(time, lives[0]) / lives[1])


def exposure_index(times_s, temperatures_c, *, activation_energy_j_mol=None):
    """Return the share of the life at heat that a history used: X = integral of dt over the life.

    Parameters
    ----------
    times_s : array
        Rising times, two or more [s]
    temperatures_c : array
        Temperatures at these times, -100 to 660; further histories along the first directions [C]
    activation_energy_j_mol : float or None
        Activation energy, 50 000 to 300 000; that of two measured points unless told [J/mol]

    Returns
    -------
    float or numpy.ndarray
        Exposure index; 1 brings the proof stress to the specified minimum [-]

    Raises
    ------
    ValueError
        If the history or the energy lies outside its range.

    Notes
    -----
    Source: donovan_2015, activation energy derived; extrapolated above 218 C.

    Examples
    --------
    >>> round(exposure_index([0, 1800], [200, 200]), 3)
    0.034
    """
    energy = _energy(activation_energy_j_mol)
    return integral_over_history(
        lambda temperature: 1 / heat_life_s(temperature, activation_energy_j_mol=energy),
        times_s,
        temperatures_c,
    )


def exposure_band(times_s, temperatures_c):
    """Return the exposure index as a band over the doubt on the activation energy.

    Parameters
    ----------
    times_s : array
        Rising times, two or more [s]
    temperatures_c : array
        Temperatures at these times, -100 to 660; further histories along the first directions [C]

    Returns
    -------
    Band
        Exposure index [-]

    Raises
    ------
    ValueError
        If the history lies outside its range.

    Notes
    -----
    All energies meet at the measured 16 h at 390 F, so that the band is wide for short pulses at great heat.
    Source: donovan_2015 and heating_limits_memory, energies derived.

    Examples
    --------
    >>> band = exposure_band([0, 2], [400, 400])
    >>> band.low < band.best < band.high
    True
    """
    energies = ACTIVATION_ENERGY_J_MOL
    found = [
        exposure_index(times_s, temperatures_c, activation_energy_j_mol=each)
        for each in (energies.low, energies.best, energies.high)
    ]
    # Below 390 F the order turns round.
    low, best, high = (plain(each) for each in np.sort(np.stack(found), axis=0))
    return Band(low=low, best=best, high=high, basis=energies.basis)
