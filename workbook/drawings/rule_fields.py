"""The library's rules for current and time, paired into fields of the plane of both. It does not draw."""

from dataclasses import dataclass

from drawings.marks import number
from secondplate.bands import Band
from secondplate.stud_weld import process_limits, set_up


@dataclass(frozen=True, kw_only=True)
class RuleField:
    """One rule's start values: a field in the plane of time and current.

    Parameters
    ----------
    name : str
        The rule in a few words [-]
    current_a : Band
        Its band of current [A]
    time_ms : Band
        Its band of time, or the limits of the process where it holds none [ms]
    any_time : bool
        The rule speaks of current only [-]
    """

    name: str
    current_a: Band
    time_ms: Band
    any_time: bool = False

    def holds(self, current_a, time_ms):
        """Tell whether a setting lies in the field."""
        return self.current_a.contains(current_a) and self.time_ms.contains(time_ms)

    def told(self):
        """Return the rule and its field in words."""
        current = " to ".join(number(end, digits=0) for end in (self.current_a.low, self.current_a.high))
        time = " to ".join(number(end, digits=1) for end in (self.time_ms.low, self.time_ms.high))
        return f"{self.name}: {current} A and {'any time of the process, ' if self.any_time else ''}{time} ms"


def _pair_name(current_rule, time_rule):
    """Name the pair of a current rule and a time rule from one source."""
    if time_rule.startswith(current_rule):
        return time_rule
    return f"{current_rule.removesuffix(' a millimetre of stud')} and {time_rule.removeprefix('rule of ')}"


def _any_time(process):
    """Return the limits of the process as a band, for a rule that holds no time."""
    limits = process_limits(process)
    low, high = limits.shortest_time_ms, limits.longest_time_ms
    return Band(low=low, best=low, high=high, basis=f"limits of the process {process}")


def _fields_of(advice, process):
    """Pair the rules of one process."""
    for current in advice.current_a.rules:
        place = (current.source, current.locator)
        partners = [rule for rule in advice.time_ms.rules if (rule.source, rule.locator) == place]
        for time in partners:
            name = _pair_name(current.rule, time.rule)
            yield RuleField(name=name, current_a=current.band, time_ms=time.band)
        if not partners:
            band = _any_time(process)
            yield RuleField(name=current.rule, current_a=current.band, time_ms=band, any_time=True)


def rule_fields(*, stud_diameter_mm, stud_material, base, processes):
    """Pair the rules for current and for time that come from one place; two rules are never mixed.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter [mm]
    stud_material : str
        As in ``secondplate.stud_weld.set_up`` [-]
    base : str
        As in ``secondplate.stud_weld.set_up`` [-]
    processes : tuple of str
        Processes whose rules are shown [-]

    Returns
    -------
    fields : tuple of RuleField
        Each pair once, in the order of the processes [-]
    """
    joint = {"stud_diameter_mm": stud_diameter_mm, "stud_material": stud_material, "base": base}
    fields = (
        field for process in processes for field in _fields_of(set_up(process=process, **joint), process)
    )
    return tuple({field.name: field for field in fields}.values())
