"""Newcombe, Two-sided confidence intervals for the single proportion, 1998, Table I; from memory."""

import numpy as np
import pytest

from secondplate.trials import clopper_pearson_interval, wilson_interval

SOURCE = "newcombe_1998"
PULLS, FAILURES = np.array([263, 148, 20, 29]), np.array([81, 15, 0, 1])
EXACT = ((0.2527, 0.3676), (0.0578, 0.1617), (0, 0.1684), (0.0009, 0.1776))
SCORE = ((0.2553, 0.3662), (0.0624, 0.1605), (0, 0.1611), (0.0061, 0.1718))


@pytest.mark.parametrize(
    ("interval", "printed"), [(clopper_pearson_interval, EXACT), (wilson_interval, SCORE)]
)
def test_intervals_at_95_percent(interval, printed):
    """The four cases of the table, printed to four places."""
    found = np.transpose(interval(PULLS, FAILURES, confidence=0.95))
    np.testing.assert_allclose(found, printed, rtol=0, atol=1e-4)
