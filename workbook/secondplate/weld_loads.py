"""A round face pulled off its middle or askew: edge stresses, elastic limit after Navier, plastic limit.

Shear is taken as even over the face and weighed after von Mises. It leaves out notches and prying.
"""

from functools import cache

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between
from secondplate.weld_sections import kern_radius_mm


def elastic_load_share(eccentricity_over_diameter):
    """Return what is left of the load at first yield when it is off the middle, 1 / (1 + 8 e/d).

    Parameters
    ----------
    eccentricity_over_diameter : float or array
        Distance of the load from the middle over the diameter of the face, at least 0 [-]

    Returns
    -------
    float or array
        Share of the load on the middle, 1 at no offset [-]

    Raises
    ------
    ValueError
        If the eccentricity is below 0.

    Notes
    -----
    Source: strength_of_materials, sigma = F/A + F e/W; at e = d/8 the far edge is just free of stress.

    Examples
    --------
    >>> elastic_load_share(0.125)
    0.5
    """
    ratio = require_at_least("eccentricity over diameter", eccentricity_over_diameter, 0, unit="")
    return plain(1 / (1 + 8 * np.asarray(ratio)))


@cache
def _plastic_table():
    """Tabulate the plastic share over the eccentricity by the place of the neutral axis, both exact."""
    half = np.linspace(np.pi / 2, 0.0, 20001)[:-1]  # neutral axis from the middle outward to the rim
    k = np.cos(half)
    share = 1 - 2 / np.pi * (half - k * np.sin(half))
    over_radius = np.append(4 / (3 * np.pi) * np.sin(half[1:]) ** 3 / share[1:], 0.0)
    # The inverse of the share runs nearly straight over the eccentricity, so it is what is interpolated.
    return over_radius[::-1], 1 / np.append(share[1:], 1.0)[::-1]


def plastic_load_share(eccentricity_over_radius):
    """Return what is left of the load at full yield of a round face when it is off the middle.

    With the neutral axis at k R: n = 1 - 2/pi (acos k - k sqrt(1 - k^2)) and e/R = 4/(3 pi) (1-k^2)^1.5 / n.

    Parameters
    ----------
    eccentricity_over_radius : float or array
        Distance of the load from the middle over the radius of the face, at least 0 [-]

    Returns
    -------
    float or array
        Share of the load on the middle, 1 at no offset [-]

    Raises
    ------
    ValueError
        If the eccentricity is below 0.

    Notes
    -----
    Source: strength_of_materials, stress block of the circle; far off the middle it is 4 / (3 pi) R / e.

    Examples
    --------
    >>> round(plastic_load_share(0.5), 3)
    0.58
    """
    ratio = require_at_least("eccentricity over radius", eccentricity_over_radius, 0, unit="")
    ratio = np.asarray(ratio)
    eccentricities, inverses = _plastic_table()
    near = 1 / np.interp(ratio, eccentricities, inverses)
    far = 4 / (3 * np.pi) / np.maximum(ratio, 1)
    return plain(np.where(ratio > eccentricities[-1], far, near))


def pull_eccentricity_mm(*, eccentricity_mm, tilt_deg, lever_mm):
    """Return how far off the middle of the weld a pull acts, e + L tan(tilt).

    Parameters
    ----------
    eccentricity_mm : float or array
        Distance of the stud's axis from the middle of the weld, at least 0 [mm]
    tilt_deg : float or array
        Angle between pull and stud axis, 0 to 45 degrees [deg]
    lever_mm : float or array
        Height above the weld at which the pull acts, at least 0 [mm]

    Returns
    -------
    float or array
        Distance, in the common shape [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: strength_of_materials, N = F cos, V = F sin, M = V L + N e.

    Examples
    --------
    >>> round(pull_eccentricity_mm(eccentricity_mm=0, tilt_deg=5, lever_mm=20), 2)
    1.75
    """
    eccentricity = require_at_least("eccentricity", eccentricity_mm, 0, unit="mm")
    tilt = require_between("tilt", tilt_deg, 0, 45, unit="deg")
    lever = require_at_least("lever", lever_mm, 0, unit="mm")
    return plain(eccentricity + lever * np.tan(np.radians(tilt)))


def edge_over_mean(*, eccentricity_mm, kern_mm):
    """Return how many times the mean stress the nearer edge bears, 1 + e/k.

    Parameters
    ----------
    eccentricity_mm : float or array
        Distance e of the pull from the middle, at least 0 [mm]
    kern_mm : float or array
        How far off the pull may act before the far edge is pressed: d/8 for a round, a/6 for a square [mm]

    Returns
    -------
    float or array
        Stress of the nearer edge over the mean stress [-]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: strength_of_materials, bending with normal force.

    Examples
    --------
    >>> edge_over_mean(eccentricity_mm=0.5, kern_mm=0.625)
    1.8
    """
    off = require_at_least("eccentricity", eccentricity_mm, 0, unit="mm")
    return plain(1 + off / np.asarray(require_above("kern", kern_mm, 0, unit="mm")))


