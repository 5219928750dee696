"""Chromium and nickel equivalents of two constitution diagrams, which must not be mixed."""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_between

# Axes of the diagram: chromium and nickel equivalents in percent.
WRC_1992_CHROMIUM_PERCENT = (17.0, 31.0)
WRC_1992_NICKEL_PERCENT = (9.0, 18.0)


@dataclass(frozen=True, kw_only=True)
class Equivalents:
    """Place of a steel in a constitution diagram.

    Parameters
    ----------
    chromium_equivalent_percent : float or array
        All that makes ferrite, as chromium [%]
    nickel_equivalent_percent : float or array
        All that makes austenite, as nickel [%]

    Examples
    --------
    >>> at = Equivalents(chromium_equivalent_percent=18.0, nickel_equivalent_percent=10.0)
    >>> at.nickel_equivalent_percent
    10.0
    """

    chromium_equivalent_percent: float
    nickel_equivalent_percent: float


def schaeffler_equivalents(composition):
    """Return the equivalents of the Schaeffler diagram.

    Cr_eq = Cr + Mo + 1.5 Si + 0.5 Nb and Ni_eq = Ni + 30 C + 0.5 Mn.

    Parameters
    ----------
    composition : Composition
        Steel or melt [-]

    Returns
    -------
    Equivalents
        Both equivalents, in the shape of the composition [-]

    Notes
    -----
    One text adds 30 N to the nickel equivalent, as a later diagram does; other diagrams have other factors,
    and no two may be mixed.
    Source: schaeffler_code.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(schaeffler_equivalents(composition("304-type")).chromium_equivalent_percent, 3)
    19.075
    """
    of = composition
    return Equivalents(
        chromium_equivalent_percent=plain(
            of.chromium_percent + of.molybdenum_percent + 1.5 * of.silicon_percent + 0.5 * of.niobium_percent
        ),
        nickel_equivalent_percent=plain(
            of.nickel_percent + 30 * of.carbon_percent + 0.5 * of.manganese_percent
        ),
    )


def wrc_1992_equivalents(composition):
    """Return the equivalents of the WRC-1992 diagram, Cr + Mo + 0.7 Nb and Ni + 35 C + 20 N + 0.25 Cu.

    Parameters
    ----------
    composition : Composition
        Steel or melt [-]

    Returns
    -------
    Equivalents
        Both equivalents, in the shape of the composition [-]

    Raises
    ------
    ValueError
        If an equivalent lies outside the axes of the diagram, 17 to 31 % and 9 to 18 %.

    Notes
    -----
    The melt of a stainless stud and a rivet leaves the axes at a small share of the rivet; see
    ``wrc_1992_covers``.
    Source: wrc_1992, factors and axes read in open code.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(wrc_1992_equivalents(composition("304-type")).nickel_equivalent_percent, 2)
    11.3
    """
    chromium, nickel = _wrc_1992(composition)
    require_between("WRC-1992 chromium equivalent", chromium, *WRC_1992_CHROMIUM_PERCENT, unit="%")
    require_between("WRC-1992 nickel equivalent", nickel, *WRC_1992_NICKEL_PERCENT, unit="%")
    return Equivalents(chromium_equivalent_percent=plain(chromium), nickel_equivalent_percent=plain(nickel))


def _wrc_1992(of):
    """Return both equivalents without a look at the axes."""
    chromium = of.chromium_percent + of.molybdenum_percent + 0.7 * of.niobium_percent
    nickel = of.nickel_percent + 35 * of.carbon_percent + 20 * of.nitrogen_percent + 0.25 * of.copper_percent
    return chromium, nickel


def wrc_1992_covers(composition):
    """Tell whether a steel or melt lies within the axes of the WRC-1992 diagram.

    Parameters
    ----------
    composition : Composition
        Steel or melt [-]

    Returns
    -------
    numpy.ndarray of bool
        True where the diagram speaks of it, in the shape of the composition [-]

    Notes
    -----
    Source: wrc_1992.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> bool(wrc_1992_covers(composition("36MnB4")))
    False
    """
    chromium, nickel = (np.asarray(each) for each in _wrc_1992(composition))
    (chromium_from, chromium_to), (nickel_from, nickel_to) = (
        WRC_1992_CHROMIUM_PERCENT,
        WRC_1992_NICKEL_PERCENT,
    )
    inside = (chromium >= chromium_from) & (chromium <= chromium_to)
    return inside & (nickel >= nickel_from) & (nickel <= nickel_to)
