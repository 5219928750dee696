"""Operating manual of an arc welding power source, section on duty cycle. Example read."""

import pytest

from secondplate.electrics import current_at_duty_cycle_a, duty_cycle_percent

SOURCE = "duty_cycle_manual"


def test_current_at_twice_the_duty_cycle():
    """A source of 400 A at 25 % holds 282.8 A at 50 %, as printed."""
    current = current_at_duty_cycle_a(rated_current_a=400, rated_duty_cycle_percent=25, duty_cycle_percent=50)
    assert current == pytest.approx(282.8, abs=0.05)  # one decimal printed


def test_duty_cycle_back():
    """The same example solved for the duty cycle gives 50 % back."""
    share = duty_cycle_percent(rated_current_a=400, rated_duty_cycle_percent=25, current_a=282.8)
    assert share == pytest.approx(50, rel=5e-4)  # the printed current has four figures
