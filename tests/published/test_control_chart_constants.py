"""Factors of control charts: d2 and d3 against the law of the range, and the seen 2.66 and 3.267."""

import numpy as np
import pytest
from scipy.stats import norm

from secondplate import tables
from secondplate.trials import individuals_charts, mean_and_range_charts

SOURCE = "control_chart_constants"
STEP = 0.02
GRID = np.arange(-8, 8, STEP)


def range_moments(size):
    """Mean and standard deviation of the range of a normal sample, from its distribution function."""
    width = np.arange(0, 14, STEP)
    inner = norm.cdf(GRID + width[:, None]) - norm.cdf(GRID)
    within = size * (norm.pdf(GRID) * inner ** (size - 1)).sum(axis=1) * STEP
    beyond = 1 - within
    weights = np.full(width.size, STEP)
    weights[0] = STEP / 2  # trapezoids; beyond 14 nothing is left
    mean = beyond @ weights
    return mean, np.sqrt(2 * (width * beyond) @ weights - mean**2)


@pytest.mark.parametrize("size", range(2, 11))
def test_factors_against_the_law_of_the_range(size):
    """Factors from memory agree with integrals to the third place, which is the last one printed."""
    found = {
        row.keys["constant"]: row.number
        for row in tables.load("chart_constants")
        if int(row.keys["subgroup"]) == size
    }
    mean, scatter = range_moments(size)
    assert (found["d2"], found["d3"]) == pytest.approx((mean, scatter), abs=1e-3)


def test_factors_of_the_individuals_chart():
    """2.66 for single values and 3.267 for moving ranges, as printed."""
    values, ranges = individuals_charts([0.0, 1.0, 0.0, 1.0])
    assert values.upper - values.centre == pytest.approx(2.66, abs=1e-3)
    assert ranges.upper == pytest.approx(3.267, abs=2e-3)


@pytest.mark.parametrize(
    ("size", "a2", "lower", "upper"),
    [(3, 1.023, 0, 2.574), (5, 0.577, 0, 2.114), (8, 0.373, 0.136, 1.864), (10, 0.308, 0.223, 1.777)],
)
def test_factors_of_means_and_ranges(size, a2, lower, upper):
    """Factors A2, D3 and D4 from memory, printed to three places; here from d2 and d3 of three places."""
    rows = np.zeros((2, size))
    rows[:, 0] = 1.0  # every range is 1
    means, ranges = mean_and_range_charts(rows)
    assert means.upper - means.centre == pytest.approx(a2, abs=2e-3)
    assert (ranges.lower, ranges.upper) == pytest.approx((lower, upper), abs=3e-3)
