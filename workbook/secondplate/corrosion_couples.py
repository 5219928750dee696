"""Metals against aluminium: measured attack first, then potential and index, which tell direction, not rate.

The three disagree, and all are shown: by index and potential carbon steel is harmless to 6xxx sheet, by
measured attack it stands near the top. Zinc has no place in the measured list: it protects aluminium mostly,
not always, and is itself consumed.
"""

from dataclasses import dataclass

from secondplate.checks import require_choice
from secondplate.tables import load, values

# Worst first, by measured attack on aluminium alloys in salt water.
GALVANIC_RANKING = tuple(row.name for row in load("galvanic_ranking"))
_POTENTIALS = values("sea_water_potentials")
PROTECT_ABOVE_MV = _POTENTIALS["difference that asks for protection"]
SEA_WATER_METALS = tuple(name for name in _POTENTIALS if not name.startswith("difference"))
_INDEX = values("anodic_index")
ENVIRONMENTS = ("harsh", "normal", "controlled")
INDEX_METALS = tuple(name for name in _INDEX if not name.startswith("limit"))
_SHEET_IN_SEA_WATER = "aluminium 5083, 5086, 6061"
_SHEET_BY_INDEX = "aluminium, other wrought"
# One metal, and what the series and the index call it.
_CALLED = {
    "silver": (None, "silver"),
    "copper": (None, "copper"),
    "carbon steel": ("carbon steel", "carbon steel"),
    "stainless steel": ("stainless steel, active", "austenitic stainless steel"),
    "nickel": (None, "nickel"),
    "titanium alloy": (None, "titanium"),
    "tin": ("tin", "chromium or tin plate"),
    "cadmium": ("cadmium", "cadmium"),
}


def galvanic_rank(metal):
    """Return the place of a metal among those that attack aluminium; 1 is the worst.

    Parameters
    ----------
    metal : str
        One of ``GALVANIC_RANKING`` [-]

    Returns
    -------
    int
        Place [-]

    Raises
    ------
    ValueError
        If the metal is not in the list.

    Notes
    -----
    Source: mansfeld_1974, ranking in 3.5 % sodium chloride, as read.

    Examples
    --------
    >>> galvanic_rank("carbon steel") < galvanic_rank("stainless steel") < galvanic_rank("tin")
    True
    """
    return GALVANIC_RANKING.index(require_choice("metal", metal, GALVANIC_RANKING)) + 1


def worst_first(metals):
    """Return metals in the order of their measured attack on aluminium, worst first.

    Parameters
    ----------
    metals : sequence of str
        Some of ``GALVANIC_RANKING`` [-]

    Returns
    -------
    tuple of str
        The same metals in order [-]

    Raises
    ------
    ValueError
        If a metal is not in the list.

    Notes
    -----
    Source: mansfeld_1974, ranking.

    Examples
    --------
    >>> worst_first(["tin", "stainless steel", "carbon steel"])
    ('carbon steel', 'stainless steel', 'tin')
    """
    return tuple(sorted(metals, key=galvanic_rank))


def potential_difference_mv(metal, *, against=_SHEET_IN_SEA_WATER):
    """Return by how much a metal is nobler than another in sea water; below 0 it is the anode.

    Parameters
    ----------
    metal : str
        One of ``SEA_WATER_METALS`` [-]
    against : str
        Other metal of the list; aluminium sheet unless told [-]

    Returns
    -------
    float
        Difference of the potentials; 20 to 40 mV either way [mV]

    Raises
    ------
    ValueError
        If a metal is not in the list.

    Notes
    -----
    Source: boat_series_page, series in sea water at 25 C against silver chloride; above 200 mV it asks for
    protection.

    Examples
    --------
    >>> potential_difference_mv("zinc plate"), potential_difference_mv("carbon steel")
    (-310.0, 30.0)
    """
    one, other = (require_choice("metal", name, SEA_WATER_METALS) for name in (metal, against))
    return _POTENTIALS[one] - _POTENTIALS[other]


