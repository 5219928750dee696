"""The Handbook for Quality Management, Table 9.4: 25 values and the factor 2.66 seen, limits computed."""

import pytest

from secondplate.trials import individuals_charts

SOURCE = "quality_management_handbook"
VALUES = (
    *(110, 103, 97, 96, 105, 110, 100, 93, 90, 103, 97, 103, 90),
    *(97, 99, 106, 90, 96, 109, 90, 91, 108, 96, 101, 96),
)


def test_individuals():
    """Mean, mean moving range and limits, three places."""
    values, ranges = individuals_charts(VALUES)
    assert (values.centre, ranges.centre) == pytest.approx((99.04, 8.1667), abs=1e-3)
    assert (values.lower, values.upper) == pytest.approx((77.317, 120.763), abs=1e-3)
