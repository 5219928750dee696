"""How the axial force of a clinched joint grows with its sizes: a shape to compare by, never a force.

A clinch has no rivet. The powers were fitted on simulated clinches and stand in for what nobody published of
rivets; they say that more interlock helps less than in proportion, and that both sheets count.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_between
from secondplate.tables import values

_POWERS = values("clinch_shape")


def clinch_axial_ratio(
    *,
    interlock_ratio=1.0,
    neck_ratio=1.0,
    diameter_ratio=1.0,
    top_strength_ratio=1.0,
    second_strength_ratio=1.0,
    top_thickness_ratio=1.0,
    second_thickness_ratio=1.0,
):
    """Compare the axial force of two clinched joints: F/F_0 = product of each ratio to its power.

    Powers: interlock 0.64, neck 0.24, diameter -0.11, strength of top and second sheet 0.32 and 0.33, their
    thickness 0.22 and 0.29.

    Parameters
    ----------
    interlock_ratio : float or array
        Interlock over that of the other joint, 0.25 to 4 [-]
    neck_ratio : float or array
        Neck thickness over that of the other joint, 0.25 to 4 [-]
    diameter_ratio : float or array
        Diameter over that of the other joint, 0.25 to 4 [-]
    top_strength_ratio : float or array
        Tensile strength of the top sheet over the other's, 0.25 to 4 [-]
    second_strength_ratio : float or array
        Tensile strength of the second sheet over the other's, 0.25 to 4 [-]
    top_thickness_ratio : float or array
        Thickness of the top sheet over the other's, 0.25 to 4 [-]
    second_thickness_ratio : float or array
        Thickness of the second sheet over the other's, 0.25 to 4 [-]

    Returns
    -------
    float or numpy.ndarray
        Axial force over that of the other joint [-]

    Raises
    ------
    ValueError
        If a ratio lies outside 0.25 to 4.

    Notes
    -----
    Source: clinch_simulations, fitted here; 20 % in the sample, another kind of joint.

    Examples
    --------
    >>> round(clinch_axial_ratio(interlock_ratio=2.0), 2)
    1.56
    """
    ratios = {
        "interlock": interlock_ratio,
        "neck": neck_ratio,
        "diameter": diameter_ratio,
        "top strength": top_strength_ratio,
        "second strength": second_strength_ratio,
        "top thickness": top_thickness_ratio,
        "second thickness": second_thickness_ratio,
    }
    force = 1.0
    for name, ratio in ratios.items():
        checked = require_between(f"{name} ratio", ratio, 0.25, 4, unit="")
        force = force * np.asarray(checked) ** _POWERS[name]
    return plain(force)
