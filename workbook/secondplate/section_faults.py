"""Faults of a set joint that a section shows: what is seen, and what it usually comes from."""

from dataclasses import dataclass

from secondplate import tables
from secondplate.checks import require_choice

SOUND = "sound"


@dataclass(frozen=True, kw_only=True)
class Fault:
    """One fault, or the sound joint.

    Parameters
    ----------
    name : str
        Short name [-]
    shows_in : str
        The measure in which it shows [-]
    seen : str
        What is seen [-]
    cause : str
        What it usually comes from [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> fault("head proud").shows_in
    'head height'
    """

    name: str
    shows_in: str
    seen: str
    cause: str
    source: str
    locator: str
    basis: str


FAULTS = tuple(
    Fault(
        name=row.name,
        shows_in=row.value,
        seen=row.keys["seen"],
        cause=row.keys["cause"],
        source=row.source,
        locator=row.locator,
        basis=row.basis,
    )
    for row in tables.load("section_faults")
)
FAULT_NAMES = tuple(item.name for item in FAULTS)


def fault(name):
    """Return a fault by its name.

    Parameters
    ----------
    name : str
        One of ``FAULT_NAMES`` [-]

    Returns
    -------
    Fault
        The fault [-]

    Raises
    ------
    ValueError
        If the name is not in the list.

    Notes
    -----
    Common practice, no source: table section_faults.

    Examples
    --------
    >>> fault("thin bottom").seen
    'The second plate is nearly cut through under the tail'
    """
    require_choice("fault", name, FAULT_NAMES)
    return FAULTS[FAULT_NAMES.index(name)]
