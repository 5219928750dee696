"""Industrial technical page on short-cycle stud welding. Read."""

import pytest

from secondplate.stud_weld import minimum_sheet_mm, polarity, process_limits

SOURCE = "short_cycle_page"


@pytest.mark.parametrize("diameter_mm", [4, 6, 8])
def test_thinnest_sheet(diameter_mm):
    """An eighth of the stud diameter."""
    rules = minimum_sheet_mm(diameter_mm, process="short cycle").rules
    assert [rule.band.best for rule in rules if rule.source == SOURCE] == [diameter_mm / 8]


def test_diameters():
    """Studs of 3 to 12 mm."""
    limits = process_limits("short cycle")
    assert (limits.smallest_diameter_mm, limits.largest_diameter_mm) == (3, 12)


def test_polarity():
    """In general the work is positive, so the stud is negative."""
    rules = polarity(stud_material="austenitic stainless", base="steel sheet").rules
    assert [rule.choice for rule in rules if rule.source == SOURCE] == ["stud negative"]
