"""Limits for bond line, coat and metal under the heat of a weld, and whether a weld keeps them.

The limits are practice values and design choices that a shop may change, not published limits.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np

from secondplate.checks import require_at_least, require_choice, require_finite
from secondplate.tables import load

HEAT_WORDS = ("kept", "warn", "stop")
BOND_LINE, COAT, METAL = (row.name for row in load("softening_limits"))


@dataclass(frozen=True, kw_only=True)
class HeatLimit:
    """Limit of one part under heat.

    Parameters
    ----------
    part : str
        Bond line, coat or metal [-]
    warn_above : float
        Value above which to warn: a temperature in C, or an exposure index for the metal [-]
    stop_above : float
        Value above which to stop, at least that to warn [-]
    conditions : str
        What the limit rests on [-]

    Raises
    ------
    ValueError
        If the limits are no numbers or stand in the wrong order.

    Examples
    --------
    >>> typical_heat_limits()["bond line"].word([70, 100, 130]).tolist()
    ['kept', 'warn', 'stop']
    """

    part: str
    warn_above: float
    stop_above: float
    conditions: str = "set by the shop"

    def __post_init__(self):
        """Refuse a stop below the warning."""
        warn = require_finite(f"warning for {self.part}", self.warn_above, unit="")
        require_at_least(f"stop for {self.part}", self.stop_above, warn, unit="")

    def word(self, value):
        """One of ``HEAT_WORDS`` for each value."""
        number = np.asarray(require_finite(f"value for {self.part}", value, unit=""))
        words = np.array(HEAT_WORDS)[1 * (number > self.warn_above) + 1 * (number > self.stop_above)]
        return str(words) if words.ndim == 0 else words


def typical_heat_limits():
    """Return the limits to start from, which a shop may replace.

    Returns
    -------
    Mapping of str to HeatLimit
        Limit by part: bond line and cured coat in C, metal as exposure index [-]

    Notes
    -----
    Source: adhesive_ageing_2022 and adhesive_toughness_2021 (bond line: tough up to 80 C, no change up to
    120 C), paint_bake_2009 (coat), own_judgement (metal). Where the maker of the adhesive or the vehicle
    gives limits, those hold.

    Examples
    --------
    >>> typical_heat_limits()["cured coat"].stop_above
    180.0
    """
    return MappingProxyType(
        {
            row.name: HeatLimit(
                part=row.name,
                warn_above=float(row.keys["warn"]),
                stop_above=row.number,
                conditions=row.conditions,
            )
            for row in load("softening_limits")
        }
    )


def judge_heat(found: Mapping, *, heat_limits=None):
    """Return for each part whether its limit under heat was kept.

    Parameters
    ----------
    found : Mapping of str to float or array
        Highest temperature of bond line and coat in C, exposure index of the metal, by part [-]
    heat_limits : Mapping of str to HeatLimit or None
        Limits by part; the typical ones unless told [-]

    Returns
    -------
    dict of str to str or numpy.ndarray
        One of ``HEAT_WORDS`` by part [-]

    Raises
    ------
    ValueError
        If a part has no limit or a value is no finite number.

    Notes
    -----
    Source: see ``typical_heat_limits``.

    Examples
    --------
    >>> judge_heat({"bond line": 95, "6xxx-T6 metal": 0.01})
    {'bond line': 'warn', '6xxx-T6 metal': 'kept'}
    """
    limits = typical_heat_limits() if heat_limits is None else heat_limits
    return {
        part: limits[require_choice("part under heat", part, tuple(limits))].word(value)
        for part, value in found.items()
    }
