"""Exact rises of temperature after heat that comes all at once: at a point, along a line, over a plane.

Properties are constants and no heat leaves; close to the source, where metal melts, the rises are too high.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least


@dataclass(frozen=True, kw_only=True)
class Peak:
    """When a place is hottest, and how much it has then risen.

    Parameters
    ----------
    time_s : float or array
        Time of the peak [s]
    rise_k : float or array
        Rise at the peak [K]

    Examples
    --------
    >>> Peak(time_s=0.1, rise_k=250.0).rise_k
    250.0
    """

    time_s: float
    rise_k: float


def _spread(time_s, metal):
    """Return 4 alpha t, the square of the distance over which heat has spread, in mm2."""
    return 4 * metal.diffusivity_mm2_s * require_above("time", time_s, 0, unit="s")


def instantaneous_point_rise_k(radius_mm, time_s, *, heat_j, metal):
    """Return the rise after heat at a point on the face of a half-space.

    dT = 2 Q / (rho c (4 pi alpha t)^1.5) exp(-r^2 / (4 alpha t)).

    Parameters
    ----------
    radius_mm : float or array
        Distance r from the point, from 0 [mm]
    time_s : float or array
        Time t since the heat came, above 0 [s]
    heat_j : float or array
        Heat Q, above 0 [J]
    metal : ConstantMetal
        The body [-]

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
    Source: carslaw_jaeger section 10.2, from memory; doubled for the half-space.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(instantaneous_point_rise_k(3, 1, heat_j=480, metal=steel), 1)
    202.1
    """
    radius_mm = require_at_least("radius", radius_mm, 0, unit="mm")
    heat_j = require_above("heat", heat_j, 0, unit="J")
    spread = _spread(time_s, metal)
    return plain(
        2
        * heat_j
        / (metal.heat_by_volume_j_mm3k * (np.pi * spread) ** 1.5)
        * np.exp(-(radius_mm**2) / spread)
    )


def point_peak(radius_mm, *, heat_j, metal):
    """Return the peak at a distance from a point source, t = r^2/(6 alpha).

    The rise is 2 Q / (rho c r^3) (3 / (2 pi e))^1.5.

    Parameters
    ----------
    radius_mm : float or array
        Distance r from the point, above 0 [mm]
    heat_j : float or array
        Heat Q, above 0 [J]
    metal : ConstantMetal
        The body, a half-space [-]

    Returns
    -------
    Peak
        Time and rise, in the common shape [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: rykalin chapter on peak temperatures, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(point_peak(4, heat_j=480, metal=steel).rise_k, 1)
    216.4
    """
    time_s = require_above("radius", radius_mm, 0, unit="mm") ** 2 / (6 * metal.diffusivity_mm2_s)
    return Peak(
        time_s=plain(time_s), rise_k=instantaneous_point_rise_k(radius_mm, time_s, heat_j=heat_j, metal=metal)
    )


def instantaneous_line_rise_k(radius_mm, time_s, *, heat_j, thickness_mm, metal):
    """Return the rise in a plate after heat along a line through it.

    dT = Q / (h rho c 4 pi alpha t) exp(-r^2 / (4 alpha t)).

    Parameters
    ----------
    radius_mm : float or array
        Distance r from the line, from 0 [mm]
    time_s : float or array
        Time t since the heat came, above 0 [s]
    heat_j : float or array
        Heat Q, above 0 [J]
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
        If an argument is out of its range.

    Notes
    -----
    It holds where the heat is even over the thickness: some thicknesses away from the line.
    Source: carslaw_jaeger section 10.3, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> aluminium = ConstantMetal(conductivity_w_mk=190, density_kg_m3=2700, heat_capacity_j_kgk=900)
    >>> round(instantaneous_line_rise_k(10, 0.319737, heat_j=480, thickness_mm=2, metal=aluminium), 2)
    115.65
    """
    radius_mm = require_at_least("radius", radius_mm, 0, unit="mm")
    heat_j = require_above("heat", heat_j, 0, unit="J")
    by_length = heat_j / require_above("thickness", thickness_mm, 0, unit="mm")
    spread = _spread(time_s, metal)
    return plain(
        by_length / (metal.heat_by_volume_j_mm3k * np.pi * spread) * np.exp(-(radius_mm**2) / spread)
    )


def line_peak(radius_mm, *, heat_j, thickness_mm, metal):
    """Return the peak at a distance from a line source, t = r^2/(4 alpha), rise Q / (h pi e rho c r^2).

    Parameters
    ----------
    radius_mm : float or array
        Distance r from the line, above 0 [mm]
    heat_j : float or array
        Heat Q, above 0 [J]
    thickness_mm : float or array
        Thickness h of the plate, above 0 [mm]
    metal : ConstantMetal
        The plate [-]

    Returns
    -------
    Peak
        Time and rise, in the common shape [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: rykalin chapter on peak temperatures, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> aluminium = ConstantMetal(conductivity_w_mk=190, density_kg_m3=2700, heat_capacity_j_kgk=900)
    >>> round(line_peak(10, heat_j=480, thickness_mm=2, metal=aluminium).time_s, 3)
    0.32
    """
    time_s = require_above("radius", radius_mm, 0, unit="mm") ** 2 / (4 * metal.diffusivity_mm2_s)
    source = {"heat_j": heat_j, "thickness_mm": thickness_mm, "metal": metal}
    return Peak(time_s=plain(time_s), rise_k=instantaneous_line_rise_k(radius_mm, time_s, **source))


def instantaneous_plane_rise_k(depth_mm, time_s, *, heat_per_area_j_mm2, metal):
    """Return the rise after heat over the whole face of a half-space.

    dT = Q'' / (rho c sqrt(pi alpha t)) exp(-x^2 / (4 alpha t)).

    Parameters
    ----------
    depth_mm : float or array
        Depth x below the face, from 0 [mm]
    time_s : float or array
        Time t since the heat came, above 0 [s]
    heat_per_area_j_mm2 : float or array
        Heat Q'' into the face by its area, above 0 [J/mm2]
    metal : ConstantMetal
        The body [-]

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
    Source: carslaw_jaeger section 10.3, from memory; doubled for the half-space.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(instantaneous_plane_rise_k(0.5, 0.02126, heat_per_area_j_mm2=10, metal=steel), 1)
    1896.9
    """
    depth_mm = require_at_least("depth", depth_mm, 0, unit="mm")
    heat = require_above("heat by area", heat_per_area_j_mm2, 0, unit="J/mm2")
    spread = _spread(time_s, metal)
    return plain(
        2 * heat / (metal.heat_by_volume_j_mm3k * np.sqrt(np.pi * spread)) * np.exp(-(depth_mm**2) / spread)
    )


def plane_peak(depth_mm, *, heat_per_area_j_mm2, metal):
    """Return the peak at a depth under a plane source, t = x^2/(2 alpha).

    Parameters
    ----------
    depth_mm : float or array
        Depth x below the face, above 0 [mm]
    heat_per_area_j_mm2 : float or array
        Heat into the face by its area, above 0 [J/mm2]
    metal : ConstantMetal
        The body, a half-space [-]

    Returns
    -------
    Peak
        Time and rise, in the common shape [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: rykalin chapter on peak temperatures, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(plane_peak(1, heat_per_area_j_mm2=10, metal=steel).rise_k, 1)
    948.4
    """
    time_s = require_above("depth", depth_mm, 0, unit="mm") ** 2 / (2 * metal.diffusivity_mm2_s)
    source = {"heat_per_area_j_mm2": heat_per_area_j_mm2, "metal": metal}
    return Peak(time_s=plain(time_s), rise_k=instantaneous_plane_rise_k(depth_mm, time_s, **source))
