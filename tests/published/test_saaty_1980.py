"""Saaty, The Analytic Hierarchy Process, 1980: the older random index, used on a matrix."""

import pytest

from secondplate import tables
from secondplate.removal import pairwise_weights

SOURCE = "saaty_1980"


def test_random_index():
    """Index for 3 to 10 criteria: copied, so exact."""
    found = [row.number for row in tables.load("random_index") if row.source == SOURCE]
    assert found == [0.58, 0.9, 1.12, 1.24, 1.32, 1.41, 1.45, 1.49]


def test_leader_criteria():
    """The leader example gives a ratio of 0.0439 with 0.90; three figures."""
    thirds = [[1, 4, 3, 7], [1 / 4, 1, 1 / 3, 3], [1 / 3, 3, 1, 5], [1 / 7, 1 / 3, 1 / 5, 1]]
    assert pairwise_weights(thirds).consistency_ratio("1980") == pytest.approx(0.0439, abs=1e-4)
