"""Considere 1885: necking begins where the slope of true stress equals true stress. From memory."""

import pytest

from secondplate.sheet_hardening import flow_stress_mpa, hardening_exponent

SOURCE = "considere_1885"


@pytest.mark.parametrize("elongation_percent", [5, 18, 30])
def test_slope_equals_stress_at_the_end_of_uniform_elongation(elongation_percent):
    """At the strain of a uniform elongation the slope by differences equals the stress itself."""
    strain = hardening_exponent(elongation_percent)
    metal = {"strength_coefficient_mpa": 500, "hardening_exponent": strain}
    step = 1e-5
    rise = flow_stress_mpa(strain + step, **metal) - flow_stress_mpa(strain - step, **metal)
    assert rise / (2 * step) == pytest.approx(flow_stress_mpa(strain, **metal), rel=1e-6)  # step squared
