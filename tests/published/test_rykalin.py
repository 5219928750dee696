"""Calculation of heat processes in welding, 1951. Forms from memory; tables computed apart."""

import numpy as np
import pytest

from secondplate.heat.closed_forms import gaussian_rise_k, gaussian_steady_rise_k
from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.instant_sources import line_peak, plane_peak, point_peak

SOURCE = "rykalin"
STEEL = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
ALUMINIUM = ConstantMetal(conductivity_w_mk=190, density_kg_m3=2700, heat_capacity_j_kgk=900)
SIX_DECIMALS = 6e-7


def test_bell_shaped_source():
    """1000 W with a standard deviation of 2 mm: the middle after 0.02, 0.1 and 10 s, and in the end."""
    bell = {"heat_rate_w": 1000, "spread_mm": 2, "metal": STEEL}
    found = gaussian_rise_k(np.array([0.02, 0.1, 10]), **bell)
    np.testing.assert_allclose(found, [503.472791, 1051.517702, 2938.506374], rtol=0, atol=SIX_DECIMALS)
    assert gaussian_steady_rise_k(**bell) == pytest.approx(3324.519003, abs=SIX_DECIMALS)


@pytest.mark.parametrize(
    ("radius_mm", "time_s", "rise_k"), [(2, 0.113389, 1731.285092), (4, 0.453556, 216.410636)]
)
def test_peak_round_a_point(radius_mm, time_s, rise_k):
    """480 J at a point on steel."""
    peak = point_peak(radius_mm, heat_j=480, metal=STEEL)
    assert peak.time_s == pytest.approx(time_s, abs=SIX_DECIMALS)
    assert peak.rise_k == pytest.approx(rise_k, abs=SIX_DECIMALS)


@pytest.mark.parametrize(
    ("radius_mm", "time_s", "rise_k"),
    [(5, 0.079934, 462.615953), (10, 0.319737, 115.653988), (20, 1.278947, 28.913497)],
)
def test_peak_round_a_line(radius_mm, time_s, rise_k):
    """480 J along a line through 2 mm of aluminium."""
    peak = line_peak(radius_mm, heat_j=480, thickness_mm=2, metal=ALUMINIUM)
    assert peak.time_s == pytest.approx(time_s, abs=SIX_DECIMALS)
    assert peak.rise_k == pytest.approx(rise_k, abs=SIX_DECIMALS)


@pytest.mark.parametrize(
    ("depth_mm", "time_ms", "rise_k"),
    [(0.2, 3.402, 4742.1994), (0.5, 21.260, 1896.8798), (1, 85.042, 948.4399)],
)
def test_peak_under_a_plane(depth_mm, time_ms, rise_k):
    """10 J/mm2 over the face of steel."""
    peak = plane_peak(depth_mm, heat_per_area_j_mm2=10, metal=STEEL)
    assert peak.time_s == pytest.approx(time_ms / 1000, abs=6e-7)  # three decimals of a millisecond
    assert peak.rise_k == pytest.approx(rise_k, abs=6e-5)  # four decimals
