"""Handbook of heat transfer, thermophysical properties of metallic solids, AISI 304. From memory."""

import pytest

from secondplate.materials import material

SOURCE = "heat_transfer_handbook"
STAINLESS = material("austenitic stainless")


@pytest.mark.parametrize("kelvin", [400, 600, 800, 1000, 1200])
def test_conductivity_in_use(kelvin):
    """From memory: the fire formula of conductivity lies within 7 % of the handbook."""
    side_by_side = STAINLESS.conductivity_by_source(kelvin - 273.15)
    assert side_by_side["en_1993_1_2"] == pytest.approx(side_by_side[SOURCE], rel=0.07)


@pytest.mark.parametrize(("kelvin", "low_by_percent"), [(400, 6.7), (600, 7.5), (1000, 9.8), (1200, 11.5)])
def test_heat_capacity_in_use_is_low(kelvin, low_by_percent):
    """From memory: the fire formula of heat capacity falls ever further below the handbook."""
    side_by_side = STAINLESS.heat_capacity_by_source(kelvin - 273.15)
    short = 100 * (1 - side_by_side["en_1993_1_2"] / side_by_side[SOURCE])
    assert short == pytest.approx(low_by_percent, abs=0.2)  # the table has three figures
