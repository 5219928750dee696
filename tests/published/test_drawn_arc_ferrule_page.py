"""Industrial technical page on drawn-arc stud welding with a ceramic ferrule. Read."""

import pytest

from secondplate.arc import arc_energy_j
from secondplate.stud_weld import minimum_sheet_mm, polarity, process_limits

SOURCE = "drawn_arc_ferrule_page"


def test_thinnest_sheet():
    """A quarter of the stud diameter."""
    rules = minimum_sheet_mm(12, process="drawn arc with ferrule").rules
    assert [rule.band.best for rule in rules if rule.source == SOURCE] == [3]


def test_diameters():
    """Studs of about 3 to 25 mm."""
    limits = process_limits("drawn arc with ferrule")
    assert (limits.smallest_diameter_mm, limits.largest_diameter_mm) == (3, 25)


def test_limits_of_current_and_time():
    """Up to 3000 A and 3000 ms; beyond them the arc energy is refused."""
    assert arc_energy_j(voltage_v=30, current_a=3000, time_ms=3000) == 270000
    with pytest.raises(ValueError, match="current must be between 0 A and 3000 A, got 3001 A"):
        arc_energy_j(voltage_v=30, current_a=3001, time_ms=20)


def test_polarity():
    """In general the work is positive, so the stud is negative."""
    rules = polarity(stud_material="carbon steel", base="steel sheet").rules
    assert [rule.choice for rule in rules if rule.source == SOURCE] == ["stud negative"]
