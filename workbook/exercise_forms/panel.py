"""What an explorer is made of: its controls, and the view that its settings lead to."""

from collections.abc import Callable
from dataclasses import asdict, dataclass

from drawings import Picture
from grading.quantities import read_beside, show_quantity
from grading.unit_spellings import shown_unit


@dataclass(frozen=True, kw_only=True)
class Slide:
    """A number to set, by slider or by typing; ``unit`` is shown and may be typed."""

    name: str
    label: str
    unit: str
    low: float
    high: float
    step: float
    start: float

    def as_data(self):
        """Return the control as the browser needs it."""
        return asdict(self) | {"unit": shown_unit(self.unit)}

    def read(self, typed):
        """Return ``(value, problem)``; a number without a unit is taken in the unit beside the field."""
        reading = read_beside(typed, self.unit)
        if reading.value is None:
            return None, f"{self.label}: {reading.problem}."
        if not self.low <= reading.value <= self.high:
            low, high = show_quantity(self.low, self.unit), show_quantity(self.high, self.unit)
            got = show_quantity(reading.value, self.unit)
            return None, f"{self.label} must be between {low} and {high}, got {got}."
        return reading.value, ""


def slide(name, label, unit, low, high, step, start):
    """Return a slide from its values in order: name, label, unit, low end, high end, step, start."""
    return Slide(name=name, label=label, unit=unit, low=low, high=high, step=step, start=start)


@dataclass(frozen=True, kw_only=True)
class Pick:
    """One of a few names to choose."""

    name: str
    label: str
    options: tuple[str, ...]
    start: str

    def as_data(self):
        """Return the control as the browser needs it."""
        return asdict(self)

    def read(self, typed):
        """Return ``(value, problem)``."""
        if typed in self.options:
            return typed, ""
        return None, f"{self.label} must be one of {', '.join(self.options)}."


@dataclass(frozen=True, kw_only=True)
class View:
    """What a panel shows: rows of name and value, one sentence, pictures."""

    rows: tuple[tuple[str, str], ...]
    sentence: str
    pictures: tuple[Picture, ...]


@dataclass(frozen=True, kw_only=True)
class Panel:
    """An explorer: ``view`` takes the settings by name and returns a ``View``."""

    title: str
    intro: tuple[str, ...]
    controls: tuple[Slide | Pick, ...]
    view: Callable[..., View]


def read_settings(controls, typed):
    """Return ``(settings by name, problem)`` of what the browser sent."""
    settings = {}
    for control in controls:
        settings[control.name], problem = control.read(typed.get(control.name, ""))
        if problem:
            return {}, problem
    return settings, ""
