"""Looking at stud welds: the check list before the first weld, signs with their causes, acceptance facts.

Facts of different standards stand side by side. What a break looks like in numbers is left out.
"""

from dataclasses import dataclass

from secondplate import tables
from secondplate.advice import RuledBand, side_by_side
from secondplate.bands import Band
from secondplate.checks import require_above, require_choice


@dataclass(frozen=True, kw_only=True)
class Check:
    """One check before welding.

    Parameters
    ----------
    id : str
        Short name, never changed once published [-]
    text : str
        What must be so [-]
    why : str
        What goes wrong otherwise [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> PRE_WELD_CHECKS[0].id
    'isolate'
    """

    id: str
    text: str
    why: str
    source: str
    locator: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class Sign:
    """One thing to be seen on a weld, with its cause and correction.

    Parameters
    ----------
    id : str
        Short name, never changed once published [-]
    seen_on : str
        Where it is seen: collar, fracture or plate [-]
    sign : str
        What is seen [-]
    cause : str
        What it comes from [-]
    correction : str
        What to change; empty where nothing [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]
    note : str
        Contradictions and cautions; empty where none [-]

    Examples
    --------
    >>> weld_sign("jagged").correction
    'Shorten the time'
    """

    id: str
    seen_on: str
    sign: str
    cause: str
    correction: str
    source: str
    locator: str
    basis: str
    note: str


@dataclass(frozen=True, kw_only=True)
class AcceptanceFact:
    """One figure that a standard, a paper or the trade asks of a stud weld.

    Parameters
    ----------
    name : str
        What is asked [-]
    value : float
        The figure [-]
    unit : str
        Its unit [-]
    conditions : str
        For what it holds [-]
    purpose : str
        One of ``PURPOSES`` [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> acceptance_facts("suspect stud")[0].value
    15.0
    """

    name: str
    value: float
    unit: str
    conditions: str
    purpose: str
    source: str
    locator: str
    basis: str


def _origin(row):
    """Return where a row comes from as keyword arguments."""
    return {"source": row.source, "locator": row.locator, "basis": row.basis}


def _none_as_empty(cell):
    """Turn the mark that stands for none into nothing."""
    return "" if cell in ("-", "none") else cell


def _read_checks():
    """Read the check list in the order of its numbers."""
    rows = sorted(tables.load("pre_weld_checks"), key=lambda row: row.number)
    return tuple(
        Check(id=row.name, text=row.keys["text"], why=row.keys["why"], **_origin(row)) for row in rows
    )


def _read_signs():
    """Read the signs in the order of the table."""
    return tuple(
        Sign(
            id=row.name,
            seen_on=row.keys["seen_on"],
            sign=row.value,
            cause=row.keys["cause"],
            correction=_none_as_empty(row.keys["correction"]),
            note=_none_as_empty(row.keys["note"]),
            **_origin(row),
        )
        for row in tables.load("weld_signs")
    )


def _read_facts():
    """Read the acceptance facts in the order of the table."""
    return tuple(
        AcceptanceFact(
            name=row.name,
            value=row.number,
            unit=row.unit,
            conditions=row.conditions,
            purpose=row.keys["purpose"],
            **_origin(row),
        )
        for row in tables.load("acceptance")
    )


PRE_WELD_CHECKS = _read_checks()
WELD_SIGNS = _read_signs()
COLLAR_SIGNS = tuple(sign for sign in WELD_SIGNS if sign.seen_on == "collar")
ACCEPTANCE_FACTS = _read_facts()
PURPOSES = tuple(dict.fromkeys(fact.purpose for fact in ACCEPTANCE_FACTS))
_SIGN_BY_ID = {sign.id: sign for sign in WELD_SIGNS}
# A change of any of these asks for new test studs, AWS D1.1 7.7.1 as quoted in TI 809-26.
NEW_TEST_AFTER = ("voltage", "current", "time", "lift", "plunge")
LENGTH_VERDICTS = ("too short", "within tolerance", "too long")


