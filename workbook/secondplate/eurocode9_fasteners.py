"""What bolts and solid rivets bear by EN 1999-1-1, Table 8.5: shear, tension, both at once, and punching.

Blind rivets, lock bolts and self-piercing rivets have loads of their own (``fasteners``).
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_choice
from secondplate.eurocode9_bearing import GAMMA_M2
from secondplate.eurocode9_spacing import EUROCODE9


def _kinds(load):
    """List what follows a word in the names of the table."""
    return tuple(name.removeprefix(f"{load} ") for name in EUROCODE9 if name.startswith(f"{load} "))


SHEAR_MATERIALS = _kinds("shear")
TENSION_MATERIALS = tuple(name for name in _kinds("tension") if name != "in the sum")


def _strength_n(factor, strength_mpa, area_mm2, partial_factor):
    """Return factor times strength times area over the partial factor."""
    strength = np.asarray(require_above("tensile strength", strength_mpa, 0, unit="MPa"))
    area = np.asarray(require_above("area", area_mm2, 0, unit="mm2"))
    return plain(factor * strength * area / require_at_least("partial factor", partial_factor, 1, unit=""))


def bolt_shear_n(stress_area_mm2, *, tensile_strength_mpa, material="steel to 8.8", partial_factor=GAMMA_M2):
    """Return the shear of a bolt in one plane: F = alpha_v f_ub A/gamma_M2.

    Parameters
    ----------
    stress_area_mm2 : float or array
        Area in the shear plane, above 0 [mm2]
    tensile_strength_mpa : float or array
        Tensile strength f_ub of the bolt, above 0 [MPa]
    material : str
        One of ``SHEAR_MATERIALS``: alpha_v is 0.6 for steel to 8.8, 0.5 for the others [-]
    partial_factor : float
        Factor gamma_M2, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Shear by design [N]

    Raises
    ------
    ValueError
        If a value lies outside its range or the material is unknown.

    Notes
    -----
    Source: en_1999_1_1 Table 8.5, from memory.

    Examples
    --------
    >>> round(bolt_shear_n(20.1, tensile_strength_mpa=800), 1)
    7718.4
    """
    require_choice("material of the bolt", material, SHEAR_MATERIALS)
    return _strength_n(EUROCODE9[f"shear {material}"], tensile_strength_mpa, stress_area_mm2, partial_factor)


def bolt_tension_n(stress_area_mm2, *, tensile_strength_mpa, material="steel", partial_factor=GAMMA_M2):
    """Return the tension of a bolt: F = k2 f_ub A_s/gamma_M2.

    Parameters
    ----------
    stress_area_mm2 : float or array
        Stress area A_s, above 0 [mm2]
    tensile_strength_mpa : float or array
        Tensile strength f_ub of the bolt, above 0 [MPa]
    material : str
        One of ``TENSION_MATERIALS``: k2 is 0.9, countersunk 0.63, aluminium 0.5 [-]
    partial_factor : float
        Factor gamma_M2, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Tension by design [N]

    Raises
    ------
    ValueError
        If a value lies outside its range or the material is unknown.

    Notes
    -----
    Source: en_1993_1_8 Table 3.4; aluminium en_1999_1_1 Table 8.5, from memory.

    Examples
    --------
    >>> round(bolt_tension_n(20.1, tensile_strength_mpa=800), 1)
    11577.6
    """
    require_choice("material of the bolt", material, TENSION_MATERIALS)
    return _strength_n(
        EUROCODE9[f"tension {material}"], tensile_strength_mpa, stress_area_mm2, partial_factor
    )


def solid_rivet_n(hole_diameter_mm, *, tensile_strength_mpa, partial_factor=GAMMA_M2):
    """Return the shear of a solid rivet in one plane, and its tension: F = 0.6 f_ur A_0/gamma_M2.

    Parameters
    ----------
    hole_diameter_mm : float or array
        Hole diameter d0, which the rivet fills; A_0 is its area, above 0 [mm]
    tensile_strength_mpa : float or array
        Tensile strength f_ur of the rivet, above 0 [MPa]
    partial_factor : float
        Factor gamma_M2, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Shear or tension by design [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: en_1993_1_8 Table 3.4; the same in en_1999_1_1, from memory.

    Examples
    --------
    >>> round(solid_rivet_n(4.9, tensile_strength_mpa=215), 1)
    1946.1
    """
    hole = np.asarray(require_above("hole diameter", hole_diameter_mm, 0, unit="mm"))
    return _strength_n(EUROCODE9["solid rivet"], tensile_strength_mpa, np.pi * hole**2 / 4, partial_factor)


def punching_n(thickness_mm, *, head_diameter_mm, tensile_strength_mpa, partial_factor=GAMMA_M2):
    """Return the pull that punches a head through a plate: B = 0.6 pi d_m t f_u/gamma_M2.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the plate under the head, above 0 [mm]
    head_diameter_mm : float or array
        Diameter d_m of the head or nut, mean of its flats and corners, above 0 [mm]
    tensile_strength_mpa : float or array
        Tensile strength f_u of the plate, above 0 [MPa]
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
    Source: en_1993_1_8 Table 3.4.

    Examples
    --------
    >>> round(punching_n(1.5, head_diameter_mm=9.5, tensile_strength_mpa=190), 1)
    4082.8
    """
    thickness = np.asarray(require_above("sheet thickness", thickness_mm, 0, unit="mm"))
    head = np.asarray(require_above("head diameter", head_diameter_mm, 0, unit="mm"))
    return _strength_n(EUROCODE9["punching"], tensile_strength_mpa, np.pi * head * thickness, partial_factor)


def shear_and_tension_use(*, shear_load_n, shear_strength_n, tension_load_n, tension_strength_n):
    """Return how far shear and tension together use a fastener up: F_v/F_v,Rd + F_t/(1.4 F_t,Rd).

    Parameters
    ----------
    shear_load_n : float or array
        Shear by design, at least 0 [N]
    shear_strength_n : float or array
        What the fastener bears in shear, above 0 [N]
    tension_load_n : float or array
        Tension by design, at least 0 [N]
    tension_strength_n : float or array
        What the fastener bears in tension, above 0 [N]

    Returns
    -------
    float or numpy.ndarray
        Use, 1 at the limit; tension alone must be checked as well [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: en_1993_1_8 Table 3.4.

    Examples
    --------
    >>> round(shear_and_tension_use(shear_load_n=600, shear_strength_n=1200,
    ...                             tension_load_n=1190, tension_strength_n=1700), 2)
    1.0
    """
    shear = np.asarray(require_at_least("shear load", shear_load_n, 0, unit="N"))
    tension = np.asarray(require_at_least("tension load", tension_load_n, 0, unit="N"))
    first = shear / require_above("strength in shear", shear_strength_n, 0, unit="N")
    second = tension / require_above("strength in tension", tension_strength_n, 0, unit="N")
    return plain(first + second / EUROCODE9["tension in the sum"])
