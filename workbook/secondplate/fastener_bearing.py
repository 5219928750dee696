"""Bearing and pull-through of a sheet at a fastener, by forms that standards print for screws in thin sheet.

A self-piercing rivet is no screw: the forms are borrowed and give an order of magnitude. Spacing, edges,
threads and blind rivets are left out.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_at_least, require_between
from secondplate.tables import values

_CONSTANTS = values("fastener_constants")


def _shared(thickness_mm, tensile_strength_mpa, partial_factor):
    """Check what every form here needs."""
    return (
        np.asarray(require_between("sheet thickness", thickness_mm, 0.3, 6.5, unit="mm")),
        np.asarray(require_between("tensile strength", tensile_strength_mpa, 20, 2000, unit="MPa")),
        require_at_least("partial factor", partial_factor, 1, unit=""),
    )


def _thickness_ratio(thickness, supporting_thickness_mm):
    """Return how much thicker the supporting sheet is; the forms hold where it is not the thinner one."""
    supporting = require_between("supporting thickness", supporting_thickness_mm, 0.3, 6.5, unit="mm")
    thickness, supporting = np.broadcast_arrays(thickness, supporting)
    thinner = np.flatnonzero(supporting < thickness)
    if thinner.size:
        got, least = float(supporting.flat[thinner[0]]), float(thickness.flat[thinner[0]])
        message = f"supporting thickness must be at least the sheet's {least:.6g} mm, got {got:.6g} mm"
        raise ValueError(message)
    return supporting / thickness


def _between_sheets(ratio, equal, thick):
    """Interpolate in a straight line from equal sheets to a supporting sheet that counts as thick."""
    share = np.clip((ratio - 1) / (_CONSTANTS["thickness ratio"] - 1), 0, 1)
    return equal + (thick - equal) * share


def bearing_coefficient(thickness_mm, *, shank_diameter_mm, supporting_thickness_mm):
    """Return alpha of the bearing of a screw in steel sheet.

    Equal sheets: alpha = min(3.2 sqrt(t/d), 2.1). Supporting sheet t1 at least 2.5 t: 2.1 if t is at least
    1 mm, else as for equal sheets. In between a straight line over t1.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the sheet next to the head, the thinner one, 0.3 to 6.5 [mm]
    shank_diameter_mm : float or array
        Diameter d of the fastener, 3 to 8 [mm]
    supporting_thickness_mm : float or array
        Thickness t1 of the other sheet, at least t [mm]

    Returns
    -------
    float or numpy.ndarray
        Coefficient alpha [-]

    Raises
    ------
    ValueError
        If a size lies outside its range or the supporting sheet is the thinner one.

    Notes
    -----
    Source: en_1993_1_3 Table 8.2, seen in cold_formed_code.

    Examples
    --------
    >>> round(bearing_coefficient(2.0, shank_diameter_mm=5.3, supporting_thickness_mm=2.0), 4)
    1.9657
    """
    thickness, _, _ = _shared(thickness_mm, 20, 1)
    diameter = np.asarray(require_between("shank diameter", shank_diameter_mm, 3, 8, unit="mm"))
    ratio = _thickness_ratio(thickness, supporting_thickness_mm)
    plateau = _CONSTANTS["bearing plateau"]
    equal = np.minimum(_CONSTANTS["bearing slope"] * np.sqrt(thickness / diameter), plateau)
    return plain(_between_sheets(ratio, equal, np.where(thickness >= 1, plateau, equal)))


def screw_bearing_n(
    thickness_mm, *, shank_diameter_mm, tensile_strength_mpa, supporting_thickness_mm, partial_factor=1.0
):
    """Return the bearing of a screw in steel sheet: F = alpha f_u d t / gamma_M.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the sheet next to the head, the thinner one, 0.3 to 6.5 [mm]
    shank_diameter_mm : float or array
        Diameter d of the fastener, 3 to 8 [mm]
    tensile_strength_mpa : float or array
        Tensile strength f_u of the sheet, 20 to 2000 [MPa]
    supporting_thickness_mm : float or array
        Thickness of the other sheet, at least t [mm]
    partial_factor : float
        Partial factor, at least 1; 1 for a strength without safety, 1.25 in the standard's design [-]

    Returns
    -------
    float or numpy.ndarray
        Bearing force [N]

    Raises
    ------
    ValueError
        If a value lies outside its range or the supporting sheet is the thinner one.

    Notes
    -----
    Source: en_1993_1_3 Table 8.2 with ``bearing_coefficient``. Written for screws and steel.

    Examples
    --------
    >>> round(screw_bearing_n(2.0, shank_diameter_mm=5.3, tensile_strength_mpa=215,
    ...                       supporting_thickness_mm=2.0))
    4480
    """
    thickness, strength, gamma = _shared(thickness_mm, tensile_strength_mpa, partial_factor)
    alpha = bearing_coefficient(
        thickness_mm, shank_diameter_mm=shank_diameter_mm, supporting_thickness_mm=supporting_thickness_mm
    )
    return plain(alpha * strength * shank_diameter_mm * thickness / gamma)


def aluminium_screw_bearing_n(
    thickness_mm, *, shank_diameter_mm, tensile_strength_mpa, supporting_thickness_mm, partial_factor=1.0
):
    """Return the bearing of a screw in aluminium sheet.

    Equal sheets: F = 2.5 f_u sqrt(t^3 d), at most 1.5 f_u t d. Supporting sheet at least 2.5 t: 1.5 f_u t d.
    In between a straight line. A strength above 260 MPa counts as 260 MPa.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the sheet next to the head, the thinner one, 0.3 to 6.5 [mm]
    shank_diameter_mm : float or array
        Diameter d of the fastener, 3 to 8; the standard begins at 5.5 [mm]
    tensile_strength_mpa : float or array
        Tensile strength f_u of the weaker sheet, 20 to 2000 [MPa]
    supporting_thickness_mm : float or array
        Thickness of the other sheet, at least t [mm]
    partial_factor : float
        Partial factor, at least 1; 1 for a strength without safety, 1.25 in the standard's design [-]

    Returns
    -------
    float or numpy.ndarray
        Bearing force [N]

    Raises
    ------
    ValueError
        If a value lies outside its range or the supporting sheet is the thinner one.

    Notes
    -----
    Source: en_1999_1_4 8.3.2.1; the root was lost in the copy that was seen and is from memory.

    Examples
    --------
    >>> round(aluminium_screw_bearing_n(2.0, shank_diameter_mm=5.5, tensile_strength_mpa=215,
    ...                                 supporting_thickness_mm=2.0))
    3548
    """
    thickness, strength, gamma = _shared(thickness_mm, tensile_strength_mpa, partial_factor)
    diameter = np.asarray(require_between("shank diameter", shank_diameter_mm, 3, 8, unit="mm"))
    ratio = _thickness_ratio(thickness, supporting_thickness_mm)
    counted = np.minimum(strength, _CONSTANTS["aluminium strength limit"])
    thick = _CONSTANTS["aluminium bearing plateau"] * counted * thickness * diameter
    rooted = _CONSTANTS["aluminium bearing slope"] * counted * np.sqrt(thickness**3 * diameter)
    return plain(_between_sheets(ratio, np.minimum(rooted, thick), thick) / gamma)


def pull_through_n(
    thickness_mm, *, head_diameter_mm, tensile_strength_mpa, repeated_wind=False, partial_factor=1.0
):
    """Return the pull at which a head comes through the sheet: F = d_w t f_u / gamma_M.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the sheet next to the head, 0.3 to 6.5; the standard ends at 1.5 [mm]
    head_diameter_mm : float or array
        Diameter d_w of head or washer, 3 to 30 [mm]
    tensile_strength_mpa : float or array
        Tensile strength f_u of the sheet, 20 to 2000 [MPa]
    repeated_wind : bool
        Whether the load comes and goes; the standard then takes half [-]
    partial_factor : float
        Partial factor, at least 1; 1 for a strength without safety, 1.25 in the standard's design [-]

    Returns
    -------
    float or numpy.ndarray
        Pull [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: en_1993_1_3 Table 8.2; half under repeated wind seen on a page, the static form from memory.

    Examples
    --------
    >>> round(pull_through_n(2.0, head_diameter_mm=7.75, tensile_strength_mpa=215))
    3332
    """
    thickness, strength, gamma = _shared(thickness_mm, tensile_strength_mpa, partial_factor)
    head = require_between("head diameter", head_diameter_mm, 3, 30, unit="mm")
    name = "pull-through factor under repeated wind" if repeated_wind else "pull-through factor"
    return plain(_CONSTANTS[name] * head * thickness * strength / gamma)
