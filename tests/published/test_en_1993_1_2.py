"""EN 1993-1-2:2005 Structural fire design of steel. Formulas read in a technical article and in open code."""

import pytest

from secondplate.materials import material

SOURCE = "en_1993_1_2"
CARBON_STEEL = material("carbon steel")
STAINLESS = material("austenitic stainless")


@pytest.mark.parametrize(
    ("temperature_c", "heat_capacity_j_kgk", "conductivity_w_mk"),
    [
        (20, 439.80, 53.334),
        (100, 487.62, 50.670),
        (200, 529.76, 47.340),
        (400, 605.88, 40.680),
        (500, 666.50, 37.350),
        (600, 760.22, 34.020),
        (735, 5000.00, 29.524),
        (800, 803.26, 27.3),
        (900, 650.00, 27.3),
        (1200, 650.00, 27.3),
    ],
)
def test_carbon_steel(temperature_c, heat_capacity_j_kgk, conductivity_w_mk):
    """Clauses 3.4.1.2 and 3.4.1.3, worked out separately at ten temperatures."""
    found = CARBON_STEEL.heat_capacity_j_kgk(temperature_c)
    assert found == pytest.approx(heat_capacity_j_kgk, abs=0.005)  # two decimals
    # Three decimals; at 800 C the falling line ends at 27.36, the flat one begins at 27.3.
    assert CARBON_STEEL.conductivity_w_mk(temperature_c) == pytest.approx(conductivity_w_mk, abs=6e-4)


@pytest.mark.parametrize(
    ("temperature_c", "heat_capacity_j_kgk", "conductivity_w_mk"),
    [
        (20, 455.48, 14.854),
        (200, 495.43, 17.140),
        (400, 524.02, 19.680),
        (600, 542.18, 22.220),
        (800, 556.37, 24.760),
        (1000, 573.00, 27.300),
        (1200, 598.51, 29.840),
    ],
)
def test_stainless(temperature_c, heat_capacity_j_kgk, conductivity_w_mk):
    """Annex C, worked out separately at seven temperatures."""
    found = STAINLESS.heat_capacity_j_kgk(temperature_c)
    assert found == pytest.approx(heat_capacity_j_kgk, abs=0.005)  # two decimals
    assert STAINLESS.conductivity_w_mk(temperature_c) == pytest.approx(conductivity_w_mk, abs=5e-4)


@pytest.mark.parametrize(
    ("from_c", "to_c", "heat_kj_kg"),
    [(20, 600, 335.738), (600, 735, 139.690), (735, 900, 156.636), (900, 1500, 390.0), (20, 1500, 1022.06)],
)
def test_heat_of_carbon_steel(from_c, to_c, heat_kj_kg):
    """The integral of clause 3.4.1.2 agrees with the closed form, piece by piece."""
    integral = CARBON_STEEL.heat_capacity_curves[0].integral(from_c, to_c)
    assert integral / 1000 == pytest.approx(heat_kj_kg, rel=5e-6)  # six figures
