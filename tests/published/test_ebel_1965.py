"""Words for how an exercise tells learners apart."""

import pytest

from grading.class_statistics import verdict
from grading.intervals import Estimate

SOURCE = "ebel_1965"


@pytest.mark.parametrize(
    ("difference", "words"),
    [
        (0.40, "very good"),
        (0.39, "reasonable"),
        (0.30, "reasonable"),
        (0.29, "marginal"),
        (0.20, "marginal"),
        (0.19, "poor"),
    ],
)
def test_guide(difference, words):
    """At least 0.40 very good, 0.30 reasonable, 0.20 marginal, below that poor."""
    clear = Estimate(count=200, value=0.4, low=0.27, high=0.51)
    assert verdict(Estimate(count=200, value=difference), clear) == words
