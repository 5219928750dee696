"""Sampling plans as standards print them: by counting failures, and by measured forces.

The tables hold what was seen of them. A plan judges lots of a process by their long run; it does not say that
the row on one car is good.
"""

from dataclasses import dataclass

from secondplate import tables
from secondplate.checks import require_choice, require_finite
from secondplate.trials_checks import require_data, whole

_ATTRIBUTES = tables.load("sampling_plans")
_VARIABLES = tables.load("variables_plans")
_LOTS = {(int(row.keys["lot_from"]), int(row.keys["lot_to"])): row.keys["letter"] for row in _ATTRIBUTES}


@dataclass(frozen=True, kw_only=True)
class AttributesPlan:
    """Plan by counting: pull so many, accept the lot with at most so many failures.

    Parameters
    ----------
    letter : str
        Code letter of the lot size [-]
    pulls : int
        Pulls n [-]
    quality_limit : float
        Failure share AQL that is still accepted in the long run [%]
    accepted_failures : int
        Most failures Ac at which the lot is accepted; one more rejects it [-]

    Examples
    --------
    >>> plans_for_lot(40)[1].accepted_failures
    1
    """

    letter: str
    pulls: int
    quality_limit: float
    accepted_failures: int


def plans_for_lot(lot):
    """Return the plans by counting for a lot, as far as the table was seen.

    Parameters
    ----------
    lot : int
        Pieces in the lot, 2 to 280 [-]

    Returns
    -------
    tuple of AttributesPlan
        Plans in the order of the quality limit [-]

    Raises
    ------
    ValueError
        If the lot is no whole number in its range.

    Notes
    -----
    Source: iso_2859_1, general level II, single normal plans. Between the limits printed here the table has
    arrows: take the plan they point to.

    Examples
    --------
    >>> [(plan.pulls, plan.quality_limit, plan.accepted_failures) for plan in plans_for_lot(40)]
    [(8, 1.5, 0), (8, 6.5, 1), (8, 10.0, 2)]
    """
    size = int(whole("lot", lot, least=2, most=max(last for _, last in _LOTS)))
    letter = next(letter for (first, last), letter in _LOTS.items() if first <= size <= last)
    return tuple(
        AttributesPlan(
            letter=letter,
            pulls=int(row.keys["pulls"]),
            quality_limit=float(row.keys["quality_limit"]),
            accepted_failures=int(row.number),
        )
        for row in _ATTRIBUTES
        if row.keys["letter"] == letter
    )


@dataclass(frozen=True, kw_only=True)
class VariablesPlan:
    """Plan by measured forces: accept where ``(mean - limit) / s`` is at least k.

    Parameters
    ----------
    letter : str
        Code letter [-]
    pulls : int
        Pulls n [-]
    quality_limit : float
        Failure share AQL that is still accepted in the long run [%]
    acceptance_factor : float
        Factor k [-]

    Examples
    --------
    >>> variables_plan("D", quality_limit=2.5).acceptance_factor
    1.24
    """

    letter: str
    pulls: int
    quality_limit: float
    acceptance_factor: float

    def quality(self, forces_n, *, least_n):
        """Return ``(mean - limit) / s`` of measured forces against the least force that is wanted."""
        forces = require_data("pull forces", forces_n, unit="N", least=2)
        least = require_finite("least force", least_n, unit="N")
        if forces.size != self.pulls:
            message = f"pull forces must be the {self.pulls} of the plan, got {forces.size}"
            raise ValueError(message)
        if forces.min() == forces.max():
            message = f"pull forces must differ, got {forces.size} times {forces[0]:.6g} N"
            raise ValueError(message)
        return float((forces.mean() - least) / forces.std(ddof=1))

    def accepts(self, forces_n, *, least_n):
        """Tell whether measured forces are accepted."""
        return self.quality(forces_n, least_n=least_n) >= self.acceptance_factor


def variables_plan(letter, *, quality_limit):
    """Return the plan by measured forces for a code letter, scatter unknown, one limit.

    Parameters
    ----------
    letter : str
        Code letter, B to G [-]
    quality_limit : float
        One of the quality limits that the table was seen for [%]

    Returns
    -------
    VariablesPlan
        The plan [-]

    Raises
    ------
    ValueError
        If the letter or quality limit is not in the table.

    Notes
    -----
    Source: mil_std_414, Table B-1, form 1, normal inspection. ISO 3951-1 has other numbers.

    Examples
    --------
    >>> variables_plan("B", quality_limit=4.0).pulls
    3
    """
    require_choice("code letter", letter, tuple(dict.fromkeys(row.keys["letter"] for row in _VARIABLES)))
    rows = {float(row.keys["quality_limit"]): row for row in _VARIABLES if row.keys["letter"] == letter}
    limit = require_finite("quality limit", quality_limit, unit="%")
    if limit not in rows:
        seen = ", ".join(f"{each:g} %" for each in rows)
        message = f"quality limit must be one of {seen} for the letter {letter}, got {limit:g} %"
        raise ValueError(message)
    row = rows[limit]
    return VariablesPlan(
        letter=letter,
        pulls=int(row.keys["pulls"]),
        quality_limit=limit,
        acceptance_factor=row.number,
    )
