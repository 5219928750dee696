"""How a load divides between unlike fasteners side by side: flexibility, shares, and what play does.

Elastic only. The two formulas for the flexibility are from memory and stand side by side.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_choice
from secondplate.fasteners_kinds import FASTENER_RULES

FASTENED = tuple(name.removeprefix("factor ") for name in FASTENER_RULES if name.startswith("factor "))


def _sizes(thicknesses_mm, diameter_mm, plate_moduli_mpa, fastener_modulus_mpa):
    """Return the checked sizes and moduli of a joint of two plates."""
    t1, t2 = (np.asarray(require_above("sheet thickness", t, 0, unit="mm")) for t in thicknesses_mm)
    e1, e2 = (np.asarray(require_above("modulus of a plate", e, 0, unit="MPa")) for e in plate_moduli_mpa)
    diameter = np.asarray(require_above("diameter of the fastener", diameter_mm, 0, unit="mm"))
    modulus = np.asarray(require_above("modulus of the fastener", fastener_modulus_mpa, 0, unit="MPa"))
    return t1, t2, e1, e2, diameter, modulus


def flexibility_mm_n(
    thicknesses_mm, *, diameter_mm, plate_moduli_mpa, fastener_modulus_mpa, fastened="riveted metal", planes=1
):
    """Return how far a joint gives by newton, by the formula for riveted or bolted plates.

    C = ((t1 + t2)/(2 d))^a (b/n) (1/(t1 E1) + 1/(n t2 E2) + 1/(2 t1 Ef) + 1/(2 n t2 Ef)).

    Parameters
    ----------
    thicknesses_mm : pair of (float or array)
        Thicknesses t1 and t2 of the plates, above 0 [mm]
    diameter_mm : float or array
        Diameter d of the fastener, above 0 [mm]
    plate_moduli_mpa : pair of (float or array)
        Elastic moduli E1 and E2 of the plates, above 0 [MPa]
    fastener_modulus_mpa : float or array
        Elastic modulus Ef of the fastener, above 0 [MPa]
    fastened : str
        One of ``FASTENED``: a 0.4 and b 2.2 riveted, 2/3 and 3.0 bolted [-]
    planes : int
        Shear planes n, at least 1 [-]

    Returns
    -------
    float or numpy.ndarray
        Flexibility C [mm/N]

    Raises
    ------
    ValueError
        If a value lies outside its range or the name is unknown.

    Notes
    -----
    Source: fastener_flexibility, from memory.

    Examples
    --------
    >>> c = flexibility_mm_n((1.5, 2.0), diameter_mm=4.8, plate_moduli_mpa=(70000, 70000),
    ...                      fastener_modulus_mpa=70000)
    >>> round(1 / c)
    27222
    """
    require_choice("way of fastening", fastened, FASTENED)
    number = require_at_least("shear planes", planes, 1, unit="")
    sizes = _sizes(thicknesses_mm, diameter_mm, plate_moduli_mpa, fastener_modulus_mpa)
    t1, t2, e1, e2, diameter, modulus = sizes
    power, factor = FASTENER_RULES[f"exponent {fastened}"], FASTENER_RULES[f"factor {fastened}"]
    parts = 1 / (t1 * e1) + 1 / (number * t2 * e2) + 1 / (2 * t1 * modulus) + 1 / (2 * number * t2 * modulus)
    return plain(((t1 + t2) / (2 * diameter)) ** power * factor / number * parts)


def simple_flexibility_mm_n(thicknesses_mm, *, diameter_mm, plate_moduli_mpa, fastener_modulus_mpa):
    """Return how far a joint gives by newton, by the simpler formula.

    C = 5/(d Ef) + 0.8 (1/(t1 E1) + 1/(t2 E2)).

    Parameters
    ----------
    thicknesses_mm : pair of (float or array)
        Thicknesses t1 and t2 of the plates, above 0 [mm]
    diameter_mm : float or array
        Diameter d of the fastener, above 0 [mm]
    plate_moduli_mpa : pair of (float or array)
        Elastic moduli E1 and E2 of the plates, above 0 [MPa]
    fastener_modulus_mpa : float or array
        Elastic modulus Ef of the fastener, above 0 [MPa]

    Returns
    -------
    float or numpy.ndarray
        Flexibility C [mm/N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: fastener_flexibility, second formula beside it, from memory.

    Examples
    --------
    >>> round(1 / simple_flexibility_mm_n((1.5, 2.0), diameter_mm=4.8, plate_moduli_mpa=(70000, 70000),
    ...                                   fastener_modulus_mpa=70000))
    35443
    """
    sizes = _sizes(thicknesses_mm, diameter_mm, plate_moduli_mpa, fastener_modulus_mpa)
    t1, t2, e1, e2, diameter, modulus = sizes
    shank, plates = FASTENER_RULES["second formula shank"], FASTENER_RULES["second formula plates"]
    return plain(shank / (diameter * modulus) + plates * (1 / (t1 * e1) + 1 / (t2 * e2)))


def fastener_loads_n(force_n, *, stiffnesses_n_mm, plays_mm=0.0):
    """Return the load of each of several fasteners between two stiff plates that slip as one.

    A fastener with play takes nothing until the plates have slipped that far: F = sum k max(s - play, 0).

    Parameters
    ----------
    force_n : float
        Load on all together, at least 0 [N]
    stiffnesses_n_mm : array
        Stiffness k of each fastener, above 0 [N/mm]
    plays_mm : float or array
        Play of each in its hole before it bears, at least 0 [mm]

    Returns
    -------
    numpy.ndarray
        Load of each fastener [N]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: strength_of_materials, springs side by side.

    Examples
    --------
    >>> import numpy as np
    >>> np.round(fastener_loads_n(1000, stiffnesses_n_mm=[27222, 38979])).tolist()
    [411.0, 589.0]
    """
    force = require_at_least("load", force_n, 0, unit="N")
    stiffness = np.atleast_1d(require_above("stiffness", np.asarray(stiffnesses_n_mm), 0, unit="N/mm"))
    plays = np.atleast_1d(require_at_least("play", np.asarray(plays_mm), 0, unit="mm"))
    stiffness, plays = np.broadcast_arrays(stiffness, plays)
    order = np.argsort(plays, kind="stable")
    bearing, closed = np.cumsum(stiffness[order]), np.cumsum((stiffness * plays)[order])
    # The slip with the first m fasteners bearing; it is right where the next one has not yet closed its play.
    slips = (force + closed) / bearing
    nexts = np.append(plays[order][1:], np.inf)
    slip = slips[np.argmax(slips <= nexts)]
    return stiffness * np.maximum(slip - plays, 0.0)
