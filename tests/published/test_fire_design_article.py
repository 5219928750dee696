"""Technical article on thermal properties of steel in fire after EN 1993-1-2, formulas 4 to 9. Read."""

import numpy as np
import pytest

from secondplate.materials import material

SOURCE = "fire_design_article"
# Lower end and upper end in Celsius, formula as the article prints it.
HEAT_CAPACITY = [
    (20, 599.9, lambda t: 425 + 7.73e-1 * t - 1.69e-3 * t**2 + 2.22e-6 * t**3, "formula 4"),
    (600, 734.9, lambda t: 666 + 13002 / (738 - t), "formula 5"),
    (735, 899.9, lambda t: 545 + 17820 / (t - 731), "formula 6; printed with the German point in 17.820"),
    (900, 1200, lambda t: 650 + 0 * t, "formula 7"),
]
# Formula 8 is printed with 3.3e-2, the standard has 3.33e-2: 0.2 W/mK at 800 C.
CONDUCTIVITY = [
    (20, 799.9, lambda t: 54 - 3.3e-2 * t, "formula 8"),
    (800, 1200, lambda t: 27.3 + 0 * t, "formula 9"),
]


@pytest.mark.parametrize(("low_c", "high_c", "formula", "locator"), HEAT_CAPACITY)
def test_heat_capacity(low_c, high_c, formula, locator):
    """Each branch of heat capacity follows the article over its whole range."""
    theta = np.linspace(low_c, high_c, 50)
    found = material("carbon steel").heat_capacity_j_kgk(theta)
    np.testing.assert_allclose(found, formula(theta), rtol=1e-12, err_msg=locator)  # same formula


@pytest.mark.parametrize(("low_c", "high_c", "formula", "locator"), CONDUCTIVITY)
def test_conductivity(low_c, high_c, formula, locator):
    """Each branch of conductivity follows the article within its rounded slope."""
    theta = np.linspace(low_c, high_c, 50)
    found = material("carbon steel").conductivity_w_mk(theta)
    np.testing.assert_allclose(found, formula(theta), atol=0.25, rtol=0, err_msg=locator)
