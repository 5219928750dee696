"""Exact rises of temperature round a source that moves steadily over a plate, long after its start.

Properties are constants, nothing melts and no heat leaves the faces.
"""

import numpy as np
from scipy.special import k0e

from secondplate.arrays import plain
from secondplate.checks import require_above, require_finite


def _distance_mm(*legs):
    """Return the distance from the source, which must not be zero: there the form has no value."""
    squares = sum(require_finite("place", leg, unit="mm") ** 2 for leg in legs)
    return require_above("distance from the source", np.sqrt(squares), 0, unit="mm")


def thick_plate_rise_k(ahead_mm, aside_mm, depth_mm, *, heat_rate_w, travel_speed_mm_s, metal):
    """Return the rise round a point source that moves over a thick plate.

    dT = q / (2 pi k R) exp(-v (R + x) / (2 alpha)).

    Parameters
    ----------
    ahead_mm : float or array
        Place x along the travel, ahead of the source above 0, behind it below [mm]
    aside_mm : float or array
        Place beside the line of travel [mm]
    depth_mm : float or array
        Depth below the face [mm]
    heat_rate_w : float or array
        Heat q that the source brings by time, above 0 [W]
    travel_speed_mm_s : float or array
        Speed v of the source, above 0 [mm/s]
    metal : ConstantMetal
        The plate [-]

    Returns
    -------
    float or array
        Rise dT, in the common shape [K]

    Raises
    ------
    ValueError
        If an argument is out of its range or the place is the source itself.

    Notes
    -----
    Source: rosenthal_1946 thick plate, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> plate = ConstantMetal(conductivity_w_mk=40, density_kg_m3=8000, heat_capacity_j_kgk=500)
    >>> round(thick_plate_rise_k(-5, 0, 0, heat_rate_w=3000, travel_speed_mm_s=5, metal=plate), 1)
    2387.3
    """
    rate_w = require_above("heat rate", heat_rate_w, 0, unit="W")
    speed = require_above("travel speed", travel_speed_mm_s, 0, unit="mm/s")
    distance_mm = _distance_mm(ahead_mm, aside_mm, depth_mm)
    lag = speed * (distance_mm + plain(ahead_mm)) / (2 * metal.diffusivity_mm2_s)
    return plain(rate_w / (2 * np.pi * metal.conductivity_w_mmk * distance_mm) * np.exp(-lag))


def thin_plate_rise_k(ahead_mm, aside_mm, *, heat_rate_w, travel_speed_mm_s, thickness_mm, metal):
    """Return the rise round a line source that moves through a thin plate.

    dT = q / (2 pi k h) exp(-v x / (2 alpha)) K0(v r / (2 alpha)).

    Parameters
    ----------
    ahead_mm : float or array
        Place x along the travel, ahead of the source above 0, behind it below [mm]
    aside_mm : float or array
        Place beside the line of travel [mm]
    heat_rate_w : float or array
        Heat q that the source brings by time, above 0 [W]
    travel_speed_mm_s : float or array
        Speed v of the source, above 0 [mm/s]
    thickness_mm : float or array
        Thickness h of the plate, above 0 [mm]
    metal : ConstantMetal
        The plate [-]

    Returns
    -------
    float or array
        Rise dT, in the common shape [K]

    Raises
    ------
    ValueError
        If an argument is out of its range or the place is the source itself.

    Notes
    -----
    Source: rosenthal_1946 thin plate, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> plate = ConstantMetal(conductivity_w_mk=40, density_kg_m3=8000, heat_capacity_j_kgk=500)
    >>> round(thin_plate_rise_k(0, 10, heat_rate_w=3000, travel_speed_mm_s=5, thickness_mm=3, metal=plate), 1)
    248.1
    """
    rate_w = require_above("heat rate", heat_rate_w, 0, unit="W")
    speed = require_above("travel speed", travel_speed_mm_s, 0, unit="mm/s")
    thickness_mm = require_above("thickness", thickness_mm, 0, unit="mm")
    by_length = speed / (2 * metal.diffusivity_mm2_s)
    distance_mm = _distance_mm(ahead_mm, aside_mm)
    # k0e is K0 times exp of its argument, so nothing runs over far behind the source.
    fall = np.exp(-by_length * (plain(ahead_mm) + distance_mm)) * k0e(by_length * distance_mm)
    return plain(rate_w / (2 * np.pi * metal.conductivity_w_mmk * thickness_mm) * fall)
