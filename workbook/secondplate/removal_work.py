"""Mechanics of punching a rivet from behind and of grinding its head: force, rim speed, heat.

A punch shears a plug out of the plate; a wheel must never run faster than what stands on it.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least
from secondplate.removal_hazards import HAZARDS_OF_REMOVAL
from secondplate.tables import bands

GRINDING_ENERGY_J_MM3 = bands("grinding")["grinding energy"]
(USUAL_RIM_LIMIT_M_S,) = (
    float(hazard.value) for hazard in HAZARDS_OF_REMOVAL if hazard.method == "grind" and hazard.unit == "m/s"
)
_MM_MIN_PER_M_S = 60_000.0


def punch_force_n(*, plug_diameter_mm, plate_thickness_mm, shear_strength_mpa):
    """Return the force that shears a plug out of a plate, F = pi d t tau.

    Parameters
    ----------
    plug_diameter_mm : float or array
        Diameter of the plug, above 0 [mm]
    plate_thickness_mm : float or array
        Thickness that is sheared, above 0 [mm]
    shear_strength_mpa : float or array
        Shear strength of the plate, above 0 [MPa]

    Returns
    -------
    float or array
        Force, if a die ring holds the plate close round the plug; without one the plate bends first [N]

    Raises
    ------
    ValueError
        If a value is not above 0.

    Notes
    -----
    Source: strength_of_materials.

    Examples
    --------
    >>> round(punch_force_n(plug_diameter_mm=5, plate_thickness_mm=1.5, shear_strength_mpa=140))
    3299
    """
    diameter = np.asarray(require_above("plug diameter", plug_diameter_mm, 0, unit="mm"))
    thickness = np.asarray(require_above("plate thickness", plate_thickness_mm, 0, unit="mm"))
    strength = np.asarray(require_above("shear strength", shear_strength_mpa, 0, unit="MPa"))
    return plain(np.pi * diameter * thickness * strength)


def rim_speed_m_s(*, wheel_diameter_mm, wheel_speed_rpm):
    """Return the speed of the rim of a wheel, v = pi D n.

    Parameters
    ----------
    wheel_diameter_mm : float or array
        Diameter of the wheel, above 0 [mm]
    wheel_speed_rpm : float or array
        Turns of the wheel in a minute, at least 0 [1/min]

    Returns
    -------
    float or array
        Rim speed [m/s]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: plane_geometry, length of the rim. Many bonded wheels end at 80 m/s (own_judgement, from memory);
    what stands on the wheel counts.

    Examples
    --------
    >>> round(rim_speed_m_s(wheel_diameter_mm=75, wheel_speed_rpm=20_000), 2)
    78.54
    """
    diameter = np.asarray(require_above("wheel diameter", wheel_diameter_mm, 0, unit="mm"))
    turns = np.asarray(require_at_least("wheel speed", wheel_speed_rpm, 0, unit="1/min"))
    return plain(np.pi * diameter * turns / _MM_MIN_PER_M_S)


def most_wheel_speed_rpm(*, wheel_diameter_mm, rim_limit_m_s=USUAL_RIM_LIMIT_M_S):
    """Return the turns at which a wheel reaches its rim speed limit, n = v / (pi D).

    Parameters
    ----------
    wheel_diameter_mm : float or array
        Diameter of the wheel, above 0 [mm]
    rim_limit_m_s : float or array
        Rim speed that stands on the wheel, above 0 [m/s]

    Returns
    -------
    float or array
        Most turns in a minute [1/min]

    Raises
    ------
    ValueError
        If a value is not above 0.

    Notes
    -----
    Source: plane_geometry, length of the rim.

    Examples
    --------
    >>> round(most_wheel_speed_rpm(wheel_diameter_mm=75))
    20372
    """
    diameter = np.asarray(require_above("wheel diameter", wheel_diameter_mm, 0, unit="mm"))
    limit = np.asarray(require_above("rim speed limit", rim_limit_m_s, 0, unit="m/s"))
    return plain(limit * _MM_MIN_PER_M_S / (np.pi * diameter))


def grinding_heat_j(ground_volume_mm3):
    """Return the heat of grinding hardened steel away, E = u V.

    Parameters
    ----------
    ground_volume_mm3 : float or array
        Volume of steel that is ground away, at least 0 [mm3]

    Returns
    -------
    Band
        Heat in work, wheel and sparks together [J]

    Raises
    ------
    ValueError
        If the volume is below 0.

    Notes
    -----
    Source: own_judgement, specific grinding energy of 20 to 60 J/mm3 from memory.

    Examples
    --------
    >>> heat = grinding_heat_j(60)
    >>> heat.low, heat.high
    (1200.0, 3600.0)
    """
    volume = np.asarray(require_at_least("ground volume", ground_volume_mm3, 0, unit="mm3"))
    return Band(
        low=plain(GRINDING_ENERGY_J_MM3.low * volume),
        best=plain(GRINDING_ENERGY_J_MM3.best * volume),
        high=plain(GRINDING_ENERGY_J_MM3.high * volume),
        basis=GRINDING_ENERGY_J_MM3.basis,
    )
