"""How hard the heat-affected zone of the rivet becomes: Yurioka's formula, and Maynier's beside it.

Both were fitted to seams; at the speed of a stud weld they say no more than that all of it is martensite.
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.bands import Band
from secondplate.checks import require_between
from secondplate.weldability_composition import require_within
from secondplate.weldability_maynier import (
    COOLING_TIMES_S,
    cooling_rate_c_h,
    maynier_bainite_hv,
    maynier_martensite_hv,
)


@dataclass(frozen=True, kw_only=True)
class YuriokaHardness:
    """Yurioka's hardness of a heat-affected zone, with the four numbers that it is made of.

    Parameters
    ----------
    hardness_hv : float or array
        Vickers hardness at the cooling time [HV]
    martensite_hv : float or array
        Hardness when all is martensite [HV]
    bainite_hv : float or array
        Hardness when none is [HV]
    martensite_time_s : float or array
        Longest cooling time that leaves all martensite [s]
    bainite_time_s : float or array
        Shortest cooling time that leaves none [s]

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(yurioka_hardness(composition("36MnB4"), cooling_time_800_500_s=10).martensite_time_s, 2)
    3.78
    """

    hardness_hv: float
    martensite_hv: float
    bainite_hv: float
    martensite_time_s: float
    bainite_time_s: float

    @property
    def martensite_share(self):
        """Part of the way from the hardness without martensite to that of martensite alone."""
        return plain((self.hardness_hv - self.bainite_hv) / (self.martensite_hv - self.bainite_hv))


def _boron_rise(of):
    """Return what boron adds to the first carbon equivalent, less where nitrogen binds it."""
    parts_per_million = np.asarray(of.boron_percent) * 1e4
    steps = np.searchsorted([1.5, 2.5, 3.5], parts_per_million)  # up to 1, 2, 3, and 4 or more
    return np.array([0.0, 0.03, 0.06, 0.09])[steps] * (0.02 - of.nitrogen_percent) / 0.02


def _carbon_equivalents(of):
    """Return the three carbon equivalents of the formula."""
    carbon = np.where(
        np.asarray(of.carbon_percent) <= 0.3, of.carbon_percent, np.asarray(of.carbon_percent) / 6 + 0.25
    )
    mn, si, cu, ni = of.manganese_percent, of.silicon_percent, of.copper_percent, of.nickel_percent
    cr, mo, v, nb = of.chromium_percent, of.molybdenum_percent, of.vanadium_percent, of.niobium_percent
    first = carbon + si / 24 + mn / 6 + cu / 15 + ni / 12 + cr * (1 - 0.16 * np.sqrt(cr)) / 8 + mo / 4
    second = of.carbon_percent + si / 24 + mn / 5 + cu / 10 + ni / 18 + cr / 5 + mo / 2.5 + v / 5 + nb / 3
    third = carbon + mn / 3.6 + cu / 20 + ni / 9 + cr / 5 + mo / 4
    return first + _boron_rise(of), second, third


def yurioka_hardness(composition, *, cooling_time_800_500_s):
    """Return the hardness of the heat-affected zone from composition and cooling time.

    HM = 884 C (1 - 0.3 C^2) + 294, HB = 145 + 130 tanh(2.65 CE2 - 0.69), ln tM = 10.6 CE1 - 4.8,
    ln tB = 6.2 CE3 + 0.74, HV = (HM + HB)/2 - (HM - HB)/2.2 atan(4 ln(t/tM)/ln(tB/tM) - 2), held within HB
    and HM.

    Parameters
    ----------
    composition : Composition
        Steel of at most 0.8 % carbon and 0.01 % nitrogen [-]
    cooling_time_800_500_s : float or array
        Time from 800 to 500 C, 0.01 to 10,000 s [s]

    Returns
    -------
    YuriokaHardness
        Hardness and what it is made of, in the common shape [-]

    Raises
    ------
    ValueError
        If the steel or the time is out of its range.

    Notes
    -----
    Source: yurioka_1987, coefficients from memory.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> round(yurioka_hardness(composition("36MnB4"), cooling_time_800_500_s=10).hardness_hv, 1)
    531.6
    """
    of = require_within(composition, "Yurioka hardness")
    time_s = require_between("cooling time", cooling_time_800_500_s, *COOLING_TIMES_S, unit="s")
    first, second, third = _carbon_equivalents(of)
    hardest = 884 * of.carbon_percent * (1 - 0.3 * of.carbon_percent**2) + 294
    softest = 145 + 130 * np.tanh(2.65 * second - 0.69)
    all_s, none_s = np.exp(10.6 * first - 4.8), np.exp(6.2 * third + 0.74)
    way = np.arctan(4 * np.log(time_s / all_s) / np.log(none_s / all_s) - 2)
    between = (hardest + softest) / 2 - (hardest - softest) / 2.2 * way
    return YuriokaHardness(
        hardness_hv=plain(np.clip(between, softest, hardest)),
        martensite_hv=plain(hardest),
        bainite_hv=plain(softest),
        martensite_time_s=plain(all_s),
        bainite_time_s=plain(none_s),
    )


@dataclass(frozen=True, kw_only=True)
class ZoneHardness:
    """Hardness of the heat-affected zone by both formulas.

    Parameters
    ----------
    maynier_hv : float or array
        By Maynier's formulas, martensite and bainite in the shares of Yurioka's [HV]
    yurioka_hv : float or array
        By Yurioka's formula [HV]
    all_martensite : numpy.ndarray of bool
        Whether the cooling is quick enough to leave nothing but martensite [-]

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> bool(zone_hardness(composition("36MnB4"), cooling_time_800_500_s=0.2).all_martensite)
    True
    """

    maynier_hv: float
    yurioka_hv: float
    all_martensite: np.ndarray

    @property
    def band_hv(self):
        """Both formulas as the ends of a band, their mean as best."""
        low, high = np.minimum(self.maynier_hv, self.yurioka_hv), np.maximum(self.maynier_hv, self.yurioka_hv)
        return Band(
            low=plain(low),
            best=plain((low + high) / 2),
            high=plain(high),
            basis="Maynier's and Yurioka's formulas side by side",
        )


def zone_hardness(composition, *, cooling_time_800_500_s):
    """Return the hardness of the heat-affected zone of a steel by Maynier's and by Yurioka's formulas.

    Parameters
    ----------
    composition : Composition
        Steel within the limits of both formulas [-]
    cooling_time_800_500_s : float or array
        Time from 800 to 500 C, 0.01 to 10,000 s [s]

    Returns
    -------
    ZoneHardness
        Both values, in the common shape [-]

    Raises
    ------
    ValueError
        If the steel or the time is out of its range.

    Notes
    -----
    Maynier's formulas want the shares of the structures; those of Yurioka's are used, so that the two differ
    only in the hardness they give to a structure.
    Sources: maynier_2004, yurioka_1987.

    Examples
    --------
    >>> from secondplate.weldability_composition import composition
    >>> zone_hardness(composition("36MnB4"), cooling_time_800_500_s=0.2).band_hv.contains(610)
    True
    """
    yurioka = yurioka_hardness(composition, cooling_time_800_500_s=cooling_time_800_500_s)
    rate = {"cooling_rate_c_h": cooling_rate_c_h(cooling_time_800_500_s)}
    share = yurioka.martensite_share
    mixed = share * maynier_martensite_hv(composition, **rate) + (1 - share) * maynier_bainite_hv(
        composition, **rate
    )
    return ZoneHardness(
        maynier_hv=plain(mixed),
        yurioka_hv=yurioka.hardness_hv,
        all_martensite=np.asarray(cooling_time_800_500_s) <= np.asarray(yurioka.martensite_time_s),
    )
