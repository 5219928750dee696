"""Answered textbook problem on necking. Read; inch units, its last line is wrong."""

import pytest

from secondplate.sheet_hardening import flow_stress_mpa, strength_at_necking_mpa
from secondplate.units import mpa_from_ksi

SOURCE = "necking_problem_page"
METAL = {"strength_coefficient_mpa": mpa_from_ksi(100), "hardening_exponent": 0.5}


def test_tensile_strength():
    """K 100000 psi and n 0.5: 42850 psi, and a true stress of 70710 psi when necking begins."""
    assert strength_at_necking_mpa(**METAL) == pytest.approx(mpa_from_ksi(42.85), rel=2e-3)  # 0.606 rounded
    assert flow_stress_mpa(0.5, **METAL) == pytest.approx(mpa_from_ksi(70.71), rel=1e-4)


def test_true_strength_is_never_below_the_engineering_one():
    """The page ends with a true strength of 28567 psi; it must be 70710 psi, above engineering."""
    assert flow_stress_mpa(0.5, **METAL) > strength_at_necking_mpa(**METAL) > mpa_from_ksi(28.567)
