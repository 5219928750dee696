"""Where the metal of a button came from, and how thick the plate under it must be.

Volumes balance: sheet does not compress and none is drawn in from around. Once the rivet is out, the room it
took stays open in the plate; pressing the button flat can close that room but never brings thickness back.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between, require_whole


def button_volume_mm3(*, rivet_volume_mm3, empty_bore_mm3=0.0, proud_volume_mm3=0.0):
    """Return the volume of plate that stands proud on the far side: V_b = V_r + V_v - V_h.

    Parameters
    ----------
    rivet_volume_mm3 : float or array
        Metal of the rivet below the first top face V_r, at least 0 [mm3]
    empty_bore_mm3 : float or array
        Part of the bore that stayed empty V_v, at least 0 [mm3]
    proud_volume_mm3 : float or array
        What stands proud of the top face V_h, at least 0 [mm3]

    Returns
    -------
    float or numpy.ndarray
        Volume of the button [mm3]

    Raises
    ------
    ValueError
        If a volume is below 0, or more stands proud of the top face than there is.

    Notes
    -----
    Source: plane_geometry, balance of volumes, derived.

    Examples
    --------
    >>> button_volume_mm3(rivet_volume_mm3=90, empty_bore_mm3=20, proud_volume_mm3=5)
    105.0
    """
    rivet = require_at_least("volume of the rivet", rivet_volume_mm3, 0, unit="mm3")
    bore = require_at_least("empty volume of the bore", empty_bore_mm3, 0, unit="mm3")
    proud = require_at_least("volume proud of the top face", proud_volume_mm3, 0, unit="mm3")
    balance = np.asarray(rivet) + bore - proud
    return plain(require_at_least("volume of the button", plain(balance), 0, unit="mm3"))


def hole_left_volume_mm3(*, rivet_volume_mm3, empty_bore_mm3=0.0):
    """Return the room that the rivet leaves in the plates: V_r + V_v, before springback.

    Parameters
    ----------
    rivet_volume_mm3 : float or array
        Metal of the rivet below the first top face V_r, at least 0 [mm3]
    empty_bore_mm3 : float or array
        Part of the bore that stayed empty V_v, at least 0 [mm3]

    Returns
    -------
    float or numpy.ndarray
        Volume [mm3]

    Raises
    ------
    ValueError
        If a volume is below 0.

    Notes
    -----
    Source: plane_geometry, balance of volumes, derived.

    Examples
    --------
    >>> hole_left_volume_mm3(rivet_volume_mm3=90, empty_bore_mm3=20)
    110.0
    """
    return button_volume_mm3(rivet_volume_mm3=rivet_volume_mm3, empty_bore_mm3=empty_bore_mm3)


def die_room_mm3(*, die_diameter_mm, die_depth_mm, tip_radius_mm=0.0, tip_height_mm=0.0):
    """Return the room of a die: a flat cylinder less the cone of its tip.

    Parameters
    ----------
    die_diameter_mm : float or array
        Diameter of the cavity, above 0 [mm]
    die_depth_mm : float or array
        Depth of the cavity, above 0 [mm]
    tip_radius_mm : float or array
        Radius of the foot of the tip, at least 0 and at most that of the cavity [mm]
    tip_height_mm : float or array
        Height of the tip, at least 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Room [mm3]

    Raises
    ------
    ValueError
        If a size lies outside its range.

    Notes
    -----
    ``pi/4 D^2 h - pi r^2 h_tip/3``. Source: plane_geometry.

    Examples
    --------
    >>> round(die_room_mm3(die_diameter_mm=10, die_depth_mm=1.6, tip_radius_mm=2.5, tip_height_mm=1), 2)
    119.12
    """
    diameter = np.asarray(require_above("die diameter", die_diameter_mm, 0, unit="mm"))
    depth = require_above("die depth", die_depth_mm, 0, unit="mm")
    radius = np.asarray(require_at_least("radius of the tip", tip_radius_mm, 0, unit="mm"))
    height = require_at_least("height of the tip", tip_height_mm, 0, unit="mm")
    require_between("radius of the tip over that of the die", 2 * radius / diameter, 0, 1, unit="")
    return plain(np.pi / 4 * diameter**2 * depth - np.pi * radius**2 * height / 3)


def die_filling(*, button_mm3, room_mm3):
    """Return how full the die was: volume of the button over the room of the die.

    Parameters
    ----------
    button_mm3 : float or array
        Volume of the button, at least 0 [mm3]
    room_mm3 : float or array
        Room of the die, above 0 [mm3]

    Returns
    -------
    float or numpy.ndarray
        Filling ratio; above 1 the balance or a measure is wrong [-]

    Raises
    ------
    ValueError
        If a volume lies outside its range.

    Notes
    -----
    Source: plane_geometry, balance of volumes, derived.

    Examples
    --------
    >>> round(die_filling(button_mm3=107, room_mm3=119.12), 2)
    0.9
    """
    button = require_at_least("volume of the button", button_mm3, 0, unit="mm3")
    return plain(button / np.asarray(require_above("room of the die", room_mm3, 0, unit="mm3")))


def bearing_thickness_mm(
    *, force_n, diameter_mm, tensile_strength_mpa, bearing_factor=2.5, partial_factor=1.25
):
    """Return the thickness that a plate needs so that a fastener does not crush it.

    Parameters
    ----------
    force_n : float or array
        Shear force on the fastener by design, at least 0 [N]
    diameter_mm : float or array
        Diameter of the fastener, above 0 [mm]
    tensile_strength_mpa : float or array
        Tensile strength of the plate, above 0 [MPa]
    bearing_factor : float or array
        Product k1 alpha_b, above 0 and at most 2.5 [-]
    partial_factor : float
        Partial factor gamma_M2, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Required thickness, the lower limit for a residual thickness [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    ``t = F gamma/(k1 alpha_b f_u d)``. Source: en_1999_1_1, 8.5.5 solved for t, from memory.

    Examples
    --------
    >>> round(bearing_thickness_mm(force_n=2000, diameter_mm=4.8, tensile_strength_mpa=190), 2)
    1.1
    """
    force = require_at_least("design force", force_n, 0, unit="N")
    diameter = np.asarray(require_above("diameter of the fastener", diameter_mm, 0, unit="mm"))
    strength = np.asarray(require_above("tensile strength", tensile_strength_mpa, 0, unit="MPa"))
    factor = np.asarray(require_between("bearing factor", bearing_factor, 1e-3, 2.5, unit=""))
    gamma = require_at_least("partial factor", partial_factor, 1, unit="")
    return plain(np.asarray(force) * gamma / (factor * strength * diameter))


def net_section_thickness_mm(
    *, force_n, width_mm, hole_diameter_mm, tensile_strength_mpa, holes=1, partial_factor=1.25
):
    """Return the thickness that a plate needs so that it does not tear through its holes.

    Parameters
    ----------
    force_n : float or array
        Pull on the strip by design, at least 0 [N]
    width_mm : float or array
        Width of the strip, more than its holes take [mm]
    hole_diameter_mm : float or array
        Diameter of one hole, at least 0 [mm]
    tensile_strength_mpa : float or array
        Tensile strength of the plate, above 0 [MPa]
    holes : int or array
        Holes side by side across the strip, a whole number from 0 [-]
    partial_factor : float
        Partial factor gamma_M2, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Required thickness [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range or the holes take the whole width.

    Notes
    -----
    ``t = N gamma/(0.9 f_u (b - n d_0))``. Source: en_1999_1_1, 6.2.3 solved for t, from memory.

    Examples
    --------
    >>> round(net_section_thickness_mm(force_n=14657.8, width_mm=40, hole_diameter_mm=4.9,
    ...                                tensile_strength_mpa=290), 2)
    2.0
    """
    force = require_at_least("design force", force_n, 0, unit="N")
    hole = np.asarray(require_at_least("hole diameter", hole_diameter_mm, 0, unit="mm"))
    strength = np.asarray(require_above("tensile strength", tensile_strength_mpa, 0, unit="MPa"))
    count = require_whole("number of holes", holes, 0, unit="")
    gamma = require_at_least("partial factor", partial_factor, 1, unit="")
    net = require_above("width", width_mm, 0, unit="mm") - hole * count
    require_above("width left beside the holes", plain(net), 0, unit="mm")
    return plain(np.asarray(force) * gamma / (0.9 * strength * net))
