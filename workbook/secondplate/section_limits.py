"""Limits for the measures of a section, and the verdict that a measuring uncertainty allows.

The limits that come with the library are typical practice from memory, or our own judgement; a shop puts in
those of the vehicle maker. Leaves out strength: a section tells what a joint looks like, not what it holds.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from secondplate import tables
from secondplate.checks import require_at_least, require_choice, require_finite
from secondplate.rivet import FAMILIES
from secondplate.section_measure import MEASURES

VERDICTS = ("accept", "not decidable", "reject")
JUDGED = ("interlock_mm", "unevenness_mm", *MEASURES)
WORDS = {
    "interlock_mm": "interlock, smaller side",
    "unevenness_mm": "difference of the interlocks",
    "interlock_left_mm": "interlock left",
    "interlock_right_mm": "interlock right",
    "remaining_thickness_mm": "remaining bottom thickness",
    "head_flushness_mm": "head height",
    "tail_diameter_mm": "spread of the tail",
    "button_diameter_mm": "button diameter",
    "button_depth_mm": "button height",
    "buckle_mm": "buckle of the shank",
    "crack_mm": "crack in the button",
    "gap_mm": "gap between the plates",
}


@dataclass(frozen=True, kw_only=True)
class Limit:
    """Lower or upper limit of one measure.

    Parameters
    ----------
    measure : str
        One of ``JUDGED`` [-]
    side : str
        ``least`` or ``most`` [-]
    limit_mm : float or array
        The limit [mm]
    conditions : str
        For what it holds [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Raises
    ------
    ValueError
        If the measure or side is not in its list or the limit is not finite.

    Examples
    --------
    >>> typical_limits("steel")[0].limit_mm
    0.2
    """

    measure: str
    side: str
    limit_mm: float
    conditions: str
    source: str = "practice"
    locator: str = "none"
    basis: str = "common practice"

    def __post_init__(self):
        """Refuse an unknown measure or side."""
        require_choice("measure", self.measure, JUDGED)
        require_choice("side of a limit", self.side, ("least", "most"))
        require_finite("limit", self.limit_mm, unit="mm")

    def moved(self, limit_mm):
        """Return the same limit at another value."""
        return replace(self, limit_mm=limit_mm)


@dataclass(frozen=True, kw_only=True)
class Judgement:
    """Verdicts on a section, each one of ``VERDICTS``; arrays for a column.

    Parameters
    ----------
    by_limit : tuple of tuple
        Limit and verdict for each limit, in their order [-]
    by_measure : Mapping of str to str or numpy.ndarray
        Verdict for each measure that has a limit [-]
    overall : str or numpy.ndarray
        Reject if any is rejected, accept if all are accepted [-]

    Examples
    --------
    >>> Judgement(by_limit=(), by_measure={}, overall="accept").overall
    'accept'
    """

    by_limit: tuple
    by_measure: Mapping[str, str]
    overall: str


def typical_limits(family="aluminium"):
    """Return the limits that are typical practice for a second plate.

    Parameters
    ----------
    family : str
        Family of the second plate: aluminium, cast aluminium or steel [-]

    Returns
    -------
    tuple of Limit
        The limits, each with its basis [-]

    Raises
    ------
    ValueError
        If no limits are held for the family.

    Notes
    -----
    Source: rivet_literature, from memory; own_judgement for cracks, buckles, gaps and unevenness. No
    numeric limit was seen in a published text: use those of the vehicle maker.

    Examples
    --------
    >>> [limit.limit_mm for limit in typical_limits() if limit.measure == "head_flushness_mm"]
    [-0.5, 0.3]
    """
    require_choice(
        "family of the second plate", family, tuple(name for name in FAMILIES if name != "polymer")
    )
    return tuple(
        Limit(
            measure=row.keys["measure"],
            side=row.keys["side"],
            limit_mm=row.number,
            conditions=row.conditions,
            source=row.source,
            locator=row.locator,
            basis=row.basis,
        )
        for row in tables.load("section_limits")
        if row.keys["second_plate"] in ("any", family)
    )


def judge(measured, limits, *, uncertainty_mm):
    """Judge a section: accept, reject, or not decidable with this measuring uncertainty.

    A measure is accepted where it keeps its limit by at least the uncertainty, rejected where it breaks it by
    more, and not decidable in between.

    Parameters
    ----------
    measured : Measured
        What was measured, on one section or a column [mm]
    limits : sequence of Limit
        The limits [-]
    uncertainty_mm : float or Mapping of str to float
        Uncertainty of every measure, or by measure; at least 0 [mm]

    Returns
    -------
    Judgement
        Verdict by limit, by measure, and overall [-]

    Raises
    ------
    ValueError
        If an uncertainty is below 0 or there is no limit.

    Notes
    -----
    Source: iso_14253_1, rules for proving conformity and nonconformity, from memory.

    Examples
    --------
    >>> from secondplate.section_joint import build_section
    >>> from secondplate.section_measure import measure
    >>> from secondplate.section_parameters import usual_parameters
    >>> found = measure(build_section(usual_parameters(interlock_left_mm=0.43)))
    >>> judge(found, typical_limits(), uncertainty_mm=0.02).overall
    'accept'
    >>> judge(found, typical_limits(), uncertainty_mm=0.05).by_measure["interlock_mm"]
    'not decidable'
    """
    if not limits:
        message = "limits must hold at least 1 limit, got 0"
        raise ValueError(message)
    ranks = [_rank(measured, limit, _uncertainty(uncertainty_mm, limit.measure)) for limit in limits]
    names = dict.fromkeys(limit.measure for limit in limits)
    by_measure = {
        name: _worst([rank for limit, rank in zip(limits, ranks, strict=True) if limit.measure == name])
        for name in names
    }
    by_limit = tuple((limit, _worst([rank])) for limit, rank in zip(limits, ranks, strict=True))
    return Judgement(by_limit=by_limit, by_measure=by_measure, overall=_worst(ranks))


def _uncertainty(uncertainty_mm, measure):
    """Return the uncertainty of one measure."""
    given = uncertainty_mm[measure] if isinstance(uncertainty_mm, Mapping) else uncertainty_mm
    return require_at_least("uncertainty", given, 0, unit="mm")


def _rank(measured, limit, uncertainty):
    """Return how far a limit is kept: 0 kept, 1 not decidable, 2 broken."""
    room = getattr(measured, limit.measure) - np.asarray(limit.limit_mm)
    room = room if limit.side == "least" else -room
    # A picometre of grace, so that 0.45 - 0.05 against 0.4 is not decided by the last binary digit.
    return np.where(room >= uncertainty - 1e-9, 0, np.where(room < -uncertainty - 1e-9, 2, 1))


def _worst(ranks):
    """Return the word for the worst of some ranks."""
    worst = np.max(np.broadcast_arrays(*ranks), axis=0)
    words = np.array(VERDICTS)[worst]
    return str(words) if words.ndim == 0 else words
