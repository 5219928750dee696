"""Hard limits of the ways to take a set rivet out: what refuses a method on a job, and what would lift it.

Judged before any time or cost is compared. An allowed method is still no repair procedure: the vehicle
maker's current procedure, the equipment manual and local law come first.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields

import numpy as np

from secondplate import tables
from secondplate.checks import require_between, require_choice

METHODS = ("pull", "drill", "grind", "punch")
VERDICTS = ("allowed", "not before", "refused")
WORDS = {
    "pull": "weld a stud on the rivet head and pull the rivet out",
    "drill": "drill the rivet out",
    "grind": "grind the rivet head off and drive the shank out",
    "punch": "punch the rivet out from behind",
}
FACTS = {
    "behind": ("open", "closed"),
    "bond": ("none", "hard", "released"),
    "high_voltage": ("none", "isolated", "live"),
    "airbag": ("none", "made safe", "armed"),
    "aluminium_dust": ("no", "yes"),
}
_DRILLS = tables.values("drill_hardness")
DRILLS = tuple(_DRILLS)
_RANGES = {
    "second_plate_mm": ("second plate", 0.5, 6, "mm"),
    "rivet_hardness_hv": ("rivet hardness", 200, 700, "HV"),
    "heat_sensitive_mm": ("distance to heat-sensitive parts", 0, 20_000, "mm"),
    "front_clear_mm": ("free width on the head side", 5, 1000, "mm"),
}


@dataclass(frozen=True, kw_only=True)
class RemovalJob:
    """What is known of a job before a method is chosen; words and numbers, or arrays of them for many jobs.

    Parameters
    ----------
    behind : str or array
        Access from behind: open or closed [-]
    bond : str or array
        Adhesive between the plates: none, hard or released [-]
    second_plate_mm : float or array
        Thickness of the second plate beside the button, 0.5 to 6 [mm]
    rivet_hardness_hv : float or array
        Hardness of the rivet, 200 to 700 [HV]
    high_voltage : str or array
        High-voltage parts near: none, isolated (locked and verified) or live [-]
    airbag : str or array
        Airbag or pretensioner near: none, made safe or armed [-]
    heat_sensitive_mm : float or array
        Distance to the nearest heat-sensitive part, 0 to 20 000 [mm]
    front_clear_mm : float or array
        Free width round the rivet head, 5 to 1000 [mm]
    aluminium_dust : str or array
        Aluminium dust near or in the extractor: no or yes [-]
    drill : str or array
        Best drill at hand, one of ``DRILLS`` [-]

    Raises
    ------
    ValueError
        If a word is not in its list or a number lies outside its range.

    Examples
    --------
    >>> job = RemovalJob(behind="closed", bond="none", second_plate_mm=2.0, rivet_hardness_hv=480)
    >>> job.hardness_beyond_drill_hv
    33.0
    """

    behind: str
    bond: str
    second_plate_mm: float
    rivet_hardness_hv: float
    high_voltage: str = "none"
    airbag: str = "none"
    heat_sensitive_mm: float = 2000.0
    front_clear_mm: float = 150.0
    aluminium_dust: str = "no"
    drill: str = "high-speed steel"

    def __post_init__(self):
        """Refuse words and numbers that no job has."""
        for name, (words, low, high, unit) in _RANGES.items():
            require_between(words, getattr(self, name), low, high, unit=unit)
        for name, choices in (FACTS | {"drill": DRILLS}).items():
            for value in np.unique(np.asarray(getattr(self, name))):
                word = str(value) if isinstance(value, np.str_) else value
                require_choice(name.replace("_", " "), word, choices)

    @property
    def hardness_beyond_drill_hv(self):
        """How much harder the rivet is than what tables list for the drill; negative where it is softer."""
        drills, which = np.unique(np.asarray(self.drill), return_inverse=True)
        reach = np.array([_DRILLS[str(name)] for name in drills])[which].reshape(np.shape(self.drill))
        beyond = np.asarray(self.rivet_hardness_hv) - reach
        return float(beyond) if beyond.ndim == 0 else beyond


@dataclass(frozen=True, kw_only=True)
class HardLimit:
    """One limit that a method has.

    Parameters
    ----------
    method : str
        One of ``METHODS`` [-]
    name : str
        What the limit is about [-]
    fact : str
        Field of the job that it looks at [-]
    side : str
        ``is``, ``below`` or ``above``: when the limit is met [-]
    value : str
        Word or number that it compares with, in ``unit`` [-]
    unit : str
        Unit of the value [-]
    verdict : str
        ``not before`` where work on the job lifts it, else ``refused`` [-]
    reason : str
        What would go wrong [-]
    lifted_by : str
        What would change the verdict [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> next(limit for limit in HARD_LIMITS if limit.fact == "behind").verdict
    'refused'
    """

    method: str
    name: str
    fact: str
    side: str
    value: str
    unit: str
    verdict: str
    reason: str
    lifted_by: str
    source: str
    locator: str
    basis: str

    def met(self, job):
        """Tell whether the limit stands against a job, or for which of many."""
        found = np.asarray(getattr(job, self.fact))
        if self.side == "is":
            return found == self.value
        return found < float(self.value) if self.side == "below" else found > float(self.value)


def _limit(row):
    """Make a limit of one row of the table."""
    require_choice("method", row.keys["method"], METHODS)
    require_choice("side of a limit", row.keys["side"], ("is", "below", "above"))
    require_choice("verdict", row.keys["verdict"], VERDICTS[1:])
    own = {"name", "value", "unit", "source", "locator", "basis"}
    return HardLimit(
        **{name: getattr(row, name) for name in own},
        **{field.name: row.keys[field.name] for field in fields(HardLimit) if field.name not in own},
    )


HARD_LIMITS = tuple(_limit(row) for row in tables.load("removal_limits"))


@dataclass(frozen=True, kw_only=True)
class Screening:
    """Verdict on each method, and the limits behind it.

    Parameters
    ----------
    verdicts : Mapping of str to str or numpy.ndarray
        One of ``VERDICTS`` by method; arrays for many jobs [-]
    met : tuple of tuple
        Limit, and whether or where it stands against the job [-]

    Examples
    --------
    >>> screen(RemovalJob(behind="closed", bond="hard", second_plate_mm=2.0, rivet_hardness_hv=480)).allowed
    ('grind',)
    """

    verdicts: Mapping[str, str]
    met: tuple

    @property
    def allowed(self):
        """Methods that no limit stands against; for a single job."""
        return tuple(method for method, verdict in self.verdicts.items() if verdict == VERDICTS[0])

    def against(self, method):
        """Return the limits that stand against a method; for a single job."""
        require_choice("method", method, METHODS)
        return tuple(limit for limit, met in self.met if met and limit.method == method)


def screen(job):
    """Judge every method by its hard limits.

    Parameters
    ----------
    job : RemovalJob
        The job, or many in arrays [-]

    Returns
    -------
    Screening
        Verdicts and the limits behind them [-]

    Notes
    -----
    Source: table removal_limits, each row with its own source and basis; most are own judgement.

    Examples
    --------
    >>> found = screen(RemovalJob(behind="closed", bond="none", second_plate_mm=2.0, rivet_hardness_hv=480))
    >>> found.verdicts["punch"], found.against("punch")[0].reason
    ('refused', 'Nobody can reach the button from behind.')
    """
    met = tuple((limit, limit.met(job)) for limit in HARD_LIMITS)
    ranks = {method: np.zeros((), dtype=int) for method in METHODS}
    for limit, stands in met:
        rank = np.where(stands, VERDICTS.index(limit.verdict), 0)
        ranks[limit.method] = np.maximum(ranks[limit.method], rank)
    words = {method: np.array(VERDICTS)[rank] for method, rank in ranks.items()}
    plain_met = tuple((limit, bool(stands) if np.ndim(stands) == 0 else stands) for limit, stands in met)
    return Screening(
        verdicts={method: str(word) if word.ndim == 0 else word for method, word in words.items()},
        met=plain_met,
    )
