"""Exact forms of melting: a face held above the melting point, and a face that takes a constant flux.

One density, conductivity and heat capacity serve solid and melt, and the melt does not flow.
"""

import numpy as np
from scipy.special import erf, erfcx

from secondplate import tables
from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between

_LATEST_IN_SERIES = 0.1  # relative time up to which four terms keep five figures


def neumann_constant(stefan_number, *, subcooling_number=0.0):
    """Return lambda of a half-space that melts from a face held above the melting point.

    The melt is 2 lambda sqrt(alpha t) deep, where
    lambda sqrt(pi) = Ste exp(-lambda^2)/erf(lambda) - Sub exp(-lambda^2)/erfc(lambda).

    Parameters
    ----------
    stefan_number : float or array
        Ste, heat capacity times excess of the face over the melting point over latent heat, 1e-6 to 20 [-]
    subcooling_number : float or array
        Sub, heat capacity times shortfall of the solid under the melting point over latent heat, 0 to 20 [-]

    Returns
    -------
    float or array
        Constant lambda, in the common shape [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 11.2, from memory; without subcooling it is
    lambda exp(lambda^2) erf(lambda) = Ste/sqrt(pi).

    Examples
    --------
    >>> round(neumann_constant(1.0), 6)
    0.620063
    """
    ste = require_between("Stefan number", stefan_number, 1e-6, 20, unit="")
    sub = require_between("subcooling number", subcooling_number, 0, 20, unit="")
    ste, sub = np.broadcast_arrays(ste, sub)
    low, high = np.zeros(ste.shape), np.full(ste.shape, 4.0)
    for _ in range(60):  # 2^-60 of the bracket
        middle = (low + high) / 2
        left_over = ste * np.exp(-(middle**2)) / erf(middle) - sub / erfcx(middle) - middle * np.sqrt(np.pi)
        deeper = left_over > 0
        low, high = np.where(deeper, middle, low), np.where(deeper, high, middle)
    return plain((low + high) / 2)


def neumann_depth_mm(time_s, *, face_excess_k, first_shortfall_k, latent_heat_j_kg, metal):
    """Return how deep a half-space has melted from a face held hot, 2 lambda sqrt(alpha t).

    Parameters
    ----------
    time_s : float or array
        Time t since the face was brought to its temperature, from 0 [s]
    face_excess_k : float or array
        Excess of the face over the melting point, above 0 [K]
    first_shortfall_k : float or array
        Shortfall of the solid under the melting point before, from 0 [K]
    latent_heat_j_kg : float or array
        Latent heat, above 0 [J/kg]
    metal : ConstantMetal
        Solid and melt [-]

    Returns
    -------
    float or array
        Depth of the melt, in the common shape [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 11.2, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(neumann_depth_mm(0.02, face_excess_k=1000, first_shortfall_k=0, latent_heat_j_kg=250e3,
    ...                        metal=steel), 3)
    0.599
    """
    by_latent = metal.heat_capacity_j_kgk / require_above("latent heat", latent_heat_j_kg, 0, unit="J/kg")
    constant = neumann_constant(
        require_above("face excess", face_excess_k, 0, unit="K") * by_latent,
        subcooling_number=require_at_least("first shortfall", first_shortfall_k, 0, unit="K") * by_latent,
    )
    time_s = require_at_least("time", time_s, 0, unit="s")
    return plain(2 * constant * np.sqrt(metal.diffusivity_mm2_s * time_s))


def constant_flux_melting(relative_time):
    """Return the relative depth of melt soon after a body at its melting point takes a constant flux.

    S = tau - tau^2/2! + 5 tau^3/3! - 51 tau^4/4!. Depths are in lengths alpha rho L / q, times in that length
    squared over alpha; the melt stays where it is.

    Parameters
    ----------
    relative_time : float or array
        Relative time tau, 0 to 0.1 [-]

    Returns
    -------
    float or array
        Relative depth S, in the shape of the time [-]

    Raises
    ------
    ValueError
        If the time is out of its range.

    Notes
    -----
    For later times see ``constant_flux_melting_table``.
    Source: evans_1950, from memory; confirmed by computation.

    Examples
    --------
    >>> round(constant_flux_melting(0.1), 4)
    0.0956
    """
    tau = require_between("relative time", relative_time, 0, _LATEST_IN_SERIES, unit="")
    return plain(tau - tau**2 / 2 + 5 * tau**3 / 6 - 51 * tau**4 / 24)


def constant_flux_melting_table():
    """Return computed depths and face temperatures of melting at constant flux, for times past the series.

    Returns
    -------
    tuple of numpy.ndarray
        Relative time, relative depth, and excess of the face over the melting point times heat capacity over
        latent heat; each of shape (6,) [-]

    Notes
    -----
    Source: evans_1950 problem, computed with cells that move with the melt; 200 and 400 agree to 1e-6.

    Examples
    --------
    >>> round(float(constant_flux_melting_table()[1][-1]), 3)
    1.362
    """
    rows = tables.load("constant_flux_melting")
    depths = [row for row in rows if row.name == "relative depth"]
    faces = [row for row in rows if row.name == "face excess"]
    times = [float(row.keys["relative_time"]) for row in depths]
    return tuple(
        np.array(each) for each in (times, [row.number for row in depths], [row.number for row in faces])
    )


def ablation_speed_mm_s(heat_flux_w_mm2, *, heat_content_j_mm3):
    """Return the speed at which a face recedes in the end when its melt is swept away, v = q / h.

    Parameters
    ----------
    heat_flux_w_mm2 : float or array
        Flux q into the face, 0 to 2000 W/mm2 [W/mm2]
    heat_content_j_mm3 : float or array
        Heat h that melts a cubic millimetre from its first temperature, 1 to 20 J/mm3 [J/mm3]

    Returns
    -------
    float or array
        Speed v, in the common shape [mm/s]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    It is the upper limit of burn-off, reached some times to melting after the start.
    Source: landau_1950, from memory.

    Examples
    --------
    >>> round(ablation_speed_mm_s(200, heat_content_j_mm3=9.514), 2)
    21.02
    """
    flux = require_between("heat flux", heat_flux_w_mm2, 0, 2000, unit="W/mm2")
    return flux / require_between("heat content", heat_content_j_mm3, 1, 20, unit="J/mm3")
