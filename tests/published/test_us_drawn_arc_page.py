"""Technical page that parts drawn-arc stud welding into standard and short cycle. Read."""

import pytest

from secondplate.stud_weld import minimum_sheet_mm

SOURCE = "us_drawn_arc_page"


@pytest.mark.parametrize(
    ("process", "diameter_mm", "thickness_mm"),
    [("drawn arc with ferrule", 9, 3), ("short cycle", 10, 2), ("short cycle", 4, 1)],
)
def test_thinnest_sheet(process, diameter_mm, thickness_mm):
    """A third of the diameter in the standard process, a fifth in the short cycle, never under 1 mm."""
    advice = minimum_sheet_mm(diameter_mm, process=process)
    assert [rule.band.best for rule in advice.rules if rule.source == SOURCE] == [thickness_mm]


def test_it_contradicts_the_eighth():
    """A fifth against an eighth of the diameter: no agreed value, and one sentence says so."""
    advice = minimum_sheet_mm(10, process="short cycle")
    assert advice.agreed is None
    assert "a fifth of the diameter" in advice.contradiction
