"""29 CFR 1910.146 Permit-required confined spaces, definition of hazardous atmosphere. Quotations read."""

import pytest

from secondplate import gas

SOURCE = "osha_1910_146"


def test_oxygen_limit():
    """An atmosphere below 19.5 % oxygen is hazardous (paragraph (b))."""
    assert gas.OXYGEN_LIMIT_PERCENT == 19.5


def test_argon_that_brings_air_to_the_limit():
    """6.92 % argon in air, or 0.07172 volumes let into a mixed room, reach the limit (computed)."""
    volumes = gas.time_to_oxygen_limit_min(room_volume_m3=1, flow_l_min=1000)
    assert volumes == pytest.approx(0.07172, abs=5e-6)  # four figures
    argon_percent = 100 * (1 - gas.OXYGEN_LIMIT_PERCENT / gas.OXYGEN_IN_AIR_PERCENT)
    assert argon_percent == pytest.approx(6.92, abs=0.005)  # three figures


def test_room_and_fresh_air():
    """50 m3 with 10 L/min reach the limit in 6.0 h; 134.5 L/min of fresh air hold it (computed)."""
    minutes = gas.time_to_oxygen_limit_min(room_volume_m3=50, flow_l_min=10)
    assert minutes / 60 == pytest.approx(6.0, abs=0.05)
    assert gas.fresh_air_needed_l_min(flow_l_min=10) == pytest.approx(134.5, abs=0.05)
