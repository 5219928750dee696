"""Hardening of sheet by Hollomon's power law, and what a tensile test tells of its two constants.

Leaves out Voce and Ludwik (no constants were found), rate and temperature.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_between

_EXPONENT_LIMITS = (0.01, 0.6)


def hardening_exponent(uniform_elongation_percent):
    """Return the exponent that fits a uniform elongation: n = ln(1 + A_g/100).

    Parameters
    ----------
    uniform_elongation_percent : float or array
        Uniform elongation A_g, elongation at the greatest load, 1 to 80 [%]

    Returns
    -------
    float or numpy.ndarray
        Hardening exponent [-]

    Raises
    ------
    ValueError
        If the elongation lies outside its range.

    Notes
    -----
    Source: considere_1885: necking begins at a true strain of n. It is another thing than the n that is
    measured between two strains: 5xxx sheet with A_g 18 % gives 0.166 here, while its n at 5 % is 0.26 and
    more. Say which one is used.

    Examples
    --------
    >>> round(hardening_exponent(18), 3)
    0.166
    """
    elongation = require_between("uniform elongation", uniform_elongation_percent, 1, 80, unit="%")
    return plain(np.log1p(np.asarray(elongation) / 100))


def strength_coefficient_mpa(*, tensile_strength_mpa, hardening_exponent):
    """Return Hollomon's coefficient from a tensile test: K = R_m (e/n)^n.

    Parameters
    ----------
    tensile_strength_mpa : float or array
        Tensile strength, above 0 [MPa]
    hardening_exponent : float or array
        Hardening exponent, 0.01 to 0.6 [-]

    Returns
    -------
    float or numpy.ndarray
        Strength coefficient K [MPa]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: hollomon_1945 with considere_1885, exact for a metal that follows the power law.

    Examples
    --------
    >>> round(strength_coefficient_mpa(tensile_strength_mpa=215, hardening_exponent=0.30))
    416
    """
    strength = require_above("tensile strength", tensile_strength_mpa, 0, unit="MPa")
    exponent = np.asarray(
        require_between("hardening exponent", hardening_exponent, *_EXPONENT_LIMITS, unit="")
    )
    return plain(strength * (np.e / exponent) ** exponent)


def strength_at_necking_mpa(*, strength_coefficient_mpa, hardening_exponent):
    """Return the tensile strength of a metal that follows the power law: R_m = K (n/e)^n.

    Parameters
    ----------
    strength_coefficient_mpa : float or array
        Strength coefficient K, above 0 [MPa]
    hardening_exponent : float or array
        Hardening exponent, 0.01 to 0.6 [-]

    Returns
    -------
    float or numpy.ndarray
        Tensile strength [MPa]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: hollomon_1945 with considere_1885; hardening_calculator_page prints the same.

    Examples
    --------
    >>> round(strength_at_necking_mpa(strength_coefficient_mpa=416, hardening_exponent=0.30))
    215
    """
    coefficient = require_above("strength coefficient", strength_coefficient_mpa, 0, unit="MPa")
    exponent = np.asarray(
        require_between("hardening exponent", hardening_exponent, *_EXPONENT_LIMITS, unit="")
    )
    return plain(coefficient * (exponent / np.e) ** exponent)


def flow_stress_mpa(true_strain, *, strength_coefficient_mpa, hardening_exponent):
    """Return the true stress at a true plastic strain by Hollomon's law: sigma = K eps^n.

    Parameters
    ----------
    true_strain : float or array
        True plastic strain, 0.002 to 1 [-]
    strength_coefficient_mpa : float or array
        Strength coefficient K, above 0 [MPa]
    hardening_exponent : float or array
        Hardening exponent, 0.01 to 0.6 [-]

    Returns
    -------
    float or numpy.ndarray
        True stress [MPa]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: hollomon_1945. Below 0.002 the law gives less than the proof stress; beyond the strain at necking
    it is extrapolated, as every estimate of riveting is.

    Examples
    --------
    >>> round(flow_stress_mpa(0.3, strength_coefficient_mpa=416, hardening_exponent=0.30))
    290
    """
    strain = np.asarray(require_between("true strain", true_strain, 0.002, 1, unit=""))
    coefficient = require_above("strength coefficient", strength_coefficient_mpa, 0, unit="MPa")
    exponent = require_between("hardening exponent", hardening_exponent, *_EXPONENT_LIMITS, unit="")
    return plain(coefficient * strain**exponent)
