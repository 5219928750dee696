"""Thrust and torque of a twist drill by a handbook's factors: work material, feed, diameter, chisel edge.

For solid metal and factory-ground points; the bore of a rivet and the shake of a hand are left out. The other
way, by specific cutting force, is in ``drilling_kienzle``; both side by side in ``drilling_forces``.
"""

from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_between
from secondplate.tables import load

# The ends of what the factors were checked for.
DIAMETER_RANGE_MM = (1.5, 25.0)
FEED_RANGE_MM_REV = (0.01, 0.4)
CHISEL_EDGE_RANGE = (0.03, 0.4)
_FEED_POWER, _THRUST_POWER, _TORQUE_POWER = 0.8, 0.8, 1.8


@dataclass(frozen=True, kw_only=True)
class ChiselEdge:
    """What the chisel edge of a drill does to torque and thrust, as the handbook's factors.

    Parameters
    ----------
    torque_factor : float or array
        A, on the torque [-]
    thrust_factor : float or array
        B, on the thrust of the lips [-]
    chisel_factor : float or array
        J, of the thrust that the chisel edge takes at any feed [-]

    Examples
    --------
    >>> STANDARD_POINT.thrust_factor, SPLIT_POINT.thrust_factor
    (1.355, 1.1)
    """

    torque_factor: float
    thrust_factor: float
    chisel_factor: float


def _factors_of(what):
    """Return the numbers that the table holds of one thing."""
    return {row.name: row.number for row in load("drilling_factors") if row.keys["of"] == what}


def _printed_point(point):
    """Return the printed factors of a kind of point."""
    return ChiselEdge(**{name.replace(" ", "_"): number for name, number in _factors_of(point).items()})


WEAR_FACTORS = MappingProxyType(_factors_of("wear"))
STANDARD_POINT, SPLIT_POINT = _printed_point("standard point"), _printed_point("split point")


def chisel_edge(chisel_edge_ratio):
    """Return the factors of a chisel edge by closed forms.

    ``A = (1 - x^2)/(1 + x)^0.2 + 3.2 x^1.8``, ``B = (1 - x)/(1 + x)^0.2 + 2.2 x^0.8``, ``J = x^2``, x = c/D.

    Parameters
    ----------
    chisel_edge_ratio : float or array
        Length of the chisel edge over the diameter, 0.03 to 0.40 [-]

    Returns
    -------
    ChiselEdge
        The three factors [-]

    Raises
    ------
    ValueError
        If the ratio lies outside the printed table.

    Notes
    -----
    Source: shaw_oxford_1957, from memory; within 1 % of machinery_handbook Table 7 in A and B, 0.0025 in J,
    but for the misprint A = 1.080 at 0.15.

    Examples
    --------
    >>> edge = chisel_edge(0.15)
    >>> round(edge.torque_factor, 3), round(edge.thrust_factor, 3), round(edge.chisel_factor, 4)
    (1.056, 1.309, 0.0225)
    """
    ratio = np.asarray(require_between("chisel edge ratio", chisel_edge_ratio, *CHISEL_EDGE_RANGE, unit=""))
    return ChiselEdge(
        torque_factor=plain((1 - ratio**2) / (1 + ratio) ** 0.2 + 3.2 * ratio**1.8),
        thrust_factor=plain((1 - ratio) / (1 + ratio) ** 0.2 + 2.2 * ratio**0.8),
        chisel_factor=plain(ratio**2),
    )


def _sizes(drill_diameter_mm, feed_mm_rev):
    """Return diameter and feed as arrays, inside the range of the factors."""
    diameter = require_between("drill diameter", drill_diameter_mm, *DIAMETER_RANGE_MM, unit="mm")
    feed = require_between("feed", feed_mm_rev, *FEED_RANGE_MM_REV, unit="mm/rev")
    return np.asarray(diameter), np.asarray(feed)


def feed_factor(feed_mm_rev):
    """Return the handbook's feed factor, F_f = f^0.8.

    Parameters
    ----------
    feed_mm_rev : float or array
        Feed for a turn, 0.01 to 0.4 [mm/rev]

    Returns
    -------
    float or array
        Feed factor [-]

    Raises
    ------
    ValueError
        If the feed lies outside its range.

    Notes
    -----
    Source: machinery_handbook Table 8, whose rows it gives back.

    Examples
    --------
    >>> round(feed_factor(0.1), 3)
    0.158
    """
    feed = np.asarray(require_between("feed", feed_mm_rev, *FEED_RANGE_MM_REV, unit="mm/rev"))
    return plain(feed**_FEED_POWER)


