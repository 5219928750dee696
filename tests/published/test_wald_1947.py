"""Wald, Sequential Analysis, 1947: average number of pulls of the probability ratio test; computed."""

import pytest

from secondplate.trials import SequentialPlan, average_pulls

SOURCE = "wald_1947"


def test_average_pulls():
    """27.957 pulls with a good set-up and 16.447 with a bad one, five figures."""
    plan = SequentialPlan(
        good_failure_probability=0.01, bad_failure_probability=0.1, producer_risk=0.05, consumer_risk=0.1
    )
    found = [average_pulls(plan, bad=bad) for bad in (False, True)]
    assert found == pytest.approx([27.957, 16.447], rel=1e-4)
