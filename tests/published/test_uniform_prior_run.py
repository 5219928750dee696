"""Success run with a uniform prior: four values seen in the checks of an open reliability library."""

import numpy as np
import pytest

from secondplate.trials import reliability_shown, success_run_pulls, success_run_reliability

SOURCE = "uniform_prior_run"
# pulls, confidence, reliability
RUNS = ((10, 0.9, 0.811131), (29, 0.95, 0.904966), (59, 0.95, 0.951297), (99, 0.99, 0.954993))


def test_reliability_of_a_run():
    """Reliability (1-C)^(1/(n+1)), printed to six places; the posterior of a uniform prior gives the same."""
    pulls, confidence, reliability = map(np.array, zip(*RUNS, strict=True))
    for found in (
        success_run_reliability(pulls, confidence=confidence, convention="uniform prior"),
        reliability_shown(pulls, 0, confidence=confidence, convention="uniform prior"),
    ):
        assert found == pytest.approx(reliability, abs=1e-5)


def test_one_pull_less_than_the_binomial_convention():
    """95 % at 95 % takes 58 pulls by this convention, 59 by the other."""
    assert success_run_pulls(reliability=0.95, confidence=0.95, convention="uniform prior") == 58
