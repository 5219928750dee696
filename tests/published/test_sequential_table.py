"""Table of a sequential test for 1 to 100 pulls in the documentation of an open reliability library; seen."""

import numpy as np

from secondplate.trials import SequentialPlan

SOURCE = "sequential_table"
# pulls, accept at (-1 for never), reject at
ROWS = (
    *((2, -1, 2), (20, -1, 3), (24, 0, 3), (45, 0, 3), (46, 0, 4), (48, 0, 4), (49, 1, 4), (70, 1, 4)),
    *((71, 1, 5), (73, 1, 5), (74, 2, 5), (95, 2, 5), (96, 2, 6), (99, 2, 6), (100, 3, 6)),
)


def test_rows_of_the_table():
    """Fifteen rows round every step of both lines: whole numbers, so exact."""
    plan = SequentialPlan(
        good_failure_probability=0.01, bad_failure_probability=0.1, producer_risk=0.05, consumer_risk=0.1
    )
    pulls, accept, reject = np.transpose(ROWS)
    np.testing.assert_array_equal(plan.accept_at(pulls), accept)
    np.testing.assert_array_equal(plan.reject_at(pulls), reject)
    assert plan.reject_at(range(2, 20)).tolist() == [2] * 18