def weld_sign(sign_id):
    """Return a sign by its id.

    Parameters
    ----------
    sign_id : str
        Id of one of ``WELD_SIGNS`` [-]

    Returns
    -------
    Sign
        The sign [-]

    Raises
    ------
    ValueError
        If the id is not in the list.

    Notes
    -----
    Sources: table weld_signs; stud_manual_inspection, stud_trouble_pages, arc_blow_page.

    Examples
    --------
    >>> weld_sign("cold").cause
    'Too little energy, or damp'
    """
    return _SIGN_BY_ID[require_choice("sign", sign_id, tuple(_SIGN_BY_ID))]


def acceptance_facts(purpose):
    """Return what the sources ask of a stud weld for one purpose, side by side.

    Parameters
    ----------
    purpose : str
        One of ``PURPOSES`` [-]

    Returns
    -------
    tuple of AcceptanceFact
        The facts in the order of the table [-]

    Raises
    ------
    ValueError
        If the purpose is not in the list.

    Notes
    -----
    Source: table acceptance, each row with its own source and basis.

    Examples
    --------
    >>> [fact.value for fact in acceptance_facts("before production") if fact.name == "bend angle"]
    [30.0, 60.0]
    """
    require_choice("purpose", purpose, PURPOSES)
    return tuple(fact for fact in ACCEPTANCE_FACTS if fact.purpose == purpose)


def bend_test_angle_deg(*, purpose):
    """Return how far a test stud is bent, rule beside rule.

    Parameters
    ----------
    purpose : str
        Before production, suspect stud or qualification [-]

    Returns
    -------
    Advice
        The rules side by side, each a single angle [deg]

    Raises
    ------
    ValueError
        If the purpose is not in the list.

    Notes
    -----
    Sources: ti_809_26 (quotes AWS D1.1 7.7.1 and 7.8); iso_14555 and aws_d1_1 from memory.
    A stud that shall draw a rivet is pulled, not bent: a bent stud pulls askew.

    Examples
    --------
    >>> bend_test_angle_deg(purpose="suspect stud").agreed.best
    15.0
    """
    require_choice("purpose", purpose, ("before production", "suspect stud", "qualification"))
    rules = tuple(
        RuledBand(
            quantity="bend angle",
            band=Band(low=fact.value, best=fact.value, high=fact.value, basis=fact.conditions),
            rule=fact.conditions.split(";")[0],
            source=fact.source,
            locator=fact.locator,
            basis=fact.basis,
        )
        for fact in acceptance_facts(purpose)
        if fact.name == "bend angle"
    )
    reason = "each standard has its own angle, so bend as the agreed one says"
    return side_by_side("bend angle", "deg", rules, reason=reason)


def length_verdict(*, expected_length_mm, measured_length_mm):
    """Judge the length of a stud after welding against the printed tolerance.

    A stud that stays too long has plunged too little, one too short has melted too much.

    Parameters
    ----------
    expected_length_mm : float
        Length that a good weld of this stud leaves, above 0 [mm]
    measured_length_mm : float
        Length measured after welding, above 0 [mm]

    Returns
    -------
    str
        One of ``LENGTH_VERDICTS``; the ends of the tolerance count as within [-]

    Raises
    ------
    ValueError
        If a length is not above 0.

    Notes
    -----
    Source: stud_manual_inspection page 44, 1 mm either way.

    Examples
    --------
    >>> length_verdict(expected_length_mm=20, measured_length_mm=21.5)
    'too long'
    """
    expected = require_above("expected length", expected_length_mm, 0, unit="mm")
    measured = require_above("measured length", measured_length_mm, 0, unit="mm")
    tolerance = next(fact.value for fact in ACCEPTANCE_FACTS if fact.name == "length tolerance")
    # A micrometre of grace, so that 21.0 - 20.0 is not beyond 1.0 by the last binary digit.
    if abs(measured - expected) <= tolerance + 1e-3:
        return "within tolerance"
    return "too long" if measured > expected else "too short"
