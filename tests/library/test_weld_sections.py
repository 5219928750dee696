"""Areas and centroids of segments and lenses."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.weld_sections import (
    kern_radius_mm,
    lens_area_mm2,
    lens_centroid_mm,
    segment_area_mm2,
    segment_centroid_mm,
    segment_of_share,
)

radii = st.floats(0.5, 10)


def counted(first, second, offset, *, side=1500):
    """Count points of a fine net that lie in both circles: shared area and centroid from the first centre."""
    x = np.linspace(-first, first, side)
    grid_x, grid_y = np.meshgrid(x, x)
    both = (grid_x**2 + grid_y**2 <= first**2) & ((grid_x - offset) ** 2 + grid_y**2 <= second**2)
    return both.sum() * (x[1] - x[0]) ** 2, grid_x[both].mean()


@pytest.mark.parametrize(
    ("first", "second", "offset"),
    [(3, 4, 2), (3, 4, 5.5), (4, 2, 3.5), (2.5, 3.875, 2), (3, 1, 1.5), (2, 5, 1)],
)
def test_lens_against_counting(first, second, offset):
    """Area and centroid agree with a net of two million points."""
    circles = {"first_radius_mm": first, "second_radius_mm": second, "offset_mm": offset}
    area, centroid = counted(first, second, offset)
    assert lens_area_mm2(**circles) == pytest.approx(area, rel=3e-3)  # net of 1500 points across
    assert lens_centroid_mm(**circles) == pytest.approx(centroid, abs=3e-3)


@given(radii, radii, st.floats(0, 25))
def test_lens_is_the_same_from_either_circle(first, second, offset):
    """The shared area does not know which circle is the first; it never exceeds the smaller."""
    one = lens_area_mm2(first_radius_mm=first, second_radius_mm=second, offset_mm=offset)
    other = lens_area_mm2(first_radius_mm=second, second_radius_mm=first, offset_mm=offset)
    assert one == pytest.approx(other, rel=1e-9, abs=1e-9)  # the same arithmetic in another order
    assert -1e-9 <= one <= math.pi * min(first, second) ** 2 * (1 + 1e-12)


@given(radii, radii, st.floats(0, 0.95))
def test_centroid_seen_from_both_centres(first, second, share):
    """The two distances of the centroid make the distance of the centres."""
    offset = share * (first + second)
    one = lens_centroid_mm(first_radius_mm=first, second_radius_mm=second, offset_mm=offset)
    other = lens_centroid_mm(first_radius_mm=second, second_radius_mm=first, offset_mm=offset)
    assert one + other == pytest.approx(offset, rel=1e-6, abs=1e-6)  # slivers lose figures


def test_lens_of_an_array():
    """A column of offsets gives a falling column of areas, from the whole smaller circle to nothing."""
    areas = lens_area_mm2(first_radius_mm=3.0, second_radius_mm=4.0, offset_mm=np.linspace(0, 8, 200))
    assert np.all(np.diff(areas) <= 1e-9)
    assert areas[0] == pytest.approx(math.pi * 9, rel=1e-12)  # exact
    assert areas[-1] == 0


@given(radii, st.floats(0.01, 1.99))
def test_segment_of_share_turns_back(radius, over):
    """The share of a segment leads back to its chord and centroid."""
    height = over * radius
    share = segment_area_mm2(radius_mm=radius, height_mm=height) / (math.pi * radius**2)
    chord, centroid = segment_of_share(radius_mm=radius, share=share)
    assert chord == pytest.approx(radius - height, abs=1e-5 * radius)  # spacing of the table
    expected = segment_centroid_mm(radius_mm=radius, height_mm=height)
    assert centroid == pytest.approx(expected, abs=1e-5 * radius)


def test_two_segments_make_the_circle():
    """A segment and the rest have the area of the circle and balance about its centre."""
    small, rest = 0.7, 6 - 0.7
    areas = [segment_area_mm2(radius_mm=3, height_mm=height) for height in (small, rest)]
    arms = [segment_centroid_mm(radius_mm=3, height_mm=height) for height in (small, rest)]
    assert sum(areas) == pytest.approx(math.pi * 9, rel=1e-12)  # exact
    assert areas[0] * arms[0] == pytest.approx(areas[1] * arms[1], rel=1e-12)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: segment_area_mm2(radius_mm=0, height_mm=1), "radius must be above 0 mm, got 0 mm"),
        (
            lambda: segment_area_mm2(radius_mm=1, height_mm=3),
            "height over radius must be between 0 and 2, got 3",
        ),
        (lambda: segment_centroid_mm(radius_mm=1, height_mm=0), "height must be above 0 mm, got 0 mm"),
        (
            lambda: lens_area_mm2(first_radius_mm=1, second_radius_mm=1, offset_mm=-1),
            "offset must be at least 0 mm, got -1 mm",
        ),
        (
            lambda: lens_centroid_mm(first_radius_mm=1, second_radius_mm=1, offset_mm=3),
            "shared area must be above 0 mm2, got 0 mm2",
        ),
        (lambda: segment_of_share(radius_mm=1, share=1.5), "share must be between 0 and 1, got 1.5"),
        (lambda: kern_radius_mm(-1), "diameter must be above 0 mm, got -1 mm"),
    ],
)
def test_refusals(call, sentence):
    """Each bad number is refused in one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        call()
