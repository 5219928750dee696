"""Page of a mill with typical properties of aluminium alloys for cars. Read."""

import pytest

from secondplate.rivet import piercing_force_n
from tests.sheet_statements import said

SOURCE = "mill_properties_page"


@pytest.mark.parametrize(
    ("sheet", "proof", "strength", "elongation", "exponent", "anisotropy"),
    [("5052-O", 90, 195, 25, 0.26, 0.70), ("5182-O", 135, 275, 27, 0.33, 0.55)],
)
def test_typical_values(sheet, proof, strength, elongation, exponent, anisotropy):
    """Two soft alloys for body panels; 5182 is typical of what the specification asks for."""
    assert said(SOURCE, sheet, "proof stress")[1] == proof
    assert said(SOURCE, sheet, "tensile strength")[1] == strength
    assert said(SOURCE, sheet, "elongation A")[1] == elongation
    assert said(SOURCE, sheet, "hardening exponent")[1] == exponent
    assert said(SOURCE, sheet, "normal anisotropy")[1] == anisotropy


def test_measured_shear_strength_is_near_0_577_of_the_tensile_strength():
    """5052-O has 120 MPa in shear: the forms for collar and head give 6 % less, on the safe side."""
    shear_mpa = piercing_force_n(shank_diameter_mm=5.3, thickness_mm=1, tensile_strength_mpa=195) / (
        3.14159265 * 5.3
    )
    assert shear_mpa == pytest.approx(120, rel=0.07)
    assert shear_mpa < 120
