"""EN 10088-1:2014 List of stainless steels, physical properties of 1.4301 at 20 C. From memory."""

import pytest

from secondplate.materials import material

SOURCE = "en_10088_1"
STAINLESS = material("austenitic stainless")


def test_density():
    """From memory: 7.9 kg/dm3; the fire code's 7850 kg/m3 is kept beside it."""
    assert STAINLESS.density_kg_m3 == 7900
    assert STAINLESS.facts["density in the fire standard"].number == 7850


def test_conductivity_at_room_temperature():
    """From memory: 15 W/mK; the fire formula gives 14.9."""
    assert STAINLESS.conductivity_w_mk(20) == pytest.approx(15, rel=0.011)  # two figures


def test_heat_capacity_at_room_temperature():
    """From memory: 500 J/kgK; the fire formula is 9 % low already at 20 C."""
    assert STAINLESS.heat_capacity_j_kgk(20) / 500 == pytest.approx(0.911, abs=0.001)  # three figures
