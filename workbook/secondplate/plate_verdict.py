"""What may be done with the second plate: leave and seal, reform, add a backing, replace the part.

Every criterion is kept, broken, or not decided with this measuring uncertainty. The verdict at best counts
what is broken for certain, the verdict at worst whatever is not kept for certain; where the two differ, it
is not decided and must be measured again. More damage never gives a milder verdict. The vehicle maker's
procedure comes first: where it forbids a reuse or asks for a part, that is the verdict.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from secondplate.bands import Band
from secondplate.checks import require_above, require_at_least, require_between, require_truth
from secondplate.measuring_decision import VERDICTS as CONFORMITY_WORDS
from secondplate.measuring_decision import conformity

LEAVE, REFORM, BACKING, REPLACE = PLATE_VERDICTS = (
    "leave and seal",
    "reform",
    "add a backing",
    "replace the part",
)
MEASURE_AGAIN = "not decided: measure again"
STATUS_WORDS = ("kept", "not decided", "broken")
# Criterion: verdict where it is broken, reason where it is broken, reason where it is not decided.
_CRITERIA = {
    "proud button": (REFORM, "the button stands proud where the plate must lie flat", "-"),
    "thickness": (
        BACKING,
        "the thickness left is below the required one",
        "the thickness left cannot be told from the required one: measure again, or with a better gauge",
    ),
    "hole": (BACKING, "a hole goes through the plate", "-"),
    "crack": (BACKING, "a crack was found", "-"),
    "hole size": (
        REPLACE,
        "the hole is larger than a backing may cover",
        "the hole cannot be told from the largest that a backing may cover: gauge it again",
    ),
    "crack length": (
        REPLACE,
        "the crack is longer than the plate bears",
        "a crack that the plate does not bear cannot be ruled out by this test: look again, or closer",
    ),
    "heat": (
        REPLACE,
        "heat has taken more strength than may be missing",
        "the strength left after the heat cannot be told from the required one: measure hardness",
    ),
    "strain": (
        REPLACE,
        "the button must be flat but cannot be pressed back without tearing",
        "the button must be flat and the strain of pressing it back is not known: work it out first",
    ),
}


@dataclass(frozen=True, kw_only=True)
class PlateFinding:
    """What was found at a site, and what is asked of it; arrays stand for a column of sites.

    Parameters
    ----------
    least_thickness_mm : float or array
        Least thickness as read, 0 for a hole [mm]
    required_thickness_mm : float or array
        Least thickness that the joint needs, above 0 [mm]
    thickness_uncertainty_mm : float or array
        Standard uncertainty of the thickness, at least 0 [mm]
    hole_diameter_mm : float or array
        Diameter of a hole right through, 0 where there is none [mm]
    largest_hole_mm : float or array
        Largest hole that a backing may cover, above 0 [mm]
    hole_uncertainty_mm : float or array
        Standard uncertainty of the diameter, at least 0 [mm]
    crack_length_mm : float or array
        Length of the longest crack that was found, 0 for none [mm]
    critical_crack_mm : float or array
        Crack length that the plate does not bear, above 0 [mm]
    detectable_mm : float or array or None
        Length that the test is held to find; None where no valid test was made [mm]
    crack_uncertainty_mm : float or array
        Standard uncertainty of the length of a crack that was found, at least 0 [mm]
    button_depth_mm : float or array
        How far the button stands proud, at least 0 [mm]
    flush_needed : bool or array
        Whether the far side must lie flat, for a backing, a fastener or a neighbour [-]
    flush_limit_mm : float or array
        How far it may stand proud all the same, at least 0 [mm]
    press_back_used : float or array or None
        Strain of pressing back over its limit, ``plate_forming.PressBack.used``; at least 0; None where
        nobody worked it out, so that a button that must lie flat is not decided [-]
    strength_left : Band
        Share of the strength left after the heat of the weld; 1 where nothing was heated [-]
    required_strength_share : float or array
        Share of the strength that must be left, 0 to 1 [-]

    Raises
    ------
    ValueError
        If a value lies outside its range, or metal is left where there is a hole.

    Examples
    --------
    >>> site = PlateFinding(least_thickness_mm=0.5, required_thickness_mm=0.4, critical_crack_mm=6,
    ...                     detectable_mm=2, button_depth_mm=0.6, flush_needed=True, press_back_used=0.7)
    >>> judge_plate(site).verdict
    'reform'
    """

    least_thickness_mm: float
    required_thickness_mm: float
    thickness_uncertainty_mm: float = 0.0
    hole_diameter_mm: float = 0.0
    largest_hole_mm: float = 10.0
    hole_uncertainty_mm: float = 0.0
    crack_length_mm: float = 0.0
    critical_crack_mm: float
    detectable_mm: float | None
    crack_uncertainty_mm: float = 0.0
    button_depth_mm: float = 0.0
    flush_needed: bool
    flush_limit_mm: float = 0.2
    press_back_used: float | None = None
    strength_left: Band = Band(low=1.0, best=1.0, high=1.0, basis="nothing was heated")
    required_strength_share: float = 0.9

    def __post_init__(self):
        """Refuse negative sizes, shares outside 0 to 1, and metal left in a hole."""
        positive = ("required_thickness_mm", "largest_hole_mm", "critical_crack_mm")
        for name in positive:
            require_above(_words(name), getattr(self, name), 0, unit="mm")
        others = [name for name in vars(self) if name.endswith("_mm") and name not in positive]
        for name in others:
            if getattr(self, name) is not None:
                require_at_least(_words(name), getattr(self, name), 0, unit="mm")
        _require_nothing_in_a_hole(self.least_thickness_mm, self.hole_diameter_mm)
        require_truth("flush needed", self.flush_needed)
        if self.press_back_used is not None:
            require_at_least("strain of pressing back over its limit", self.press_back_used, 0, unit="")
        if not isinstance(self.strength_left, Band):
            message = f"strength left must be a Band, got {self.strength_left!r}"
            raise ValueError(message)
        for share in (self.strength_left.low, self.strength_left.high, self.required_strength_share):
            require_between("share of the strength", share, 0, 1, unit="")


def _require_nothing_in_a_hole(least_thickness_mm, hole_diameter_mm):
    """Raise where a hole goes through and metal is said to be left there as well."""
    left, hole = np.broadcast_arrays(least_thickness_mm, hole_diameter_mm)
    both = np.flatnonzero((hole > 0) & (left > 0))
    if both.size:
        got = float(left.flat[both[0]])
        message = f"least thickness must be 0 mm where a hole goes through, got {got:.6g} mm"
        raise ValueError(message)


def _words(name):
    """Turn the name of a size into words."""
    return name.removesuffix("_mm").replace("_", " ")


@dataclass(frozen=True, kw_only=True)
class PlateVerdict:
    """Verdict on a plate, or on a column of plates, with its reasons.

    Parameters
    ----------
    at_best : int or array
        Place in ``PLATE_VERDICTS`` that is certain [-]
    at_worst : int or array
        Place in ``PLATE_VERDICTS`` that cannot be ruled out, at least that at best [-]
    statuses : Mapping of str to int or array
        For each criterion its place in ``STATUS_WORDS`` [-]

    Examples
    --------
    >>> PlateVerdict(at_best=0, at_worst=2, statuses={"thickness": 1}).verdict
    'not decided: measure again'
    """

    at_best: int
    at_worst: int
    statuses: Mapping[str, int]

    @property
    def verdict(self):
        """One of ``PLATE_VERDICTS``, or ``MEASURE_AGAIN``, for each plate."""
        words = np.where(self.decided, np.array(PLATE_VERDICTS)[self.at_best], MEASURE_AGAIN)
        return str(words) if words.ndim == 0 else words

    @property
    def decided(self):
        """Whether the verdict is the same at best and at worst."""
        return np.equal(self.at_best, self.at_worst)

    def reasons(self, number=None):
        """Return the reasons for one plate, the gravest first; its number where there is a column."""
        found = []
        for name, status in self.statuses.items():
            here = int(np.asarray(status) if number is None else np.asarray(status)[number])
            verdict, broken, undecided = _CRITERIA[name]
            if here:
                found.append((PLATE_VERDICTS.index(verdict), here, broken if here == 2 else undecided))
        return tuple(sentence for *_, sentence in sorted(found, key=lambda each: (-each[0], -each[1])))


def judge_plate(finding, *, confidence_percent=95.0):
    """Return what may be done with a plate, and why.

    Parameters
    ----------
    finding : PlateFinding
        What was found at one site or at a column of sites [-]
    confidence_percent : float
        Confidence of each verdict on a measured size, 50 to 99.99 [%]

    Returns
    -------
    PlateVerdict
        Verdict at best, at worst, and the state of each criterion [-]

    Raises
    ------
    ValueError
        If the confidence lies outside its range.

    Notes
    -----
    Source: iso_14253_1 for measured sizes; own_judgement for which criterion asks for which verdict.

    Examples
    --------
    >>> doubtful = PlateFinding(least_thickness_mm=0.41, required_thickness_mm=0.40,
    ...     thickness_uncertainty_mm=0.0081, critical_crack_mm=6, detectable_mm=2, flush_needed=False)
    >>> found = judge_plate(doubtful)
    >>> found.verdict, found.reasons()[0].split(":")[0]
    ('not decided: measure again', 'the thickness left cannot be told from the required one')
    """
    statuses = _statuses(finding, confidence_percent)
    arrays = np.broadcast_arrays(*statuses.values())
    statuses = {name: _whole(array) for name, array in zip(statuses, arrays, strict=True)}
    places = np.array([PLATE_VERDICTS.index(_CRITERIA[name][0]) for name in statuses])
    stacked = np.stack(arrays, axis=-1)
    best, worst = (np.max(np.where(stacked >= least, places, 0), axis=-1) for least in (2, 1))
    return PlateVerdict(at_best=_whole(best), at_worst=_whole(worst), statuses=statuses)


def _whole(array):
    """Return an int for a single number, the array for several."""
    return int(array) if array.ndim == 0 else array


def _statuses(found, confidence_percent):
    """Return the state of each criterion: 0 kept, 1 not decided, 2 broken."""

    def measured(size, uncertainty, **limits):
        words = conformity(
            size, standard_uncertainty_mm=uncertainty, confidence_percent=confidence_percent, **limits
        )
        return np.select([np.asarray(words) == word for word in CONFORMITY_WORDS], (0, 1, 2))

    must_be_flat = np.asarray(found.flush_needed) & np.greater(found.button_depth_mm, found.flush_limit_mm)
    hidden = np.inf if found.detectable_mm is None else found.detectable_mm
    crack = measured(found.crack_length_mm, found.crack_uncertainty_mm, most_mm=found.critical_crack_mm)
    strength, required = found.strength_left, found.required_strength_share
    return {
        "proud button": 2 * must_be_flat,
        "hole": 2 * np.greater(found.hole_diameter_mm, 0),
        "thickness": measured(
            found.least_thickness_mm, found.thickness_uncertainty_mm, least_mm=found.required_thickness_mm
        ),
        "crack": 2 * np.greater(found.crack_length_mm, 0),
        "hole size": measured(
            found.hole_diameter_mm, found.hole_uncertainty_mm, most_mm=found.largest_hole_mm
        ),
        "crack length": np.maximum(crack, np.greater_equal(hidden, found.critical_crack_mm)),
        "heat": np.less(strength.low, required) + 1 * np.less(strength.high, required),
        "strain": must_be_flat * _strain_status(found.press_back_used),
    }


def _strain_status(used):
    """Return the state of pressing back: not decided where nobody worked out the strain."""
    return 1 if used is None else 2 * np.greater(used, 1)