def edge_stresses_mpa(*, force_n, diameter_mm, eccentricity_mm=0.0, tilt_deg=0.0, lever_mm=0.0):
    """Return the stresses at the two edges of a round face, sigma = N/A (1 +- 8 e/d).

    Parameters
    ----------
    force_n : float or array
        Pull F, at least 0 [N]
    diameter_mm : float or array
        Diameter d of the face, above 0 [mm]
    eccentricity_mm : float or array
        Distance of the stud's axis from the middle of the face, at least 0 [mm]
    tilt_deg : float or array
        Angle between pull and stud axis, 0 to 45 degrees [deg]
    lever_mm : float or array
        Height above the face at which the pull acts, at least 0 [mm]

    Returns
    -------
    near_mpa : float or array
        Tension at the edge that the pull is nearer to [MPa]
    far_mpa : float or array
        Stress at the other edge; below 0, pressed, where the pull lies outside the kern [MPa]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: strength_of_materials, bending with normal force.

    Examples
    --------
    >>> near, far = edge_stresses_mpa(force_n=3000, diameter_mm=5, eccentricity_mm=0.5)
    >>> round(near, 1), round(far, 1)
    (275.0, 30.6)
    """
    force = require_at_least("force", force_n, 0, unit="N")
    diameter = require_above("diameter", diameter_mm, 0, unit="mm")
    off = pull_eccentricity_mm(eccentricity_mm=eccentricity_mm, tilt_deg=tilt_deg, lever_mm=lever_mm)
    normal = force * np.cos(np.radians(tilt_deg)) / (np.pi / 4 * diameter**2)
    near = edge_over_mean(eccentricity_mm=off, kern_mm=kern_radius_mm(diameter))
    return plain(normal * near), plain(normal * (2 - near))


def elastic_limit_n(*, diameter_mm, strength_mpa, eccentricity_mm=0.0, tilt_deg=0.0, lever_mm=0.0):
    """Return the pull at which the worst edge of a round face reaches its strength.

    F = A R / sqrt((cos (1 + 8 e/d))^2 + 3 sin^2): normal stress and mean shear after von Mises.

    Parameters
    ----------
    diameter_mm : float or array
        Diameter d of the face, above 0 [mm]
    strength_mpa : float or array
        Strength R, above 0 [MPa]
    eccentricity_mm : float or array
        Distance of the stud's axis from the middle of the face, at least 0 [mm]
    tilt_deg : float or array
        Angle between pull and stud axis, 0 to 45 degrees [deg]
    lever_mm : float or array
        Height above the face at which the pull acts, at least 0 [mm]

    Returns
    -------
    float or array
        Pull, in the common shape [N]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    What a brittle face bears. Source: strength_of_materials.

    Examples
    --------
    >>> round(elastic_limit_n(diameter_mm=6, strength_mpa=500, eccentricity_mm=0.75))
    7069
    """
    off = pull_eccentricity_mm(eccentricity_mm=eccentricity_mm, tilt_deg=tilt_deg, lever_mm=lever_mm)
    whole = _whole_n(diameter_mm, strength_mpa)
    return _askew_n(whole, elastic_load_share(off / np.asarray(diameter_mm, dtype=float)), tilt_deg)


def plastic_limit_n(*, diameter_mm, strength_mpa, eccentricity_mm=0.0, tilt_deg=0.0, lever_mm=0.0):
    """Return the pull at which all of a round face yields.

    F = A R / sqrt((cos / n)^2 + 3 sin^2) with n of ``plastic_load_share``: the shear, even over the face,
    lowers the stress left for pull and bending after von Mises.

    Parameters
    ----------
    diameter_mm : float or array
        Diameter d of the face, above 0 [mm]
    strength_mpa : float or array
        Strength R, above 0 [MPa]
    eccentricity_mm : float or array
        Distance of the stud's axis from the middle of the face, at least 0 [mm]
    tilt_deg : float or array
        Angle between pull and stud axis, 0 to 45 degrees [deg]
    lever_mm : float or array
        Height above the face at which the pull acts, at least 0 [mm]

    Returns
    -------
    float or array
        Pull, in the common shape [N]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    What a ductile face bears. Source: strength_of_materials.

    Examples
    --------
    >>> round(plastic_limit_n(diameter_mm=6, strength_mpa=500, eccentricity_mm=0.75))
    10736
    """
    off = pull_eccentricity_mm(eccentricity_mm=eccentricity_mm, tilt_deg=tilt_deg, lever_mm=lever_mm)
    whole = _whole_n(diameter_mm, strength_mpa)
    return _askew_n(whole, plastic_load_share(2 * off / np.asarray(diameter_mm, dtype=float)), tilt_deg)


def _whole_n(diameter_mm, strength_mpa):
    """Return what a round face bears when pulled along its middle."""
    diameter = require_above("diameter", diameter_mm, 0, unit="mm")
    return np.pi / 4 * diameter**2 * require_above("strength", strength_mpa, 0, unit="MPa")


def _askew_n(whole_n, share, tilt_deg):
    """Bring shear in: (F cos / n)^2 + 3 (F sin)^2 = (A R)^2."""
    angle = np.radians(tilt_deg)
    return plain(whole_n / np.sqrt((np.cos(angle) / share) ** 2 + 3 * np.sin(angle) ** 2))
