"""Fatigue of one detail that has a category: cycles by stress range, damage sum, and a verdict.

A straight line in logarithms with a knee and a cut-off. No open rows were found for self-piercing or blind
rivets, and none are invented: a category must come from the maker, a standard or one's own tests. Cracks of
riveted 5754-O start mostly in sheet on the faying face of the upper plate, not in the rivet (iyer_2005).
A structural stress by sheet and rivet diameter brought 30 kinds of joint onto curves of sheet (presse_2019).
"""

from dataclasses import dataclass

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_above, require_at_least, require_between, require_choice
from secondplate.tables import load, values

_CURVE = values("fatigue_curve")
CATEGORY_CYCLES = _CURVE["cycles of the category"]
KNEE_CYCLES = _CURVE["cycles of the knee"]
CUT_OFF_CYCLES = _CURVE["cycles of the cut-off"]
FEWEST_CYCLES = _CURVE["fewest cycles"]
_DETAILS = {row.name: row for row in load("fatigue_details")}
DETAIL_NAMES = tuple(_DETAILS)
FATIGUE_VERDICTS = ("lasts", "does not last")


@dataclass(frozen=True, kw_only=True)
class EnduranceCurve:
    """Cycles to failure over stress range: from 1000 cycles on, a knee at 5e6, a cut-off at 1e8 cycles.

    Parameters
    ----------
    category_mpa : float
        Stress range that is borne 2e6 times, above 0 [MPa]
    slope : float
        Slope m1 above the knee, 2 to 12 [-]
    second_slope : float or None
        Slope m2 from knee to cut-off, at least m1; two more than m1 unless told [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: en_1999_1_3, 6.2.1, from memory and second-hand.

    Examples
    --------
    >>> curve = EnduranceCurve(category_mpa=56, slope=4)
    >>> round(curve.cycles_to_failure(80)), round(curve.knee_mpa, 3), round(curve.cut_off_mpa, 3)
    (480200, 44.535, 27.031)
    """

    category_mpa: float
    slope: float
    second_slope: float | None = None

    def __post_init__(self):
        """Refuse what is no curve."""
        require_above("fatigue category", self.category_mpa, 0, unit="MPa")
        first = require_between("slope", self.slope, 2, 12, unit="")
        if self.second_slope is not None:
            require_at_least("second slope", self.second_slope, first, unit="")

    @property
    def slope_below_knee(self):
        """Slope from knee to cut-off."""
        return self.slope + _CURVE["second slope more"] if self.second_slope is None else self.second_slope

    @property
    def knee_mpa(self):
        """Stress range at the knee in MPa."""
        return self.category_mpa * (CATEGORY_CYCLES / KNEE_CYCLES) ** (1 / self.slope)

    @property
    def cut_off_mpa(self):
        """Stress range in MPa that does no damage, whatever the cycles."""
        return self.knee_mpa * (KNEE_CYCLES / CUT_OFF_CYCLES) ** (1 / self.slope_below_knee)

    @property
    def greatest_mpa(self):
        """Stress range in MPa at which the curve begins; fewer cycles are another kind of fatigue."""
        return self.category_mpa * (CATEGORY_CYCLES / FEWEST_CYCLES) ** (1 / self.slope)

    def cycles_to_failure(self, stress_range_mpa):
        """Cycles to failure at stress ranges from 0 MPa to ``greatest_mpa``; endless below the cut-off."""
        given = require_at_least("stress range", stress_range_mpa, 0, unit="MPa")
        highest = np.max(given, initial=0)
        if highest > self.greatest_mpa * (1 + 1e-12):
            message = (
                f"stress range must be at most {self.greatest_mpa:.4g} MPa "
                f"(the curve begins at {FEWEST_CYCLES:g} cycles), got {highest:.6g} MPa"
            )
            raise ValueError(message)
        # A part in a million million of grace, so that the knee and the cut-off belong to the curve.
        counts = np.asarray(given) * (1 + 1e-12) >= self.cut_off_mpa
        stress = np.where(counts, given, self.cut_off_mpa)
        slope = np.where(stress >= self.knee_mpa, self.slope, self.slope_below_knee)
        return plain(np.where(counts, KNEE_CYCLES * (self.knee_mpa / stress) ** slope, np.inf))

    def damage(self, *, stress_ranges_mpa, cycles):
        """Damage sum of blocks of cycles along the last direction: sum of n/N (Miner)."""
        counts = np.asarray(require_at_least("cycles", cycles, 0, unit=""))
        return plain(np.sum(np.atleast_1d(counts / self.cycles_to_failure(stress_ranges_mpa)), axis=-1))


