"""Test of closeness to the ideal without scaling, in an open library of decision methods; seen."""

import numpy as np
import pytest

from secondplate.removal import closeness_to_ideal

SOURCE = "closeness_toy_test"


def test_without_scaling():
    """Two options as they stand; equal weights only shrink every distance alike. Eight places printed."""
    found = closeness_to_ideal(
        [[1, 0, 3], [0, 5, 6]],
        weights=np.full(3, 1 / 3),
        more_is_better=[True, True, True],
        normalisation="none",
    )
    assert found == pytest.approx([0.14639248, 0.85360752], abs=1e-7)
