"""Set-up of a stud weld: current, time, lift, protrusion, polarity and gas, rule beside rule.

Start values for a test stud, never a procedure: the vehicle maker and the maker of the equipment come first.
"""

from dataclasses import dataclass

from secondplate import tables
from secondplate.advice import Advice, RuledBand, place, side_by_side
from secondplate.bands import Band
from secondplate.checks import require_between, require_choice
from secondplate.gas import GasAdvice, gas_advice
from secondplate.stud_and_base import (
    BASES,
    STUD_MATERIALS,
    ChoiceAdvice,
    RuledChoice,
    allowed_bases,
    polarity,
)
from secondplate.weld_charts import (
    PROCESSES,
    Process,
    ShortCycleRow,
    process_limits,
    rule_current_a,
    rule_time_ms,
    short_cycle_row,
    stainless_energy_factor,
)
from secondplate.weld_rules import gathered, listed, reason_for, ruled

__all__ = [
    "BASES",
    "MAKER_FIRST",
    "PROCESSES",
    "STUD_MATERIALS",
    "Advice",
    "ChoiceAdvice",
    "Process",
    "RuledBand",
    "RuledChoice",
    "SetUp",
    "ShortCycleRow",
    "allowed_bases",
    "minimum_sheet_mm",
    "place",
    "polarity",
    "process_limits",
    "rule_current_a",
    "rule_time_ms",
    "set_up",
    "short_cycle_row",
    "stainless_energy_factor",
]

MAKER_FIRST = (
    "Start values for a test stud only: the vehicle maker's current procedure and the manual and chart of "
    "the equipment come first."
)


@dataclass(frozen=True, kw_only=True)
class SetUp:
    """Start values for one stud, each with the rules they come from.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter [mm]
    stud_material : str
        One of ``STUD_MATERIALS`` [-]
    base : str
        One of ``BASES`` [-]
    process : str
        One of ``PROCESSES`` [-]
    current_a : Advice
        Weld current [A]
    time_ms : Advice
        Weld time [ms]
    lift_mm : Advice
        Lift [mm]
    protrusion_mm : Advice
        Protrusion [mm]
    polarity : ChoiceAdvice
        Polarity of the stud [-]
    gas : GasAdvice
        Whether gas is needed and of which group [-]
    maker_first : str
        What comes before all of it [-]

    Examples
    --------
    >>> set_up(stud_diameter_mm=6, stud_material="austenitic stainless", base="steel rivet head",
    ...        process="short cycle").time_ms.agreed is None
    True
    """

    stud_diameter_mm: float
    stud_material: str
    base: str
    process: str
    current_a: Advice
    time_ms: Advice
    lift_mm: Advice
    protrusion_mm: Advice
    polarity: ChoiceAdvice
    gas: GasAdvice
    maker_first: str = MAKER_FIRST


def minimum_sheet_mm(stud_diameter_mm, *, process, base="steel sheet"):
    """Return the thinnest sheet that each rule allows under a stud.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter, within the limits of the process [mm]
    process : str
        One of ``PROCESSES`` [-]
    base : str
        Steel sheet or aluminium sheet [-]

    Returns
    -------
    Advice
        The rules side by side, each a single thickness [mm]

    Raises
    ------
    ValueError
        If an argument is out of its range or list.

    Notes
    -----
    Sources: short_cycle_page, drawn_arc_ferrule_page, us_drawn_arc_page, stud_manual_process page 24;
    iso_14555 from memory.
    None of them speaks of a rivet head.

    Examples
    --------
    >>> [rule.band.best for rule in minimum_sheet_mm(6, process="short cycle").rules]
    [0.75, 0.75, 0.7, 1.2]
    """
    diameter = _checked_diameter(stud_diameter_mm, process)
    require_choice("base", base, ("steel sheet", "aluminium sheet"))
    rules = []
    for row in tables.load("sheet_ratios"):
        if process in listed(row, "process") and row.keys["base"] == base:
            least = max(diameter / row.number, float(row.keys["least_mm"]))
            band = Band(low=least, best=least, high=least, basis=f"{row.basis}: {row.keys['rule']}")
            rules.append(ruled(row, "minimum sheet", band))
    reason = reason_for("minimum sheet", process=process, stud_diameter_mm=diameter)
    return side_by_side("minimum sheet", "mm", tuple(rules), reason=reason)


def _checked_diameter(stud_diameter_mm, process):
    """Refuse a stud outside the limits of the process."""
    limits = process_limits(process)
    return require_between(
        "stud diameter", stud_diameter_mm, limits.smallest_diameter_mm, limits.largest_diameter_mm, unit="mm"
    )


def set_up(*, stud_diameter_mm, stud_material, base, process):
    """Gather all rules for the set-up of one stud weld, side by side.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter, 3 mm to 25 mm (ferrule), 16 mm (gas) or 12 mm (short cycle) [mm]
    stud_material : str
        One of ``STUD_MATERIALS`` [-]
    base : str
        One of ``BASES`` that the stud can be welded to [-]
    process : str
        One of ``PROCESSES`` [-]

    Returns
    -------
    SetUp
        Advice on current, time, lift, protrusion, polarity and gas [-]

    Raises
    ------
    ValueError
        If a name is not in its list, the pair cannot be welded or the diameter is out of range.

    Notes
    -----
    Source: table stud_weld_rules, each row with its own source and basis. For aluminium studs only a chart
    of three sizes is held.

    Examples
    --------
    >>> found = set_up(stud_diameter_mm=6, stud_material="carbon steel", base="steel sheet",
    ...                process="drawn arc with gas")
    >>> found.current_a.agreed.low, found.current_a.agreed.high
    (450.0, 528.0)
    """
    require_choice(f"base for a stud of {stud_material}", base, allowed_bases(stud_material))
    diameter = _checked_diameter(stud_diameter_mm, process)
    names = {"stud_material": stud_material, "base": base, "process": process}

    def advised(quantity, unit):
        rules = gathered(quantity, diameter, **names)
        reason = reason_for(quantity, process=process, stud_diameter_mm=diameter)
        return side_by_side(quantity, unit, rules, reason=reason)

    return SetUp(
        stud_diameter_mm=diameter,
        **names,
        current_a=advised("current", "A"),
        time_ms=advised("time", "ms"),
        lift_mm=advised("lift", "mm"),
        protrusion_mm=advised("protrusion", "mm"),
        polarity=polarity(stud_material=stud_material, base=base),
        gas=gas_advice(**names),
    )
