"""What stud and rivet are made of, in percent of the elements, and what the melt of both is made of.

Compositions are data with a range; formulas of other modules ask here whether a steel is one of theirs.
"""

from dataclasses import dataclass, fields
from functools import cache

import numpy as np

from secondplate import tables
from secondplate.arrays import plain
from secondplate.checks import require_between, require_choice

ENDS = ("low", "best", "high")
USES = ("stud", "rivet")


@dataclass(frozen=True, kw_only=True)
class Composition:
    """Content of the elements that matter in a weld, the rest being iron; each a float or an array.

    Parameters
    ----------
    carbon_percent : float or array
        Carbon, 0 to 1.2 % [%]
    silicon_percent : float or array
        Silicon, 0 to 4 % [%]
    manganese_percent : float or array
        Manganese, 0 to 20 % [%]
    chromium_percent : float or array
        Chromium, 0 to 35 % [%]
    nickel_percent : float or array
        Nickel, 0 to 40 % [%]
    molybdenum_percent : float or array
        Molybdenum, 0 to 8 % [%]
    copper_percent : float or array
        Copper, 0 to 5 % [%]
    vanadium_percent : float or array
        Vanadium, 0 to 1 % [%]
    niobium_percent : float or array
        Niobium, 0 to 2 % [%]
    nitrogen_percent : float or array
        Nitrogen, 0 to 0.6 % [%]
    boron_percent : float or array
        Boron, 0 to 0.02 % [%]

    Raises
    ------
    ValueError
        If a content is out of its range.

    Examples
    --------
    >>> Composition(carbon_percent=0.36, manganese_percent=0.95).chromium_percent
    0.0
    """

    carbon_percent: float
    silicon_percent: float = 0.0
    manganese_percent: float = 0.0
    chromium_percent: float = 0.0
    nickel_percent: float = 0.0
    molybdenum_percent: float = 0.0
    copper_percent: float = 0.0
    vanadium_percent: float = 0.0
    niobium_percent: float = 0.0
    nitrogen_percent: float = 0.0
    boron_percent: float = 0.0

    def __post_init__(self):
        """Refuse a content out of its range; keep floats and float arrays."""
        for element, (low, high) in _limits("any steel").items():
            name = f"{element}_percent"
            checked = require_between(element, getattr(self, name), low, high, unit="%")
            object.__setattr__(self, name, checked)


ELEMENTS = tuple(field.name.removesuffix("_percent") for field in fields(Composition))


@cache
def _limits(formula):
    """Return the range of each element that a formula holds for."""
    rows = [row for row in tables.load("weldability_limits") if row.keys["formula"] == formula]
    return {row.name: (float(row.keys["low"]), row.number) for row in rows}


def require_within(composition, formula):
    """Refuse a steel outside the range that a formula holds for.

    Parameters
    ----------
    composition : Composition
        The steel [-]
    formula : str
        Name of the formula in the table of limits [-]

    Returns
    -------
    Composition
        The steel [-]

    Raises
    ------
    ValueError
        If the formula is unknown or a content lies outside its range.

    Notes
    -----
    Sources: yurioka_1987 (printed range of carbon and nitrogen); the other ranges from memory.

    Examples
    --------
    >>> require_within(composition("304-type"), "martensite start")
    Traceback (most recent call last):
    ValueError: carbon for martensite start must be between 0.11 % and 0.6 %, got 0.05 %
    """
    formulas = sorted({row.keys["formula"] for row in tables.load("weldability_limits")})
    for element, (low, high) in _limits(require_choice("formula", formula, formulas)).items():
        content = getattr(composition, f"{element}_percent")
        require_between(f"{element} for {formula}", content, low, high, unit="%")
    return composition


@cache
def _steels():
    """Return for each steel its use and the rows of its elements."""
    found = {}
    for row in tables.load("weldability_compositions"):
        found.setdefault(row.keys["steel"], []).append(row)
    return found


def steel_names(used_for=None):
    """Return the names of the steels, all or those of one use.

    Parameters
    ----------
    used_for : str or None
        ``stud`` or ``rivet``; None for all [-]

    Returns
    -------
    tuple of str
        Names of steels [-]

    Raises
    ------
    ValueError
        If the use is not in the list.

    Examples
    --------
    >>> steel_names("rivet")
    ('36MnB4', '38B2', '33B2', '37MnB5')
    """
    if used_for is None:
        return tuple(_steels())
    require_choice("use", used_for, USES)
    return tuple(name for name, rows in _steels().items() if rows[0].keys["used_for"] == used_for)


def composition(steel, *, end="best"):
    """Return the composition of a steel by its name.

    Parameters
    ----------
    steel : str
        One of ``steel_names()`` [-]
    end : str
        ``best`` for a usual cast, ``low`` or ``high`` for the leanest or richest of the grade [-]

    Returns
    -------
    Composition
        Contents of its elements [-]

    Raises
    ------
    ValueError
        If a name is not in its list.

    Notes
    -----
    Sources: en_10088_1, aisi_309 and en_10263_4, all from memory. A shop hardly knows the steel of a rivet:
    take the range, not the best value.

    Examples
    --------
    >>> composition("36MnB4").carbon_percent
    0.36
    """
    rows = _steels()[require_choice("steel", steel, steel_names())]
    require_choice("end", end, ENDS)
    return Composition(
        **{f"{row.name}_percent": row.number if end == "best" else float(row.keys[end]) for row in rows}
    )


def mix(stud, rivet, *, dilution):
    """Return what the melt of stud and rivet is made of, (1 - D) stud + D rivet.

    Parameters
    ----------
    stud : Composition
        The stud [-]
    rivet : Composition
        The rivet [-]
    dilution : float or array
        Share D of the rivet in the melt, 0 to 1 [-]

    Returns
    -------
    Composition
        The melt; its contents have the shape of the dilution [-]

    Raises
    ------
    ValueError
        If the dilution is out of its range.

    Notes
    -----
    Shares are by mass; by volume they differ by less than one percent for these steels. A stud melt of some
    milliseconds is stirred but not even, so streaks of both lie beside the mean.
    Source: balance of mass.

    Examples
    --------
    >>> round(mix(composition("304-type"), composition("36MnB4"), dilution=0.5).carbon_percent, 3)
    0.205
    """
    share = require_between("dilution", dilution, 0, 1, unit="")
    contents = {}
    for element in ELEMENTS:
        name = f"{element}_percent"
        contents[name] = plain((1 - share) * np.asarray(getattr(stud, name)) + share * getattr(rivet, name))
    return Composition(**contents)
