"""Page of a trader that reproduces a specification of aluminium body sheet. Read."""

import pytest

from secondplate.sheet_hardening import hardening_exponent, strength_coefficient_mpa
from tests.sheet_statements import said

SOURCE = "body_sheet_specification"


@pytest.mark.parametrize(
    ("sheet", "proof", "strength", "elongation", "uniform", "exponent", "anisotropy"),
    [("5754-O", (85, 130), 200, 20, 18, 0.26, 0.55), ("5182-O", (110, 160), 255, 23, 20, 0.26, 0.60)],
)
def test_grades(sheet, proof, strength, elongation, uniform, exponent, anisotropy):
    """Specified values of two classes."""
    assert said(SOURCE, sheet, "proof stress") == (proof[0], None, proof[1])
    leasts = {
        "tensile strength": strength,
        "elongation A80": elongation,
        "uniform elongation": uniform,
        "hardening exponent": exponent,
        "normal anisotropy": anisotropy,
    }
    assert {quantity: said(SOURCE, sheet, quantity)[0] for quantity in leasts} == leasts


def test_exponent_from_elongation_is_another_thing():
    """5754 with a uniform elongation of 18 % and 200 MPa: n 0.166, K 318; the specified n is 0.26 up."""
    exponent = hardening_exponent(said(SOURCE, "5754-O", "uniform elongation")[0])
    assert exponent == pytest.approx(0.166, abs=6e-4)
    coefficient = strength_coefficient_mpa(tensile_strength_mpa=200, hardening_exponent=exponent)
    assert coefficient == pytest.approx(318, abs=0.6)
    assert exponent < said(SOURCE, "5754-O", "hardening exponent")[0]
