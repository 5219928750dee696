"""Rules for rivet length and stack: laid side by side, and what each says of a given stack.

The rules disagree by more than 2 mm of rivet length; the library shows them and chooses none. Leaves out
sheets of fibre laminate, and everything that only a trial with a section can show.
"""

from dataclasses import dataclass

from secondplate import tables
from secondplate.advice import RuledBand, side_by_side
from secondplate.bands import Band
from secondplate.checks import require_above, require_choice
from secondplate.rivet import piercing_force_n, rivet_axial_capacity_n

_ALUMINIUM = ("aluminium", "cast aluminium")


@dataclass(frozen=True, kw_only=True)
class Finding:
    """What one rule says of a stack.

    Parameters
    ----------
    rule : str
        Name of the rule [-]
    kept : bool or None
        Whether it is kept; None where a value it needs is not known [-]
    sentence : str
        What was found, with the limit [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> from secondplate.rivet import Sheet, Stack
    >>> thin, thick = Sheet(thickness_mm=1.0), Sheet(thickness_mm=2.5)
    >>> stack_findings(Stack(top=thick, second=thin))[0].kept
    False
    """

    rule: str
    kept: bool | None
    sentence: str
    source: str
    locator: str
    basis: str


def _suits(row, stack, shank_diameter_mm):
    """Tell whether a length rule was made for this stack and rivet."""
    families = (row.keys["top"], stack.top.family), (row.keys["second"], stack.second.family)
    if any(wanted not in ("any", family) for wanted, family in families):
        return False
    if row.keys["shanks_mm"] == "any":
        return True
    least, most = map(float, row.keys["shanks_mm"].split(" to "))
    return least <= shank_diameter_mm <= most


def rivet_length_advice_mm(stack, *, shank_diameter_mm, only_suiting=False):
    """Return what the rules give for the rivet length: L = stack + an addition, rule beside rule.

    Parameters
    ----------
    stack : Stack
        The sheets, their thickness single numbers; adhesive is not counted [-]
    shank_diameter_mm : float
        Outer diameter of the rivet's shank, above 0 [mm]
    only_suiting : bool
        Whether rules made for other sheets or rivets are left out [-]

    Returns
    -------
    Advice
        The rules side by side; what they agree on is None where they do not meet [mm]

    Raises
    ------
    ValueError
        If the diameter is not above 0.

    Notes
    -----
    Sources: rivet_features_page (stack + 0.75 D), steel_on_casting (0.5 to 1.5 mm), rivet_length_2024 (a
    series), rivet_literature (about 2 mm, from memory). Only a section of a trial joint decides.

    Examples
    --------
    >>> from secondplate.rivet import Sheet, Stack
    >>> sheet = Sheet(thickness_mm=2.0)
    >>> advice = rivet_length_advice_mm(Stack(top=sheet, second=sheet), shank_diameter_mm=5.0)
    >>> [rule.band.best for rule in advice.rules]
    [7.75, 5.0, 6.5, 6.0]
    >>> advice.agreed is None
    True
    """
    diameter = require_above("shank diameter", shank_diameter_mm, 0, unit="mm")
    rows = [
        row
        for row in tables.load("rivet_length_rules")
        if not only_suiting or _suits(row, stack, shank_diameter_mm)
    ]
    rules = tuple(_length_rule(row, stack.total_mm, diameter) for row in rows)
    reason = "each was made for its own sheets and rivets, so a section of a trial joint decides"
    return side_by_side("rivet length", "mm", rules, reason=reason)


def _length_rule(row, total_mm, diameter):
    """Return one length rule as a band."""
    base = total_mm + float(row.keys["diameters"]) * diameter
    band = Band(
        low=base + float(row.keys["low"]),
        best=base + row.number,
        high=base + float(row.keys["high"]),
        basis=row.conditions,
    )
    return RuledBand(
        quantity="rivet length",
        band=band,
        rule=row.name,
        source=row.source,
        locator=row.locator,
        basis=row.basis,
    )


def _values(stack):
    """Return what the stack rules look at: name of the quantity to a list of values, None where unknown."""
    top, second = stack.top, stack.second
    aluminium = [sheet for sheet in stack.sheets if sheet.family in _ALUMINIUM]
    steel = [sheet for sheet in stack.sheets if sheet.family == "steel"]
    known = None not in (top.elongation_percent, second.elongation_percent)
    share = second.thickness_mm / stack.total_mm
    return {
        "second share": [share],
        "second share preferred": [share],
        "thickness ratio": [second.thickness_mm / top.thickness_mm],
        "strength ratio": [top.tensile_strength_mpa / second.tensile_strength_mpa],
        "elongation ratio": [second.elongation_percent / top.elongation_percent if known else None],
        "total thickness": [stack.total_mm],
        "aluminium thickness": [sheet.thickness_mm for sheet in aluminium],
        "aluminium elongation": [sheet.elongation_percent for sheet in aluminium],
        "steel strength": [sheet.tensile_strength_mpa for sheet in steel],
        "second steel strength": [second.tensile_strength_mpa] if second.family == "steel" else [],
    }


_GRACE = 1e-9  # thicknesses in tenths that stand exactly on a limit are not moved by their last binary digit
_COMPARE = {
    "above": lambda value, limit: value > limit + _GRACE,
    "at least": lambda value, limit: value >= limit - _GRACE,
    "at most": lambda value, limit: value <= limit + _GRACE,
    "below": lambda value, limit: value < limit - _GRACE,
}


