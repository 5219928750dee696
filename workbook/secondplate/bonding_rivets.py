"""What share of the load rivets carry in a lap that is bonded as well, while the bond holds.

Plates stretch, adhesive shears, each rivet is a spring; the lap does not bend. Once the bond has failed the
rivets carry all: size them for that case alone.
"""

import numpy as np

from secondplate.arrays import plain
from secondplate.bonding_shear_lag import transfer_rate_per_mm
from secondplate.checks import require_above, require_at_least, require_between


def stiff_plate_rivet_share(
    *, rivet_stiffness_n_mm, overlap_mm, width_mm, adhesive_modulus_mpa, adhesive_mm, rivets=1
):
    """Return the share of the load that rivets carry between plates that do not stretch: K/(K + G b L/t_a).

    Parameters
    ----------
    rivet_stiffness_n_mm : float or array
        Stiffness of one rivet, at least 0 [N/mm]
    overlap_mm : float or array
        Length L of the overlap, above 0 [mm]
    width_mm : float or array
        Width b of the lap, above 0 [mm]
    adhesive_modulus_mpa : float or array
        Shear modulus G of the adhesive, above 0 [MPa]
    adhesive_mm : float or array
        Thickness t_a of the adhesive, above 0 [mm]
    rivets : int or array
        Rivets in the lap, at least 0 [-]

    Returns
    -------
    float or numpy.ndarray
        Share of all rivets together [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: strength_of_materials, springs side by side; that a stiff adhesive takes most agrees with
    hybrid_joining_pages.

    Examples
    --------
    >>> share = stiff_plate_rivet_share(rivet_stiffness_n_mm=14000, overlap_mm=25, width_mm=25,
    ...                                 adhesive_modulus_mpa=1000, adhesive_mm=0.2)
    >>> round(100 * share, 2)
    0.45
    """
    rivet = np.asarray(require_at_least("stiffness of a rivet", rivet_stiffness_n_mm, 0, unit="N/mm"))
    number = require_at_least("number of rivets", rivets, 0, unit="")
    overlap = np.asarray(require_above("overlap", overlap_mm, 0, unit="mm"))
    width = np.asarray(require_above("strip width", width_mm, 0, unit="mm"))
    shear = np.asarray(require_above("shear modulus of the adhesive", adhesive_modulus_mpa, 0, unit="MPa"))
    bond = shear * width * overlap / require_above("adhesive thickness", adhesive_mm, 0, unit="mm")
    return plain(rivet * number / (rivet * number + bond))


def rivet_shares(
    position_mm,
    *,
    rivet_stiffness_n_mm,
    overlap_mm,
    width_mm,
    stiffnesses_n_mm,
    adhesive_modulus_mpa,
    adhesive_mm,
):
    """Return the share of the load that each rivet carries where plates stretch: shear lag with springs.

    Between rivets the slip d obeys d'' = w^2 d; at a rivet the load of a plate steps by K d. Plate 1 is
    loaded at x = -L/2, plate 2 at x = L/2.

    Parameters
    ----------
    position_mm : array
        Place x of each rivet from the middle of the overlap, inside it and rising [mm]
    rivet_stiffness_n_mm : float or array
        Stiffness K of each rivet, at least 0 [N/mm]
    overlap_mm : float
        Length L of the overlap, above 0 [mm]
    width_mm : float
        Width b of the lap, above 0 [mm]
    stiffnesses_n_mm : pair of float
        Elastic modulus times thickness E t of each plate, by width, above 0 [N/mm]
    adhesive_modulus_mpa : float
        Shear modulus G of the adhesive, above 0 [MPa]
    adhesive_mm : float
        Thickness t_a of the adhesive, above 0 [mm]

    Returns
    -------
    numpy.ndarray
        Share of each rivet; the adhesive carries the rest [-]

    Raises
    ------
    ValueError
        If a value lies outside its range, a rivet outside the overlap, or the places do not rise.

    Notes
    -----
    Source: shear_lag_1938 with springs, derived; checked with finite elements.

    Examples
    --------
    >>> shares = rivet_shares([0.0], rivet_stiffness_n_mm=14000, overlap_mm=25, width_mm=25,
    ...                       stiffnesses_n_mm=(140000, 140000), adhesive_modulus_mpa=1000, adhesive_mm=0.2)
    >>> round(100 * float(shares[0]), 3)
    0.105
    """
    overlap = require_above("overlap", overlap_mm, 0, unit="mm")
    width = require_above("strip width", width_mm, 0, unit="mm")
    adhesive = {"adhesive_modulus_mpa": adhesive_modulus_mpa, "adhesive_mm": adhesive_mm}
    wave = transfer_rate_per_mm(stiffnesses_n_mm, **adhesive)
    half = overlap / 2
    places = np.atleast_1d(
        require_between("place of a rivet", np.asarray(position_mm), -half, half, unit="mm")
    )
    nodes = np.concatenate([[-half], places, [half]])
    require_above("distance from rivet to rivet or to an end", np.diff(nodes), 0, unit="mm")
    springs = require_at_least("stiffness of a rivet", np.asarray(rivet_stiffness_n_mm), 0, unit="N/mm")
    springs = np.broadcast_to(springs, places.shape) / width
    slip = _slips(wave, nodes, springs, stiffnesses_n_mm)
    return springs * slip[1:-1]


def _slips(wave, nodes, springs, stiffnesses):
    """Return the slip at the ends and rivets under a unit load by width.

    A segment of length l gives d' at its ends by w coth(w l) and w csch(w l) of its slips: an exact element.
    """
    lengths = wave * np.diff(nodes)
    hold, pass_on = wave / np.tanh(lengths), wave / np.sinh(np.minimum(lengths, 700))
    matrix = np.diag(np.append(hold, 0) + np.append(0, hold)) - np.diag(pass_on, 1) - np.diag(pass_on, -1)
    give = 1 / stiffnesses[0] + 1 / stiffnesses[1]
    inner = np.arange(1, len(nodes) - 1)
    matrix[inner, inner] += give * springs
    load = np.zeros(len(nodes))
    load[0], load[-1] = 1 / stiffnesses[0], 1 / stiffnesses[1]
    return np.linalg.solve(matrix, load)
