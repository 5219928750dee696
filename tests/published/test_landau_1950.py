"""Landau 1950, a melting face whose melt is swept away. Steady speed from memory; values computed apart."""

import pytest

from secondplate.heat.melting_forms import ablation_speed_mm_s

SOURCE = "landau_1950"


@pytest.mark.parametrize(("flux_w_mm2", "speed_mm_s"), [(200, 21.021), (300, 31.532), (400, 42.042)])
def test_steady_speed(flux_w_mm2, speed_mm_s):
    """q / (rho (c dT + L)) with 7850 kg/m3, 650 J/kgK, 1480 K and 250 kJ/kg."""
    content_j_mm3 = 7850e-9 * (650 * 1480 + 250e3)
    found = ablation_speed_mm_s(flux_w_mm2, heat_content_j_mm3=content_j_mm3)
    assert found == pytest.approx(speed_mm_s, abs=6e-4)  # three decimals
