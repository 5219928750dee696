"""Which stud goes on which base, and with which polarity, rule beside rule."""

from dataclasses import dataclass

from secondplate import tables
from secondplate.checks import require_choice
from secondplate.weld_rules import listed

STUD_MATERIALS = ("austenitic stainless", "carbon steel", "aluminium")
BASES = ("steel rivet head", "steel sheet", "aluminium sheet")


@dataclass(frozen=True, kw_only=True)
class RuledChoice:
    """One rule's choice, with where the rule comes from.

    Parameters
    ----------
    quantity : str
        What is chosen [-]
    choice : str
        What the rule chooses [-]
    rule : str
        The rule in a few words [-]
    source : str
        Id in the bibliography [-]
    locator : str
        Place in the source [-]
    basis : str
        Kind of knowledge, one of ``tables.BASES`` [-]

    Examples
    --------
    >>> polarity(stud_material="aluminium", base="aluminium sheet").rules[0].choice
    'stud positive'
    """

    quantity: str
    choice: str
    rule: str
    source: str
    locator: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class ChoiceAdvice:
    """All rules held for one choice, what they agree on, and what they do not.

    Parameters
    ----------
    quantity : str
        What is chosen [-]
    rules : tuple of RuledChoice
        The rules side by side [-]
    agreed : str or None
        The choice of all rules, None where they differ [-]
    contradiction : str
        One sentence on what disagrees and why; empty where the rules agree [-]

    Examples
    --------
    >>> polarity(stud_material="aluminium", base="aluminium sheet").agreed
    'stud positive'
    """

    quantity: str
    rules: tuple[RuledChoice, ...]
    agreed: str | None
    contradiction: str


def allowed_bases(stud_material):
    """Return what a stud can be arc welded to: steel to steel, aluminium to aluminium.

    Parameters
    ----------
    stud_material : str
        One of ``STUD_MATERIALS`` [-]

    Returns
    -------
    tuple of str
        Names of ``BASES`` [-]

    Raises
    ------
    ValueError
        If the material is not in the list.

    Notes
    -----
    Common practice, no source: an arc between steel and aluminium leaves a brittle layer.

    Examples
    --------
    >>> allowed_bases("aluminium")
    ('aluminium sheet',)
    """
    require_choice("stud material", stud_material, STUD_MATERIALS)
    return ("aluminium sheet",) if stud_material == "aluminium" else ("steel rivet head", "steel sheet")


def polarity(*, stud_material, base):
    """Return the rules on the polarity of the stud.

    Parameters
    ----------
    stud_material : str
        One of ``STUD_MATERIALS`` [-]
    base : str
        One of ``BASES`` that the stud can be welded to [-]

    Returns
    -------
    ChoiceAdvice
        The rules side by side [-]

    Raises
    ------
    ValueError
        If a name is not in its list or the two cannot be welded.

    Notes
    -----
    Sources: short_cycle_page, drawn_arc_ferrule_page, us_stud_time_table, polarity_pages,
    us_stud_hints_manual, stud_manual_process page 42; common practice.

    Examples
    --------
    >>> polarity(stud_material="carbon steel", base="steel rivet head").agreed is None
    True
    """
    require_choice(f"base for a stud of {stud_material}", base, allowed_bases(stud_material))
    rules = tuple(
        RuledChoice(
            quantity="polarity",
            choice=row.value,
            rule=row.keys["rule"],
            source=row.source,
            locator=row.locator,
            basis=row.basis,
        )
        for row in tables.load("polarity_rules")
        if stud_material in listed(row, "stud_material") and base in listed(row, "base")
    )
    choices = {}
    for rule in rules:
        choices.setdefault(rule.choice, rule)
    if len(choices) == 1:
        return ChoiceAdvice(quantity="polarity", rules=rules, agreed=rules[0].choice, contradiction="")
    general, other = tuple(choices.values())[:2]
    contradiction = (
        f"The general rule is {general.choice} ({general.rule}), but {other.rule}: set what the chart of the "
        "equipment says and prove it with a test stud."
    )
    return ChoiceAdvice(quantity="polarity", rules=rules, agreed=None, contradiction=contradiction)
