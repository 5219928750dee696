"""Technical page on the rating of welding cables. Pair of ratings read."""

import pytest

from secondplate.electrics import current_at_duty_cycle_a, duty_cycle_percent

SOURCE = "duty_cycle_cable_page"


def test_continuous_current():
    """160 A at 60 % equals 124 A at 100 %, as printed."""
    current = current_at_duty_cycle_a(
        rated_current_a=160, rated_duty_cycle_percent=60, duty_cycle_percent=100
    )
    assert current == pytest.approx(124, abs=0.5)  # whole ampere printed


def test_duty_cycle_back():
    """124 A at 100 % equals 160 A at 60 %."""
    share = duty_cycle_percent(rated_current_a=124, rated_duty_cycle_percent=100, current_a=160)
    assert share == pytest.approx(60, abs=0.5)  # both currents are whole amperes
