"""Threads: ranges, shapes and the geometry behind the numbers."""

import math

import numpy as np
import pytest

from secondplate.studs import stress_area_mm2
from secondplate.threads import (
    COARSE_PITCHES_MM,
    coarse_pitch_mm,
    inch_stress_area_mm2,
    minor_diameter_mm,
    pitch_diameter_mm,
)

SIZES_MM = np.array(sorted(COARSE_PITCHES_MM))


def test_array_equals_scalar():
    """An array of sizes gives the same pitches and areas as the sizes one by one."""
    pitches = coarse_pitch_mm(SIZES_MM)
    areas = stress_area_mm2(SIZES_MM, pitch_mm=pitches)
    singles = [stress_area_mm2(size, pitch_mm=coarse_pitch_mm(size)) for size in SIZES_MM]
    np.testing.assert_allclose(areas, singles, rtol=1e-15)  # same arithmetic
    assert isinstance(singles[0], float)


@pytest.mark.parametrize("size", [3, 6, 16])
def test_constants_follow_from_the_60_degree_profile(size):
    """d2 = d - 3/4 H and d3 = d - 17/12 H, with H = P sqrt(3)/2."""
    pitch = coarse_pitch_mm(size)
    height = pitch * math.sqrt(3) / 2
    # The constants in use are rounded to four decimals.
    assert pitch_diameter_mm(size, pitch_mm=pitch) == pytest.approx(size - 3 / 4 * height, abs=1e-4)
    assert minor_diameter_mm(size, pitch_mm=pitch) == pytest.approx(size - 17 / 12 * height, abs=1e-4)


def test_areas_lie_between_core_and_shank():
    """Both stress areas lie between the core and the full circle, the inch one below the metric one."""
    pitches = coarse_pitch_mm(SIZES_MM)
    core = np.pi / 4 * minor_diameter_mm(SIZES_MM, pitch_mm=pitches) ** 2
    metric = stress_area_mm2(SIZES_MM, pitch_mm=pitches)
    inch = inch_stress_area_mm2(SIZES_MM, pitch_mm=pitches)
    assert np.all((core < inch) & (inch < metric) & (metric < np.pi / 4 * SIZES_MM**2))


@pytest.mark.parametrize("size", [7, 6.35, 0, -6])
def test_unknown_size_is_refused(size):
    """Only sizes of the table have a coarse pitch."""
    with pytest.raises(ValueError, match=r"diameter must be one of 3, 4, 5, 6, .* mm, got"):
        coarse_pitch_mm(size)


def test_the_unknown_size_of_an_array_is_named():
    """In an array the first unknown size is told."""
    with pytest.raises(ValueError, match="got 7 mm"):
        coarse_pitch_mm(np.array([6.0, 7.0]))


@pytest.mark.parametrize(
    "function", [pitch_diameter_mm, minor_diameter_mm, stress_area_mm2, inch_stress_area_mm2]
)
@pytest.mark.parametrize(
    ("diameter_mm", "pitch_mm", "sentence"),
    [
        (0.5, 0.1, "diameter must be between 1 mm and 40 mm, got 0.5 mm"),
        (41, 4, "diameter must be between 1 mm and 40 mm, got 41 mm"),
        (6, 0, "pitch must be above 0 mm, got 0 mm"),
        (6, 2, "pitch over diameter must be between 0 and 0.3, got 0.333333"),
        (math.nan, 1, "diameter must be finite, got nan mm"),
        ("M6", 1, "diameter must be a number in mm, got 'M6'"),
        (True, 1, "diameter must be a number in mm, got True"),
    ],
)
def test_what_is_no_thread_is_refused(function, diameter_mm, pitch_mm, sentence):
    """Sizes out of range, pitches that leave no core and what is no number are refused in one sentence."""
    with pytest.raises(ValueError, match=sentence):
        function(diameter_mm, pitch_mm=pitch_mm)
