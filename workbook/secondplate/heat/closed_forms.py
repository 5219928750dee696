"""Exact rises of temperature under a steady heat source on the face of a half-space.

Properties are constants, nothing melts and no heat leaves. The forms check the heat model and give quick
estimates; each holds until the heat reaches the back or the rim of the real body.
"""

import numpy as np
from scipy.special import erfcx

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between


def _ierfc(value):
    """Return the integral of the complementary error function from 0 up, exact far out too."""
    return np.exp(-(value**2)) * (1 / np.sqrt(np.pi) - value * erfcx(value))


def _slope_k_mm(heat_flux_w_mm2, metal):
    """Return the slope of temperature at a face that takes a flux, q / k."""
    return require_between("heat flux", heat_flux_w_mm2, 0, 2000, unit="W/mm2") / metal.conductivity_w_mmk


def half_space_flux_rise_k(depth_mm, time_s, *, heat_flux_w_mm2, metal):
    """Return the rise under a face with constant flux.

    dT = (2 q/k) sqrt(alpha t) ierfc(x / (2 sqrt(alpha t))).

    Parameters
    ----------
    depth_mm : float or array
        Depth x below the face, from 0 [mm]
    time_s : float or array
        Time t since the heat began, above 0 [s]
    heat_flux_w_mm2 : float or array
        Flux q into the face, 0 to 2000 W/mm2 [W/mm2]
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
    Source: carslaw_jaeger section 2.9, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(half_space_flux_rise_k(0.1, 0.005, heat_flux_w_mm2=100, metal=steel), 1)
    365.6
    """
    depth_mm = require_at_least("depth", depth_mm, 0, unit="mm")
    time_s = require_above("time", time_s, 0, unit="s")
    reach_mm = 2 * np.sqrt(metal.diffusivity_mm2_s * time_s)
    return plain(_slope_k_mm(heat_flux_w_mm2, metal) * reach_mm * _ierfc(depth_mm / reach_mm))


def half_space_pulse_rise_k(depth_mm, time_s, *, pulse_s, heat_flux_w_mm2, metal):
    """Return the rise under a face that took a constant flux for a while: two fluxes laid over one another.

    Parameters
    ----------
    depth_mm : float or array
        Depth below the face, from 0 [mm]
    time_s : float or array
        Time since the heat began, above 0 [s]
    pulse_s : float or array
        How long the flux lasts, above 0 [s]
    heat_flux_w_mm2 : float or array
        Flux into the face while it lasts, 0 to 2000 W/mm2 [W/mm2]
    metal : ConstantMetal
        The body [-]

    Returns
    -------
    float or array
        Rise, in the common shape [K]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 2.9, superposed; from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(half_space_pulse_rise_k(0, 0.010, pulse_s=0.005, heat_flux_w_mm2=100, metal=steel), 1)
    267.1
    """
    pulse_s = require_above("pulse", pulse_s, 0, unit="s")
    source = {"heat_flux_w_mm2": heat_flux_w_mm2, "metal": metal}
    on = half_space_flux_rise_k(depth_mm, time_s, **source)
    after_s = np.asarray(time_s, dtype=float) - pulse_s
    # While the pulse lasts nothing is taken off; any time above 0 will do there.
    off = half_space_flux_rise_k(depth_mm, np.where(after_s > 0, after_s, 1.0), **source)
    return plain(on - np.where(after_s > 0, off, 0.0))


def disc_rise_k(depth_mm, time_s, *, disc_radius_mm, heat_flux_w_mm2, metal):
    """Return the rise on the axis under a heated disc on a half-space.

    dT = (2 q/k) sqrt(alpha t) [ierfc(z/s) - ierfc(sqrt(z^2 + a^2)/s)] with s = 2 sqrt(alpha t).

    Parameters
    ----------
    depth_mm : float or array
        Depth z on the axis, from 0 [mm]
    time_s : float or array
        Time t since the heat began, above 0 [s]
    disc_radius_mm : float or array
        Radius a of the disc, above 0 [mm]
    heat_flux_w_mm2 : float or array
        Flux q into the disc, 0 to 2000 W/mm2 [W/mm2]
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
    Source: carslaw_jaeger section 10.5, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(disc_rise_k(1, 0.1, disc_radius_mm=3.5, heat_flux_w_mm2=10, metal=steel), 2)
    69.63
    """
    radius_mm = require_above("disc radius", disc_radius_mm, 0, unit="mm")
    source = {"heat_flux_w_mm2": heat_flux_w_mm2, "metal": metal}
    whole_face = half_space_flux_rise_k(depth_mm, time_s, **source)
    return plain(whole_face - half_space_flux_rise_k(np.hypot(depth_mm, radius_mm), time_s, **source))


