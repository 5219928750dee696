"""Directive 2002/44/EC on vibration, hand and arm; from memory, examples computed."""

import pytest

from secondplate.removal import daily_vibration_m_s2, vibration_time_min

SOURCE = "directive_2002_44_ec"


def test_exposure_and_time():
    """5 m/s2 for two hours make 2.5; 7.5 m/s2 reach 2.5 in 53.33 minutes, four figures."""
    assert daily_vibration_m_s2(5.0, time_h=2) == pytest.approx(2.5, rel=1e-12)
    assert vibration_time_min(7.5, daily_m_s2=2.5) == pytest.approx(53.33, rel=1e-3)
