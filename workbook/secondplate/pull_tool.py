"""The tool that pulls: force from pressure, stroke, energy stored in it, and its nose on the top plate.

The vehicle maker's procedure and the manual of the tool come first; what is stored in a tool under load flies
when something breaks.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least, require_below, require_between

STEEL_MODULUS_MPA = 200_000.0


def hydraulic_force_n(*, pressure_bar, bore_mm, efficiency=1.0):
    """Return the force of a hydraulic ram, F = p pi/4 D^2 times its efficiency.

    Parameters
    ----------
    pressure_bar : float or array
        Pressure above that of the air, 0 to 1000 [bar]
    bore_mm : float or array
        Diameter of the ram, above 0 [mm]
    efficiency : float or array
        What friction leaves of the force, above 0 up to 1 [-]

    Returns
    -------
    float or array
        Force [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: plane_geometry, force as pressure on an area.

    Examples
    --------
    >>> round(hydraulic_force_n(pressure_bar=700, bore_mm=20))
    21991
    """
    pressure = require_between("pressure", pressure_bar, 0, 1000, unit="bar")
    bore = require_above("bore", bore_mm, 0, unit="mm")
    share = require_between("efficiency", require_above("efficiency", efficiency, 0, unit=""), 0, 1, unit="")
    return plain(0.1 * np.asarray(pressure) * np.pi / 4 * np.square(bore) * share)


def intensified_pressure_bar(*, pressure_bar, air_bore_mm, ram_bore_mm):
    """Return the oil pressure that compressed air makes over two pistons on one rod, p (D/d)^2.

    Parameters
    ----------
    pressure_bar : float or array
        Pressure of the air above the surroundings, 0 to 1000 [bar]
    air_bore_mm : float or array
        Diameter of the air piston, above 0 [mm]
    ram_bore_mm : float or array
        Diameter of the oil piston, above 0 and below that of the air piston [mm]

    Returns
    -------
    float or array
        Oil pressure without losses [bar]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: plane_geometry, equal forces on two areas.

    Examples
    --------
    >>> round(intensified_pressure_bar(pressure_bar=6, air_bore_mm=100, ram_bore_mm=16), 1)
    234.4
    """
    pressure = require_between("pressure", pressure_bar, 0, 1000, unit="bar")
    air = require_above("air bore", air_bore_mm, 0, unit="mm")
    ram = require_above("ram bore", ram_bore_mm, 0, unit="mm")
    require_below("ram bore", ram, "air bore", air)
    return plain(np.asarray(pressure) * np.square(np.asarray(air) / ram))


def stud_stretch_mm(*, force_n, stretched_length_mm, stress_area_mm2, elastic_modulus_mpa=STEEL_MODULUS_MPA):
    """Return how far a stud stretches under a pull while it springs back, F L / (A E).

    Parameters
    ----------
    force_n : float or array
        Pull, at least 0 [N]
    stretched_length_mm : float or array
        Length that is stretched, above 0 [mm]
    stress_area_mm2 : float or array
        Stress area of the thread, above 0 [mm2]
    elastic_modulus_mpa : float or array
        Elastic modulus, above 0 [MPa]

    Returns
    -------
    float or array
        Stretch [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: strength_of_materials.

    Examples
    --------
    >>> round(stud_stretch_mm(force_n=10_000, stretched_length_mm=40, stress_area_mm2=20.1), 4)
    0.0995
    """
    force = require_at_least("force", force_n, 0, unit="N")
    length = require_above("stretched length", stretched_length_mm, 0, unit="mm")
    area = require_above("stress area", stress_area_mm2, 0, unit="mm2")
    modulus = require_above("elastic modulus", elastic_modulus_mpa, 0, unit="MPa")
    return plain(np.asarray(force) * length / (np.asarray(area) * modulus))


def stroke_needed_mm(*, rivet_length_mm, spring_back_mm=0.0, stretch_mm=0.0, grip_set_mm=0.0):
    """Return the stroke that draws a rivet clear: its length and what the set-up gives before it moves.

    Parameters
    ----------
    rivet_length_mm : float or array
        Length of the rivet, above 0 [mm]
    spring_back_mm : float or array
        How far the plates are lifted before the rivet moves, at least 0 [mm]
    stretch_mm : float or array
        Stretch of the stud, at least 0 [mm]
    grip_set_mm : float or array
        Way that the tool's jaws need to bite, at least 0 [mm]

    Returns
    -------
    float or array
        Least stroke of the tool [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: practice, a sum of ways.

    Examples
    --------
    >>> stroke_needed_mm(rivet_length_mm=6.0, spring_back_mm=0.5, stretch_mm=0.1, grip_set_mm=1.0)
    7.6
    """
    length = require_above("rivet length", rivet_length_mm, 0, unit="mm")
    lost = (
        require_at_least("spring-back", spring_back_mm, 0, unit="mm"),
        require_at_least("stretch", stretch_mm, 0, unit="mm"),
        require_at_least("set of the grip", grip_set_mm, 0, unit="mm"),
    )
    return plain(np.asarray(length) + sum(map(np.asarray, lost)))


def stored_energy_j(*, force_n, stiffness_n_mm):
    """Return the energy that tool and stud hold when something breaks, F^2 / (2 k).

    Parameters
    ----------
    force_n : float or array
        Force at the break, at least 0 [N]
    stiffness_n_mm : float or array
        Stiffness of all that is stretched, above 0 [N/mm]

    Returns
    -------
    float or array
        Energy set free [J]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: strength_of_materials, work of a spring.

    Examples
    --------
    >>> stored_energy_j(force_n=10_000, stiffness_n_mm=20_000)
    2.5
    """
    force = require_at_least("force", force_n, 0, unit="N")
    stiffness = require_above("stiffness", stiffness_n_mm, 0, unit="N/mm")
    return plain(np.square(np.asarray(force, dtype=float)) / (2000 * np.asarray(stiffness)))


def flight_speed_m_s(*, energy_j, mass_g):
    """Return how fast a piece leaves that takes up all of an energy, sqrt(2 E / m): an upper bound.

    Parameters
    ----------
    energy_j : float or array
        Energy set free, at least 0 [J]
    mass_g : float or array
        Mass of the piece, above 0 [g]

    Returns
    -------
    float or array
        Speed [m/s]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: strength_of_materials, energy of motion. Part of the energy stays in the tool, so it is a bound.

    Examples
    --------
    >>> round(flight_speed_m_s(energy_j=2.5, mass_g=10), 1)
    22.4
    """
    energy = require_at_least("energy", energy_j, 0, unit="J")
    mass = require_above("mass", mass_g, 0, unit="g")
    return plain(np.sqrt(2000 * np.asarray(energy) / mass))


def nose_bearing_mpa(*, force_n, outer_diameter_mm, inner_diameter_mm):
    """Return the pressure of the tool's nose ring on the top plate, F / (pi/4 (D^2 - d^2)).

    Parameters
    ----------
    force_n : float or array
        Pull, at least 0 [N]
    outer_diameter_mm : float or array
        Outside of the ring, above the inside [mm]
    inner_diameter_mm : float or array
        Inside of the ring, above 0 [mm]

    Returns
    -------
    float or array
        Mean pressure; the inner edge presses harder [MPa]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: plane_geometry.

    Examples
    --------
    >>> round(nose_bearing_mpa(force_n=4000, outer_diameter_mm=20, inner_diameter_mm=12), 2)
    19.89
    """
    force = require_at_least("force", force_n, 0, unit="N")
    inner = require_above("inner diameter", inner_diameter_mm, 0, unit="mm")
    outer = require_above("outer diameter", outer_diameter_mm, 0, unit="mm")
    require_below("inner diameter", inner, "outer diameter", outer)
    return plain(np.asarray(force) / (np.pi / 4 * (np.square(outer) - np.square(inner))))


def top_plate_dish_mm(*, force_n, support_radius_mm, thickness_mm, elastic_modulus_mpa, poisson_ratio):
    """Return how far the top plate is drawn up inside the nose ring, from held edge to free edge.

    Round plate, load in the middle: w = F a^2 / (16 pi D) with a clamped edge, (3 + nu)/(1 + nu) times that
    with a supported one, D = E t^3 / (12 (1 - nu^2)).

    Parameters
    ----------
    force_n : float or array
        Pull, at least 0 [N]
    support_radius_mm : float or array
        Inside radius of the ring, above 0 [mm]
    thickness_mm : float or array
        Thickness of the top plate, above 0 [mm]
    elastic_modulus_mpa : float or array
        Elastic modulus of the plate, above 0 [MPa]
    poisson_ratio : float or array
        Poisson's ratio, 0 to 0.5 [-]

    Returns
    -------
    Band
        Dish: clamped at the low end, supported at the high end [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: plate_theory, from memory. Elastic and small: beyond half the thickness the plate stiffens, and
    once it yields it dishes further.

    Examples
    --------
    >>> dish = top_plate_dish_mm(force_n=2000, support_radius_mm=8, thickness_mm=1.5,
    ...                          elastic_modulus_mpa=70_000, poisson_ratio=0.33)
    >>> round(dish.low, 4), round(dish.high, 4)
    (0.1153, 0.2886)
    """
    force = require_at_least("force", force_n, 0, unit="N")
    radius = require_above("support radius", support_radius_mm, 0, unit="mm")
    thickness = require_above("thickness", thickness_mm, 0, unit="mm")
    modulus = require_above("elastic modulus", elastic_modulus_mpa, 0, unit="MPa")
    ratio = np.asarray(require_between("Poisson's ratio", poisson_ratio, 0, 0.5, unit=""))
    stiffness = np.asarray(modulus) * np.power(thickness, 3) / (12 * (1 - ratio**2))
    clamped = plain(np.asarray(force) * np.square(radius) / (16 * np.pi * stiffness))
    supported = plain(clamped * (3 + ratio) / (1 + ratio))
    best = plain((clamped + supported) / 2)
    return Band(low=clamped, best=best, high=supported, basis="clamped to supported edge")
