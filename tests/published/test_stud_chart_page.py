"""Interactive page of stud-welding parameters: its printed example of 16 mm. Read."""

import pytest

from secondplate.stud_weld import rule_current_a, rule_time_ms, set_up

SOURCE = "stud_chart_page"


def test_16_mm_example_is_held():
    """0.6 s and 1200 A for a 16 mm stud."""
    found = set_up(
        stud_diameter_mm=16, stud_material="carbon steel", base="steel sheet", process="drawn arc with gas"
    )
    assert [rule.band.best for rule in found.current_a.rules if rule.source == SOURCE] == [1200]
    assert [rule.band.best for rule in found.time_ms.rules if rule.source == SOURCE] == [600]


def test_16_mm_example_against_the_rule():
    """The rule gives 1280 A and 640 ms, 7 % above the example."""
    assert rule_current_a(16) == pytest.approx(1200, rel=0.07)  # read off a drawn chart
    assert rule_time_ms(16) == pytest.approx(600, rel=0.07)
