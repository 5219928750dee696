"""Hypergeometric law: pulls that find at least one bad rivet of a row; computed, whole numbers."""

import pytest

from secondplate.trials import pulls_to_find

SOURCE = "hypergeometric_law"


@pytest.mark.parametrize(("row", "bad", "pulls"), [(12, 2, 8), (20, 2, 14), (40, 4, 17), (100, 5, 37)])
def test_pulls_that_find_a_bad_one(row, bad, pulls):
    """Pulls for a chance of 90 % to meet at least one bad rivet."""
    assert pulls_to_find(row, bad=bad, confidence=0.9) == pulls
