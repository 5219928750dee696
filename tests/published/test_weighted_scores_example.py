"""Weighted sum of four options by four criteria; computed independently."""

import pytest

from secondplate.removal import order, weighted_sum

SOURCE = "weighted_scores_example"


def test_four_options():
    """Sums 3.75, 2.90, 2.85 and 3.35; exact but for rounding."""
    scores = [[4, 3, 5, 2], [2, 5, 2, 4], [3, 2, 2, 5], [5, 1, 4, 1]]
    found = weighted_sum(scores, weights=[0.4, 0.2, 0.25, 0.15])
    assert found == pytest.approx([3.75, 2.9, 2.85, 3.35], abs=1e-12)
    assert order(found) == [0, 3, 1, 2]
