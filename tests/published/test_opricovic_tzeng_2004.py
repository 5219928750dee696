"""Opricovic and Tzeng, Compromise solution by MCDM methods, 2004: two normalisations; seen."""

import pytest

from secondplate.removal import closeness_to_ideal, order

SOURCE = "opricovic_tzeng_2004"
JOB = {
    "scores": [[1, 3000], [2, 3750], [5, 4500]],
    "weights": [0.5, 0.5],
    "more_is_better": [False, True],
}


def test_the_order_turns_with_the_normalisation():
    """Min-max gives 0.500, 0.617, 0.500 and puts the second first; vector puts the first first."""
    by_range = closeness_to_ideal(**JOB, normalisation="min-max")
    by_vector = closeness_to_ideal(**JOB, normalisation="vector")
    assert by_range == pytest.approx([0.5, 0.617, 0.5], abs=5e-4)
    assert by_vector == pytest.approx([0.762, 0.722, 0.238], abs=5e-4)
    assert (order(by_range)[0], order(by_vector)[0]) == (1, 0)
