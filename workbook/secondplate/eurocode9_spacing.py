"""How far fasteners stand from ends, edges and each other by EN 1999-1-1: minimum, regular and maximum.

Distances go from hole centres and count in hole diameters d0. End distance e1 and spacing p1 lie along the
load, edge distance e2 and row spacing p2 across it. The table is from memory; staggered rows are left out.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_choice
from secondplate.tables import values

EUROCODE9 = values("eurocode9")
DISTANCES = ("end distance", "edge distance", "spacing", "row spacing")
SPACING_LEVELS = ("minimum", "regular")
SPACING_SOURCE = "EN 1999-1-1 Table 8.2"
# Twelve tenths of 4.9 mm must not fail on the last digit of arithmetic.
_FORGIVEN = 1e-9


def least_distance_mm(distance, hole_diameter_mm, *, level="minimum"):
    """Return the least distance of a kind: a factor times the hole diameter.

    Parameters
    ----------
    distance : str
        One of ``DISTANCES`` [-]
    hole_diameter_mm : float or array
        Hole diameter d0, above 0 [mm]
    level : str
        One of ``SPACING_LEVELS`` [-]

    Returns
    -------
    float or numpy.ndarray
        Least distance [mm]

    Raises
    ------
    ValueError
        If a name is unknown or the hole is not above 0.

    Notes
    -----
    Minimum e1, e2, p1, p2: 1.2, 1.2, 2.2, 2.4; regular 2.0, 1.5, 2.5, 3.0. Source: en_1999_1_1 Table 8.2,
    from memory.

    Examples
    --------
    >>> round(least_distance_mm("end distance", 4.9), 2)
    5.88
    """
    require_choice("distance", distance, DISTANCES)
    require_choice("spacing level", level, SPACING_LEVELS)
    hole = require_above("hole diameter", hole_diameter_mm, 0, unit="mm")
    return plain(EUROCODE9[f"{level} {distance}"] * np.asarray(hole))


def greatest_distance_mm(distance, thickness_mm):
    """Return the greatest distance of a kind: 4 t + 40 mm to ends and edges, 14 t but 200 mm between.

    The first is for corrosive surroundings, the second for members in compression.

    Parameters
    ----------
    distance : str
        One of ``DISTANCES`` [-]
    thickness_mm : float or array
        Thickness t of the thinner outer part, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Greatest distance [mm]

    Raises
    ------
    ValueError
        If the name is unknown or the thickness is not above 0.

    Notes
    -----
    Source: en_1999_1_1 Table 8.2, from memory with medium confidence.

    Examples
    --------
    >>> greatest_distance_mm("edge distance", 1.5), greatest_distance_mm("spacing", 1.5)
    (46.0, 21.0)
    """
    require_choice("distance", distance, DISTANCES)
    thickness = np.asarray(require_above("sheet thickness", thickness_mm, 0, unit="mm"))
    if distance in ("end distance", "edge distance"):
        return plain(EUROCODE9["maximum edge by thickness"] * thickness + EUROCODE9["maximum edge more"])
    return plain(
        np.minimum(EUROCODE9["maximum spacing by thickness"] * thickness, EUROCODE9["maximum spacing"])
    )


def require_distance(distance, distance_mm, *, hole_diameter_mm, level="minimum"):
    """Return a distance, or raise where it lies below the rule of its kind, naming the rule.

    Parameters
    ----------
    distance : str
        One of ``DISTANCES`` [-]
    distance_mm : float or array
        The distance, from hole centres [mm]
    hole_diameter_mm : float or array
        Hole diameter d0, above 0 [mm]
    level : str
        One of ``SPACING_LEVELS`` [-]

    Returns
    -------
    float or numpy.ndarray
        The distance [mm]

    Raises
    ------
    ValueError
        If the distance is too short or a name is unknown.

    Notes
    -----
    Source: en_1999_1_1 Table 8.2, from memory.

    Examples
    --------
    >>> require_distance("edge distance", 5, hole_diameter_mm=4.9)
    Traceback (most recent call last):
    ValueError: edge distance must be at least 5.88 mm (minimum of EN 1999-1-1 Table 8.2, 1.2 d0), got 5 mm
    """
    least = np.asarray(least_distance_mm(distance, hole_diameter_mm, level=level))
    given = np.asarray(require_above(distance, distance_mm, 0, unit="mm"))
    given, least = np.broadcast_arrays(given, least)
    short = np.flatnonzero(given < least * (1 - _FORGIVEN))
    if short.size:
        rule = f"{level} of {SPACING_SOURCE}, {EUROCODE9[f'{level} {distance}']:.6g} d0"
        asked, got = float(least.flat[short[0]]), float(given.flat[short[0]])
        message = f"{distance} must be at least {asked:.6g} mm ({rule}), got {got:.6g} mm"
        raise ValueError(message)
    return plain(given)


def spacing_verdict(distance, distance_mm, *, hole_diameter_mm):
    """Return where a distance stands: too short, minimum or regular.

    Parameters
    ----------
    distance : str
        One of ``DISTANCES`` [-]
    distance_mm : float or array
        The distance, from hole centres, at least 0 [mm]
    hole_diameter_mm : float or array
        Hole diameter d0, above 0 [mm]

    Returns
    -------
    str or numpy.ndarray
        ``too short``, ``minimum`` (allowed, with less bearing) or ``regular`` [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the name is unknown.

    Notes
    -----
    Source: en_1999_1_1 Table 8.2, from memory.

    Examples
    --------
    >>> spacing_verdict("end distance", 8, hole_diameter_mm=4.9)
    'minimum'
    """
    given = np.asarray(require_at_least(distance, distance_mm, 0, unit="mm")) * (1 + _FORGIVEN)
    least, usual = (least_distance_mm(distance, hole_diameter_mm, level=level) for level in SPACING_LEVELS)
    named = np.where(given < least, "too short", np.where(given < usual, "minimum", "regular"))
    return str(named) if named.ndim == 0 else named