def listed_curve(detail):
    """Return the curve of a detail that a standard lists.

    Parameters
    ----------
    detail : str
        One of ``DETAIL_NAMES`` [-]

    Returns
    -------
    EnduranceCurve
        The curve; stress in the net section [-]

    Raises
    ------
    ValueError
        If the detail is not in the list.

    Notes
    -----
    Source: en_1999_1_3, Table J.15, from memory; riveted details are not in it.

    Examples
    --------
    >>> listed_curve("bolted joint, clearance holes").category_mpa
    56.0
    """
    row = _DETAILS[require_choice("detail", detail, DETAIL_NAMES)]
    return EnduranceCurve(category_mpa=row.number, slope=float(row.keys["slope"]))


@dataclass(frozen=True, kw_only=True)
class FatigueCheck:
    """What a damage sum says of a detail, or of a column of details.

    Parameters
    ----------
    damage : float or array
        Damage sum of the whole life asked for [-]
    allowed_damage : float
        Damage sum that is allowed [-]

    Examples
    --------
    >>> FatigueCheck(damage=0.76, allowed_damage=1.0).verdict
    'lasts'
    """

    damage: float
    allowed_damage: float

    @property
    def verdict(self):
        """One of ``FATIGUE_VERDICTS``."""
        words = np.where(np.asarray(self.damage) <= self.allowed_damage, *FATIGUE_VERDICTS)
        return str(words) if words.ndim == 0 else words

    @property
    def lives(self):
        """How many times the life asked for is borne; endless where nothing does damage."""
        with np.errstate(divide="ignore"):
            return plain(np.divide(self.allowed_damage, self.damage))


def fatigue_check(curve, *, stress_ranges_mpa, cycles, partial_factor=1.0, allowed_damage=1.0):
    """Return whether a detail bears a collective of stress ranges.

    Parameters
    ----------
    curve : EnduranceCurve
        Curve of the detail [-]
    stress_ranges_mpa : float or array
        Stress range of each block, along the last direction, at least 0 [MPa]
    cycles : float or array
        Cycles of each block in the life asked for, at least 0 [-]
    partial_factor : float
        Factor on the stress ranges gamma_Ff gamma_Mf, at least 1 [-]
    allowed_damage : float
        Damage sum that is allowed, above 0 and at most 1 [-]

    Returns
    -------
    FatigueCheck
        Damage sum and verdict [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: miner_1945 with the curve of en_1999_1_3, 6.2.1.

    Examples
    --------
    >>> found = fatigue_check(listed_curve("bolted joint, clearance holes"),
    ...                       stress_ranges_mpa=[80, 50, 35], cycles=[1e5, 1e6, 5e6])
    >>> round(found.damage, 4), found.verdict
    (0.7616, 'lasts')
    """
    if not isinstance(curve, EnduranceCurve):
        message = f"curve must be an EnduranceCurve, got {curve!r}"
        raise ValueError(message)
    factor = require_at_least("partial factor", partial_factor, 1, unit="")
    allowed = require_between("allowed damage", allowed_damage, 1e-3, 1, unit="")
    ranges = np.multiply(require_at_least("stress range", stress_ranges_mpa, 0, unit="MPa"), factor)
    return FatigueCheck(damage=curve.damage(stress_ranges_mpa=ranges, cycles=cycles), allowed_damage=allowed)
