"""Plates that tear through their holes by EN 1999-1-1: net section, gross section, block tearing, old sites.

Every form is from memory. Buckling, welds and bending are left out.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import (
    require_above,
    require_at_least,
    require_between,
    require_finite,
    require_whole,
)
from secondplate.eurocode9_bearing import GAMMA_M1, GAMMA_M2
from secondplate.eurocode9_spacing import EUROCODE9, require_distance
from secondplate.plate_cracks import detectable_length_mm

# The longest crack that a clean penetrant test of thin sheet leaves open at a hole.
UNSEEN_CRACK_MM = detectable_length_mm(thickness_mm=1.0, method="penetrant", place="edge or hole").high


def net_area_mm2(width_mm, *, thickness_mm, hole_diameter_mm, along_mm, across_mm):
    """Return the least net area of a strip over every straight or zigzag line through its holes.

    A hole takes d0 t; each step to a hole that stands s further along and p further across gives back
    s^2 t/(4 p).

    Parameters
    ----------
    width_mm : float
        Width b of the strip, across the load, above 0 [mm]
    thickness_mm : float
        Thickness t, above 0 [mm]
    hole_diameter_mm : float
        Hole diameter d0, above 0 [mm]
    along_mm : array
        Place of each hole along the load [mm]
    across_mm : array
        Place of each hole across the load, 0 to the width [mm]

    Returns
    -------
    float
        Net area [mm2]

    Raises
    ------
    ValueError
        If a value lies outside its range, the places do not pair or the holes take the whole width.

    Notes
    -----
    Source: en_1999_1_1 6.2.3, from memory.

    Examples
    --------
    >>> round(net_area_mm2(60, thickness_mm=2, hole_diameter_mm=4.9, along_mm=[0, 12], across_mm=[20, 35]), 1)
    105.2
    """
    width = require_above("strip width", width_mm, 0, unit="mm")
    thickness = require_above("sheet thickness", thickness_mm, 0, unit="mm")
    hole = require_above("hole diameter", hole_diameter_mm, 0, unit="mm")
    along = np.atleast_1d(require_finite("place along the load", np.asarray(along_mm), unit="mm"))
    across = np.atleast_1d(
        require_between("place across the load", np.asarray(across_mm), 0, width, unit="mm")
    )
    if along.shape != across.shape:
        message = f"places along must be as many as places across, got {along.size} and {across.size}"
        raise ValueError(message)
    net = width - _most_taken(hole, along, across)
    return thickness * require_above("width left beside the holes", net, 0, unit="mm")


def _most_taken(hole, along, across):
    """Return the width that the worst line takes: the best way to end at each hole, from one edge on."""
    order = np.argsort(across, kind="stable")
    along, across = along[order], across[order]
    taken = np.full(len(across), hole)
    for last in range(1, len(across)):
        step = across[last] - across[:last]
        before = step > 0
        # Holes at one level across are on no common line.
        back = (along[last] - along[:last][before]) ** 2 / (4 * step[before])
        gained = taken[:last][before] - back
        taken[last] += max(gained.max(initial=0.0), 0.0)
    return taken.max(initial=0.0)


def net_section_n(net_area_mm2, *, tensile_strength_mpa, partial_factor=GAMMA_M2):
    """Return the pull that a net section bears: N_u = 0.9 A_net f_u/gamma_M2.

    Parameters
    ----------
    net_area_mm2 : float or array
        Net area A_net, above 0 [mm2]
    tensile_strength_mpa : float or array
        Tensile strength f_u, above 0 [MPa]
    partial_factor : float
        Factor gamma_M2, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Pull by design [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: en_1999_1_1 6.2.3, from memory.

    Examples
    --------
    >>> round(net_section_n(70.2, tensile_strength_mpa=290), 1)
    14657.8
    """
    area = np.asarray(require_above("net area", net_area_mm2, 0, unit="mm2"))
    strength = np.asarray(require_above("tensile strength", tensile_strength_mpa, 0, unit="MPa"))
    gamma = require_at_least("partial factor", partial_factor, 1, unit="")
    return plain(EUROCODE9["net section factor"] * area * strength / gamma)


def gross_section_n(gross_area_mm2, *, proof_stress_mpa, partial_factor=GAMMA_M1):
    """Return the pull at which the whole section yields: N_o = A_g f_o/gamma_M1.

    Parameters
    ----------
    gross_area_mm2 : float or array
        Area A_g without holes, above 0 [mm2]
    proof_stress_mpa : float or array
        Proof stress f_o, above 0 [MPa]
    partial_factor : float
        Factor gamma_M1, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Pull by design [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: en_1999_1_1 6.2.3, from memory.

    Examples
    --------
    >>> round(gross_section_n(80, proof_stress_mpa=250), 1)
    18181.8
    """
    area = np.asarray(require_above("gross area", gross_area_mm2, 0, unit="mm2"))
    stress = np.asarray(require_above("proof stress", proof_stress_mpa, 0, unit="MPa"))
    return plain(area * stress / require_at_least("partial factor", partial_factor, 1, unit=""))


def block_areas_mm2(
    *, end_distance_mm, spacing_mm, edge_distance_mm, thickness_mm, hole_diameter_mm, count=2
):
    """Return the areas that shear and that tear when a row along the load comes out with its corner.

    Sheared: t (e1 + (n - 1) p1 - (n - 1/2) d0). Torn: t (e2 - d0/2).

    Parameters
    ----------
    end_distance_mm : float or array
        End distance e1, at least 1.2 d0 [mm]
    spacing_mm : float or array
        Spacing p1 along the load, at least 2.2 d0 [mm]
    edge_distance_mm : float or array
        Edge distance e2, at least 1.2 d0 [mm]
    thickness_mm : float or array
        Thickness, above 0 [mm]
    hole_diameter_mm : float or array
        Hole diameter d0, above 0 [mm]
    count : int
        Fasteners n in the row, a whole number of at least 1 [-]

    Returns
    -------
    tuple of (float or numpy.ndarray)
        Sheared area A_nv and torn area A_nt [mm2]

    Raises
    ------
    ValueError
        If a distance is below its minimum or a value lies outside its range.

    Notes
    -----
    Source: en_1999_1_1 8.5.2.2, from memory.

    Examples
    --------
    >>> sheared, torn = block_areas_mm2(end_distance_mm=10, spacing_mm=15, edge_distance_mm=10,
    ...                                 thickness_mm=2, hole_diameter_mm=4.9)
    >>> round(sheared, 1), round(torn, 1)
    (35.3, 15.1)
    """
    hole = np.asarray(require_above("hole diameter", hole_diameter_mm, 0, unit="mm"))
    end = np.asarray(require_distance("end distance", end_distance_mm, hole_diameter_mm=hole))
    spacing = np.asarray(require_distance("spacing", spacing_mm, hole_diameter_mm=hole))
    edge = np.asarray(require_distance("edge distance", edge_distance_mm, hole_diameter_mm=hole))
    thickness = np.asarray(require_above("sheet thickness", thickness_mm, 0, unit="mm"))
    number = require_whole("number of fasteners", count, 1, unit="")
    sheared = thickness * (end + (number - 1) * spacing - (number - 0.5) * hole)
    return plain(sheared), plain(thickness * (edge - hole / 2))


def block_tearing_n(
    *, sheared_area_mm2, torn_area_mm2, tensile_strength_mpa, proof_stress_mpa, eccentric=False
):
    """Return the force that tears a block out: V = f_u A_nt/gamma_M2 + f_o A_nv/(sqrt(3) gamma_M1).

    Parameters
    ----------
    sheared_area_mm2 : float or array
        Net area in shear A_nv, at least 0 [mm2]
    torn_area_mm2 : float or array
        Net area in tension A_nt, at least 0 [mm2]
    tensile_strength_mpa : float or array
        Tensile strength f_u, above 0 [MPa]
    proof_stress_mpa : float or array
        Proof stress f_o, above 0 [MPa]
    eccentric : bool
        Whether the load acts beside the centre of the group: the torn area then counts half [-]

    Returns
    -------
    float or numpy.ndarray
        Force by design [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: en_1999_1_1 8.5.2.2, from memory.

    Examples
    --------
    >>> round(block_tearing_n(sheared_area_mm2=35.3, torn_area_mm2=15.1, tensile_strength_mpa=290,
    ...                       proof_stress_mpa=250), 1)
    8135.1
    """
    sheared = np.asarray(require_at_least("sheared area", sheared_area_mm2, 0, unit="mm2"))
    torn = np.asarray(require_at_least("torn area", torn_area_mm2, 0, unit="mm2"))
    strength = np.asarray(require_above("tensile strength", tensile_strength_mpa, 0, unit="MPa"))
    stress = np.asarray(require_above("proof stress", proof_stress_mpa, 0, unit="MPa"))
    share = 0.5 if eccentric else 1.0
    return plain(share * strength * torn / GAMMA_M2 + stress * sheared / (np.sqrt(3) * GAMMA_M1))


def affected_diameter_mm(hole_diameter_mm, *, crack_possible=False, crack_length_mm=None):
    """Return the diameter that an old site counts with: its hole, and twice the crack where one is possible.

    Parameters
    ----------
    hole_diameter_mm : float or array
        Diameter of the hole or dimple, at least 0 [mm]
    crack_possible : bool
        Whether a crack was found or cannot be shut out [-]
    crack_length_mm : float or array or None
        Length of the crack, at least 0; ``UNSEEN_CRACK_MM`` where it is not known [mm]

    Returns
    -------
    float or numpy.ndarray
        Affected diameter [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range, or a length is given of a crack that is not possible.

    Notes
    -----
    A crack that was not seen may be as long as a penetrant test at a hole is held to find. Source:
    plane_geometry, weakening by an old site, derived: a choice of this library; nasa_std_5009, Table 1, from
    memory, for the length.

    Examples
    --------
    >>> affected_diameter_mm(6.0), round(affected_diameter_mm(6.0, crack_possible=True), 1)
    (6.0, 13.6)
    """
    hole = np.asarray(require_at_least("hole diameter", hole_diameter_mm, 0, unit="mm"))
    if not crack_possible:
        if crack_length_mm is not None:
            message = f"crack length must be left out where no crack is possible, got {crack_length_mm!r}"
            raise ValueError(message)
        return plain(hole)
    length = UNSEEN_CRACK_MM if crack_length_mm is None else crack_length_mm
    return plain(hole + 2 * np.asarray(require_at_least("crack length", length, 0, unit="mm")))


def net_width_share(affected_diameter_mm, *, width_mm):
    """Return the share of a strip that an old site leaves: 1 - D/b.

    Parameters
    ----------
    affected_diameter_mm : float or array
        Diameter D that the old site counts with, 0 to the width [mm]
    width_mm : float or array
        Width b of the strip that carries the load, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Share left [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: plane_geometry, weakening by an old site, derived.

    Examples
    --------
    >>> round(net_width_share(6, width_mm=30), 2)
    0.8
    """
    width = np.asarray(require_above("strip width", width_mm, 0, unit="mm"))
    affected = require_at_least("affected diameter", affected_diameter_mm, 0, unit="mm")
    left = require_at_least("width left beside the old site", plain(width - affected), 0, unit="mm")
    return plain(left / width)
