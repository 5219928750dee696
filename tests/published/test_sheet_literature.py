"""Papers and textbooks on forming of body sheet: strengths and exponents from memory, K by hand."""

import pytest

from secondplate.sheet_alloys import sheet_properties
from secondplate.sheet_hardening import strength_coefficient_mpa

SOURCE = "sheet_literature"


@pytest.mark.parametrize(
    ("sheet", "strength_mpa", "exponent", "coefficient_mpa"),
    [
        ("5754-O", 215, 0.30, 416),
        ("5182-O", 280, 0.32, 555),
        ("6016-T4", 220, 0.26, 405),
        ("6111-T4", 285, 0.25, 518),
        ("6082-T6", 320, 0.07, 413),
        ("6061-T6", 310, 0.06, 390),
        ("7075-T6", 570, 0.10, 793),
        ("HCT600X", 620, 0.18, 1011),
        ("HX340LAD", 450, 0.15, 695),
    ],
)
def test_strength_coefficients(sheet, strength_mpa, exponent, coefficient_mpa):
    """K = R_m (e/n)^n of the working values, whole MPa."""
    for quantity, value in (("tensile strength", strength_mpa), ("hardening exponent", exponent)):
        working = sheet_properties(sheet, quantity)[-1]
        assert (working.typical, working.source) == (value, SOURCE)
    coefficient = strength_coefficient_mpa(tensile_strength_mpa=strength_mpa, hardening_exponent=exponent)
    assert coefficient == pytest.approx(coefficient_mpa, abs=0.6)
