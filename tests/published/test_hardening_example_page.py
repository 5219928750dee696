"""Page of a calculator for Hollomon hardening with a worked example. Read; the example is wrong."""

import pytest

from secondplate.sheet_hardening import flow_stress_mpa

SOURCE = "hardening_example_page"


def test_example_is_misprinted():
    """K 965, n 0.14, strain 0.10: the page prints 0.712 and 687 MPa, its own formula gives 0.724 and 699."""
    stress = flow_stress_mpa(0.10, strength_coefficient_mpa=965, hardening_exponent=0.14)
    assert stress == pytest.approx(699, abs=0.6)
    assert stress / 687 == pytest.approx(0.7244 / 0.712, rel=1e-3)
