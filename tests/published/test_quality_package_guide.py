"""Guide to a statistics package, quality control: data and results seen on its pages."""

import pytest

from secondplate.trials import (
    chance_of_at_most,
    chance_of_at_most_in_row,
    individuals_charts,
    standardised_sums,
)

SOURCE = "quality_package_guide"
DIAMETERS = (
    *(78.4, 80.1, 84.4, 79.1, 80.4, 83.5, 73.8, 83.5, 75.0, 76.8),
    *(70.5, 80.3, 82.4, 79.4, 86.4, 90.5, 77.7, 82.5, 79.9, 83.2),
)
MEANS = (
    *(8.09375, 8.0925, 8.101, 8.11975, 8.10125, 8.08, 8.1145, 8.083),
    *(8.06175, 8.10225, 8.1065, 8.09925, 8.15325, 8.12125, 8.1495),
)
SUMS = (-0.25, -0.55, -0.51, 0.28, 0.33, -0.47, 0.11, -0.57, -2.1, -2.01, -1.75, -1.78, 0.35, 1.2, 3.18)


def test_lot_with_defectives():
    """At most 1 of 20 from a lot of 120 with 22 defective, and from an endless one; ten places printed."""
    assert chance_of_at_most_in_row(120, bad=22, pulls=20, failures=1) == pytest.approx(
        0.0762970752, abs=1e-9
    )
    assert chance_of_at_most(20, 1, failure_probability=0.18) == pytest.approx(0.1018322793, abs=1e-9)


def test_individuals_and_moving_range():
    """20 diameters: data seen, limits computed with 2.66 and 3.267 to three places."""
    values, ranges = individuals_charts(DIAMETERS)
    assert (values.centre, ranges.centre) == pytest.approx((80.39, 5.3263), abs=1e-3)
    assert (values.lower, values.upper, ranges.upper) == pytest.approx((66.222, 94.558, 17.401), abs=1e-3)
    assert ranges.lower == 0
    assert values.signals.tolist() == []


def test_standardised_cumulative_sum():
    """Sums of 15 means of four, printed to two places."""
    found = standardised_sums(MEANS, target=8.1, scatter=0.05, subgroup=4)
    assert found == pytest.approx(SUMS, abs=6e-3)