def diameter_factors(drill_diameter_mm):
    """Return the handbook's factors of the diameter, F_T = D^0.8 for thrust and F_M = D^1.8 for torque.

    Parameters
    ----------
    drill_diameter_mm : float or array
        Diameter of the drill, 1.5 to 25 [mm]

    Returns
    -------
    tuple of float or array
        Factor of the thrust and factor of the torque [-]

    Raises
    ------
    ValueError
        If the diameter lies outside its range.

    Notes
    -----
    Source: machinery_handbook Table 9, whose rows it gives back but for the misprint 5.96 at 8.80 mm.

    Examples
    --------
    >>> [round(factor, 2) for factor in diameter_factors(8)]
    [5.28, 42.22]
    """
    diameter = np.asarray(require_between("drill diameter", drill_diameter_mm, *DIAMETER_RANGE_MM, unit="mm"))
    return plain(diameter**_THRUST_POWER), plain(diameter**_TORQUE_POWER)


def _worn(work_material_factor, wear_factor):
    """Return the product of the factors of work material and wear."""
    material = require_above("work material factor", work_material_factor, 0, unit="")
    least, *_, most = WEAR_FACTORS.values()
    return np.asarray(material) * np.asarray(
        require_between("wear factor", wear_factor, least, most, unit="")
    )


def chisel_thrust_n(*, work_material_factor, drill_diameter_mm, chisel_edge=STANDARD_POINT, wear_factor=1.0):
    """Return the thrust that the chisel edge takes at any feed, 0.007 K_d D^2 J W.

    Parameters
    ----------
    work_material_factor : float or array
        K_d of the handbook, above 0 [-]
    drill_diameter_mm : float or array
        Diameter of the drill, 1.5 to 25 [mm]
    chisel_edge : ChiselEdge
        Factors of the point [-]
    wear_factor : float or array
        1.0 for a sharp drill, up to 1.5 for a worn one [-]

    Returns
    -------
    float or array
        Thrust [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: machinery_handbook p. 1152.

    Examples
    --------
    >>> round(chisel_thrust_n(work_material_factor=7000, drill_diameter_mm=10))
    147
    """
    diameter = np.asarray(require_between("drill diameter", drill_diameter_mm, *DIAMETER_RANGE_MM, unit="mm"))
    worn = _worn(work_material_factor, wear_factor)
    return plain(0.007 * worn * diameter**2 * chisel_edge.chisel_factor)


def handbook_thrust_n(
    *, work_material_factor, drill_diameter_mm, feed_mm_rev, chisel_edge=STANDARD_POINT, wear_factor=1.0
):
    """Return the thrust by the handbook's factors, 0.05 K_d F_f F_T B W + 0.007 K_d D^2 J W.

    Parameters
    ----------
    work_material_factor : float or array
        K_d of the handbook, above 0 [-]
    drill_diameter_mm : float or array
        Diameter of the drill, 1.5 to 25 [mm]
    feed_mm_rev : float or array
        Feed for a turn, 0.01 to 0.4 [mm/rev]
    chisel_edge : ChiselEdge
        Factors of the point [-]
    wear_factor : float or array
        1.0 for a sharp drill, up to 1.5 for a worn one [-]

    Returns
    -------
    float or array
        Thrust [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: machinery_handbook p. 1152. With a drill in the hand this is what the hand pushes.

    Examples
    --------
    >>> round(handbook_thrust_n(work_material_factor=7000, drill_diameter_mm=6.4, feed_mm_rev=0.1))
    392
    """
    diameter, feed = _sizes(drill_diameter_mm, feed_mm_rev)
    worn = _worn(work_material_factor, wear_factor)
    lips = 0.05 * worn * feed**_FEED_POWER * diameter**_THRUST_POWER * chisel_edge.thrust_factor
    return plain(lips + 0.007 * worn * diameter**2 * chisel_edge.chisel_factor)


def handbook_torque_n_m(
    *, work_material_factor, drill_diameter_mm, feed_mm_rev, chisel_edge=STANDARD_POINT, wear_factor=1.0
):
    """Return the torque by the handbook's factors, 0.000025 K_d F_f F_M A W.

    Parameters
    ----------
    work_material_factor : float or array
        K_d of the handbook, above 0 [-]
    drill_diameter_mm : float or array
        Diameter of the drill, 1.5 to 25 [mm]
    feed_mm_rev : float or array
        Feed for a turn, 0.01 to 0.4 [mm/rev]
    chisel_edge : ChiselEdge
        Factors of the point [-]
    wear_factor : float or array
        1.0 for a sharp drill, up to 1.5 for a worn one [-]

    Returns
    -------
    float or array
        Torque [N m]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: machinery_handbook p. 1152.

    Examples
    --------
    >>> round(handbook_torque_n_m(work_material_factor=7000, drill_diameter_mm=6.4, feed_mm_rev=0.1), 3)
    0.85
    """
    diameter, feed = _sizes(drill_diameter_mm, feed_mm_rev)
    worn = _worn(work_material_factor, wear_factor)
    return plain(25e-6 * worn * feed**_FEED_POWER * diameter**_TORQUE_POWER * chisel_edge.torque_factor)
