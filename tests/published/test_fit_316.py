"""Documentation of an open multiphysics code: stainless steel 316, fit of recommended values. Read."""

import pytest

from secondplate.materials import material

SOURCE = "fit_316"
STAINLESS = material("austenitic stainless")


@pytest.mark.parametrize(
    ("kelvin", "conductivity_w_mk", "heat_capacity_j_kgk"),
    [(300, 13.80, 482.9), (1000, 26.17, 610.1), (1500, 30.62, 700.9)],
)
def test_fit(kelvin, conductivity_w_mk, heat_capacity_j_kgk):
    """The fit, worked out at three temperatures of its range of 298 to 1573 K."""
    theta = kelvin - 273.15
    conductivity = STAINLESS.conductivity_by_source(theta)[SOURCE]
    assert conductivity == pytest.approx(conductivity_w_mk, abs=0.01)  # two decimals
    assert STAINLESS.heat_capacity_by_source(theta)[SOURCE] == pytest.approx(heat_capacity_j_kgk, abs=0.06)


@pytest.mark.parametrize("kelvin", [300, 600, 1000, 1400])
def test_fire_formula_for_conductivity_agrees(kelvin):
    """The conductivity in use (EN 1993-1-2, Annex C) lies within the 10 % that the fit claims."""
    side_by_side = STAINLESS.conductivity_by_source(kelvin - 273.15)
    assert side_by_side["en_1993_1_2"] == pytest.approx(side_by_side[SOURCE], rel=0.10)
