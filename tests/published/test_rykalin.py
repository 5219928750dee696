"""Calculation of heat processes in welding, 1951. Forms from memory; tables computed apart."""

import numpy as np
import pytest

from secondplate.heat.closed_forms import gaussian_rise_k, gaussian_steady_rise_k
from secondplate.heat.conduction import Stage, conduct
from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.grid import Grid
from secondplate.heat.instant_sources import line_peak, plane_peak, point_peak
from tests.heat_bodies import column, disc, face_rise_k, fine_at_start, heated, solid

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


PER_CENT = 0.01  # what the heat model promises


@pytest.mark.parametrize(("time_s", "rise_k"), [(0.02, 503.472791), (0.1, 1051.517702), (10, 2938.506374)])
def test_model_of_bell_shaped_source(time_s, rise_k):
    """The heat model in the middle of a face with 1000 W spread as a bell of 2 mm."""
    reach_mm = 8 + 6 * np.sqrt(STEEL.diffusivity_mm2_s * time_s)
    grid = Grid(
        radius_edges_mm=fine_at_start(reach_mm, finest_mm=0.15, growth=0.1),
        height_edges_mm=fine_at_start(reach_mm, finest_mm=0.02, growth=0.12),
    )
    body = solid(grid)
    # Power between two radii is the difference of exp(-r^2 / (2 sigma^2)) times the whole.
    whole = 1000 * -np.diff(np.exp(-(grid.radius_edges_mm**2) / (2 * 2**2)))
    power = np.zeros(grid.shape)
    power[0] = whole
    run = heated(body, time_s, power_w=power, steps=50, growth=1.1)
    found = face_rise_k(run, body, flux_w_mm2=whole / grid.ring_areas_mm2)
    assert found[0] == pytest.approx(
        rise_k, rel=PER_CENT / 2
    )  # the innermost ring is a little off the middle


def peak(body, start_c, last_s, cell):
    """Run a body that starts with its heat in one place; return time and height of the peak of a cell."""
    weights = np.zeros(body.grid.shape)
    weights[cell] = 1
    run = conduct(
        body, [Stage(duration_s=last_s, steps=250, growth=1.03)], start_c=start_c, keep={"here": weights}
    )
    trace = run.traces_c["here"]
    top = int(np.argmax(trace))
    # The parabola through the highest three gives the time of the peak between two steps.
    bend, slope, _ = np.polyfit(run.times_s[top - 1 : top + 2], trace[top - 1 : top + 2], 2)
    return -slope / (2 * bend), trace[top]


@pytest.mark.parametrize(
    ("radius_mm", "time_s", "rise_k"),
    [(5, 0.079934, 462.615953), (10, 0.319737, 115.653988), (20, 1.278947, 28.913497)],
)
def test_model_of_peak_round_a_line(radius_mm, time_s, rise_k):
    """The heat model for 480 J along a line through 2 mm of aluminium; run with a part of it."""
    body = disc(np.linspace(0, 5 * radius_mm, 251), thickness_mm=2, metal=ALUMINIUM)
    start = np.zeros(body.grid.shape)
    start[0, 0] = 5000.0
    part_j = ALUMINIUM.heat_by_volume_j_mm3k * body.grid.volumes_mm3[0, 0] * 5000
    cell = (0, 50)
    place_mm = body.grid.radii_mm[50]
    found_s, found_k = peak(body, start, 2 * time_s, cell)
    # Time of the peak goes with the radius squared, its height against it.
    assert found_s == pytest.approx(time_s * (place_mm / radius_mm) ** 2, rel=PER_CENT)
    assert found_k * 480 / part_j == pytest.approx(rise_k * (radius_mm / place_mm) ** 2, rel=PER_CENT)


@pytest.mark.parametrize(
    ("depth_mm", "time_s", "rise_k"),
    [(0.2, 0.003402, 4742.1994), (0.5, 0.021260, 1896.8798), (1, 0.085042, 948.4399)],
)
def test_model_of_peak_under_a_plane(depth_mm, time_s, rise_k):
    """The heat model for 10 J/mm2 on a face; run with a part of it."""
    body = column(np.linspace(0, 8 * depth_mm, 401))
    start = np.zeros(body.grid.shape)
    start[0, 0] = 5000.0
    part_j_mm2 = STEEL.heat_by_volume_j_mm3k * body.grid.heights_mm[0] * 5000
    place_mm = body.grid.depths_mm[50]
    found_s, found_k = peak(body, start, 2 * time_s, (50, 0))
    # Time of the peak goes with the depth squared, its height against it.
    assert found_s == pytest.approx(time_s * (place_mm / depth_mm) ** 2, rel=PER_CENT)
    assert found_k * 10 / part_j_mm2 == pytest.approx(rise_k * depth_mm / place_mm, rel=PER_CENT)
