"""Plane geometry: segments of a circle, lens of two circles. Formulas seen, table values from memory."""

import math

import pytest

from secondplate.weld_sections import lens_area_mm2, segment_area_mm2, segment_centroid_mm, segment_of_share

SOURCE = "plane_geometry"


@pytest.mark.parametrize(
    ("angle_deg", "height", "area"),
    [(60, 0.13397, 0.0906), (90, 0.29289, 0.2854), (120, 0.5, 0.6142), (180, 1.0, 1.5708)],
)
def test_table_of_segments(angle_deg, height, area):
    """Handbook table of segments for radius 1: height and area by the angle of the arc, from memory."""
    assert 1 - math.cos(math.radians(angle_deg / 2)) == pytest.approx(height, abs=6e-6)  # five decimals
    # Four decimals of the table.
    assert segment_area_mm2(radius_mm=1.0, height_mm=height) == pytest.approx(area, abs=6e-5)


def test_half_circle():
    """The centroid of a half circle lies 4 R / (3 pi) from the centre."""
    assert segment_centroid_mm(radius_mm=3, height_mm=3) == pytest.approx(4 / math.pi, rel=1e-12)  # exact
    chord, centroid = segment_of_share(radius_mm=3, share=0.5)
    assert chord == pytest.approx(0, abs=1e-6)  # spacing of the table
    assert centroid == pytest.approx(4 / math.pi, rel=1e-6)


def test_each_circle_through_the_centre_of_the_other():
    """Two unit circles one radius apart share (4 pi - 3 sqrt 3) / 6."""
    area = lens_area_mm2(first_radius_mm=1, second_radius_mm=1, offset_mm=1)
    assert area == pytest.approx((4 * math.pi - 3 * math.sqrt(3)) / 6, rel=1e-12)  # exact


def test_half_overlap_of_two_discs():
    """Unit discs share half their area at a distance of 0.8079455; the digits from memory."""
    area = lens_area_mm2(first_radius_mm=1, second_radius_mm=1, offset_mm=0.8079455)
    assert area == pytest.approx(math.pi / 2, abs=2e-7)  # seven decimals of the distance


@pytest.mark.parametrize(
    ("stud", "head", "offset", "area", "share"),
    [(2.5, 3.875, 2.0, 17.58, 0.895), (3.0, 3.0, 2.0, 16.50, 0.584)],
)
def test_stud_over_the_shoulder(stud, head, offset, area, share):
    """Two worked overlaps of stud and flat of the head, computed apart from this library."""
    found = lens_area_mm2(first_radius_mm=stud, second_radius_mm=head, offset_mm=offset)
    assert found == pytest.approx(area, abs=0.006)  # two decimals
    assert found / (math.pi * stud**2) == pytest.approx(share, abs=6e-4)  # three decimals
