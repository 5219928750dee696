"""Time in which a weld cools from 800 to 500 C, which decides how hard steel becomes.

Properties are constants, and the heat of melting and of the change of structure is left out.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_between

_FROM_C, _TO_C = 800.0, 500.0  # the two temperatures that give the time its name
_COLDEST_C, _WARMEST_C = -50.0, 450.0  # start: a frosty shop up to the hottest preheat, well under 500 C


def _falls(start_c, power):
    """Return 1/(500 - T0)^power - 1/(800 - T0)^power."""
    start_c = require_between("start", start_c, _COLDEST_C, _WARMEST_C, unit="C")
    return (_TO_C - start_c) ** -power - (_FROM_C - start_c) ** -power


def plane_cooling_time_s(heat_per_area_j_mm2, *, metal, start_c=20.0):
    """Return the time from 800 to 500 C at a face that took heat all at once.

    t = Q''^2 / (pi k rho c) (1/(500 - T0)^2 - 1/(800 - T0)^2).

    Parameters
    ----------
    heat_per_area_j_mm2 : float or array
        Heat Q'' into the face by its area, above 0 [J/mm2]
    metal : ConstantMetal
        The body, a half-space [-]
    start_c : float or array
        Temperature T0 before the weld, -50 to 450 C [C]

    Returns
    -------
    float or array
        Cooling time, in the common shape [s]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    It holds while heat flows straight in, so for times well under the square of the face's radius over four
    diffusivities; then the sides help and the time is shorter.
    Source: carslaw_jaeger section 10.3 solved for the two times, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(plane_cooling_time_s(5, metal=steel), 3)
    0.14
    """
    heat = require_above("heat by area", heat_per_area_j_mm2, 0, unit="J/mm2")
    by_metal = np.pi * metal.conductivity_w_mmk * metal.heat_by_volume_j_mm3k
    return plain(heat**2 / by_metal * _falls(start_c, 2))


def point_cooling_time_s(heat_j, *, metal, start_c=20.0):
    """Return the time from 800 to 500 C at a point on a half-space that took heat all at once.

    t = (2 Q / (rho c))^(2/3) / (4 pi alpha) (1/(500 - T0)^(2/3) - 1/(800 - T0)^(2/3)).

    Parameters
    ----------
    heat_j : float or array
        Heat Q, above 0 [J]
    metal : ConstantMetal
        The body, a half-space [-]
    start_c : float or array
        Temperature T0 before the weld, -50 to 450 C [C]

    Returns
    -------
    float or array
        Cooling time, in the common shape [s]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: carslaw_jaeger section 10.2 solved for the two times, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> steel = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
    >>> round(point_cooling_time_s(480, metal=steel), 4)
    0.2004
    """
    heat = require_above("heat", heat_j, 0, unit="J")
    by_metal = (2 * heat / metal.heat_by_volume_j_mm3k) ** (2 / 3) / (4 * np.pi * metal.diffusivity_mm2_s)
    return plain(by_metal * _falls(start_c, 2 / 3))


def thick_plate_cooling_time_s(heat_input_kj_mm, *, metal, start_c=20.0):
    """Return the time from 800 to 500 C of a seam on a thick plate, heat flowing in three directions.

    t = Q / (2 pi k) (1/(500 - T0) - 1/(800 - T0)).

    Parameters
    ----------
    heat_input_kj_mm : float or array
        Heat Q that the seam gets by its length, above 0 [kJ/mm]
    metal : ConstantMetal
        The plate, thicker than ``transition_thickness_mm`` [-]
    start_c : float or array
        Temperature T0 before the weld, -50 to 450 C [C]

    Returns
    -------
    float or array
        Cooling time, in the common shape [s]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    A stud weld is no seam: the form stands here to check the standard's.
    Source: rosenthal_1946 thick plate, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> plate = ConstantMetal(conductivity_w_mk=40, density_kg_m3=8000, heat_capacity_j_kgk=500)
    >>> round(thick_plate_cooling_time_s(0.6, metal=plate), 3)
    1.913
    """
    heat_j_mm = require_above("heat input", heat_input_kj_mm, 0, unit="kJ/mm") * 1000
    return plain(heat_j_mm / (2 * np.pi * metal.conductivity_w_mmk) * _falls(start_c, 1))


def thin_plate_cooling_time_s(heat_input_kj_mm, *, thickness_mm, metal, start_c=20.0):
    """Return the time from 800 to 500 C of a seam through a thin plate, heat flowing in two directions.

    t = Q^2 / (4 pi k rho c h^2) (1/(500 - T0)^2 - 1/(800 - T0)^2).

    Parameters
    ----------
    heat_input_kj_mm : float or array
        Heat Q that the seam gets by its length, above 0 [kJ/mm]
    thickness_mm : float or array
        Thickness h of the plate, above 0, thinner than ``transition_thickness_mm`` [mm]
    metal : ConstantMetal
        The plate [-]
    start_c : float or array
        Temperature T0 before the weld, -50 to 450 C [C]

    Returns
    -------
    float or array
        Cooling time, in the common shape [s]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: rosenthal_1946 thin plate, from memory.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> plate = ConstantMetal(conductivity_w_mk=40, density_kg_m3=8000, heat_capacity_j_kgk=500)
    >>> round(thin_plate_cooling_time_s(0.6, thickness_mm=3, metal=plate), 2)
    53.65
    """
    heat_j_mm = require_above("heat input", heat_input_kj_mm, 0, unit="kJ/mm") * 1000
    by_area = heat_j_mm / require_above("thickness", thickness_mm, 0, unit="mm")
    by_metal = 4 * np.pi * metal.conductivity_w_mmk * metal.heat_by_volume_j_mm3k
    return plain(by_area**2 / by_metal * _falls(start_c, 2))


def transition_thickness_mm(heat_input_kj_mm, *, metal, start_c=20.0):
    """Return the thickness at which the thick and the thin plate give the same cooling time.

    h = sqrt(Q / (2 rho c) (1/(500 - T0) + 1/(800 - T0))).

    Parameters
    ----------
    heat_input_kj_mm : float or array
        Heat Q that the seam gets by its length, above 0 [kJ/mm]
    metal : ConstantMetal
        The plate [-]
    start_c : float or array
        Temperature T0 before the weld, -50 to 450 C [C]

    Returns
    -------
    float or array
        Thickness, in the common shape [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: rosenthal_1946, both forms made equal.

    Examples
    --------
    >>> from secondplate.heat.constant_metal import ConstantMetal
    >>> plate = ConstantMetal(conductivity_w_mk=40, density_kg_m3=8000, heat_capacity_j_kgk=500)
    >>> round(transition_thickness_mm(0.6, metal=plate), 2)
    15.89
    """
    heat_j_mm = require_above("heat input", heat_input_kj_mm, 0, unit="kJ/mm") * 1000
    start_c = require_between("start", start_c, _COLDEST_C, _WARMEST_C, unit="C")
    both = 1 / (_TO_C - start_c) + 1 / (_FROM_C - start_c)
    return plain(np.sqrt(heat_j_mm / (2 * metal.heat_by_volume_j_mm3k) * both))


def standard_thick_cooling_time_s(heat_input_kj_mm, *, start_c=20.0, seam_factor=1.0):
    """Return the cooling time of a seam on thick low-alloy steel as the standard for arc welding reckons it.

    t = (6700 - 5 T0) Q (1/(500 - T0) - 1/(800 - T0)) F3.

    Parameters
    ----------
    heat_input_kj_mm : float or array
        Heat input Q with the arc's efficiency in it, 0.1 to 10 kJ/mm [kJ/mm]
    start_c : float or array
        Preheat T0, -50 to 450 C [C]
    seam_factor : float or array
        F3 of the shape of the joint, 1 for a bead on plate, 0.1 to 1.5 [-]

    Returns
    -------
    float or array
        Cooling time, in the common shape [s]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: en_1011_2 annex D.5, from memory.

    Examples
    --------
    >>> round(standard_thick_cooling_time_s(0.6), 3)
    3.173
    """
    heat = require_between("heat input", heat_input_kj_mm, 0.1, 10, unit="kJ/mm")
    factor = require_between("seam factor", seam_factor, 0.1, 1.5, unit="")
    return plain((6700 - 5 * plain(start_c)) * heat * _falls(start_c, 1) * factor)


def standard_thin_cooling_time_s(heat_input_kj_mm, *, thickness_mm, start_c=20.0, seam_factor=1.0):
    """Return the cooling time of a seam on thin low-alloy steel as the standard for arc welding reckons it.

    t = (4300 - 4.3 T0) 1e5 Q^2/d^2 (1/(500 - T0)^2 - 1/(800 - T0)^2) F2.

    Parameters
    ----------
    heat_input_kj_mm : float or array
        Heat input Q with the arc's efficiency in it, 0.1 to 10 kJ/mm [kJ/mm]
    thickness_mm : float or array
        Thickness d of the plate, above 0 [mm]
    start_c : float or array
        Preheat T0, -50 to 450 C [C]
    seam_factor : float or array
        F2 of the shape of the joint, 1 for a bead on plate, 0.1 to 1.5 [-]

    Returns
    -------
    float or array
        Cooling time, in the common shape [s]

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Source: en_1011_2 annex D.5, from memory.

    Examples
    --------
    >>> round(standard_thin_cooling_time_s(0.6, thickness_mm=3), 2)
    45.45
    """
    heat = require_between("heat input", heat_input_kj_mm, 0.1, 10, unit="kJ/mm")
    by_thickness = heat / require_above("thickness", thickness_mm, 0, unit="mm")
    factor = require_between("seam factor", seam_factor, 0.1, 1.5, unit="")
    return plain((4300 - 4.3 * plain(start_c)) * 1e5 * by_thickness**2 * _falls(start_c, 2) * factor)
