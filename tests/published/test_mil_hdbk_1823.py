"""MIL-HDBK-1823: logistic probability of detection. Formula from memory, value computed apart."""

import pytest

from secondplate.plate_cracks import DetectionCurve

SOURCE = "mil_hdbk_1823"


def test_length_found_in_nine_of_ten():
    """Constants -1 and 2.5 find 3.593 mm in 90 % of cases."""
    assert DetectionCurve(b0=-1, b1=2.5).length_found_mm() == pytest.approx(3.593, abs=5e-4)  # three decimals
