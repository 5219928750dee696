"""Areas and centroids of what is fused under a stud: circle, circular segment, lens of two circles.

Plane geometry, and how far off its middle a face may be loaded; the strengths are in ``weld_strength``.
"""

from functools import cache

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between


@cache
def _segment_tables():
    """Tabulate share, chord and centroid of a segment over half its angle, in radii, fine to 1e-7."""
    half = np.linspace(0.0, np.pi, 20001)
    share = (half - np.sin(half) * np.cos(half)) / np.pi
    area = np.where(share > 0, share, 1.0) * np.pi
    # Below a share of 1e-9 the quotient loses its figures; there the centroid lies on the rim.
    centroid = np.where(share > 1e-9, 2 / 3 * np.sin(half) ** 3 / area, 1.0)
    return share, np.cos(half), centroid


def segment_area_mm2(*, radius_mm, height_mm):
    """Return the area of a circular segment, A = R^2 (a - sin a cos a) with cos a = 1 - h/R.

    Parameters
    ----------
    radius_mm : float or array
        Radius R of the circle, above 0 [mm]
    height_mm : float or array
        Height h of the segment over its chord, 0 to 2 R [mm]

    Returns
    -------
    float or array
        Area, in the common shape [mm2]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: plane_geometry, circular segment.

    Examples
    --------
    >>> round(segment_area_mm2(radius_mm=3, height_mm=3), 3)
    14.137
    """
    radius = require_above("radius", radius_mm, 0, unit="mm")
    height = require_at_least("height", height_mm, 0, unit="mm")
    require_between("height over radius", height / radius, 0, 2, unit="")
    half = np.arccos(1 - height / radius)
    return plain(radius**2 * (half - np.sin(half) * np.cos(half)))


def segment_centroid_mm(*, radius_mm, height_mm):
    """Return how far the centroid of a circular segment lies from the centre, 2 R^3 sin^3 a / (3 A).

    Parameters
    ----------
    radius_mm : float or array
        Radius R of the circle, above 0 [mm]
    height_mm : float or array
        Height h of the segment over its chord, above 0 and at most 2 R [mm]

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
    Source: plane_geometry, circular segment.

    Examples
    --------
    >>> round(segment_centroid_mm(radius_mm=3, height_mm=3), 3)
    1.273
    """
    height = require_above("height", height_mm, 0, unit="mm")
    area = segment_area_mm2(radius_mm=radius_mm, height_mm=height)
    half = np.arccos(1 - height / radius_mm)
    return plain(2 / 3 * radius_mm**3 * np.sin(half) ** 3 / area)


def lens_area_mm2(*, first_radius_mm, second_radius_mm, offset_mm):
    """Return the area that two circles share: the sum of two segments on the common chord.

    Parameters
    ----------
    first_radius_mm : float or array
        Radius of the first circle, above 0 [mm]
    second_radius_mm : float or array
        Radius of the second circle, above 0 [mm]
    offset_mm : float or array
        Distance of the centres, at least 0 [mm]

    Returns
    -------
    float or array
        Shared area, the smaller circle where it lies inside the other, 0 where they do not meet [mm2]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: plane_geometry, lens of two circles.

    Examples
    --------
    >>> round(lens_area_mm2(first_radius_mm=3, second_radius_mm=3, offset_mm=2), 2)
    16.5
    """
    first, second, offset = _checked_circles(first_radius_mm, second_radius_mm, offset_mm)
    return plain(_lens(first, second, offset)[0])


def lens_centroid_mm(*, first_radius_mm, second_radius_mm, offset_mm):
    """Return how far the centroid of the shared area lies from the centre of the first circle.

    Parameters
    ----------
    first_radius_mm : float or array
        Radius of the first circle, above 0 [mm]
    second_radius_mm : float or array
        Radius of the second circle, above 0 [mm]
    offset_mm : float or array
        Distance of the centres, at least 0, less than the sum of the radii [mm]

    Returns
    -------
    float or array
        Distance toward the second centre, in the common shape [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range or the circles do not meet.

    Notes
    -----
    Source: plane_geometry; first moments of the two segments over their area.

    Examples
    --------
    >>> lens_centroid_mm(first_radius_mm=3, second_radius_mm=3, offset_mm=2)
    1.0
    """
    first, second, offset = _checked_circles(first_radius_mm, second_radius_mm, offset_mm)
    area, moment = _lens(first, second, offset)
    require_above("shared area", area, 0, unit="mm2")
    return plain(moment / area)


