"""Binomial, beta and beta-binomial laws: worked numbers, computed independently of this library."""

import pytest

from secondplate.trials import (
    beta_binomial_chances,
    chance_better_than,
    chance_of_at_most,
    good_pull_mean,
)

SOURCE = "binomial_law"


def test_operating_characteristic():
    """Plans 20 with 1 at 0.025 and 13 with 1 at 0.04, to four places; 20 with 1 passes 0.181 in ten."""
    found = chance_of_at_most([20, 13], 1, failure_probability=[0.025, 0.04])
    assert found == pytest.approx([0.9118, 0.9068], abs=1e-4)
    assert chance_of_at_most(20, 1, failure_probability=0.181) == pytest.approx(0.1, abs=1e-3)


def test_chances_before_any_pull():
    """Three pulls, beta law 2, 1: 0.1, 0.2, 0.3, 0.4, exact but for rounding."""
    assert beta_binomial_chances(3, first=2, second=1) == pytest.approx([0.1, 0.2, 0.3, 0.4], abs=1e-12)


def test_belief_after_five_good_pulls():
    """Five of five: means 6/7 and 11/12, belief in more than 0.9 is 0.468559; six places."""
    assert good_pull_mean(5, 0, prior="uniform") == pytest.approx(6 / 7, abs=1e-12)
    assert good_pull_mean(5, 0, prior="Jeffreys") == pytest.approx(11 / 12, abs=1e-12)
    better = chance_better_than(0.9, pulls=5, failures=0, prior="uniform")
    assert better == pytest.approx(0.468559, abs=1e-5)
