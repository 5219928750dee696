"""Where a name has most room within its own area of a plane. It does not draw."""

import numpy as np


def roomiest(holds, *, across, up, half, taken=(), margin=(0.0, 0.0), more=(3.0, 2.0, 1.5, 1.2, 1.0)):
    """Return the place in the middle of where a box has most room, or None.

    Parameters
    ----------
    holds : callable
        Takes arrays of places, returns where they lie in the area of the name [-]
    across : tuple of float
        Ends of the plane across [-]
    up : tuple of float
        Ends of the plane upwards [-]
    half : tuple of float
        Half the width and half the height of the box, in the units of the plane [-]
    taken : sequence of tuple of float
        Places that the box must keep clear of [-]
    margin : tuple of float
        How far it keeps clear of them, across and up [-]
    more : sequence of float
        How much more room is asked for, from much down to just the box [-]

    Returns
    -------
    place : tuple of float or None
        Middle of the box [-]
    """
    x, y = (grid.ravel() for grid in np.meshgrid(np.linspace(*across, 61), np.linspace(*up, 61)))
    free = np.ones(len(x), dtype=bool)
    for a, b in taken:
        free &= (np.abs(x - a) > half[0] + margin[0]) | (np.abs(y - b) > half[1] + margin[1])
    free &= holds(x, y)
    x, y = x[free], y[free]
    for size in more:
        fits = np.ones(len(x), dtype=bool)
        for a, b in ((-1, -1), (-1, 1), (1, -1), (1, 1)):
            p, q = x + a * size * half[0], y + b * size * half[1]
            fits &= (p > across[0]) & (p < across[1]) & (q > up[0]) & (q < up[1]) & holds(p, q)
        if fits.any():
            x, y = x[fits], y[fits]
            wide, high = across[1] - across[0], up[1] - up[0]
            best = np.argmin(np.hypot((x - x.mean()) / wide, (y - y.mean()) / high))
            return x[best], y[best]
    return None
