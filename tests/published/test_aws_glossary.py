"""Glossary of welding terms, entry duty cycle. Read."""

import pytest

from secondplate.electrics import duty_cycle_percent, studs_per_minute

SOURCE = "aws_glossary"


def test_six_minutes_of_ten():
    """300 A at 60 % means six minutes of welding in ten: six one-minute arcs in ten minutes."""
    share = duty_cycle_percent(rated_current_a=300, rated_duty_cycle_percent=60, current_a=300)
    assert 10 * studs_per_minute(duty_cycle_percent=share, weld_time_ms=60_000) == pytest.approx(6, rel=1e-12)
