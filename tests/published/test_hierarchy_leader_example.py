"""Worked example of the analytic hierarchy process: three candidates by four criteria."""

import numpy as np
import pytest

from secondplate.removal import pairwise_weights, weighted_sum

SOURCE = "hierarchy_leader_example"
# Experience, education, charisma, age; thirds as printed.
CRITERIA = (
    (1.0, 4.0, 3.0, 7.0),
    (0.25, 1.0, 0.333333, 3.0),
    (0.333333, 3.0, 1.0, 5.0),
    (0.142857, 0.333333, 0.2, 1.0),
)
# From memory: first against second, first against third, second against third candidate.
CANDIDATES = ((1 / 4, 4, 9), (3, 1 / 5, 1 / 7), (5, 9, 4), (1 / 3, 5, 9))


def test_criteria():
    """Weights and ratio of the criteria, three places; 0.044 rests on the index 0.89."""
    found = pairwise_weights(CRITERIA)
    assert found.weights == pytest.approx([0.548, 0.127, 0.27, 0.056], abs=6e-4)
    assert found.consistency_ratio("2005") == pytest.approx(0.044, abs=6e-4)


def test_final_weights():
    """Final weights 0.493, 0.358 and 0.150; the weights between are rounded in the example, hence 0.001."""
    by_criterion = [
        pairwise_weights([[1, a, b], [1 / a, 1, c], [1 / b, 1 / c, 1]]).weights for a, b, c in CANDIDATES
    ]
    found = weighted_sum(np.transpose(by_criterion), weights=pairwise_weights(CRITERIA).weights)
    assert sorted(found, reverse=True) == pytest.approx([0.493, 0.358, 0.15], abs=1e-3)
