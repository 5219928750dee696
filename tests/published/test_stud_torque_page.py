"""Page on stud materials that quotes DVS 0904: which stud on which base steel. Table read."""

import pytest

from secondplate.weldability_published import published_warnings

SOURCE = "stud_torque_page"


@pytest.mark.parametrize(("bears", "words"), [("against", "0.35 to 0.60 % carbon"), ("for", "up to 5 mm")])
def test_a2_50_on_both_sides_of_the_line(bears, words):
    """Not suitable from 0.35 to 0.60 % carbon, good enough below: a 36MnB4 rivet lies on both sides."""
    found = [each for each in published_warnings("36MnB4", surface="bare") if each.source == SOURCE]
    assert [each.bears for each in found] == ["against", "for"]
    assert any(each.bears == bears and words in each.text for each in found)
