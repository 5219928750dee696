"""Processes, the drawn-arc rule and the short-cycle chart."""

import numpy as np
import pytest

from secondplate.weld_charts import (
    PROCESSES,
    process_limits,
    rule_current_a,
    rule_time_ms,
    short_cycle_row,
    stainless_energy_factor,
)


@pytest.mark.parametrize("process", PROCESSES)
def test_limits_are_in_order(process):
    """Each process has rising limits and its number."""
    limits = process_limits(process)
    assert 0 < limits.smallest_diameter_mm < limits.largest_diameter_mm
    assert 0 < limits.shortest_time_ms < limits.longest_time_ms
    assert limits.number in (783, 784)


def test_unknown_process_is_refused():
    """An unknown process is refused with the list."""
    with pytest.raises(ValueError, match="process must be one of drawn arc with gas, .* got 'laser'"):
        process_limits("laser")


def test_rule_breaks_at_its_limits():
    """The current steps up above 16 mm, the time above 12 mm; the limit belongs to the lower branch."""
    np.testing.assert_allclose(
        rule_current_a(np.array([3, 16, 16.01, 25])), [240, 1280, 1440.9, 2250], rtol=1e-12
    )  # exact arithmetic
    np.testing.assert_allclose(
        rule_time_ms(np.array([3, 12, 12.01, 25])), [60, 240, 480.4, 1000], rtol=1e-12
    )  # exact arithmetic
    assert isinstance(rule_current_a(6), float)


@pytest.mark.parametrize("function", [rule_current_a, rule_time_ms])
@pytest.mark.parametrize("diameter_mm", [2.9, 25.1])
def test_rule_has_a_range(function, diameter_mm):
    """Below 3 mm and above 25 mm the rule is refused."""
    with pytest.raises(ValueError, match="stud diameter must be between 3 mm and 25 mm"):
        function(diameter_mm)


@pytest.mark.parametrize("diameter_mm", [2, 3.5, 5.97, 8])
def test_uncharted_size_is_refused(diameter_mm):
    """The chart is not read between its lines."""
    with pytest.raises(ValueError, match="stud diameter must be one of 3, 4, 5, 6 mm, got"):
        short_cycle_row(diameter_mm)


def test_flange_is_one_millimetre_wider():
    """In this chart each flange is 1 mm wider than its thread."""
    for diameter_mm in (3, 4, 5, 6):
        assert short_cycle_row(diameter_mm).flange_diameter_mm == diameter_mm + 1


def test_stainless_factor_is_a_band():
    """About 0.9, never above 1."""
    factor = stainless_energy_factor()
    assert factor.low < factor.best == 0.9 < factor.high < 1
