"""The six forces that stand against drawing a set rivet out head first, by plain mechanics.

Derived here and never tried on a joint. ``tail_pull_out`` makes bands of them and puts them together.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_between
from secondplate.rivet import piercing_force_n, steel_strength_mpa
from secondplate.tables import values

_CONSTANTS = values("pull_out_constants")


def _interlock(interlock_mm):
    """Return an interlock that a joint may have."""
    return np.asarray(require_between("interlock", interlock_mm, 0, 2, unit="mm"))


def _stress(name, stress_mpa):
    """Return a stress that a sheet may have."""
    return require_between(name, stress_mpa, 20, 2000, unit="MPa")


def _friction(friction):
    """Return a coefficient of friction that surfaces may have."""
    return require_between("friction", friction, 0, 1, unit="")


def collar_shear_n(rivet, *, interlock_mm, penetration_mm, tensile_strength_mpa):
    """Return the force that shears a collar out of the second plate: F1 = pi (D + 2 f) p 0.577 R_m.

    Parameters
    ----------
    rivet : Rivet
        The rivet; its shank D counts [-]
    interlock_mm : float or array
        Interlock f, 0 to 2 [mm]
    penetration_mm : float or array
        Depth p of the tail in the second plate, 0.1 to 6 [mm]
    tensile_strength_mpa : float or array
        Tensile strength of the second plate, 20 to 2000 [MPa]

    Returns
    -------
    float or numpy.ndarray
        Force F1 [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: pull_out_mechanics, force 1; derived, not tried.

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> rivet = Rivet(rivet_length_mm=5.0, bore_diameter_mm=3.34)
    >>> round(collar_shear_n(rivet, interlock_mm=0.4, penetration_mm=1.6, tensile_strength_mpa=215))
    3804
    """
    tail = rivet.shank_diameter_mm + 2 * _interlock(interlock_mm)
    depth = require_between("penetration", penetration_mm, 0.1, 6, unit="mm")
    strength = _stress("tensile strength", tensile_strength_mpa)
    return piercing_force_n(shank_diameter_mm=tail, thickness_mm=depth, tensile_strength_mpa=strength)


def collar_crush_n(rivet, *, interlock_mm, tensile_strength_mpa, crush_factor):
    """Return the force that crushes the collar under the tail: F2 = c R_m pi (D + f) f.

    Parameters
    ----------
    rivet : Rivet
        The rivet; its shank D counts [-]
    interlock_mm : float or array
        Interlock f, 0 to 2 [mm]
    tensile_strength_mpa : float or array
        Tensile strength of the second plate, 20 to 2000 [MPa]
    crush_factor : float or array
        Pressure over tensile strength c, 1 to 3.5; 1.4 to 2.8 is the band [-]

    Returns
    -------
    float or numpy.ndarray
        Force F2, 0 without interlock [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: pull_out_mechanics, force 2; c = 1.4 fits clinch_simulations, 2.8 is an indentation held all
    round.

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> rivet = Rivet(rivet_length_mm=5.0)
    >>> round(collar_crush_n(rivet, interlock_mm=0.4, tensile_strength_mpa=215, crush_factor=2.8))
    4312
    """
    interlock = _interlock(interlock_mm)
    strength = _stress("tensile strength", tensile_strength_mpa)
    factor = require_between("crush factor", crush_factor, 1, 3.5, unit="")
    return plain(factor * strength * np.pi * (rivet.shank_diameter_mm + interlock) * interlock)


def leg_closure_n(rivet, *, interlock_mm):
    """Return the force that bends the spread leg back inward: F3 = pi D 3.2 HV s^2/4 / (f/2 + s/2).

    Parameters
    ----------
    rivet : Rivet
        The rivet: shank D, wall s and hardness count [-]
    interlock_mm : float or array
        Interlock f, 0 to 2 [mm]

    Returns
    -------
    float or numpy.ndarray
        Force F3 [N]

    Raises
    ------
    ValueError
        If the interlock lies outside its range.

    Notes
    -----
    Source: pull_out_mechanics, force 3; a plastic hinge all round, hoop stress left out; derived, not tried.

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> round(leg_closure_n(Rivet(rivet_length_mm=5.0, bore_diameter_mm=3.34), interlock_mm=0.4))
    7602
    """
    wall = rivet.wall_mm
    lever = (_interlock(interlock_mm) + wall) / 2
    hinge = steel_strength_mpa(rivet.hardness_hv) * np.asarray(wall) ** 2 / 4
    return plain(np.pi * rivet.shank_diameter_mm * hinge / lever)


def shank_friction_n(rivet, *, contact_length_mm, contact_pressure_mpa, friction):
    """Return the friction on the shank: F5 = mu p pi D L.

    Parameters
    ----------
    rivet : Rivet
        The rivet; its shank D counts [-]
    contact_length_mm : float or array
        Length L of shank that the plates press on, 0 to 16 [mm]
    contact_pressure_mpa : float or array
        Pressure p of the plates on the shank, 0 to 500; no measured value is known [MPa]
    friction : float or array
        Coefficient of friction mu, 0 to 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Force F5 [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: pull_out_mechanics, force 5. Corrosion products and fretting raise friction (salt_spray_2021).

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> round(shank_friction_n(Rivet(rivet_length_mm=5.0), contact_length_mm=3, contact_pressure_mpa=50,
    ...                        friction=0.2))
    500
    """
    length = np.asarray(require_between("contact length", contact_length_mm, 0, 16, unit="mm"))
    pressure = require_between("contact pressure", contact_pressure_mpa, 0, 500, unit="MPa")
    return plain(_friction(friction) * pressure * np.pi * rivet.shank_diameter_mm * length)


def hole_opening_n(rivet, *, interlock_mm, proof_stress_mpa, friction):
    """Return the force with which the tail opens the hole of the top plate, once it gets there.

    F6 = 1.15 R_p pi/4 (D_f^2 - D^2) (1 + mu / tan 20 deg), with the tail's diameter D_f = D + 2 f.

    Parameters
    ----------
    rivet : Rivet
        The rivet; its shank D counts [-]
    interlock_mm : float or array
        Interlock f, 0 to 2 [mm]
    proof_stress_mpa : float or array
        Proof stress of the top plate, 20 to 2000 [MPa]
    friction : float or array
        Coefficient of friction mu, 0 to 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Force F6, a second event that is not added to the first peak [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: pull_out_mechanics, force 6; derived, not tried.

    Examples
    --------
    >>> from secondplate.rivet import Rivet
    >>> rivet = Rivet(rivet_length_mm=5.0)
    >>> round(hole_opening_n(rivet, interlock_mm=0.4, proof_stress_mpa=100, friction=0.2))
    1276
    """
    shank = rivet.shank_diameter_mm
    ring = np.pi / 4 * ((shank + 2 * _interlock(interlock_mm)) ** 2 - np.asarray(shank) ** 2)
    slope = 1 + np.asarray(_friction(friction)) / np.tan(np.radians(_CONSTANTS["flare angle"]))
    stress = _CONSTANTS["hole factor"] * np.asarray(_stress("proof stress", proof_stress_mpa))
    return plain(stress * ring * slope)
