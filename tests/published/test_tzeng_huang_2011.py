"""Tzeng and Huang, Multiple Attribute Decision Making, 2011: closeness with vector normalisation; seen."""

import pytest

from secondplate.removal import closeness_to_ideal

SOURCE = "tzeng_huang_2011"


def test_four_options():
    """Closeness of four options, printed to four places."""
    found = closeness_to_ideal(
        [[5, 8, 4], [7, 6, 8], [8, 8, 6], [7, 4, 6]],
        weights=[0.3, 0.4, 0.3],
        more_is_better=[True, True, True],
        normalisation="vector",
    )
    assert found == pytest.approx([0.5037, 0.6581, 0.7482, 0.334], abs=1e-4)
