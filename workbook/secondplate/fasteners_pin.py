"""Areas that hold one pin in a plate by plain mechanics: bearing, net tension, shear-out and cleavage.

It shows where the factors of the codes come from; the codes themselves decide (``eurocode9``).
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above

PIN_MODES = ("bearing", "net tension", "shear-out", "cleavage")


def pin_joint_areas_mm2(*, diameter_mm, thickness_mm, end_distance_mm, width_mm):
    """Return the area of each way in which a plate gives at a pin; times the strength it is the force.

    Bearing d t, net tension (w - d) t, shear-out 2 e t, cleavage 2 (e - d/2) t.

    Parameters
    ----------
    diameter_mm : float or array
        Diameter d of pin and hole, above 0 [mm]
    thickness_mm : float or array
        Thickness t, above 0 [mm]
    end_distance_mm : float or array
        Distance e from the centre to the end along the load, above d/2 [mm]
    width_mm : float or array
        Width w of the plate, above d [mm]

    Returns
    -------
    dict of str to (float or numpy.ndarray)
        Area by mode, one of ``PIN_MODES`` [mm2]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: pin_joint_notes, four failure modes.

    Examples
    --------
    >>> pin_joint_areas_mm2(diameter_mm=8, thickness_mm=4, end_distance_mm=24, width_mm=40)
    {'bearing': 32.0, 'net tension': 128.0, 'shear-out': 192.0, 'cleavage': 160.0}
    """
    diameter = np.asarray(require_above("diameter of the fastener", diameter_mm, 0, unit="mm"))
    thickness = np.asarray(require_above("sheet thickness", thickness_mm, 0, unit="mm"))
    end = np.asarray(require_above("end distance", end_distance_mm, 0, unit="mm"))
    width = np.asarray(require_above("strip width", width_mm, 0, unit="mm"))
    beside = require_above("width left beside the hole", plain(width - diameter), 0, unit="mm")
    before = require_above("plate left before the hole", plain(end - diameter / 2), 0, unit="mm")
    areas = (diameter, beside, 2 * end, 2 * np.asarray(before))
    return {mode: plain(length * thickness) for mode, length in zip(PIN_MODES, areas, strict=True)}
