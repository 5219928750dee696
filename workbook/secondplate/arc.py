"""What the arc of a stud weld melts: depth at most and time to the first melt; energy is in ``arc_heat``.

It leaves out the flow of heat into the plate during the weld; the melted depth is therefore an upper bound.
"""

import numpy as np

from secondplate.arc_heat import (
    arc_energy_j,
    energy_per_area_j_mm2,
    face_heat_share,
    fusion_area_mm2,
    heat_flux_w_mm2,
    heat_to_face_j,
    voltage_band_v,
)
from secondplate.bands import Band
from secondplate.checks import require_above, require_between
from secondplate.heat.constant_metal import mean_metal
from secondplate.materials import ROOM_TEMPERATURE_C
from secondplate.materials import material as material_of

__all__ = [
    "arc_energy_j",
    "depth_of_heat_mm",
    "energy_per_area_j_mm2",
    "face_heat_share",
    "fusion_area_mm2",
    "half_space_melting_ms",
    "heat_flux_w_mm2",
    "heat_to_face_j",
    "melted_depth_mm",
    "melting_start_ms",
    "voltage_band_v",
]


def depth_of_heat_mm(heat_j, *, face_diameter_mm, heat_content_j_mm3):
    """Return how deep a heat melts a face when all of it melts, D = Q / (A h).

    Parameters
    ----------
    heat_j : float or array
        Heat Q into the face, above 0 [J]
    face_diameter_mm : float or array
        Diameter of the face, 1 to 30 mm [mm]
    heat_content_j_mm3 : float or array
        Heat h that melts a cubic millimetre from room temperature, 1 to 20 J/mm3 [J/mm3]

    Returns
    -------
    float or array
        Depth D, in the common shape [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: heat balance. The contents of metals are in ``materials``.

    Examples
    --------
    >>> round(depth_of_heat_mm(204, face_diameter_mm=7, heat_content_j_mm3=9.514), 3)
    0.557
    """
    heat_j = require_above("heat", heat_j, 0, unit="J")
    content = require_between("heat content", heat_content_j_mm3, 1, 20, unit="J/mm3")
    return heat_j / (content * fusion_area_mm2(face_diameter_mm))


def melted_depth_mm(*, energy_j, face_diameter_mm, material, melting_share=1.0):
    """Return how deep one face can melt at most.

    All heat that reaches the face is taken to melt it; in truth conduction takes a part. A computed
    half-space keeps 0.3 to 0.65 of the bound in a 15 to 20 ms weld, and shop tables of burn-off keep 0.7 to
    0.85 of it in arcs of 0.2 s and longer; ``melting_share`` stands for that part.

    Parameters
    ----------
    energy_j : float or array
        Arc energy, above 0 [J]
    face_diameter_mm : float or array
        Diameter of the face, 1 to 30 mm [mm]
    material : str
        One of ``materials.MATERIAL_NAMES`` [-]
    melting_share : float or array
        Part of the heat that melts, above 0 and at most 1 [-]

    Returns
    -------
    Band
        Melted depth, its three values in the common shape [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range or the material is unknown.

    Notes
    -----
    Source: ``depth_of_heat_mm`` with ``heat_to_face_j`` and the heat content of ``materials``; compared
    with us_stud_time_table (length reduction).

    Examples
    --------
    >>> round(melted_depth_mm(energy_j=480, face_diameter_mm=7, material="carbon steel").best, 2)
    0.53
    """
    require_above("melting share", melting_share, 0, unit="")
    melting_share = require_between("melting share", melting_share, 0, 1, unit="")
    heat, content = heat_to_face_j(energy_j), material_of(material).heat_content_j_mm3()
    # The leanest heat meets the richest content at the low end, and the other way round at the high end.
    pairs = ((heat.low, content.high), (heat.best, content.best), (heat.high, content.low))
    low, best, high = (
        depth_of_heat_mm(part * melting_share, face_diameter_mm=face_diameter_mm, heat_content_j_mm3=each)
        for part, each in pairs
    )
    return Band(low=low, best=best, high=high, basis="derived: energy bound, no conduction into the plate")


def half_space_melting_ms(*, heat_flux_w_mm2, conductivity_w_mk, density_kg_m3, heat_capacity_j_kgk, rise_k):
    """Return when the face of a half-space begins to melt, t = pi k rho c dT^2 / (4 q^2).

    Parameters
    ----------
    heat_flux_w_mm2 : float or array
        Heat flux q into the face, 10 to 2000 W/mm2 [W/mm2]
    conductivity_w_mk : float or array
        Conductivity k, above 0 [W/mK]
    density_kg_m3 : float or array
        Density rho, above 0 [kg/m3]
    heat_capacity_j_kgk : float or array
        Heat capacity c, above 0 [J/kgK]
    rise_k : float or array
        Rise dT to melting, above 0 [K]

    Returns
    -------
    float or array
        Time from the start of the flux, in the common shape [ms]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    One conductivity, density and heat capacity for all temperatures. It holds while the heat has not reached
    the back of the body.
    Source: carslaw_jaeger section 2.9, solved for the time.

    Examples
    --------
    >>> round(half_space_melting_ms(heat_flux_w_mm2=250, conductivity_w_mk=30, density_kg_m3=7850,
    ...                             heat_capacity_j_kgk=650, rise_k=1480), 3)
    4.213
    """
    flux_w_m2 = require_between("heat flux", heat_flux_w_mm2, 10, 2000, unit="W/mm2") * 1e6
    conductivity = require_above("conductivity", conductivity_w_mk, 0, unit="W/mK")
    density = require_above("density", density_kg_m3, 0, unit="kg/m3")
    capacity = require_above("heat capacity", heat_capacity_j_kgk, 0, unit="J/kgK")
    rise_k = require_above("rise", rise_k, 0, unit="K")
    return 1000 * np.pi * conductivity * density * capacity * rise_k**2 / (4 * flux_w_m2**2)  # s to ms


def melting_start_ms(*, heat_flux_w_mm2, material):
    """Return when the face of a thick body of a known metal begins to melt.

    Conductivity and heat capacity are their means from 20 C to the melting point.

    Parameters
    ----------
    heat_flux_w_mm2 : float or array
        Heat flux into the face, 10 to 2000 W/mm2 [W/mm2]
    material : str
        One of ``materials.MATERIAL_NAMES`` [-]

    Returns
    -------
    float or array
        Time from the start of the flux, in its shape [ms]

    Raises
    ------
    ValueError
        If the flux is out of its range or the material is unknown.

    Notes
    -----
    Source: ``half_space_melting_ms`` with the curves of ``materials``. Other choices of a mean move the time
    by a fifth.

    Examples
    --------
    >>> round(melting_start_ms(heat_flux_w_mm2=250, material="carbon steel"), 1)
    5.1
    """
    melting_c = material_of(material).melting_range_c.best
    metal = mean_metal(material, up_to_c=melting_c)
    return half_space_melting_ms(
        heat_flux_w_mm2=heat_flux_w_mm2,
        conductivity_w_mk=metal.conductivity_w_mk,
        density_kg_m3=metal.density_kg_m3,
        heat_capacity_j_kgk=metal.heat_capacity_j_kgk,
        rise_k=melting_c - ROOM_TEMPERATURE_C,
    )