def index_difference_v(metal, *, against=_SHEET_BY_INDEX):
    """Return the difference of two anodic indices; the one with the higher index is the anode.

    Parameters
    ----------
    metal : str
        One of ``INDEX_METALS`` [-]
    against : str
        Other metal of the list; wrought aluminium unless told [-]

    Returns
    -------
    float
        Index of the other less index of the metal; above 0 the metal is the cathode [V]

    Raises
    ------
    ValueError
        If a metal is not in the list.

    Notes
    -----
    Source: mil_dtl_14072, 3.13 and anodic index, mostly from memory.

    Examples
    --------
    >>> [round(index_difference_v(metal), 2) for metal in ("carbon steel", "austenitic stainless steel")]
    [0.05, 0.55]
    """
    one, other = (require_choice("metal", name, INDEX_METALS) for name in (metal, against))
    return _INDEX[other] - _INDEX[one]


def index_allows(metal, *, against=_SHEET_BY_INDEX, environment="harsh"):
    """Tell whether two metals may touch by the rule of the anodic index.

    Parameters
    ----------
    metal : str
        One of ``INDEX_METALS`` [-]
    against : str
        Other metal of the list; wrought aluminium unless told [-]
    environment : str
        ``harsh`` (0.15 V), ``normal`` (0.25 V) or ``controlled`` (0.50 V) [-]

    Returns
    -------
    bool
        Whether the difference is within the limit [-]

    Raises
    ------
    ValueError
        If a metal or the environment is not in its list.

    Notes
    -----
    Source: mil_dtl_14072, limits, seen second-hand. It lets carbon steel touch aluminium, which measured
    attack does not: see ``couple``.

    Examples
    --------
    >>> index_allows("carbon steel"), index_allows("austenitic stainless steel", environment="controlled")
    (True, False)
    """
    limit = _INDEX[f"limit, {require_choice('environment', environment, ENVIRONMENTS)}"]
    return abs(index_difference_v(metal, against=against)) <= limit + 1e-9


@dataclass(frozen=True, kw_only=True)
class Couple:
    """What three sources say of one metal on aluminium sheet, side by side.

    Parameters
    ----------
    metal : str
        The other metal [-]
    measured_rank : int
        Place by measured attack, 1 is the worst [-]
    potential_mv : float or None
        How much nobler it is in sea water, None where the series has it not [mV]
    index_v : float or None
        Difference of the anodic indices, None where the index has it not [V]

    Examples
    --------
    >>> couple("carbon steel").contradiction
    'little potential or index between them, yet measured attack is near the worst'
    """

    metal: str
    measured_rank: int
    potential_mv: float | None
    index_v: float | None

    @property
    def contradiction(self):
        """In words where measured attack and the two series do not agree, empty where they do."""
        half = len(GALVANIC_RANKING) / 2
        far_apart = (self.potential_mv or 0) > PROTECT_ABOVE_MV or (self.index_v or 0) > _INDEX[
            "limit, harsh"
        ]
        if self.measured_rank <= half and not far_apart:
            return "little potential or index between them, yet measured attack is near the worst"
        if self.measured_rank > half and far_apart:
            return "much potential or index between them, yet measured attack is among the least"
        return ""


def couple(metal):
    """Return what measured attack, sea-water potential and anodic index say of a metal on aluminium.

    Parameters
    ----------
    metal : str
        One of ``GALVANIC_RANKING`` [-]

    Returns
    -------
    Couple
        The three side by side [-]

    Raises
    ------
    ValueError
        If the metal is not in the list.

    Notes
    -----
    Source: mansfeld_1974, boat_series_page and mil_dtl_14072; mil_std_889 puts tin plate close to aluminium,
    which agrees with the measured attack and not with the series.

    Examples
    --------
    >>> couple("tin").potential_mv, couple("tin").measured_rank
    (320.0, 9)
    """
    rank = galvanic_rank(metal)
    series, index = _CALLED.get(metal, (None, None))
    return Couple(
        metal=metal,
        measured_rank=rank,
        potential_mv=None if series is None else potential_difference_mv(series),
        index_v=None if index is None else index_difference_v(index),
    )