def _finding(row, values):
    """Return what one rule says of some values."""
    known = [value for value in values if value is not None]
    broken = [value for value in known if not _COMPARE[row.keys["comparison"]](value, row.number)]
    kept = False if broken else (None if len(known) < len(values) else True)
    unit = "" if row.unit == "-" else f" {row.unit}"
    got = ", ".join(f"{value:.3g}{unit}" for value in (broken or known)) or "not known"
    sentence = f"{row.conditions}: must be {row.keys['comparison']} {row.number:.3g}{unit}, is {got}"
    return Finding(
        rule=row.name,
        kept=kept,
        sentence=sentence[0].upper() + sentence[1:],
        source=row.source,
        locator=row.locator,
        basis=row.basis,
    )


def stack_findings(stack):
    """Return what each rule says of a stack: thin to thick, hard to soft, one third, thicknesses, strengths.

    Parameters
    ----------
    stack : Stack
        The sheets, their values single numbers [-]

    Returns
    -------
    tuple of Finding
        One finding for each rule that applies to the sheets [-]

    Notes
    -----
    Sources: rivet_stack_article, joining_methods_table, strong_second_sheet_2022; rivet_literature from
    memory. A broken rule makes a joint doubtful and not impossible; ``reasons_against`` tells the latter.

    Examples
    --------
    >>> from secondplate.rivet import Sheet, Stack
    >>> found = stack_findings(Stack(top=Sheet(thickness_mm=1.0), second=Sheet(thickness_mm=2.5)))
    >>> [finding.rule for finding in found if finding.kept is None]
    ['ductile at the bottom', 'aluminium elongation']
    """
    values = _values(stack)
    return tuple(
        _finding(row, values[row.keys["about"]])
        for row in tables.load("stack_rules")
        if values.get(row.keys["about"])
    )


# Rules whose breach rules a stack out; the others make it doubtful.
_DECISIVE = ("one third", "whole stack", "aluminium thickness", "aluminium elongation", "steel strength")


def reasons_against(stack, rivet=None):
    """Return why a stack cannot be riveted, one sentence a reason.

    Parameters
    ----------
    stack : Stack
        The sheets, their values single numbers [-]
    rivet : Rivet or None
        A rivet that is meant for it, None for the stack alone [-]

    Returns
    -------
    tuple of str
        The reasons, none where nothing speaks against a trial [-]

    Notes
    -----
    Sources: rivet_stack_article (one third), joining_methods_table (limits). That the leg collapses where
    piercing asks for more force than its section bears is derived here, with the estimates of ``rivet``.

    Examples
    --------
    >>> from secondplate.rivet import Rivet, Sheet, Stack
    >>> hard = Sheet(thickness_mm=1.7, family="steel", tensile_strength_mpa=1500.0)
    >>> soft = Sheet(thickness_mm=2.0)
    >>> rivet = Rivet(rivet_length_mm=6.0, hardness_hv=280.0)
    >>> print(*reasons_against(Stack(top=hard, second=soft), rivet))
    Leg collapses: shearing the top plate takes 24.5 kN and the leg bears 12.1 kN
    """
    reasons = [
        f"{finding.rule.capitalize()} broken: {finding.sentence}"
        for finding in stack_findings(stack)
        if finding.rule in _DECISIVE and finding.kept is False
    ]
    if stack.second.family == "polymer":
        reasons.append("Second plate is no metal: the tail has nothing ductile to spread in")
    if rivet is not None:
        reasons += _against_rivet(stack, rivet)
    return tuple(reasons)


def _against_rivet(stack, rivet):
    """Return why this rivet cannot join the stack."""
    reasons = []
    through = stack.total_mm - stack.second.thickness_mm
    if rivet.rivet_length_mm <= through:
        got = f"{rivet.rivet_length_mm:.3g} mm does not reach through the {through:.3g} mm"
        reasons.append(f"Rivet too short: {got} above the second plate")
    need = piercing_force_n(
        shank_diameter_mm=rivet.shank_diameter_mm,
        thickness_mm=stack.top.thickness_mm,
        tensile_strength_mpa=stack.top.tensile_strength_mpa,
    )
    bears = rivet_axial_capacity_n(rivet)
    if need >= bears:
        reasons.append(
            f"Leg collapses: shearing the top plate takes {need / 1000:.1f} kN and the leg bears "
            f"{bears / 1000:.1f} kN"
        )
    return reasons


def flange_findings(*, family, edge_distance_mm, flange_width_mm, spacing_mm):
    """Return what one published table says of the room for a rivet on a flange.

    Parameters
    ----------
    family : str
        aluminium or steel [-]
    edge_distance_mm : float
        From the middle of the rivet to the edge, above 0 [mm]
    flange_width_mm : float
        Width of the flange, above 0 [mm]
    spacing_mm : float
        From rivet to rivet, above 0 [mm]

    Returns
    -------
    tuple of Finding
        Edge, width and spacing [-]

    Raises
    ------
    ValueError
        If the family is not in the list or a length is not above 0.

    Notes
    -----
    Source: joining_methods_table; its symbols were presumed to mean edge distance and flange width. The
    vehicle maker's spacing comes first.

    Examples
    --------
    >>> found = flange_findings(family="aluminium", edge_distance_mm=10, flange_width_mm=25, spacing_mm=30)
    >>> [finding.kept for finding in found]
    [False, True, True]
    """
    require_choice("family", family, ("aluminium", "steel"))
    values = {
        f"{family} edge": require_above("edge distance", edge_distance_mm, 0, unit="mm"),
        f"{family} flange": require_above("flange width", flange_width_mm, 0, unit="mm"),
        "spacing": require_above("spacing of rivets", spacing_mm, 0, unit="mm"),
    }
    rows = (row for row in tables.load("stack_rules") if row.keys["about"] in values)
    return tuple(_finding(row, [values[row.keys["about"]]]) for row in rows)
