"""Exact binomial test in the documentation of a statistics language; from memory, recomputed."""

import pytest

from secondplate.trials import clopper_pearson_interval

SOURCE = "binomial_test_example"


def test_682_of_925():
    """682 of 925 at 95 %, printed to seven places."""
    found = clopper_pearson_interval(925, 682, confidence=0.95)
    assert found == pytest.approx((0.7076683, 0.7654066), abs=1e-6)
