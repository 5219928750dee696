"""Instantaneous sources and cooling times: heat is kept, peaks are peaks, times agree with root finding."""

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq, minimize_scalar

from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.cooling_times import (
    plane_cooling_time_s,
    point_cooling_time_s,
    standard_thick_cooling_time_s,
    standard_thin_cooling_time_s,
    thick_plate_cooling_time_s,
    thin_plate_cooling_time_s,
    transition_thickness_mm,
)
from secondplate.heat.instant_sources import (
    instantaneous_line_rise_k,
    instantaneous_plane_rise_k,
    instantaneous_point_rise_k,
    line_peak,
    plane_peak,
    point_peak,
)
from secondplate.heat.moving_sources import thick_plate_rise_k, thin_plate_rise_k

STEEL = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
PLATE = ConstantMetal(conductivity_w_mk=40, density_kg_m3=8000, heat_capacity_j_kgk=500)
SEAM = {"heat_rate_w": 3000, "travel_speed_mm_s": 5, "metal": PLATE}


def point(radius_mm, time_s):
    """480 J at a point on steel."""
    return instantaneous_point_rise_k(radius_mm, time_s, heat_j=480, metal=STEEL)


def line(radius_mm, time_s):
    """480 J along a line through 2 mm of steel."""
    return instantaneous_line_rise_k(radius_mm, time_s, heat_j=480, thickness_mm=2, metal=STEEL)


def plane(depth_mm, time_s):
    """10 J/mm2 over the face of steel."""
    return instantaneous_plane_rise_k(depth_mm, time_s, heat_per_area_j_mm2=10, metal=STEEL)


@pytest.mark.parametrize(
    ("rise_k", "shell_mm", "heat"),
    [
        (point, lambda r: 2 * np.pi * r**2, 480),
        (line, lambda r: 2 * 2 * np.pi * r, 480),
        (plane, lambda _: 1.0, 10),
    ],
)
def test_all_heat_is_there(rise_k, shell_mm, heat):
    """The rise summed over the body holds the heat that was given."""
    total, _ = quad(lambda place_mm: rise_k(place_mm, 0.5) * shell_mm(place_mm), 0, 30)
    assert STEEL.heat_by_volume_j_mm3k * total == pytest.approx(heat, rel=1e-7)  # quadrature


@pytest.mark.parametrize(
    ("rise_k", "peak"),
    [
        (point, point_peak(3, heat_j=480, metal=STEEL)),
        (line, line_peak(3, heat_j=480, thickness_mm=2, metal=STEEL)),
        (plane, plane_peak(3, heat_per_area_j_mm2=10, metal=STEEL)),
    ],
)
def test_peaks_are_found_by_search(rise_k, peak):
    """A search over time finds the same peak 3 mm away."""
    found = minimize_scalar(lambda time_s: -rise_k(3.0, time_s), bounds=(0.01, 2), method="bounded")
    assert found.x == pytest.approx(peak.time_s, rel=1e-4)  # a flat top is found to the root of its accuracy
    assert -found.fun == pytest.approx(peak.rise_k, rel=1e-8)


@pytest.mark.parametrize(
    ("rise_k", "time_s"),
    [
        (plane, plane_cooling_time_s(10, metal=STEEL, start_c=20)),
        (point, point_cooling_time_s(480, metal=STEEL, start_c=20)),
    ],
)
def test_cooling_time_is_the_distance_of_two_moments(rise_k, time_s):
    """Root finding gives the moments of 800 and 500 C at the source itself."""
    at_800, at_500 = (
        brentq(lambda t, c=limit_c: 20 + rise_k(0.0, t) - c, 1e-3, 10, xtol=1e-12) for limit_c in (800, 500)
    )
    assert at_500 - at_800 == pytest.approx(time_s, rel=1e-9)  # tolerance of the root finder


@pytest.mark.parametrize("thick", [True, False])
def test_seam_cooling_time_far_behind_the_source(thick):
    """Behind a fast source the moving solution cools as the closed time says."""
    fast = {"heat_rate_w": 60_000, "travel_speed_mm_s": 100, "metal": PLATE}

    def temperature_c(behind_mm):
        if thick:
            return 20 + thick_plate_rise_k(-behind_mm, 0, 0, **fast)
        return 20 + thin_plate_rise_k(-behind_mm, 0, thickness_mm=3, **fast)

    at_800, at_500 = (
        brentq(lambda s, c=limit_c: temperature_c(s) - c, 1, 20_000, xtol=1e-10) for limit_c in (800, 500)
    )
    if thick:
        expected_s = thick_plate_cooling_time_s(0.6, metal=PLATE)
    else:
        expected_s = thin_plate_cooling_time_s(0.6, thickness_mm=3, metal=PLATE)
    # The thin form takes K0 at large argument; 100 mm/s leaves a part in ten thousand.
    assert (at_500 - at_800) / 100 == pytest.approx(expected_s, rel=1e-4)


