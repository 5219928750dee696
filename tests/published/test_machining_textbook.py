"""Textbook of manufacturing processes: drilling problems with posted solutions, and a posted wrong way."""

import pytest

from secondplate.drilling_depth import drilling_time_min, point_length_mm, spindle_speed_rpm
from secondplate.drilling_kienzle import removal_rate_mm3_min

SOURCE = "machining_textbook"
TEN = {"drill_diameter_mm": 10, "point_angle_deg": 118, "cutting_speed_m_min": 30, "feed_mm_rev": 0.25}
HALF_INCH = {"drill_diameter_mm": 12.7, "point_angle_deg": 118, "cutting_speed_m_min": 25, "feed_mm_rev": 0.3}


def test_hole_of_ten_millimetres():
    """60 mm deep: 954.9 turns a minute, 3 mm of point, 0.265 min as posted (with rounded feed)."""
    turns = spindle_speed_rpm(cutting_speed_m_min=30, drill_diameter_mm=10)
    assert turns == pytest.approx(954.9, rel=1e-4)  # four digits
    assert 0.25 * turns == pytest.approx(238.7, rel=1e-3)
    assert point_length_mm(drill_diameter_mm=10, point_angle_deg=118) == pytest.approx(3.0, abs=0.01)
    assert drilling_time_min(drilled_depth_mm=60, **TEN) == pytest.approx(0.265, rel=6e-3)  # 238 mm/min


def test_hole_of_half_an_inch():
    """60 mm deep: 626.6 turns, 188.0 mm/min, 3.82 mm of point, 0.339 min."""
    turns = spindle_speed_rpm(cutting_speed_m_min=25, drill_diameter_mm=12.7)
    assert turns == pytest.approx(626.6, rel=1e-4)  # four digits
    assert 0.3 * turns == pytest.approx(188.0, rel=1e-3)  # four digits
    assert point_length_mm(drill_diameter_mm=12.7, point_angle_deg=118) == pytest.approx(3.82, abs=0.005)
    assert drilling_time_min(drilled_depth_mm=60, **HALF_INCH) == pytest.approx(0.339, rel=3e-3)


def test_posted_answer_without_the_point():
    """0.3192 min is posted for the same hole: it leaves the point out, as a flat bottom would."""
    flat = HALF_INCH | {"point_angle_deg": 180}
    assert drilling_time_min(drilled_depth_mm=60, **flat) == pytest.approx(0.3192, rel=1e-3)  # four digits


@pytest.mark.parametrize(("cut", "rate_mm3_min"), [(TEN, 18_750), (HALF_INCH, 23_812)])
def test_metal_removed(cut, rate_mm3_min):
    """18750 mm3/min (posted 18692 with a feed of 238 mm/min) and 23812 mm3/min, which is 396.9 mm3/s."""
    sizes = {"drill_diameter_mm": cut["drill_diameter_mm"]}
    turns = spindle_speed_rpm(**sizes, cutting_speed_m_min=cut["cutting_speed_m_min"])
    rate = removal_rate_mm3_min(**sizes, feed_mm_rev=cut["feed_mm_rev"], spindle_speed_rpm=turns)
    assert rate == pytest.approx(rate_mm3_min, rel=1e-4)  # five digits
