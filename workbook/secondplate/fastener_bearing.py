"""Bearing and pull-through of a sheet at a fastener, by forms that standards print for screws in thin sheet.

A self-piercing rivet is no screw: the forms are borrowed and give an order of magnitude. They disagree, so
each is named. The form of blind rivets stands beside them. Spacing, edges and threads are left out.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_at_least, require_between, require_choice
from secondplate.tables import load


def _constants():
    """Read the constants by standard and name."""
    found = {}
    for row in load("fastener_constants"):
        found.setdefault(row.keys["standard"], {})[row.name] = row.number
    return found


_CONSTANTS = _constants()
STEEL_STANDARD, ALUMINIUM_STANDARD, AMERICAN_STANDARD = "EN 1993-1-3", "EN 1999-1-4", "AISI S100"
# Another table of EN 1993-1-3: the same form with the slope of blind rivets.
BLIND_RIVET_STANDARD = "EN 1993-1-3 blind rivets"
_FORMS = tuple(name for name, values in _CONSTANTS.items() if "bearing slope" in values)
BEARING_STANDARDS = tuple(name for name in _FORMS if name != BLIND_RIVET_STANDARD)
PULL_THROUGH_STANDARDS = tuple(name for name, values in _CONSTANTS.items() if "pull-through factor" in values)
_THICK_RATIO = _CONSTANTS["all three"]["thickness ratio"]


def _thickness(thickness_mm):
    """Return a thickness that a sheet may have."""
    return np.asarray(require_between("sheet thickness", thickness_mm, 0.3, 6.5, unit="mm"))


def _strength(tensile_strength_mpa):
    """Return a tensile strength that a sheet may have."""
    return np.asarray(require_between("tensile strength", tensile_strength_mpa, 20, 2000, unit="MPa"))


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


def bearing_coefficient(thickness_mm, *, shank_diameter_mm, supporting_thickness_mm, standard=STEEL_STANDARD):
    """Return alpha of the bearing of a screw, F = alpha f_u d t.

    Equal sheets: alpha = min(a sqrt(t/d), b). Supporting sheet at least 2.5 times as thick: alpha = b; in
    EN 1993-1-3 only where the sheet is 1 mm thick or more. In between a straight line.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the sheet next to the head, the thinner one, 0.3 to 6.5 [mm]
    shank_diameter_mm : float or array
        Diameter d of the fastener, 3 to 8 [mm]
    supporting_thickness_mm : float or array
        Thickness of the other sheet, at least t [mm]
    standard : str
        One of ``BEARING_STANDARDS``, or ``BLIND_RIVET_STANDARD`` [-]

    Returns
    -------
    float or numpy.ndarray
        Coefficient alpha [-]

    Raises
    ------
    ValueError
        If a size lies outside its range, the supporting sheet is the thinner one, or the standard is unknown.

    Notes
    -----
    Source: en_1993_1_3 Table 8.2 (a 3.2, b 2.1), seen in cold_formed_code; en_1999_1_4 8.3.2.1 (2.5, 1.5);
    aisi_s100 (4.2, 2.7). Blind rivets: en_1993_1_3 Table 8.1 (3.6, 2.1), from memory.

    Examples
    --------
    >>> round(bearing_coefficient(2.0, shank_diameter_mm=5.3, supporting_thickness_mm=2.0), 4)
    1.9657
    """
    constants = _CONSTANTS[require_choice("standard", standard, _FORMS)]
    thickness = _thickness(thickness_mm)
    diameter = np.asarray(require_between("shank diameter", shank_diameter_mm, 3, 8, unit="mm"))
    share = np.clip((_thickness_ratio(thickness, supporting_thickness_mm) - 1) / (_THICK_RATIO - 1), 0, 1)
    plateau = constants["bearing plateau"]
    equal = np.minimum(constants["bearing slope"] * np.sqrt(thickness / diameter), plateau)
    thick = np.where(thickness >= constants["least thickness of plateau"], plateau, equal)
    return plain(equal + (thick - equal) * share)


def screw_bearing_n(
    thickness_mm,
    *,
    shank_diameter_mm,
    tensile_strength_mpa,
    supporting_thickness_mm,
    standard=STEEL_STANDARD,
    partial_factor=1.0,
):
    """Return the bearing of a screw in a sheet: F = alpha f_u d t / gamma_M.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the sheet next to the head, the thinner one, 0.3 to 6.5 [mm]
    shank_diameter_mm : float or array
        Diameter d of the fastener, 3 to 8 [mm]
    tensile_strength_mpa : float or array
        Tensile strength f_u of the sheet, 20 to 2000; EN 1999-1-4 counts 260 at most [MPa]
    supporting_thickness_mm : float or array
        Thickness of the other sheet, at least t [mm]
    standard : str
        One of ``BEARING_STANDARDS``, or ``BLIND_RIVET_STANDARD`` [-]
    partial_factor : float
        Factor gamma_M, at least 1; 1 for a strength without safety, 1.25 in European design [-]

    Returns
    -------
    float or numpy.ndarray
        Bearing force [N]

    Raises
    ------
    ValueError
        If a value lies outside its range, the supporting sheet is thinner, or the standard is unknown.

    Notes
    -----
    Source: as in ``bearing_coefficient``. EN 1993-1-3 and AISI S100 are for steel, EN 1999-1-4 for aluminium
    and screws from 5.5 mm.

    Examples
    --------
    >>> [round(screw_bearing_n(2.0, shank_diameter_mm=5.3, tensile_strength_mpa=215,
    ...                        supporting_thickness_mm=2.0, standard=name)) for name in BEARING_STANDARDS]
    [4480, 3418, 5880]
    """
    alpha = bearing_coefficient(
        thickness_mm,
        shank_diameter_mm=shank_diameter_mm,
        supporting_thickness_mm=supporting_thickness_mm,
        standard=standard,
    )
    counted = np.minimum(_strength(tensile_strength_mpa), _CONSTANTS[standard]["strength limit"])
    factor = require_at_least("partial factor", partial_factor, 1, unit="")
    return plain(alpha * counted * np.asarray(shank_diameter_mm) * _thickness(thickness_mm) / factor)


def pull_through_n(
    thickness_mm,
    *,
    head_diameter_mm,
    tensile_strength_mpa,
    standard=STEEL_STANDARD,
    repeated_wind=False,
    beyond_range=False,
    partial_factor=1.0,
):
    """Return the pull at which a head comes through its sheet: F = k d_w t f_u / gamma_M.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the sheet next to the head, 0.3 to 6.5; to 1.5 by EN 1993-1-3 [mm]
    head_diameter_mm : float or array
        Diameter d_w of head or washer, 3 to 30 [mm]
    tensile_strength_mpa : float or array
        Tensile strength f_u of the sheet, 20 to 2000 [MPa]
    standard : str
        One of ``PULL_THROUGH_STANDARDS``: k is 1.0 in EN 1993-1-3, 1.5 in AISI S100 [-]
    repeated_wind : bool
        Whether the load comes and goes, only for EN 1993-1-3: k is then 0.5 [-]
    beyond_range : bool
        Whether EN 1993-1-3 is carried on beyond its 1.5 mm, where its k is only the lower one [-]
    partial_factor : float
        Factor gamma_M, at least 1; 1 for a strength without safety, 1.25 in European design [-]

    Returns
    -------
    float or numpy.ndarray
        Pull [N]

    Raises
    ------
    ValueError
        If a value lies outside its range, or the standard does not print the case.

    Notes
    -----
    Source: en_1993_1_3 Table 8.2, half under repeated wind seen on a page, the static form from memory;
    aisi_s100, pull-over.

    Examples
    --------
    >>> [round(pull_through_n(1.5, head_diameter_mm=7.75, tensile_strength_mpa=215, standard=name))
    ...  for name in PULL_THROUGH_STANDARDS]
    [2499, 3749]
    """
    standards = (STEEL_STANDARD,) if repeated_wind else PULL_THROUGH_STANDARDS
    constants = _CONSTANTS[require_choice("standard", standard, standards)]
    thickness = _thickness(thickness_mm)
    if "pull-through thickest" in constants and not beyond_range:
        require_between("sheet thickness", thickness, 0.3, constants["pull-through thickest"], unit="mm")
    head = np.asarray(require_between("head diameter", head_diameter_mm, 3, 30, unit="mm"))
    factor = require_at_least("partial factor", partial_factor, 1, unit="")
    name = "pull-through factor under repeated wind" if repeated_wind else "pull-through factor"
    return plain(constants[name] * head * thickness * _strength(tensile_strength_mpa) / factor)