def test_thick_and_thin_meet_at_the_transition():
    """At the transition thickness both forms give one time."""
    thickness_mm = transition_thickness_mm(0.6, metal=PLATE, start_c=100)
    thin_s = thin_plate_cooling_time_s(0.6, thickness_mm=thickness_mm, metal=PLATE, start_c=100)
    # Exact but for rounding.
    assert thin_s == pytest.approx(thick_plate_cooling_time_s(0.6, metal=PLATE, start_c=100), rel=1e-12)


@pytest.mark.parametrize(
    ("start_c", "thick_s", "thin_s"),
    # 6700 (1/500 - 1/800) and 4300e5/100 (1/500^2 - 1/800^2); 5700 (1/300 - 1/600) and 3440e5/100 (...)
    [(0, 5.025, 10.48125), (200, 9.5, 28.666667)],
)
def test_standard_forms_by_hand(start_c, thick_s, thin_s):
    """1 kJ/mm, thick and 10 mm, from 0 and from 200 C, with the joint's factor as a plain multiplier."""
    assert standard_thick_cooling_time_s(1, start_c=start_c) == pytest.approx(
        thick_s, rel=1e-7
    )  # digits shown
    found_s = standard_thin_cooling_time_s(1, thickness_mm=10, start_c=start_c, seam_factor=0.9)
    assert found_s == pytest.approx(0.9 * thin_s, rel=1e-7)


def test_preheat_lengthens_the_cooling():
    """The warmer the start, the slower the cooling, in each form."""
    starts_c = np.array([-20.0, 20.0, 100.0, 200.0, 400.0])
    for times_s in (
        plane_cooling_time_s(5, metal=STEEL, start_c=starts_c),
        point_cooling_time_s(480, metal=STEEL, start_c=starts_c),
        standard_thick_cooling_time_s(1, start_c=starts_c),
        standard_thin_cooling_time_s(1, thickness_mm=10, start_c=starts_c),
    ):
        assert np.all(np.diff(times_s) > 0)


def test_moving_source_solves_the_equation_of_heat():
    """alpha times the Laplacian plus v times the slope along the travel is nothing, by differences."""
    step = 1e-3
    rise_k = {
        (i, j, k): thick_plate_rise_k(-5 + i * step, 3 + j * step, 2 + k * step, **SEAM)
        for i, j, k in [(0, 0, 0), (1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1)]
    }
    sides = sum(rise for place, rise in rise_k.items() if any(place))
    laplacian = (sides - 6 * rise_k[0, 0, 0]) / step**2
    slope = (rise_k[1, 0, 0] - rise_k[-1, 0, 0]) / (2 * step)
    # Rounding of the second difference: 1e-13 of 1000 K over 1e-6 mm2.
    assert PLATE.diffusivity_mm2_s * laplacian == pytest.approx(-5 * slope, rel=1e-3)


def test_far_behind_a_fast_source_nothing_runs_over():
    """K0 alone would vanish and its factor overflow; the product stays a number."""
    fast = {"heat_rate_w": 3000, "travel_speed_mm_s": 1000, "metal": PLATE}
    assert thin_plate_rise_k(-1e4, 0, thickness_mm=3, **fast) > 0


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: point(-1, 1), "radius must be at least 0 mm, got -1 mm"),
        (lambda: line(1, 0), "time must be above 0 s, got 0 s"),
        (lambda: point_peak(0, heat_j=1, metal=STEEL), "radius must be above 0 mm, got 0 mm"),
        (
            lambda: line_peak(1, heat_j=1, thickness_mm=0, metal=STEEL),
            "thickness must be above 0 mm, got 0 mm",
        ),
        (
            lambda: plane_peak(1, heat_per_area_j_mm2=0, metal=STEEL),
            "heat by area must be above 0 J/mm2, got 0 J/mm2",
        ),
        (
            lambda: plane_cooling_time_s(1, metal=STEEL, start_c=451),
            "start must be between -50 C and 450 C, got 451 C",
        ),
        (
            lambda: standard_thick_cooling_time_s(0.05),
            "heat input must be between 0.1 kJ/mm and 10 kJ/mm, got 0.05 kJ/mm",
        ),
        (
            lambda: thick_plate_rise_k(0, 0, 0, **SEAM),
            "distance from the source must be above 0 mm, got 0 mm",
        ),
    ],
)
def test_refusals(call, sentence):
    """Each argument out of its range is refused with its sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
