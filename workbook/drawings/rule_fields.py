"""The library's rules for current and time, paired into fields of the plane of both. It does not draw."""

from dataclasses import dataclass

from drawings.marks import number
from secondplate.bands import Band
from secondplate.stud_weld import set_up


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
        Its band of time [ms]
    """

    name: str
    current_a: Band
    time_ms: Band

    def holds(self, current_a, time_ms):
        """Tell whether a setting lies in the field."""
        return self.current_a.contains(current_a) and self.time_ms.contains(time_ms)

    def told(self):
        """Return the rule and its field in words."""
        current = " to ".join(number(end, digits=0) for end in (self.current_a.low, self.current_a.high))
        time = " to ".join(number(end, digits=1) for end in (self.time_ms.low, self.time_ms.high))
        return f"{self.name}: {current} A and {time} ms"


def _pair_name(current_rule, time_rule):
    """Name the pair of a current rule and a time rule from one source."""
    if time_rule.startswith(current_rule):
        return time_rule
    return f"{current_rule.removesuffix(' a millimetre of stud')} and {time_rule.removeprefix('rule of ')}"


def rule_fields(*, stud_diameter_mm, stud_material, base, processes):
    """Pair the rules for current and for time that come from one place; two rules are never mixed.

    Parameters
    ----------
    stud_diameter_mm : float
        Stud diameter [mm]
    stud_material, base : str
        As in ``secondplate.stud_weld.set_up`` [-]
    processes : tuple of str
        Processes whose rules are shown [-]

    Returns
    -------
    fields : tuple of RuleField
        Each pair once, in the order of the processes [-]
    """
    found = {}
    for process in processes:
        advice = set_up(
            stud_diameter_mm=stud_diameter_mm, stud_material=stud_material, base=base, process=process
        )
        for current in advice.current_a.rules:
            for time in advice.time_ms.rules:
                if (current.source, current.locator) == (time.source, time.locator):
                    name = _pair_name(current.rule, time.rule)
                    found[name] = RuleField(name=name, current_a=current.band, time_ms=time.band)
    return tuple(found.values())
