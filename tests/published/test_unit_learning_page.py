"""Worked example of the learning curve by units: 80 %, 50 minutes first; seen."""

import pytest

from secondplate.removal import piece_min

SOURCE = "unit_learning_page"


def test_unit_times():
    """Pieces 1, 2 and 4 take 50, 40 and 32 minutes; exact but for rounding."""
    found = piece_min([1, 2, 4], first_min=50, learning_rate=0.8, learning_model="unit")
    assert found == pytest.approx([50, 40, 32], rel=1e-12)
