"""Siegmund, Sequential Analysis, 1985: run length of cumulative sums; computed."""

import pytest

from secondplate.trials import cumulative_sum_run_length

SOURCE = "siegmund_1985"


def test_run_lengths():
    """Slack 0.5 and interval 5: 469.11 to a false alarm with both sides watched, 10.336 at one deviation."""
    still = cumulative_sum_run_length(shift=0, both_sides=True)
    moved = cumulative_sum_run_length(shift=1)
    assert (still, moved) == pytest.approx((469.11, 10.336), rel=1e-4)
