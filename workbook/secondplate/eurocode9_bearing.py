"""Bearing of a plate at a fastener by EN 1999-1-1, 8.5.5: what end, edge and spacing leave of it.

Thin sheet has its own forms (``eurocode9_thin_sheet``). The table is from memory; its form was read in
EN 1993-1-8 Table 3.4.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between, require_choice
from secondplate.eurocode9_spacing import EUROCODE9, require_distance

GAMMA_M1, GAMMA_M2 = EUROCODE9["gamma M1"], EUROCODE9["gamma M2"]
HOLE_FORMS = tuple(name.removeprefix("hole ") for name in EUROCODE9 if name.startswith("hole "))


def end_factor(end_distance_mm, *, hole_diameter_mm, strength_ratio=1.0):
    """Return alpha_b of the fastener next to the end: min(e1/(3 d0), f_ub/f_u, 1).

    Parameters
    ----------
    end_distance_mm : float or array
        Distance e1 from hole centre to the end along the load, at least 1.2 d0 [mm]
    hole_diameter_mm : float or array
        Hole diameter d0, above 0 [mm]
    strength_ratio : float or array
        Tensile strength of the fastener over that of the plate, above 0 [-]

    Returns
    -------
    float or numpy.ndarray
        Factor alpha_b [-]

    Raises
    ------
    ValueError
        If the end distance is below the minimum or a value lies outside its range.

    Notes
    -----
    Source: en_1999_1_1 Table 8.5, from memory; form as in en_1993_1_8 Table 3.4.

    Examples
    --------
    >>> round(end_factor(10, hole_diameter_mm=4.9), 5)
    0.68027
    """
    end = require_distance("end distance", end_distance_mm, hole_diameter_mm=hole_diameter_mm)
    return _along(np.asarray(end) / (3 * np.asarray(hole_diameter_mm)), strength_ratio)


def inner_factor(spacing_mm, *, hole_diameter_mm, strength_ratio=1.0):
    """Return alpha_b of an inner fastener: min(p1/(3 d0) - 1/4, f_ub/f_u, 1).

    Parameters
    ----------
    spacing_mm : float or array
        Spacing p1 along the load, at least 2.2 d0 [mm]
    hole_diameter_mm : float or array
        Hole diameter d0, above 0 [mm]
    strength_ratio : float or array
        Tensile strength of the fastener over that of the plate, above 0 [-]

    Returns
    -------
    float or numpy.ndarray
        Factor alpha_b [-]

    Raises
    ------
    ValueError
        If the spacing is below the minimum or a value lies outside its range.

    Notes
    -----
    Source: en_1999_1_1 Table 8.5, from memory; form as in en_1993_1_8 Table 3.4.

    Examples
    --------
    >>> round(inner_factor(12.25, hole_diameter_mm=4.9), 5)
    0.58333
    """
    spacing = require_distance("spacing", spacing_mm, hole_diameter_mm=hole_diameter_mm)
    return _along(np.asarray(spacing) / (3 * np.asarray(hole_diameter_mm)) - 0.25, strength_ratio)


def _along(by_distance, strength_ratio):
    """Take the least of distance, fastener strength and 1."""
    ratio = require_above("strength ratio", strength_ratio, 0, unit="")
    return plain(np.minimum(np.minimum(by_distance, ratio), 1.0))


def edge_factor(edge_distance_mm, *, hole_diameter_mm):
    """Return k1 of a fastener next to an edge: min(2.8 e2/d0 - 1.7, 2.5).

    Parameters
    ----------
    edge_distance_mm : float or array
        Distance e2 from hole centre to the edge across the load, at least 1.2 d0 [mm]
    hole_diameter_mm : float or array
        Hole diameter d0, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Factor k1 [-]

    Raises
    ------
    ValueError
        If the edge distance is below the minimum or the hole is not above 0.

    Notes
    -----
    Source: en_1999_1_1 Table 8.5, from memory; form as in en_1993_1_8 Table 3.4.

    Examples
    --------
    >>> round(edge_factor(5.88, hole_diameter_mm=4.9), 2), edge_factor(8, hole_diameter_mm=4.9)
    (1.66, 2.5)
    """
    edge = require_distance("edge distance", edge_distance_mm, hole_diameter_mm=hole_diameter_mm)
    return _across("edge", np.asarray(edge), hole_diameter_mm)


def row_factor(row_spacing_mm, *, hole_diameter_mm):
    """Return k1 of a fastener between others across the load: min(1.4 p2/d0 - 1.7, 2.5).

    Parameters
    ----------
    row_spacing_mm : float or array
        Spacing p2 across the load, at least 2.4 d0 [mm]
    hole_diameter_mm : float or array
        Hole diameter d0, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Factor k1; the newer form for steel takes the lesser of this and ``edge_factor`` [-]

    Raises
    ------
    ValueError
        If the spacing is below the minimum or the hole is not above 0.

    Notes
    -----
    Source: en_1999_1_1 Table 8.5, from memory; form as in en_1993_1_8 Table 3.4.

    Examples
    --------
    >>> round(row_factor(14.7, hole_diameter_mm=4.9), 2)
    2.5
    """
    spacing = require_distance("row spacing", row_spacing_mm, hole_diameter_mm=hole_diameter_mm)
    return _across("row", np.asarray(spacing), hole_diameter_mm)


def _across(kind, distance, hole):
    """Take slope times the distance in holes less the offset, up to the largest."""
    slope, offset = EUROCODE9[f"{kind} slope of the across factor"], EUROCODE9["offset of the across factor"]
    return plain(np.minimum(slope * distance / np.asarray(hole) - offset, EUROCODE9["largest across factor"]))


def bearing_n(
    thickness_mm,
    *,
    diameter_mm,
    tensile_strength_mpa,
    along_factor,
    across_factor,
    single_row=False,
    hole_form="normal",
    partial_factor=GAMMA_M2,
):
    """Return the bearing of one plate at one fastener: F = k1 alpha_b f_u d t/gamma_M2.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the plate, at least 0.6 [mm]
    diameter_mm : float or array
        Diameter d of the fastener, above 0 [mm]
    tensile_strength_mpa : float or array
        Tensile strength f_u of the plate, above 0 [MPa]
    along_factor : float or array
        Factor alpha_b by ``end_factor`` or ``inner_factor``, above 0 to 1 [-]
    across_factor : float or array
        Factor k1 by ``edge_factor`` or ``row_factor``, above 0 to 2.5 [-]
    single_row : bool
        Whether it is a single lap with one row of fasteners: at most 1.5 f_u d t/gamma_M2 [-]
    hole_form : str
        One of ``HOLE_FORMS`` [-]
    partial_factor : float
        Factor gamma_M2, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Bearing by design [N]

    Raises
    ------
    ValueError
        If a value lies outside its range or the form of the hole is unknown.

    Notes
    -----
    Source: en_1999_1_1 8.5.5 and Table 8.5, from memory; forms of hole en_1993_1_8 Table 3.4. The 2023
    edition leaves rivets below 3.9 mm and parts below 0.6 mm out; the 2007 edition rivets below 4.2 mm.

    Examples
    --------
    >>> hole = {"hole_diameter_mm": 4.9}
    >>> round(bearing_n(2.0, diameter_mm=4.8, tensile_strength_mpa=290,
    ...                 along_factor=end_factor(10, **hole), across_factor=edge_factor(8, **hole)), 1)
    3787.8
    """
    thinnest = EUROCODE9["thinnest part"]
    thickness = np.asarray(require_at_least("sheet thickness", thickness_mm, thinnest, unit="mm"))
    diameter = np.asarray(require_above("diameter of the fastener", diameter_mm, 0, unit="mm"))
    strength = np.asarray(require_above("tensile strength", tensile_strength_mpa, 0, unit="MPa"))
    along = np.asarray(require_between("along factor", along_factor, 1e-6, 1, unit=""))
    across = np.asarray(require_between("across factor", across_factor, 1e-6, 2.5, unit=""))
    form = EUROCODE9[f"hole {require_choice('form of the hole', hole_form, HOLE_FORMS)}"]
    gamma = require_at_least("partial factor", partial_factor, 1, unit="")
    both = along * across * form
    factor = np.minimum(both, EUROCODE9["single row factor"]) if single_row else both
    return plain(factor * strength * diameter * thickness / gamma)
