"""Classroom matrix of three criteria, 1 3 5; from memory, recomputed."""

import pytest

from secondplate.removal import column_mean_weights, pairwise_weights

SOURCE = "hierarchy_small_example"
MATRIX = ((1.0, 3.0, 5.0), (0.333333, 1.0, 3.0), (0.2, 0.333333, 1.0))


def test_eigenvector():
    """Weights, eigenvalue and ratio with 0.58, four places."""
    found = pairwise_weights(MATRIX)
    assert found.weights == pytest.approx([0.637, 0.2583, 0.1047], abs=2e-4)
    assert found.greatest_eigenvalue == pytest.approx(3.0385, abs=2e-4)
    assert found.consistency_ratio("1980") == pytest.approx(0.0332, abs=2e-4)


def test_shortcut():
    """The mean over scaled columns gives 0.633, 0.261 and 0.106; three places."""
    assert column_mean_weights(MATRIX) == pytest.approx([0.633, 0.261, 0.106], abs=6e-4)
