"""The arc of a stud weld: energy, what of it reaches each face, how much it can melt and how soon.

It leaves out the flow of heat into the plate during the weld; the melted depth is therefore an upper bound.
"""

import numpy as np

from secondplate import tables
from secondplate.bands import Band
from secondplate.checks import require_above, require_between
from secondplate.materials import ROOM_TEMPERATURE_C
from secondplate.materials import material as material_of

_SHARES = {row.name: row for row in tables.load("arc_shares")}


def _share_band(name):
    """Turn one row of the shares into a band."""
    row = _SHARES[name]
    basis = f"{row.basis}: {row.conditions} ({row.source}, {row.locator})"
    return Band(low=float(row.keys["low"]), best=row.number, high=float(row.keys["high"]), basis=basis)


def voltage_band_v():
    """Return the band of arc voltage of drawn-arc stud welding.

    Returns
    -------
    Band
        Arc voltage, 20 to 40 with 30 as the value to reckon with [V]

    Notes
    -----
    Source: iso_14555 Annex A, from memory. Few machines show the voltage; measure it at the gun.

    Examples
    --------
    >>> voltage_band_v().best
    30.0
    """
    return _share_band("arc voltage")


def arc_energy_j(*, voltage_v, current_a, time_ms):
    """Return the energy of the arc, E = U I t.

    Parameters
    ----------
    voltage_v : float or array
        Arc voltage U, 10 to 50 V [V]
    current_a : float or array
        Weld current I, above 0 and at most 3000 A [A]
    time_ms : float or array
        Weld time t, above 0 and at most 3000 ms [ms]

    Returns
    -------
    float or array
        Energy E, in the common shape [J]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Voltage and current are taken as steady; a real trace is integrated instead.
    Source: definition; ranges from drawn_arc_ferrule_page (current, time).

    Examples
    --------
    >>> arc_energy_j(voltage_v=30, current_a=800, time_ms=20)
    480.0
    """
    voltage_v = require_between("voltage", voltage_v, 10, 50, unit="V")
    require_above("current", current_a, 0, unit="A")
    require_above("time", time_ms, 0, unit="ms")
    current_a = require_between("current", current_a, 0, 3000, unit="A")
    time_ms = require_between("time", time_ms, 0, 3000, unit="ms")
    return voltage_v * current_a * time_ms / 1000  # ms to s


def fusion_area_mm2(face_diameter_mm):
    """Return the area of the round face that melts, A = pi/4 D^2.

    Parameters
    ----------
    face_diameter_mm : float or array
        Diameter D of the face: the flange of a flanged stud, else the stud, 1 to 30 mm [mm]

    Returns
    -------
    float or array
        Area A, in the shape of the diameter [mm2]

    Raises
    ------
    ValueError
        If the diameter is out of its range.

    Notes
    -----
    Source: geometry; the small cone on the face is left out.

    Examples
    --------
    >>> round(fusion_area_mm2(7), 2)
    38.48
    """
    face_diameter_mm = require_between("face diameter", face_diameter_mm, 1, 30, unit="mm")
    return np.pi / 4 * face_diameter_mm**2


def energy_per_area_j_mm2(energy_j, *, face_diameter_mm):
    """Return the arc energy for each square millimetre of the face, E / A.

    Parameters
    ----------
    energy_j : float or array
        Arc energy E, above 0 [J]
    face_diameter_mm : float or array
        Diameter of the face, 1 to 30 mm [mm]

    Returns
    -------
    float or array
        Energy per area, in the common shape [J/mm2]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: definition. The short-cycle chart of stud_manual_short_cycle gives 9.5 to 13.8 J/mm2 at 30 V.

    Examples
    --------
    >>> round(energy_per_area_j_mm2(480, face_diameter_mm=7), 2)
    12.47
    """
    return require_above("energy", energy_j, 0, unit="J") / fusion_area_mm2(face_diameter_mm)


def face_heat_share():
    """Return the share of the arc energy that reaches one of the two faces.

    It is the arc efficiency times the share of one face.

    Returns
    -------
    Band
        Share, 0.32 to 0.54 with 0.425 as the best guess [-]

    Notes
    -----
    Sources: arc_efficiency_1995 (efficiency, carried over from other processes) and
    iron_arc_energy_balance (halves). No measurement for short stud arcs is known, so the band is wide.

    Examples
    --------
    >>> round(face_heat_share().best, 3)
    0.425
    """
    efficiency, face = _share_band("arc efficiency"), _share_band("share of one face")
    return Band(
        low=efficiency.low * face.low,
        best=efficiency.best * face.best,
        high=efficiency.high * face.high,
        basis="derived: arc efficiency of like processes times half the heat to each face",
    )


def _scaled(band, factor, basis):
    """Multiply a band by a number or array above 0."""
    return Band(low=band.low * factor, best=band.best * factor, high=band.high * factor, basis=basis)


def heat_to_face_j(energy_j):
    """Return the heat that one face, of the stud or of the plate, takes from the arc.

    Parameters
    ----------
    energy_j : float or array
        Arc energy, above 0 [J]

    Returns
    -------
    Band
        Heat to one face, its three values in the shape of the energy [J]

    Raises
    ------
    ValueError
        If the energy is not above 0.

    Notes
    -----
    Source: see ``face_heat_share``.

    Examples
    --------
    >>> round(heat_to_face_j(480).best)
    204
    """
    energy_j = require_above("energy", energy_j, 0, unit="J")
    return _scaled(face_heat_share(), energy_j, face_heat_share().basis)


def heat_flux_w_mm2(*, voltage_v, current_a, face_diameter_mm):
    """Return the heat flux into one face while the arc burns, share U I / A.

    Parameters
    ----------
    voltage_v : float or array
        Arc voltage U, 10 to 50 V [V]
    current_a : float or array
        Weld current I, above 0 and at most 3000 A [A]
    face_diameter_mm : float or array
        Diameter of the face, 1 to 30 mm [mm]

    Returns
    -------
    Band
        Heat flux, its three values in the common shape [W/mm2]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: see ``face_heat_share``. 1 W/mm2 is 1 MW/m2.

    Examples
    --------
    >>> round(heat_flux_w_mm2(voltage_v=30, current_a=800, face_diameter_mm=7).best)
    265
    """
    joule_a_second = arc_energy_j(voltage_v=voltage_v, current_a=current_a, time_ms=1000.0)
    return heat_to_face_j(joule_a_second / fusion_area_mm2(face_diameter_mm))


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


def half_space_melting_ms(
    *, heat_flux_w_mm2, conductivity_w_mk, density_kg_m3, heat_capacity_j_kgk, rise_k
):
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
    of = material_of(material)
    melting_c = of.melting_range_c.best
    rise_k = melting_c - ROOM_TEMPERATURE_C
    return half_space_melting_ms(
        heat_flux_w_mm2=heat_flux_w_mm2,
        conductivity_w_mk=of.conductivity_curves[0].integral(ROOM_TEMPERATURE_C, melting_c) / rise_k,
        density_kg_m3=of.density_kg_m3,
        heat_capacity_j_kgk=of.heat_to_j_kg(melting_c) / rise_k,
        rise_k=rise_k,
    )
