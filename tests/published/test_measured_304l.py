"""Thermophysical measurements on low carbon 304 stainless steel above 1400 K by a transient (subsecond)
technique, International Journal of Thermophysics, doi 10.1007/BF00506274. Abstract read."""

import pytest

from secondplate.materials import material

SOURCE = "measured_304l"
STAINLESS = material("austenitic stainless")


def heat_capacity(kelvin):
    """Heat capacity by the formula of the abstract, in J/kgK."""
    return 1127 - 7.265e-1 * kelvin + 2.884e-4 * kelvin**2


@pytest.mark.parametrize(
    ("kelvin", "heat_capacity_j_kgk"), [(1400, 675.2), (1500, 686.2), (1600, 702.9), (1700, 725.4)]
)
def test_heat_capacity(kelvin, heat_capacity_j_kgk):
    """The formula of the abstract, worked out at four temperatures of its range of 1400 to 1700 K."""
    found = STAINLESS.heat_capacity_by_source(kelvin - 273.15)[SOURCE]
    assert found == pytest.approx(heat_capacity_j_kgk, abs=0.05)  # one decimal
    assert found == pytest.approx(heat_capacity(kelvin), rel=1e-12)


def test_melting_point():
    """304L melts at 1707 K, within 8 K; that lies between the handbook's solidus and liquidus."""
    melting = STAINLESS.melting_range_c
    assert melting.best + 273.15 == pytest.approx(1707, abs=0.01)
    assert melting.low < melting.best < melting.high


@pytest.mark.parametrize(("kelvin", "low_by_percent"), [(1400, 12.9), (1450, 12.5)])
def test_fire_formula_is_low_near_melting(kelvin, low_by_percent):
    """The fire formula of EN 1993-1-2, Annex C lies 12 to 13 % below the measurement, outside its 3 %."""
    side_by_side = STAINLESS.heat_capacity_by_source(kelvin - 273.15)
    short = 100 * (1 - side_by_side["en_1993_1_2"] / side_by_side[SOURCE])
    assert short == pytest.approx(low_by_percent, abs=0.1)  # one decimal
    assert short > 3


@pytest.mark.parametrize(("kelvin", "fire_formula_j_kgk"), [(1400, 587.7), (1500, 603.0), (1700, 646.3)])
def test_fire_formula_stretched_to_melting(kelvin, fire_formula_j_kgk):
    """Even stretched past 1200 C the fire formula stays 10 to 13 % low, so it is not stretched here."""
    theta = kelvin - 273.15
    stretched = 450 + 0.28 * theta - 2.91e-4 * theta**2 + 1.34e-7 * theta**3
    assert stretched == pytest.approx(fire_formula_j_kgk, abs=0.05)  # one decimal
    assert 0.87 < stretched / heat_capacity(kelvin) < 0.90