def _checked_circles(first_radius_mm, second_radius_mm, offset_mm):
    """Refuse what are not two circles."""
    return (
        require_above("first radius", first_radius_mm, 0, unit="mm"),
        require_above("second radius", second_radius_mm, 0, unit="mm"),
        require_at_least("offset", offset_mm, 0, unit="mm"),
    )


def _lens(first, second, offset):
    """Return shared area and its moment about the first centre, for checked numbers."""
    first, second, offset = np.broadcast_arrays(
        np.asarray(first, dtype=float), np.asarray(second, dtype=float), np.asarray(offset, dtype=float)
    )
    inside = offset <= np.abs(first - second)
    apart = offset >= first + second
    # A harmless distance where no chord exists; those places are overwritten below.
    far = np.where(inside | apart, np.maximum(first, second), offset)
    chord = (far**2 + first**2 - second**2) / (2 * far)
    near_half = np.arccos(np.clip(chord / first, -1, 1))
    far_half = np.arccos(np.clip((far - chord) / second, -1, 1))
    near = first**2 * (near_half - np.sin(near_half) * np.cos(near_half))
    distant = second**2 * (far_half - np.sin(far_half) * np.cos(far_half))
    # The near segment lies beyond the chord of the first circle, the distant one before that of the second.
    moment = 2 / 3 * (first * np.sin(near_half)) ** 3
    moment = moment + distant * far - 2 / 3 * (second * np.sin(far_half)) ** 3
    area = near + distant
    smaller = np.pi * np.minimum(first, second) ** 2
    area = np.where(inside, smaller, np.where(apart, 0.0, area))
    whole_moment = np.where(second <= first, smaller * offset, 0.0)
    return area, np.where(inside, whole_moment, np.where(apart, 0.0, moment))


def kern_radius_mm(diameter_mm):
    """Return how far off its middle a round face may be pulled before its far edge is pressed, d/8.

    Parameters
    ----------
    diameter_mm : float or array
        Diameter d of the face, above 0 [mm]

    Returns
    -------
    float or array
        Radius of the kern, in its shape [mm]

    Raises
    ------
    ValueError
        If the diameter is not above 0.

    Notes
    -----
    Source: strength_of_materials, kern of the circle: W / A = (pi d^3/32) / (pi d^2/4).

    Examples
    --------
    >>> kern_radius_mm(6)
    0.75
    """
    return require_above("diameter", diameter_mm, 0, unit="mm") / 8


def section_modulus_mm3(diameter_mm):
    """Return the elastic section modulus of a round face, pi d^3 / 32.

    Parameters
    ----------
    diameter_mm : float or array
        Diameter d, above 0 [mm]

    Returns
    -------
    float or array
        Section modulus, in its shape [mm3]

    Raises
    ------
    ValueError
        If the diameter is not above 0.

    Notes
    -----
    Source: strength_of_materials.

    Examples
    --------
    >>> round(section_modulus_mm3(6), 3)
    21.206
    """
    return np.pi * require_above("diameter", diameter_mm, 0, unit="mm") ** 3 / 32


def plastic_modulus_mm3(diameter_mm):
    """Return the plastic section modulus of a round face, d^3 / 6.

    Parameters
    ----------
    diameter_mm : float or array
        Diameter d, above 0 [mm]

    Returns
    -------
    float or array
        Plastic modulus, in its shape [mm3]

    Raises
    ------
    ValueError
        If the diameter is not above 0.

    Notes
    -----
    Source: strength_of_materials; 16 / (3 pi) times the elastic modulus.

    Examples
    --------
    >>> plastic_modulus_mm3(6)
    36.0
    """
    return require_above("diameter", diameter_mm, 0, unit="mm") ** 3 / 6


def segment_of_share(*, radius_mm, share):
    """Return where the chord and the centroid of a segment of given area lie, from the centre.

    Parameters
    ----------
    radius_mm : float or array
        Radius of the circle, above 0 [mm]
    share : float or array
        Area of the segment over that of the circle, 0 to 1 [-]

    Returns
    -------
    chord_mm : float or array
        Distance of the chord from the centre, below 0 where more than half is left [mm]
    centroid_mm : float or array
        Distance of the centroid from the centre [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: plane_geometry, circular segment, inverted by a table of 20,000 steps.

    Examples
    --------
    >>> chord, centroid = segment_of_share(radius_mm=3, share=0.5)
    >>> round(abs(chord), 6), round(centroid, 3)
    (0.0, 1.273)
    """
    radius = require_above("radius", radius_mm, 0, unit="mm")
    share = require_between("share", share, 0, 1, unit="")
    shares, chords, centroids = _segment_tables()
    return plain(np.interp(share, shares, chords) * radius), plain(
        np.interp(share, shares, centroids) * radius
    )
