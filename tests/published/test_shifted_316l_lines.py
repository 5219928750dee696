"""Test file of an open library with solid 316L property lines. Read; the lines are shifted, a trap."""

import pytest

from secondplate.materials import material

SOURCE = "shifted_316l_lines"
STAINLESS = material("austenitic stainless")


def printed_conductivity(kelvin):
    """The solid line as that file prints it, in W/mK."""
    return 0.6658 + 0.01571 * kelvin


def test_printed_line_is_far_too_low():
    """The printed line gives 5.4 W/mK at 300 K, where every other source has 12.9 to 15."""
    assert printed_conductivity(300) == pytest.approx(5.38, abs=0.005)
    others = STAINLESS.conductivity_by_source(26.85)
    assert len(others) == 4
    assert all(12.5 < value < 15.5 for value in others.values())


def test_shift_is_twice_the_zero_of_celsius():
    """Moved by 2 x 273.15 K the line becomes that of the quoted report, 9.248 + 0.01571 T (from memory)."""
    assert printed_conductivity(2 * 273.15) == pytest.approx(9.248, abs=0.0005)


def test_latent_heat_of_316():
    """Its latent heat of 268 kJ/kg is not touched by the shift; 265 kJ/kg is used for 304, 1 % less."""
    assert STAINLESS.facts["latent heat of 316"].number == 268_000
    assert STAINLESS.latent_heat_j_kg == pytest.approx(268_000, rel=0.012)
