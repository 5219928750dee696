"""Success run and exact binomial: pulls needed by reliability, confidence and allowed failures.

45 pulls for 95 % at a confidence of 90 %, and 0.90063 for 22 pulls, were seen in the test of an open library;
the other values are from memory and were recomputed.
"""

import numpy as np
import pytest

from secondplate.trials import pulls_needed, reliability_shown, success_run_pulls, success_run_reliability

SOURCE = "success_run_tables"
# confidence, reliability, pulls without a failure
RUNS = ((0.95, 0.95, 59), (0.9, 0.95, 45), (0.9, 0.99, 230), (0.8, 0.9, 16), (0.99, 0.99, 459))
# confidence, reliability, pulls for 0, 1, 2 and 3 failures
ALLOWED = (
    (0.9, 0.9, (22, 38, 52, 65)),
    (0.95, 0.9, (29, 46, 61, 76)),
    (0.95, 0.95, (59, 93, 124, 153)),
    (0.9, 0.95, (45, 77, 105, 132)),
)


def test_success_run():
    """Pulls without a failure: whole numbers, so exact."""
    confidence, reliability, pulls = map(np.array, zip(*RUNS, strict=True))
    given = {"reliability": reliability, "confidence": confidence, "convention": "binomial"}
    np.testing.assert_array_equal(success_run_pulls(**given), pulls)
    np.testing.assert_array_equal(pulls_needed(failures=0, **given), pulls)


@pytest.mark.parametrize(("confidence", "reliability", "pulls"), ALLOWED)
def test_pulls_with_failures(confidence, reliability, pulls):
    """Pulls with 0 to 3 failures: whole numbers, so exact."""
    found = pulls_needed(
        failures=range(4), reliability=reliability, confidence=confidence, convention="binomial"
    )
    assert found.tolist() == list(pulls)


def test_reliability_of_22_pulls():
    """22 pulls without a failure show 0.90063 at 90 %; printed to five places."""
    by_run = success_run_reliability(22, confidence=0.9, convention="binomial")
    by_law = reliability_shown(22, 0, confidence=0.9, convention="binomial")
    assert [by_run, by_law] == pytest.approx([0.90063] * 2, abs=5e-6)


def test_few_pulls_show_little():
    """5 good pulls of 5 show 0.549, 10 of 10 show 0.741 at 95 %; computed, printed to three places."""
    found = success_run_reliability([5, 10], confidence=0.95, convention="binomial")
    assert found == pytest.approx([0.549, 0.741], abs=5e-4)
