"""NIST fit of the conductivity of 304 stainless steel, 1 to 300 K. Fit read on a document site."""

import math

import pytest

from secondplate.materials import material

SOURCE = "nist_cryogenic_304"
COEFFICIENTS = (-1.4087, 1.3982, 0.2543, -0.626, 0.2334, 0.4256, -0.4658, 0.165, -0.0199)


def conductivity(kelvin):
    """Conductivity by the fit, in W/mK."""
    x = math.log10(kelvin)
    return 10 ** sum(c * x**power for power, c in enumerate(COEFFICIENTS))


def test_fit_as_printed():
    """The site prints 10.22 W/mK at 123.15 K, so the coefficients were read aright."""
    assert conductivity(123.15) == pytest.approx(10.22, abs=0.01)  # two decimals


def test_conductivity_in_use_at_room_temperature():
    """At 20 C the fit gives 15.1 W/mK; the fire formula in use lies within 2 % of it."""
    assert material("austenitic stainless").conductivity_w_mk(20) == pytest.approx(
        conductivity(293.15), rel=0.02
    )
