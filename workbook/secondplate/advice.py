"""Rules laid side by side: each with its origin, what all of them share, and what disagrees and why.

It judges nothing; where rules do not meet, no value is made up between them.
"""

from dataclasses import dataclass

from secondplate.bands import Band


@dataclass(frozen=True, kw_only=True)
class RuledBand:
    """One rule's band for one quantity, with where the rule comes from.

    Parameters
    ----------
    quantity : str
        What the band is for: current, time, lift, protrusion, flange or minimum sheet [-]
    band : Band
        Lowest, best and highest value, in the unit of the advice that holds it [-]
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
    >>> band = Band(low=27, best=30, high=33, basis="10 % either way")
    >>> rule = RuledBand(quantity="time", band=band, rule="shop setting", source="practice", locator="none",
    ...                  basis="common practice")
    >>> rule.band.best
    30
    """

    quantity: str
    band: Band
    rule: str
    source: str
    locator: str
    basis: str


@dataclass(frozen=True, kw_only=True)
class Advice:
    """All rules held for one quantity, what they agree on, and what they do not.

    Parameters
    ----------
    quantity : str
        What the advice is for [-]
    unit : str
        Unit of all its bands [-]
    rules : tuple of RuledBand
        The rules side by side; empty where none is held [-]
    agreed : Band or None
        What all rules share, its best the middle; None where they do not meet [-]
    contradiction : str
        One sentence on what disagrees and why; empty where the rules agree [-]

    Examples
    --------
    >>> side_by_side("lift", "mm", (), reason="-").agreed is None
    True
    """

    quantity: str
    unit: str
    rules: tuple[RuledBand, ...]
    agreed: Band | None
    contradiction: str

    def places(self, value):
        """Tell for each rule whether a value lies ``below``, ``inside`` or ``above`` its band."""
        return tuple((rule, place(rule.band, value)) for rule in self.rules)


def place(band, value):
    """Tell where a value lies against a band.

    Parameters
    ----------
    band : Band
        The band [-]
    value : float
        The value, in the unit of the band [-]

    Returns
    -------
    str
        ``below``, ``inside`` or ``above``; the ends count as inside [-]

    Examples
    --------
    >>> place(Band(low=540, best=600, high=660, basis="shop"), 700)
    'above'
    """
    if band.contains(value):
        return "inside"
    return "below" if value < band.low else "above"


def _shared(rules):
    """Return what all bands share, or None."""
    if not rules:
        return None
    low = max(rule.band.low for rule in rules)
    high = min(rule.band.high for rule in rules)
    if low > high:
        return None
    basis = f"shared by {len(rules)} rules" if len(rules) > 1 else f"one rule only: {rules[0].rule}"
    best = rules[0].band.best if len(rules) == 1 else round((low + high) / 2, 6)
    return Band(low=low, best=best, high=high, basis=basis)


def _disagreement(rules, unit, reason):
    """Say which two rules lie farthest apart and why, in one sentence."""
    lowest = min(rules, key=lambda rule: rule.band.high)
    highest = max(rules, key=lambda rule: rule.band.low)
    sentence = f"{lowest.rule} gives {_range(lowest.band, unit)}"
    sentence += f" but {highest.rule} gives {_range(highest.band, unit)}: {reason}."
    return sentence[0].upper() + sentence[1:]


def _range(band, unit):
    """Write the ends of a band, or the one value where they are equal."""
    ends = f"{band.low:.4g}" if band.low == band.high else f"{band.low:.4g} to {band.high:.4g}"
    return f"{ends} {unit}"


def side_by_side(quantity, unit, rules, *, reason):
    """Lay rules side by side and say whether they meet.

    Parameters
    ----------
    quantity : str
        What the advice is for [-]
    unit : str
        Unit of the bands [-]
    rules : tuple of RuledBand
        The rules [-]
    reason : str
        Why they may not meet, a clause without a full stop [-]

    Returns
    -------
    Advice
        The advice [-]

    Examples
    --------
    >>> side_by_side("lift", "mm", (), reason="-").contradiction
    "No rule for the lift of this stud is held here; take the equipment's chart."
    """
    agreed = _shared(rules)
    contradiction = ""
    if not rules:
        contradiction = f"No rule for the {quantity} of this stud is held here; take the equipment's chart."
    elif agreed is None:
        contradiction = _disagreement(rules, unit, reason)
    return Advice(quantity=quantity, unit=unit, rules=rules, agreed=agreed, contradiction=contradiction)
