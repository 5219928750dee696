"""Drilling out: point, time, the depth budget, refusals."""

import numpy as np
import pytest

from secondplate.drilling_depth import (
    bottom_volume_mm3,
    depth_budget,
    drilling_time_min,
    point_length_mm,
    spindle_speed_rpm,
)
from secondplate.plate_states import after_drilling

DRILL = {"drill_diameter_mm": 8, "point_angle_deg": 118}
CUT = DRILL | {"drilled_depth_mm": 2, "cutting_speed_m_min": 30, "feed_mm_rev": 0.1}


def test_a_drill_at_full_width_stands_in_the_second_plate():
    """A full cut by a pointed drill of 8 mm is through a plate of 2 mm; a flat bottom need not touch it."""
    left = after_drilling(metal_mm=2.0, tip_depth_mm=point_length_mm(**DRILL), **DRILL)
    assert left.least_thickness_mm == 0
    assert left.plate_state == "drilled, hole"
    assert point_length_mm(**DRILL | {"point_angle_deg": 180}) == 0


def test_time_grows_with_depth_and_point():
    """Deeper and more pointed takes longer; twice the feed takes half."""
    sharp = drilling_time_min(**CUT | {"point_angle_deg": np.array([90, 118, 140, 180])})
    assert np.all(np.diff(sharp) < 0)
    halved = drilling_time_min(**CUT | {"feed_mm_rev": 0.2})
    assert halved == pytest.approx(drilling_time_min(**CUT) / 2, rel=1e-12)  # exact
    deeper = drilling_time_min(**CUT | {"drilled_depth_mm": 3})
    assert deeper > drilling_time_min(**CUT)
    # Way before and behind counts like depth.
    assert drilling_time_min(**CUT, approach_mm=0.4, overrun_mm=0.6) == pytest.approx(deeper, rel=1e-12)


def test_bottom_of_a_hole_grows_by_cone_then_by_cylinder():
    """Up to its full width the tip cuts a cone, of a third of the cylinder; then the drill's whole area."""
    point = point_length_mm(**DRILL)
    volumes = bottom_volume_mm3(tip_depth_mm=np.array([0, point / 2, point, point + 1]), **DRILL)
    area = np.pi * 16
    expected = [0, area * point / 24, area * point / 3, area * (point / 3 + 1)]
    np.testing.assert_allclose(volumes, expected, rtol=1e-12)  # exact
    flat = bottom_volume_mm3(tip_depth_mm=1, **DRILL | {"point_angle_deg": 180})
    assert flat == pytest.approx(area, rel=1e-12)


def test_expected_error_lies_between_the_largest_and_the_worst():
    """The root of squares is at least the largest error and at most the sum."""
    budget = depth_budget([0.1, 0.3, 0.2])
    assert 0.3 <= budget.expected_mm <= budget.worst_mm == pytest.approx(0.6, rel=1e-12)
    alone = depth_budget([0.4])
    assert alone.expected_mm == alone.worst_mm == 0.4


@pytest.mark.parametrize(
    ("call", "given", "said"),
    [
        (point_length_mm, DRILL | {"point_angle_deg": 30}, "point angle must be between 60 deg and 180 deg"),
        (point_length_mm, DRILL | {"drill_diameter_mm": 0}, "drill diameter must be above 0 mm, got 0 mm"),
        (drilling_time_min, CUT | {"feed_mm_rev": 0}, "feed must be above 0 mm/rev, got 0 mm/rev"),
        (drilling_time_min, CUT | {"approach_mm": -1}, "approach must be at least 0 mm, got -1 mm"),
        (drilling_time_min, CUT | {"overrun_mm": -1}, "overrun must be at least 0 mm, got -1 mm"),
        (bottom_volume_mm3, DRILL | {"tip_depth_mm": -1}, "tip depth must be at least 0 mm, got -1 mm"),
        (drilling_time_min, CUT | {"drilled_depth_mm": -1}, "drilled depth must be at least 0 mm, got -1 mm"),
        (
            spindle_speed_rpm,
            {"cutting_speed_m_min": -5, "drill_diameter_mm": 8},
            "cutting speed must be above 0",
        ),
        (depth_budget, {"errors_mm": []}, "errors of the depth must be one at least, got none"),
        (depth_budget, {"errors_mm": [0.1, -0.1]}, "error of the depth must be at least 0 mm, got -0.1 mm"),
    ],
)
def test_what_cannot_be_is_said(call, given, said):
    """Impossible drills and depths are refused in one sentence."""
    with pytest.raises(ValueError, match=said):
        call(**given)
