"""Volumes of outlines turned about the rivet's axis.

An outline lies in the plane of the axis; its right half is turned through half a turn and its left half too,
so that a joint whose sides differ still has one volume. Leaves out everything that is not round in plan.
"""

import numpy as np

from secondplate.arrays import plain


def revolved_volume_mm3(outline):
    """Return the volume of an outline turned about the axis x = 0, each side through half a turn.

    V = pi times the integral of abs(x) over the area, by the edges exactly: an edge from (x1, y1) to (x2, y2)
    adds pi/2 (y2 - y1) times the mean of x abs(x) on it.

    Parameters
    ----------
    outline : numpy.ndarray
        Corners in order, either way round, of shape (..., corners, 2) [mm]

    Returns
    -------
    float or numpy.ndarray
        Volume, of the leading shape of the outline [mm3]

    Notes
    -----
    Source: plane_geometry, theorem of Pappus for each edge's strip.

    Examples
    --------
    >>> import numpy as np
    >>> cylinder = np.array([[-1, 0], [1, 0], [1, 2], [-1, 2]])
    >>> round(revolved_volume_mm3(cylinder) / np.pi, 12)
    2.0
    """
    x, y = outline[..., 0], outline[..., 1]
    mean = _mean_of_square(x, np.roll(x, -1, axis=-1))
    return plain(np.abs(np.pi / 2 * np.sum(mean * (np.roll(y, -1, axis=-1) - y), axis=-1)))


def _mean_of_square(first, last):
    """Return the mean of x abs(x) for x running evenly from one value to another."""
    same = (first * first + first * last + last * last) / 3
    across = first * last < 0
    step = np.where(across, last - first, 1.0)
    crossing = (np.abs(last) ** 3 - np.abs(first) ** 3) / (3 * step)
    return np.where(across, crossing, np.where(first + last < 0, -same, same))


def half_volume_mm3(radius_mm, height_mm):
    """Return the signed volume of a half outline turned fully round: V = pi times the sum of r^2 dz.

    Parameters
    ----------
    radius_mm : numpy.ndarray
        Radii of the corners in order, counter-clockwise for a positive volume, of shape (..., corners) [mm]
    height_mm : numpy.ndarray
        Heights of the corners, of the same shape [mm]

    Returns
    -------
    float or numpy.ndarray
        Volume, of the leading shape [mm3]

    Notes
    -----
    Source: plane_geometry, theorem of Pappus; exact for straight edges.

    Examples
    --------
    >>> import numpy as np
    >>> round(half_volume_mm3(np.array([0, 1, 1, 0]), np.array([0, 0, 2, 2])) / np.pi, 12)
    2.0
    """
    first, last = radius_mm[..., :-1], radius_mm[..., 1:]
    along = np.sum((first * (first + last) + last * last) * np.diff(height_mm, axis=-1), axis=-1)
    first, last = radius_mm[..., -1], radius_mm[..., 0]
    closing = (first * (first + last) + last * last) * (height_mm[..., 0] - height_mm[..., -1])
    return plain(np.pi / 3 * (along + closing))
