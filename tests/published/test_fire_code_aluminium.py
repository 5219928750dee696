"""Two open aluminium fire scripts after EN 1999-1-2, clause 3.3.1.2. Heat capacity read."""

import numpy as np
import pytest

from secondplate.materials import material

SOURCE = "fire_code_aluminium"


@pytest.mark.parametrize("name", ["6xxx aluminium", "5xxx aluminium"])
def test_heat_capacity(name):
    """Heat capacity is 0.41 theta + 903 J/kgK for every alloy, from 0 to 500 C."""
    theta = np.array([20.0, 100.0, 200.0, 400.0, 500.0])
    printed = np.array([911.2, 944.0, 985.0, 1067.0, 1108.0])
    np.testing.assert_allclose(material(name).heat_capacity_j_kgk(theta), printed, rtol=1e-12)


@pytest.mark.parametrize(
    ("temperature_c", "of_6xxx_w_mk", "of_5xxx_w_mk"),
    [(20, 191.4, 142.0), (200, 204.0, 160.0), (500, 225.0, 190.0)],
)
def test_conductivity(temperature_c, of_6xxx_w_mk, of_5xxx_w_mk):
    """From memory, clause 3.3.1.3: conductivity of both groups at three temperatures."""
    found = material("6xxx aluminium").conductivity_w_mk(temperature_c)
    assert found == pytest.approx(of_6xxx_w_mk, rel=1e-12)
    assert material("5xxx aluminium").conductivity_w_mk(temperature_c) == pytest.approx(
        of_5xxx_w_mk, rel=1e-12
    )
