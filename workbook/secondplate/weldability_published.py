"""What has been published for and against a stainless stud on a boron-steel rivet, with hardnesses."""

from dataclasses import dataclass
from functools import cache

from secondplate import tables
from secondplate.checks import require_choice
from secondplate.weldability_composition import composition, steel_names

SURFACES = ("bare", "coated")


@dataclass(frozen=True, kw_only=True)
class Reason:
    """One reason for or against a weld, in our words, with where it comes from.

    Parameters
    ----------
    text : str
        The reason in one sentence [-]
    bears : str
        ``against`` or ``for`` [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> published_warnings("36MnB4", surface="bare")[0].source
    'stud_torque_page'
    """

    text: str
    bears: str
    source: str
    locator: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class PublishedHardness:
    """Hardness that was measured or is asked for, to set beside a computed one.

    Parameters
    ----------
    name : str
        Which weld or rivet [-]
    what : str
        ``weld`` or ``rivet`` [-]
    low_hv : float or None
        Lowest hardness, None where only the highest is given [HV]
    high_hv : float
        Highest hardness [HV]
    conditions : str
        For what it holds [-]
    source : str
        Id in the bibliography [-]

    Examples
    --------
    >>> published_hardnesses()[1].high_hv
    575.0
    """

    name: str
    what: str
    low_hv: float | None
    high_hv: float
    conditions: str
    source: str


@cache
def published_hardnesses():
    """Return published hardnesses of stud welds and of rivets.

    Returns
    -------
    tuple of PublishedHardness
        In the order of the table [-]

    Notes
    -----
    Sources: arc_stud_420_316l, arc_stud_309_1020, rivet_hardness_patent; common practice.

    Examples
    --------
    >>> [found.high_hv for found in published_hardnesses() if found.what == "weld"]
    [633.0, 575.0]
    """
    return tuple(
        PublishedHardness(
            name=row.name,
            what=row.keys["what"],
            low_hv=None if row.keys["low"] == "-" else float(row.keys["low"]),
            high_hv=row.number,
            conditions=row.conditions,
            source=row.source,
        )
        for row in tables.load("weldability_hardnesses")
    )


def published_warnings(rivet, *, surface):
    """Return what has been published for and against a stud on such a rivet.

    A rule counts when its range of carbon meets that of the grade, so a steel on the border gets both sides.

    Parameters
    ----------
    rivet : str
        One of ``steel_names("rivet")`` [-]
    surface : str
        ``bare`` when the head was ground clean, ``coated`` when not [-]

    Returns
    -------
    tuple of Reason
        Those against and those for, in the order of the table [-]

    Raises
    ------
    ValueError
        If a name is not in its list.

    Notes
    -----
    Sources: stud_torque_page, cold_cracking_leaflet, drawn_arc_toughness, pins_10b22, arc_stud_420_316l,
    ahss_stud_welding; common practice.

    Examples
    --------
    >>> {reason.bears for reason in published_warnings("36MnB4", surface="bare")} == {"against", "for"}
    True
    """
    require_choice("rivet", rivet, steel_names("rivet"))
    require_choice("surface", surface, SURFACES)
    least, most = (composition(rivet, end=end).carbon_percent for end in ("low", "high"))
    return tuple(
        Reason(
            text=row.value,
            bears=row.keys["bears"],
            source=row.source,
            locator=row.locator,
            basis=row.basis,
        )
        for row in tables.load("weldability_warnings")
        if row.keys["surface"] in ("any", surface)
        and float(row.keys["carbon_from"]) <= most
        and float(row.keys["carbon_to"]) >= least
    )


@cache
def levers():
    """Return what a shop can do about a hard and brittle stud weld, and what it should leave.

    Returns
    -------
    tuple of tables.Row
        Rows whose ``value`` is one sentence each, with source and basis [-]

    Notes
    -----
    Sources: cold_cracking_leaflet; common practice for the rest.

    Examples
    --------
    >>> levers()[0].name
    'little heat'
    """
    return tables.load("weldability_levers")
