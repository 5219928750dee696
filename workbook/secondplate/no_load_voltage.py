"""Most voltage that a welding power source may show before the arc burns, by where and how it is used.

A shock counts before the weld: the narrow, wet or metal place decides. The manual and local law come first.
"""

from dataclasses import dataclass
from types import MappingProxyType

from secondplate.checks import require_choice
from secondplate.tables import load


@dataclass(frozen=True, kw_only=True)
class NoLoadLimits:
    """Limits of the no-load voltage in one kind of use.

    Parameters
    ----------
    direct_peak_v : float
        Peak of a direct voltage [V]
    alternating_peak_v : float
        Peak of an alternating voltage [V]
    alternating_rms_v : float
        Effective alternating voltage [V]

    Examples
    --------
    >>> no_load_limits("increased risk").alternating_rms_v
    48.0
    """

    direct_peak_v: float
    alternating_peak_v: float
    alternating_rms_v: float


def _limits():
    """Join the rows of each kind of use."""
    found = {}
    for row in load("no_load_voltages"):
        found.setdefault(row.name, {})[row.keys["current"]] = row.number
    return MappingProxyType({use: NoLoadLimits(**numbers) for use, numbers in found.items()})


_LIMITS = _limits()
USES_OF_A_SOURCE = tuple(_LIMITS)


def no_load_limits(use):
    """Return the limits of the no-load voltage of a welding power source.

    Parameters
    ----------
    use : str
        One of ``USES_OF_A_SOURCE``; a car body is a place all of metal: increased risk [-]

    Returns
    -------
    NoLoadLimits
        Direct and alternating limits [-]

    Raises
    ------
    ValueError
        If the use is unknown.

    Notes
    -----
    Source: iec_60974_1, no-load voltage; that a car body counts as increased risk is own_judgement.

    Examples
    --------
    >>> no_load_limits("no increased risk")
    NoLoadLimits(direct_peak_v=113.0, alternating_peak_v=113.0, alternating_rms_v=80.0)
    """
    return _LIMITS[require_choice("use", use, USES_OF_A_SOURCE)]