def disc_steady_rise_k(*, disc_radius_mm, heat_flux_w_mm2, metal):
    """Return the rise that the middle of a heated disc tends to, q a / k.

    Parameters
    ----------
    disc_radius_mm : float or array
        Radius a of the disc, above 0 [mm]
    heat_flux_w_mm2 : float or array
        Flux q into the disc, 0 to 2000 W/mm2 [W/mm2]
    metal : ConstantMetal
        The body [-]

    Returns
    -------
    float or array
        Rise at the middle [K]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 8.2, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(disc_steady_rise_k(disc_radius_mm=3.5, heat_flux_w_mm2=10, metal=steel), 2)
    1166.67
    """
    radius_mm = require_above("disc radius", disc_radius_mm, 0, unit="mm")
    return plain(_slope_k_mm(heat_flux_w_mm2, metal) * radius_mm)


def disc_mean_steady_rise_k(*, disc_radius_mm, heat_flux_w_mm2, metal):
    """Return the mean rise over a heated disc that it tends to, 8 q a / (3 pi k).

    Parameters
    ----------
    disc_radius_mm : float or array
        Radius a of the disc, above 0 [mm]
    heat_flux_w_mm2 : float or array
        Flux q into the disc, 0 to 2000 W/mm2 [W/mm2]
    metal : ConstantMetal
        The body [-]

    Returns
    -------
    float or array
        Mean rise over the disc [K]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 8.2, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(disc_mean_steady_rise_k(disc_radius_mm=3.5, heat_flux_w_mm2=10, metal=steel), 1)
    990.3
    """
    source = {"heat_flux_w_mm2": heat_flux_w_mm2, "metal": metal}
    return plain(8 / (3 * np.pi) * disc_steady_rise_k(disc_radius_mm=disc_radius_mm, **source))


def gaussian_rise_k(time_s, *, heat_rate_w, spread_mm, metal):
    """Return the rise at the middle of a bell-shaped source on a half-space.

    dT = P / (pi sqrt(2 pi) k sigma) atan(sqrt(2 alpha t) / sigma).

    Parameters
    ----------
    time_s : float or array
        Time t since the heat began, above 0 [s]
    heat_rate_w : float or array
        Heat P that the source brings by time, from 0 [W]
    spread_mm : float or array
        Standard deviation sigma of the bell, above 0 [mm]
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
    Source: rykalin chapter on bell-shaped sources, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(gaussian_rise_k(0.1, heat_rate_w=1000, spread_mm=2, metal=steel), 1)
    1051.5
    """
    rise_k = gaussian_steady_rise_k(heat_rate_w=heat_rate_w, spread_mm=spread_mm, metal=metal)
    reach_mm = np.sqrt(2 * metal.diffusivity_mm2_s * require_above("time", time_s, 0, unit="s"))
    return plain(rise_k * 2 / np.pi * np.arctan(reach_mm / spread_mm))


def gaussian_steady_rise_k(*, heat_rate_w, spread_mm, metal):
    """Return the rise that the middle of a bell-shaped source tends to, P / (2 sqrt(2 pi) k sigma).

    Parameters
    ----------
    heat_rate_w : float or array
        Heat P that the source brings by time, from 0 [W]
    spread_mm : float or array
        Standard deviation sigma of the bell, above 0 [mm]
    metal : ConstantMetal
        The body [-]

    Returns
    -------
    float or array
        Rise, in the common shape [K]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: rykalin chapter on bell-shaped sources, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(gaussian_steady_rise_k(heat_rate_w=1000, spread_mm=2, metal=steel), 1)
    3324.5
    """
    rate_w = require_at_least("heat rate", heat_rate_w, 0, unit="W")
    spread_mm = require_above("spread", spread_mm, 0, unit="mm")
    return plain(rate_w / (2 * np.sqrt(2 * np.pi) * metal.conductivity_w_mmk * spread_mm))
