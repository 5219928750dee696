"""The interval of coefficient alpha (cronbach_1951): worked cases that packages and course pages print."""

import pytest
from scipy.special import fdtri

from grading.intervals import feldt_interval

SOURCE = "feldt_1965"


def test_printed_interval():
    """873 people, 20 items, alpha 0.913: result on the statistics wiki of a research unit; seven places."""
    found = feldt_interval(0.913, learners=873, items=20)
    assert found == pytest.approx((0.9044024, 0.9211588), abs=6e-8)


def test_the_other_reading_of_the_degrees_of_freedom():
    """A package (ci.cronbach) prints 0.7971254 to 0.8931436 for 0.85 of 89 people and 7 items.

    It takes n (k - 1) degrees of freedom where the paper has (n - 1)(k - 1): its ends follow from that, and
    ours agree to a ten-thousandth.
    """
    printed = (0.7971254, 0.8931436)
    assert [1 - 0.15 * fdtri(88, 89 * 6, each) for each in (0.975, 0.025)] == pytest.approx(printed, abs=6e-8)
    assert feldt_interval(0.85, learners=89, items=7) == pytest.approx(printed, abs=1e-4)


def test_fifteen_learners_say_little():
    """Alpha 0.5917 of 15 learners and ten items: 0.195 to 0.840, as the data set of an open package shows."""
    found = feldt_interval(0.5917188485995826, learners=15, items=10)
    assert found == pytest.approx((0.195, 0.840), abs=5e-4)
