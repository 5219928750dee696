"""ASTM G102: penetration from current density. Form and equivalent weights from memory, computed twice."""

import pytest

from secondplate.corrosion_rates import penetration_mm_year

SOURCE = "astm_g102"


@pytest.mark.parametrize(("metal", "rate"), [("aluminium", 0.01089), ("zinc", 0.01497), ("iron", 0.01160)])
def test_one_microampere(metal, rate):
    """1 uA/cm2 eats 0.01089 mm of aluminium, 0.01497 of zinc and 0.01160 of iron in a year."""
    assert penetration_mm_year(1, corroding_metal=metal) == pytest.approx(rate, abs=6e-6)  # five decimals
