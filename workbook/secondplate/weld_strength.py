"""What a welded stud bears when the load is off its middle or askew, and which part gives first.

Elastic limit by Navier, plastic limit by the stress block of a round face. Areas are in ``weld_sections``. It
leaves out notches, hydrogen and fatigue; the strength of the weld metal is known only as a band.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_at_least


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


def _plastic_table():
    """Tabulate the plastic share over the eccentricity by the place of the neutral axis, both exact."""
    half = np.linspace(np.pi / 2, 0.0, 20001)[:-1]  # neutral axis from the middle outward to the rim
    k = np.cos(half)
    share = 1 - 2 / np.pi * (half - k * np.sin(half))
    over_radius = np.append(4 / (3 * np.pi) * np.sin(half[1:]) ** 3 / share[1:], 0.0)
    return over_radius[::-1], np.append(share[1:], 1.0)[::-1]


_PLASTIC_ECCENTRICITIES, _PLASTIC_SHARES = _plastic_table()


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
    near = np.interp(ratio, _PLASTIC_ECCENTRICITIES, _PLASTIC_SHARES)
    last = _PLASTIC_ECCENTRICITIES[-1]
    far = _PLASTIC_SHARES[-1] * last / np.maximum(ratio, last)
    return plain(np.where(ratio > last, far, near))
