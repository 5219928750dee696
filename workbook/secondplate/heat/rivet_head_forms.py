"""Two quick estimates of a rivet: its steady head over a cold face, and its mean rise when it keeps a heat.

Properties are constants; nothing melts.
"""

from functools import cache

import numpy as np
from scipy.special import j0, j1, jn_zeros

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between

_TERMS = 4000  # the edge of the heated part makes the series slow; its sum then moves by less than 1 in 1e6


@cache
def _zeros():
    """Return the zeros of J1, where the side takes no heat."""
    return jn_zeros(1, _TERMS)


def cylinder_steady_rise_k(
    radius_mm, depth_mm, *, heated_radius_mm, cylinder_radius_mm, height_mm, heat_flux_w_mm2, metal
):
    """Return the steady rise in a short cylinder heated on the middle of its top, its foot held cold.

    dT = (q/k) [a^2/R^2 (H-z) + sum 2 a J1(l a) J0(l r) sinh(l (H-z)) / (R^2 l^2 J0(l R)^2 cosh(l H))] with
    J1(l R) = 0; the side takes no heat.

    Parameters
    ----------
    radius_mm : float or array
        Distance r from the axis, 0 to R [mm]
    depth_mm : float or array
        Depth z below the top, 0 to H [mm]
    heated_radius_mm : float
        Radius a of the heated part, above 0 and at most R [mm]
    cylinder_radius_mm : float
        Radius R of the cylinder, above 0 [mm]
    height_mm : float
        Height H of the cylinder, above 0 [mm]
    heat_flux_w_mm2 : float
        Flux q into the heated part, 0 to 2000 W/mm2 [W/mm2]
    metal : ConstantMetal
        The cylinder [-]

    Returns
    -------
    float or array
        Rise over the foot, in the common shape [K]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 8.3, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(cylinder_steady_rise_k(0, 1, heated_radius_mm=3, cylinder_radius_mm=4, height_mm=2,
    ...                              heat_flux_w_mm2=10, metal=steel), 2)
    268.82
    """
    size_mm = require_above("cylinder radius", cylinder_radius_mm, 0, unit="mm")
    height_mm = require_above("height", height_mm, 0, unit="mm")
    require_above("heated radius", heated_radius_mm, 0, unit="mm")
    heated_mm = require_between("heated radius", heated_radius_mm, 0, size_mm, unit="mm")
    r = np.asarray(require_between("radius", radius_mm, 0, size_mm, unit="mm"))
    left_mm = height_mm - np.asarray(require_between("depth", depth_mm, 0, height_mm, unit="mm"))
    flux = require_between("heat flux", heat_flux_w_mm2, 0, 2000, unit="W/mm2")
    zeros = _zeros()
    waves = zeros / size_mm
    weights = 2 * heated_mm * j1(waves * heated_mm) / (zeros**2 * j0(zeros) ** 2)
    # sinh over cosh without running over: exp(-l z) (1 - exp(-2 l (H - z))) / (1 + exp(-2 l H))
    up = np.exp(np.multiply.outer(left_mm - height_mm, waves)) * -np.expm1(
        np.multiply.outer(-2 * left_mm, waves)
    )
    series = weights * j0(np.multiply.outer(r, waves)) * up / (1 + np.exp(-2 * height_mm * waves))
    return plain(
        flux / metal.conductivity_w_mmk * ((heated_mm / size_mm) ** 2 * left_mm + series.sum(axis=-1))
    )


def lumped_rise_k(heat_j, *, mass_g, heat_capacity_j_kgk):
    """Return the mean rise of a body that keeps a heat, dT = Q / (m c).

    Parameters
    ----------
    heat_j : float or array
        Heat Q that stays in the body, from 0 [J]
    mass_g : float or array
        Mass m of the body, above 0 [g]
    heat_capacity_j_kgk : float or array
        Heat capacity c, above 0 [J/kgK]

    Returns
    -------
    float or array
        Rise dT, in the common shape [K]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: heat balance. In truth the plates round the rivet take heat from the first moment on.

    Examples
    --------
    >>> round(lumped_rise_k(200, mass_g=0.9, heat_capacity_j_kgk=500))
    444
    """
    heat_j = require_at_least("heat", heat_j, 0, unit="J")
    mass_g = require_above("mass", mass_g, 0, unit="g")
    return heat_j / (mass_g / 1000 * require_above("heat capacity", heat_capacity_j_kgk, 0, unit="J/kgK"))
