"""Page of a calculator for Hollomon hardening. Read."""

import math

import pytest

from secondplate.sheet_hardening import strength_at_necking_mpa

SOURCE = "hardening_calculator_page"


def test_strength_by_the_printed_formula():
    """Strength is K (n/e)^n; annealed copper with n of about 0.5 keeps 43 % of K."""
    strength = strength_at_necking_mpa(strength_coefficient_mpa=1, hardening_exponent=0.5)
    assert strength == pytest.approx(math.sqrt(0.5 / math.e), rel=1e-12)
    assert strength == pytest.approx(0.43, abs=5e-3)
