"""EN 1999-1-3: endurance of a bolted joint. Curve and category second-hand and from memory."""

import numpy as np
import pytest

from secondplate.fatigue_detail import listed_curve

SOURCE = "en_1999_1_3"
CURVE = listed_curve("bolted joint, clearance holes")


def test_category_and_slopes():
    """Table J.15: category 56, slope 4, then 6."""
    assert (CURVE.category_mpa, CURVE.slope, CURVE.slope_below_knee) == (56, 4, 6)


def test_cycles_by_stress_range():
    """Computed apart, 80 and 40 MPa also by another program."""
    found = CURVE.cycles_to_failure(np.array([100, 80, 56, 50, 40, 30, 25]))
    expected = [196_690, 480_200, 2_000_000, 3_147_039, 9_524_193, 53_513_163, np.inf]
    assert found == pytest.approx(expected, rel=3e-6)  # whole cycles


def test_knee_and_cut_off():
    """44.535 and 27.031 MPa."""
    assert (CURVE.knee_mpa, CURVE.cut_off_mpa) == pytest.approx((44.535, 27.031), abs=6e-4)  # three decimals
