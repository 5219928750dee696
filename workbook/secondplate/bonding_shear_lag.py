"""Shear of the adhesive in a single lap that does not bend (Volkersen): along the overlap, and its peak.

Peel, plastic adhesive and the bending of the lap are left out; ``bonding_bending`` has the last.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_between

# Beyond it the cosh of the formula leaves the range of a float.
_LONGEST = 1400.0


def _lap(stiffnesses, adhesive_modulus_mpa, adhesive_mm, overlap_mm):
    """Return the checked stiffness by width of both plates, w and the overlap."""
    first, second = (
        np.asarray(require_above("stiffness of a plate", s, 0, unit="N/mm")) for s in stiffnesses
    )
    shear = np.asarray(require_above("shear modulus of the adhesive", adhesive_modulus_mpa, 0, unit="MPa"))
    layer = np.asarray(require_above("adhesive thickness", adhesive_mm, 0, unit="mm"))
    overlap = np.asarray(require_above("overlap", overlap_mm, 0, unit="mm"))
    wave = np.sqrt(shear / layer * (1 / first + 1 / second))
    require_between("overlap in lengths of load transfer", plain(wave * overlap), 0, _LONGEST, unit="")
    return first, second, wave, overlap


def transfer_rate_per_mm(stiffnesses_n_mm, *, adhesive_modulus_mpa, adhesive_mm):
    """Return how fast the load passes from plate to plate: w = sqrt(G/t_a (1/(E1 t1) + 1/(E2 t2))).

    Parameters
    ----------
    stiffnesses_n_mm : pair of (float or array)
        Elastic modulus times thickness E t of each plate, by width, above 0 [N/mm]
    adhesive_modulus_mpa : float or array
        Shear modulus G of the adhesive, above 0 [MPa]
    adhesive_mm : float or array
        Thickness t_a of the adhesive, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Rate w [1/mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: shear_lag_1938.

    Examples
    --------
    >>> round(transfer_rate_per_mm((140000, 140000), adhesive_modulus_mpa=1000, adhesive_mm=0.2), 5)
    0.26726
    """
    return plain(_lap(stiffnesses_n_mm, adhesive_modulus_mpa, adhesive_mm, 1e-3)[2])


def bond_shear_mpa(
    position_mm, *, line_load_n_mm, overlap_mm, stiffnesses_n_mm, adhesive_modulus_mpa, adhesive_mm
):
    """Return the shear along the overlap: tau = P w/2 (cosh(w x)/sinh(w L/2) + r sinh(w x)/cosh(w L/2)).

    r = (E1 t1 - E2 t2)/(E1 t1 + E2 t2); plate 1 is loaded at x = -L/2, plate 2 at x = L/2.

    Parameters
    ----------
    position_mm : float or array
        Place x from the middle of the overlap, -L/2 to L/2 [mm]
    line_load_n_mm : float or array
        Load P by width of the lap, above 0 [N/mm]
    overlap_mm : float or array
        Length L of the overlap, above 0 [mm]
    stiffnesses_n_mm : pair of (float or array)
        Elastic modulus times thickness E t of each plate, by width, above 0 [N/mm]
    adhesive_modulus_mpa : float or array
        Shear modulus G of the adhesive, above 0 [MPa]
    adhesive_mm : float or array
        Thickness t_a of the adhesive, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Shear tau [MPa]

    Raises
    ------
    ValueError
        If a value lies outside its range or the place outside the overlap.

    Notes
    -----
    Source: shear_lag_1938, checked by solving the boundary value problem.

    Examples
    --------
    >>> round(bond_shear_mpa(12.5, line_load_n_mm=100, overlap_mm=25, stiffnesses_n_mm=(140000, 140000),
    ...                      adhesive_modulus_mpa=1000, adhesive_mm=0.2), 4)
    13.3966
    """
    first, second, wave, overlap = _lap(stiffnesses_n_mm, adhesive_modulus_mpa, adhesive_mm, overlap_mm)
    load = np.asarray(require_above("load by width", line_load_n_mm, 0, unit="N/mm"))
    place = np.asarray(position_mm, dtype=float)
    require_between("place over half the overlap", plain(2 * place / overlap), -1, 1, unit="")
    half, uneven = wave * overlap / 2, (first - second) / (first + second)
    shape = np.cosh(wave * place) / np.sinh(half) + uneven * np.sinh(wave * place) / np.cosh(half)
    return plain(load * wave / 2 * shape)


def bond_peak_mpa(*, line_load_n_mm, overlap_mm, stiffnesses_n_mm, adhesive_modulus_mpa, adhesive_mm):
    """Return the greatest shear of the overlap: that at the end where the softer plate is loaded.

    Parameters
    ----------
    line_load_n_mm : float or array
        Load P by width of the lap, above 0 [N/mm]
    overlap_mm : float or array
        Length L of the overlap, above 0 [mm]
    stiffnesses_n_mm : pair of (float or array)
        Elastic modulus times thickness E t of each plate, by width, above 0 [N/mm]
    adhesive_modulus_mpa : float or array
        Shear modulus G of the adhesive, above 0 [MPa]
    adhesive_mm : float or array
        Thickness t_a of the adhesive, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Greatest shear [MPa]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    For equal plates the peak over the mean is (w L/2) coth(w L/2). Source: shear_lag_1938, pin_joint_notes.

    Examples
    --------
    >>> round(bond_peak_mpa(line_load_n_mm=240, overlap_mm=30, stiffnesses_n_mm=(140000, 140000),
    ...                     adhesive_modulus_mpa=800, adhesive_mm=0.1), 1)
    40.6
    """
    lap = {
        "line_load_n_mm": line_load_n_mm,
        "overlap_mm": overlap_mm,
        "stiffnesses_n_mm": stiffnesses_n_mm,
        "adhesive_modulus_mpa": adhesive_modulus_mpa,
        "adhesive_mm": adhesive_mm,
    }
    half = np.asarray(overlap_mm, dtype=float) / 2
    return plain(np.maximum(bond_shear_mpa(-half, **lap), bond_shear_mpa(half, **lap)))


def limit_overlap_mm(stiffnesses_n_mm, *, adhesive_modulus_mpa, adhesive_mm):
    """Return the overlap beyond which more of it bears hardly more: 5/w.

    Parameters
    ----------
    stiffnesses_n_mm : pair of (float or array)
        Elastic modulus times thickness E t of each plate, by width, above 0 [N/mm]
    adhesive_modulus_mpa : float or array
        Shear modulus G of the adhesive, above 0 [MPa]
    adhesive_mm : float or array
        Thickness t_a of the adhesive, above 0 [mm]

    Returns
    -------
    float or numpy.ndarray
        Limit overlap [mm]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    ``5 sqrt(E1 t1 t_a/(G (1 + psi)))``, psi = E1 t1/(E2 t2). Source: pin_joint_notes.

    Examples
    --------
    >>> round(limit_overlap_mm((140000, 140000), adhesive_modulus_mpa=800, adhesive_mm=0.1), 2)
    14.79
    """
    rate = transfer_rate_per_mm(
        stiffnesses_n_mm, adhesive_modulus_mpa=adhesive_modulus_mpa, adhesive_mm=adhesive_mm
    )
    return plain(5 / np.asarray(rate))
