"""Bearing of thin sheet at a blind rivet by several codes side by side, and the spread between them.

The codes differ by up to two: each is named, none is averaged away. What a code leaves out it does not give.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least, require_between
from secondplate.eurocode9_bearing import GAMMA_M2, bearing_n, edge_factor, end_factor
from secondplate.eurocode9_spacing import EUROCODE9
from secondplate.fastener_bearing import ALUMINIUM_STANDARD, BLIND_RIVET_STANDARD, screw_bearing_n
from secondplate.tables import values

_RULES = values("thin_sheet")
PLATE_CODE, AMERICAN_MANUAL = "EN 1999-1-1", "aluminium design manual"


def _require_thin_sheet_distance(kind, distance, diameter):
    """Raise where a distance is below the rule for blind rivets, naming rule and value."""
    factor = _RULES[f"blind rivet {kind}"]
    given, least = np.broadcast_arrays(require_above(kind, distance, 0, unit="mm"), factor * diameter)
    short = np.flatnonzero(given < least * (1 - 1e-9))
    if short.size:
        asked, got = float(least.flat[short[0]]), float(given.flat[short[0]])
        message = (
            f"{kind} must be at least {asked:.6g} mm (EN 1993-1-3 Table 8.1, blind rivets, {factor:.6g} d), "
            f"got {got:.6g} mm"
        )
        raise ValueError(message)


def blind_rivet_bearing_n(
    thickness_mm,
    *,
    diameter_mm,
    tensile_strength_mpa,
    supporting_thickness_mm,
    end_distance_mm,
    edge_distance_mm,
    partial_factor=GAMMA_M2,
):
    """Return the bearing of sheet at a blind rivet: F = alpha f_u d t/gamma_M2 <= f_u e1 t/(1.2 gamma_M2).

    alpha = min(3.6 sqrt(t/d), 2.1) for equal sheets, 2.1 on a sheet 2.5 times as thick, linear in between.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the thinner sheet, 0.3 to 6.5 [mm]
    diameter_mm : float or array
        Diameter d of the rivet, 3 to 6.4 [mm]
    tensile_strength_mpa : float or array
        Tensile strength f_u of the sheet, up to 550 [MPa]
    supporting_thickness_mm : float or array
        Thickness of the other sheet, at least t [mm]
    end_distance_mm : float or array
        End distance e1 along the load, at least 1.5 d [mm]
    edge_distance_mm : float or array
        Edge distance e2 across the load, at least 1.5 d [mm]
    partial_factor : float
        Factor gamma_M2, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Bearing by design [N]

    Raises
    ------
    ValueError
        If a distance is below its rule or a value lies outside its range.

    Notes
    -----
    Source: en_1993_1_3 Table 8.1, from memory; the limit by e1 seen in cold_formed_code. Written for steel.

    Examples
    --------
    >>> sheet = {"diameter_mm": 4.8, "tensile_strength_mpa": 190, "end_distance_mm": 10,
    ...          "edge_distance_mm": 8, "supporting_thickness_mm": 1.5}
    >>> round(blind_rivet_bearing_n(1.5, **sheet), 1)
    1900.0
    """
    diameter = np.asarray(
        require_between("diameter of the rivet", diameter_mm, 3, _RULES["blind rivet largest"], unit="mm")
    )
    strongest = _RULES["blind rivet strongest"]
    require_between("tensile strength", tensile_strength_mpa, 20, strongest, unit="MPa")
    _require_thin_sheet_distance("end distance", end_distance_mm, diameter)
    _require_thin_sheet_distance("edge distance", edge_distance_mm, diameter)
    form = screw_bearing_n(
        thickness_mm,
        shank_diameter_mm=diameter,
        tensile_strength_mpa=tensile_strength_mpa,
        supporting_thickness_mm=supporting_thickness_mm,
        standard=BLIND_RIVET_STANDARD,
        partial_factor=partial_factor,
    )
    by_end = np.asarray(tensile_strength_mpa) * np.asarray(end_distance_mm) * np.asarray(thickness_mm)
    return plain(np.minimum(form, by_end / (_RULES["blind rivet end cap"] * partial_factor)))


def manual_bearing_n(thickness_mm, *, diameter_mm, tensile_strength_mpa, end_distance_mm):
    """Return the bearing by the aluminium design manual: 0.75 times min(d_e t F_tu, 2 D t F_tu).

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t, above 0 [mm]
    diameter_mm : float or array
        Diameter D of the fastener, above 0 [mm]
    tensile_strength_mpa : float or array
        Tensile strength F_tu of the sheet, above 0 [MPa]
    end_distance_mm : float or array
        Distance d_e to the end along the load, at least 1.5 D [mm]

    Returns
    -------
    float or numpy.ndarray
        Bearing by design, with the resistance factor 0.75 [N]

    Raises
    ------
    ValueError
        If the end distance is below 1.5 D or a value lies outside its range.

    Notes
    -----
    Source: aluminium_manual J.3, from memory.

    Examples
    --------
    >>> round(manual_bearing_n(1.5, diameter_mm=4.8, tensile_strength_mpa=190, end_distance_mm=10), 1)
    2052.0
    """
    thickness = np.asarray(require_above("sheet thickness", thickness_mm, 0, unit="mm"))
    diameter = np.asarray(require_above("diameter of the fastener", diameter_mm, 0, unit="mm"))
    strength = np.asarray(require_above("tensile strength", tensile_strength_mpa, 0, unit="MPa"))
    end = np.asarray(require_above("end distance", end_distance_mm, 0, unit="mm"))
    require_at_least(
        "end distance in diameters (aluminium design manual)",
        end / diameter,
        _RULES["manual least edge"],
        unit="",
    )
    counted = np.minimum(end, _RULES["manual bearing limit"] * diameter)
    return plain(_RULES["manual resistance factor"] * counted * thickness * strength)


def aluminium_rivet_n(diameter_mm, *, in_shear=True, partial_factor=GAMMA_M2):
    """Return what a blind rivet with an aluminium body bears by EN 1999-1-4: 38 d^2 or 47 d^2 over gamma_M3.

    Parameters
    ----------
    diameter_mm : float or array
        Diameter d of the rivet, above 0 [mm]
    in_shear : bool
        Whether it is sheared, or drawn along its axis [-]
    partial_factor : float
        Factor gamma_M3, at least 1 [-]

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
    Source: en_1999_1_4 8.3.3, from memory with low confidence.

    Examples
    --------
    >>> round(aluminium_rivet_n(4.8), 1)
    700.4
    """
    diameter = np.asarray(require_above("diameter of the rivet", diameter_mm, 0, unit="mm"))
    gamma = require_at_least("partial factor", partial_factor, 1, unit="")
    return plain(_RULES["blind rivet shear" if in_shear else "blind rivet tension"] * diameter**2 / gamma)


def handbook_bearing_ratio(end_ratio):
    """Return bearing strength over tensile strength of 6061-T6 sheet, F_bru/F_tu, by an aerospace handbook.

    Parameters
    ----------
    end_ratio : float or array
        End distance over diameter e/D, 1.5 to 2; linear in between [-]

    Returns
    -------
    float or numpy.ndarray
        Ratio, without a partial factor [-]

    Raises
    ------
    ValueError
        If the end distance lies outside 1.5 to 2 diameters.

    Notes
    -----
    Source: mil_hdbk_5 Table 3.6.2.0, from memory.

    Examples
    --------
    >>> round(handbook_bearing_ratio(1.5), 3), round(handbook_bearing_ratio(2.0), 3)
    (1.595, 2.095)
    """
    ratio = np.asarray(require_between("end distance in diameters", end_ratio, 1.5, 2, unit=""))
    ends = [_RULES["handbook bearing at 1.5"], _RULES["handbook bearing at 2"]]
    return plain(np.interp(ratio, [1.5, 2.0], ends) / _RULES["handbook tensile strength"])


def _plate_code_knows(diameter_mm):
    """Tell whether EN 1999-1-1 covers a rivet; a column must not mix those that it does with others."""
    diameter = np.asarray(require_above("diameter of the rivet", diameter_mm, 0, unit="mm"))
    smallest = EUROCODE9["smallest rivet"]
    covered = diameter >= smallest
    if covered.any() != covered.all():
        got = f"{diameter.min():.6g} mm to {diameter.max():.6g} mm"
        message = (
            f"diameters of the rivets must lie on one side of {smallest:.6g} mm (scope of {PLATE_CODE}), "
            f"got {got}"
        )
        raise ValueError(message)
    return bool(covered.all())


def bearing_by_codes(
    thickness_mm,
    *,
    diameter_mm,
    hole_diameter_mm,
    tensile_strength_mpa,
    supporting_thickness_mm,
    end_distance_mm,
    edge_distance_mm,
):
    """Return the bearing of sheet at a blind rivet by each code, as a force by design.

    Parameters
    ----------
    thickness_mm : float or array
        Thickness t of the thinner sheet, 0.6 to 6.5 [mm]
    diameter_mm : float or array
        Diameter d of the rivet, 3 to 6.4 [mm]
    hole_diameter_mm : float or array
        Hole diameter d0 [mm]
    tensile_strength_mpa : float or array
        Tensile strength f_u of the sheet, 20 to 550 [MPa]
    supporting_thickness_mm : float or array
        Thickness of the other sheet, at least t [mm]
    end_distance_mm : float or array
        End distance e1 along the load, by the rules of every code [mm]
    edge_distance_mm : float or array
        Edge distance e2 across the load, by the rules of every code [mm]

    Returns
    -------
    dict of str to (float or numpy.ndarray)
        Force by the name of the code; EN 1999-1-1 as a single lap with one row, and only for rivets from
        3.9 mm on, for it leaves smaller ones out [N]

    Raises
    ------
    ValueError
        If a distance is below the rule of a code, a value lies outside its range, or a column mixes rivets
        below and above 3.9 mm.

    Notes
    -----
    Source: en_1999_1_1 8.5.5, en_1993_1_3 Table 8.1, en_1999_1_4 8.3.2.1, aluminium_manual J.3, as in the
    functions that are called.

    Examples
    --------
    >>> found = bearing_by_codes(1.5, diameter_mm=4.8, hole_diameter_mm=4.9, tensile_strength_mpa=190,
    ...                          supporting_thickness_mm=1.5, end_distance_mm=10, edge_distance_mm=8)
    >>> [round(force) for force in found.values()]
    [1642, 1900, 1529, 2052]
    """
    sheet = {"diameter_mm": diameter_mm, "tensile_strength_mpa": tensile_strength_mpa}
    support = {"supporting_thickness_mm": supporting_thickness_mm}
    screw = {"shank_diameter_mm": diameter_mm, "tensile_strength_mpa": tensile_strength_mpa}
    ends = {"end_distance_mm": end_distance_mm}
    by_codes = {}
    if _plate_code_knows(diameter_mm):
        along = end_factor(end_distance_mm, hole_diameter_mm=hole_diameter_mm)
        across = edge_factor(edge_distance_mm, hole_diameter_mm=hole_diameter_mm)
        factors = {"along_factor": along, "across_factor": across, "single_row": True}
        by_codes[PLATE_CODE] = bearing_n(thickness_mm, **factors, **sheet)
    return by_codes | {
        BLIND_RIVET_STANDARD: blind_rivet_bearing_n(
            thickness_mm, edge_distance_mm=edge_distance_mm, **ends, **support, **sheet
        ),
        ALUMINIUM_STANDARD: screw_bearing_n(
            thickness_mm, standard=ALUMINIUM_STANDARD, partial_factor=GAMMA_M2, **support, **screw
        ),
        AMERICAN_MANUAL: manual_bearing_n(thickness_mm, **ends, **sheet),
    }


def bearing_spread_n(by_codes):
    """Return the spread between codes as a band that names them.

    Parameters
    ----------
    by_codes : Mapping of str to (float or array)
        Force by the name of the code, as ``bearing_by_codes`` gives it [N]

    Returns
    -------
    Band
        Least, geometric mean and greatest; the basis names every code [N]

    Raises
    ------
    ValueError
        If there is no code or a force is not above 0.

    Examples
    --------
    >>> band = bearing_spread_n({"first code": 1000.0, "second code": 1440.0})
    >>> round(band.low), round(band.best), round(band.high), band.basis
    (1000, 1200, 1440, 'spread between first code, second code')
    """
    if not by_codes:
        message = "codes must be one at least, got none"
        raise ValueError(message)
    checked = [require_above(f"force by {name}", force, 0, unit="N") for name, force in by_codes.items()]
    forces = np.stack(np.broadcast_arrays(*checked))
    return Band(
        low=plain(forces.min(axis=0)),
        # The mean of rounded logarithms must not leave a band of one code.
        best=plain(np.clip(np.exp(np.log(forces).mean(axis=0)), forces.min(axis=0), forces.max(axis=0))),
        high=plain(forces.max(axis=0)),
        basis="spread between " + ", ".join(by_codes),
    )
