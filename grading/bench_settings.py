"""Settings of the virtual bench as a learner types or picks them: their names, limits and spellings.

The limits are those of the library; what stands here is only how a setting is called and read.
"""

from dataclasses import dataclass

from grading.exercise import Option
from grading.quantities import read_beside, show_quantity
from secondplate.bench import (
    EARTHS,
    GASES,
    HEADS,
    POLARITIES,
    SETTING_LIMITS,
    STUD_DIAMETERS_MM,
)
from secondplate.gas_choice import GAS_GROUPS


@dataclass(frozen=True, kw_only=True)
class Dial:
    """A setting that is a number; ``step`` is what its slider moves by, finer numbers may be typed."""

    name: str
    label: str
    unit: str
    low: float
    high: float
    step: float

    def read(self, typed):
        """Return ``(value, problem)``; the unit stands beside the field and may be left out."""
        reading = read_beside(typed, self.unit)
        if reading.value is None:
            return None, f"{self.label}: {reading.problem}"
        if not self.low <= reading.value <= self.high:
            low, high = show_quantity(self.low, self.unit), show_quantity(self.high, self.unit)
            got = show_quantity(reading.value, self.unit)
            return None, f"{self.label} must be between {low} and {high}, got {got}"
        return reading.value, ""

    def typed(self, value):
        """Write a value as a learner would type it."""
        return f"{value:.6g}"

    def say(self, typed):
        """Write what was typed with its label and unit."""
        value, _ = self.read(typed)
        return f"{self.label} {typed if value is None else show_quantity(value, self.unit)}"


@dataclass(frozen=True, kw_only=True)
class Switch:
    """A setting that is one of a few things; ``values`` are what the library calls its options."""

    name: str
    label: str
    options: tuple[Option, ...]
    values: tuple[str | float, ...]

    def read(self, typed):
        """Return ``(value, problem)``."""
        ids = [option.id for option in self.options]
        if isinstance(typed, str) and typed in ids:
            return self.values[ids.index(typed)], ""
        return None, f"{self.label} must be one of {', '.join(ids)}"

    def typed(self, value):
        """Return the id of the option that stands for a value."""
        return self.options[self.values.index(value)].id

    def say(self, typed):
        """Write what was picked with its label."""
        texts = {option.id: option.text for option in self.options}
        return f"{self.label} {texts.get(typed, typed)}"


def _dial(name, label, unit, step, *, band):
    """Return a dial with the limits that the library has for it."""
    low, high = SETTING_LIMITS[band]
    return Dial(name=name, label=label, unit=unit, low=low, high=high, step=step)


def _switch(name, label, values, texts):
    """Return a switch; each value is its own id."""
    options = tuple(Option(id=str(value), text=text) for value, text in zip(values, texts, strict=True))
    return Switch(name=name, label=label, options=options, values=values)


def _gas_text(name):
    """Name a gas by its group and what its argon is mixed with."""
    if name == "none":
        return "none"
    mixed = GAS_GROUPS[name].carbon_dioxide_percent
    return f"{name}, {mixed.low:g} to {mixed.high:g} % CO\u2082" if mixed.high else f"{name}, argon"


_STUD_TEXTS = tuple(f"{size:g} mm" for size in STUD_DIAMETERS_MM)
_ALL = (
    Switch(
        name="stud_diameter_mm",
        label="Stud",
        options=tuple(Option(id=text, text=text) for text in _STUD_TEXTS),
        values=STUD_DIAMETERS_MM,
    ),
    _dial("current_a", "Current", "A", 10, band="current"),
    _dial("time_ms", "Weld time", "ms", 1, band="time"),
    _dial("lift_mm", "Lift", "mm", 0.1, band="lift"),
    _dial("protrusion_mm", "Protrusion", "mm", 0.1, band="protrusion"),
    _switch(
        "gas",
        "Gas",
        GASES,
        tuple(_gas_text(name) for name in GASES),
    ),
    _dial("flow_l_min", "Gas flow", "L/min", 0.5, band="gas flow"),
    _switch("polarity", "Polarity", POLARITIES, ("stud negative", "stud positive")),
    _dial("tilt_deg", "Gun off square", "deg", 0.5, band="tilt"),
    _dial("offset_mm", "Stud off the middle", "mm", 0.1, band="offset"),
    _switch("head", "Rivet head", HEADS, ("ground bright", "coated, as it came", "wiped, still oily")),
    _switch("earth", "Earth clamps", EARTHS, ("two, opposite each other", "one, to one side")),
)
SETTINGS = {setting.name: setting for setting in _ALL}
