"""Miner 1945: damage sum. From memory, value computed apart."""

import pytest

from secondplate.fatigue_detail import listed_curve

SOURCE = "miner_1945"


def test_sum_of_three_blocks():
    """1e5 at 80, 1e6 at 50 and 5e6 at 35 MPa make 0.7616."""
    found = listed_curve("bolted joint, clearance holes").damage(
        stress_ranges_mpa=[80, 50, 35], cycles=[1e5, 1e6, 5e6]
    )
    assert found == pytest.approx(0.7616, abs=5e-5)  # four decimals
