"""The same operating manual, chapters on the welding process: pages 24, 42 and 43. Read."""

import pytest

from secondplate.stud_weld import (
    minimum_sheet_mm,
    polarity,
    process_limits,
    rule_current_a,
    rule_time_ms,
    set_up,
)

SOURCE = "stud_manual_process"


@pytest.mark.parametrize("diameter_mm", [3, 6, 12])
def test_drawn_arc_rule(diameter_mm):
    """Page 24: 80 A a millimetre up to 16 mm, 20 ms a millimetre up to 12 mm."""
    assert rule_current_a(diameter_mm) == 80 * diameter_mm
    assert rule_time_ms(diameter_mm) == 20 * diameter_mm
    assert rule_current_a(16) == 80 * 16


@pytest.mark.parametrize(
    ("process", "largest_mm", "current_a", "shortest_ms", "longest_ms"),
    [
        ("drawn arc with ferrule", 25, 3000, 100, 2000),
        ("drawn arc with gas", 16, 3000, 100, 2000),
        ("short cycle", 12, 2000, 10, 100),
    ],
)
def test_limits_of_the_processes(process, largest_mm, current_a, shortest_ms, longest_ms):
    """Page 24: diameters, currents and times of the three variants."""
    limits = process_limits(process)
    assert (limits.smallest_diameter_mm, limits.largest_diameter_mm) == (3, largest_mm)
    assert limits.greatest_current_a == current_a
    assert (limits.shortest_time_ms, limits.longest_time_ms) == (shortest_ms, longest_ms)


@pytest.mark.parametrize("diameter_mm", [3, 6, 12])
def test_short_cycle_rule(diameter_mm):
    """Pages 24 and 43: at least 100 A a millimetre up to 12 mm."""
    found = set_up(
        stud_diameter_mm=diameter_mm, stud_material="carbon steel", base="steel sheet", process="short cycle"
    )
    (rule,) = [rule for rule in found.current_a.rules if rule.source == SOURCE]
    assert rule.band.low == rule.band.best == 100 * diameter_mm


@pytest.mark.parametrize(
    ("process", "diameter_mm", "thickness_mm"),
    [
        ("drawn arc with ferrule", 12, 3.0),
        ("drawn arc with ferrule", 3, 1.0),
        ("drawn arc with gas", 16, 2.0),
        ("drawn arc with gas", 4, 1.0),
        ("short cycle", 12, 1.2),
        ("short cycle", 4, 0.7),
    ],
)
def test_thinnest_sheet(process, diameter_mm, thickness_mm):
    """Page 24: d/4 and 1 mm, d/8 and 1 mm, d/10 and about 0.7 mm."""
    rules = minimum_sheet_mm(diameter_mm, process=process).rules
    found = [rule.band.best for rule in rules if rule.source == SOURCE]
    assert found == [pytest.approx(thickness_mm, rel=1e-12)]  # exact arithmetic


@pytest.mark.parametrize(
    ("diameter_mm", "process", "current_a", "time_ms"),
    [(6, "short cycle", 850, 15), (8, "short cycle", 900, 40), (10, "drawn arc with gas", 1000, 120)],
)
def test_aluminium_chart(diameter_mm, process, current_a, time_ms):
    """Page 42: aluminium studs with a flange."""
    found = set_up(
        stud_diameter_mm=diameter_mm, stud_material="aluminium", base="aluminium sheet", process=process
    )
    assert [rule.band.best for rule in found.current_a.rules] == [current_a]
    assert [rule.band.best for rule in found.time_ms.rules] == [time_ms]


def test_cables_changed_over_for_aluminium():
    """Page 42 note 7: changing current and ground cables over is better for aluminium."""
    rules = polarity(stud_material="aluminium", base="aluminium sheet").rules
    assert [rule.choice for rule in rules if rule.source == SOURCE] == ["stud positive"]
