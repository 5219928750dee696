"""Paths of points that half outlines are joined from, for many joints and both sides at once.

A path is a pair of arrays, radii and heights, of shape (joints, 2 sides, points).
"""

import numpy as np


def run(start, stop, count, *, power=1.0, ends="both"):
    """Space heights or radii between two columns, denser near the first for a power above 1.

    Parameters
    ----------
    start : numpy.ndarray
        Where to begin, of shape (joints, sides) [mm]
    stop : numpy.ndarray
        Where to end [mm]
    count : int
        How many points, both ends counted [-]
    power : float
        1 for even spacing [-]
    ends : str
        ``both``, or ``after`` to leave out the first point [-]

    Returns
    -------
    numpy.ndarray
        Points, of shape (joints, sides, points) [mm]

    Examples
    --------
    >>> import numpy as np
    >>> run(np.zeros((1, 2)), np.ones((1, 2)), 3)[0, 0].tolist()
    [0.0, 0.5, 1.0]
    """
    share = np.linspace(0.0, 1.0, count) ** power
    share = share[1:] if ends == "after" else share
    start, stop = np.broadcast_arrays(start, stop)
    return start[..., None] * (1 - share) + stop[..., None] * share


def join(*paths):
    """Join paths into one.

    Parameters
    ----------
    *paths : tuple of numpy.ndarray
        Paths in order [mm]

    Returns
    -------
    tuple of numpy.ndarray
        The path [mm]

    Examples
    --------
    >>> import numpy as np
    >>> one = np.zeros((1, 2, 1)), np.ones((1, 2, 1))
    >>> join(one, one)[1].shape
    (1, 2, 2)
    """
    radii, heights = zip(*paths, strict=True)
    return np.concatenate(radii, axis=-1), np.concatenate(heights, axis=-1)


def back(path):
    """Turn a path round.

    Parameters
    ----------
    path : tuple of numpy.ndarray
        A path [mm]

    Returns
    -------
    tuple of numpy.ndarray
        The path from its end to its start [mm]

    Examples
    --------
    >>> import numpy as np
    >>> back((np.array([1, 2]), np.array([3, 4])))[1].tolist()
    [4, 3]
    """
    return tuple(values[..., ::-1] for values in path)


def cut(path, first=None, last=None):
    """Take a part of a path.

    Parameters
    ----------
    path : tuple of numpy.ndarray
        A path [mm]
    first : int or None
        Index of the first point, as in a slice [-]
    last : int or None
        Index behind the last point [-]

    Returns
    -------
    tuple of numpy.ndarray
        The part [mm]

    Examples
    --------
    >>> import numpy as np
    >>> cut((np.array([1, 2, 3]), np.array([4, 5, 6])), 1)[0].tolist()
    [2, 3]
    """
    return tuple(values[..., first:last] for values in path)


def points(*pairs):
    """Make a path of single points.

    Parameters
    ----------
    *pairs : tuple of numpy.ndarray
        Radius and height of each point, of shape (joints, sides) [mm]

    Returns
    -------
    tuple of numpy.ndarray
        The path [mm]

    Examples
    --------
    >>> import numpy as np
    >>> points((np.zeros((1, 2)), np.ones((1, 2))))[0].shape
    (1, 2, 1)
    """
    return tuple(np.stack(np.broadcast_arrays(*values), axis=-1) for values in zip(*pairs, strict=True))


def both(column):
    """Give both sides the same column.

    Parameters
    ----------
    column : numpy.ndarray
        Values, one a joint, in any unit [-]

    Returns
    -------
    numpy.ndarray
        The same, of shape (joints, 2) [-]

    Examples
    --------
    >>> import numpy as np
    >>> both(np.array([1.0]))[0].tolist()
    [1.0, 1.0]
    """
    return np.repeat(np.asarray(column, dtype=float)[:, None], 2, axis=1)


def sides(columns, stem):
    """Lay the left and the right column of a parameter side by side.

    Parameters
    ----------
    columns : dict of str to numpy.ndarray
        Parameters by name [-]
    stem : str
        Name without its side [-]

    Returns
    -------
    numpy.ndarray
        Values of shape (joints, 2), left first [mm]

    Examples
    --------
    >>> import numpy as np
    >>> sides({"crack_left_mm": np.zeros(1), "crack_right_mm": np.ones(1)}, "crack")[0].tolist()
    [0.0, 1.0]
    """
    return np.stack([columns[f"{stem}_left_mm"], columns[f"{stem}_right_mm"]], axis=-1)
