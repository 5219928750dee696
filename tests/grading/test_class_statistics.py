"""Statistics of a class: words where there are too few, gaps left out, nothing surer than it is."""

import numpy as np
import pytest

from grading import class_statistics as statistics
from grading import item_statistics, reliability
from grading.intervals import NO_SPREAD, TOO_FEW, Estimate, correlation_interval, feldt_interval


def _set(learners, items=4, *, seed=3):
    """Return the statistics of a random table of right and wrong."""
    random = np.random.default_rng(seed)
    right = (random.normal(size=(learners, 1)) + random.normal(size=(learners, items)) > 0).astype(float)
    names = [f"page.{number}" for number in range(items)]
    return statistics.set_statistics(names, 2 * right, right, np.full(items, 2.0))


@pytest.mark.parametrize("learners", [1, 4])
def test_fewer_than_five_give_words_only(learners):
    """Of fewer than five learners no statistic has a value, only the words."""
    found = _set(learners)
    every = [found.mean, found.alpha, found.kr20, found.standard_error]
    every += [
        getattr(item, name)
        for item in found.items
        for name in ("difficulty", "right_at_once", "upper_lower", "item_rest")
    ]
    assert {each.value for each in every} == {None}
    assert {each.in_words() for each in every} == {TOO_FEW}
    assert found.standard_deviation is None
    assert {item.verdict for item in found.items} == {TOO_FEW}


def test_five_to_nine_give_shares_and_nothing_that_compares():
    """From five on a share is told; comparing and reliability wait for ten."""
    found = _set(9)
    assert found.items[0].difficulty.value is not None
    assert found.items[0].right_at_once.low < found.items[0].right_at_once.value
    assert {item.verdict for item in found.items} == {TOO_FEW}
    assert found.alpha.why == found.kr20.why == found.standard_error.why == TOO_FEW


def test_ten_give_everything_with_intervals():
    """From ten on every coefficient has an interval around it."""
    found = _set(10)
    for each in (found.alpha, found.kr20, found.standard_error, found.items[0].item_rest):
        assert each.low < each.value < each.high
        assert each.count == 10
    assert found.alpha.value == pytest.approx(found.kr20.value, abs=1e-12), "twice the same answers"


def test_two_exercises_are_too_few_for_reliability():
    """Two exercises give no reliability, however large the class."""
    assert _set(50, items=2).alpha.why == TOO_FEW


def test_all_alike_is_said_so():
    """Where everybody has the same marks nothing can be compared, and no division by zero shows."""
    ones = np.ones((12, 4))
    found = statistics.set_statistics("abcd", ones, ones, np.ones(4))
    assert found.alpha.in_words() == found.standard_error.in_words() == NO_SPREAD
    assert {item.verdict for item in found.items} == {NO_SPREAD}
    assert {item.difficulty.value for item in found.items} == {1.0}


def test_an_exercise_that_the_weaker_solve_is_backwards():
    """An exercise right for those who are wrong elsewhere is said to be the wrong way round."""
    good = np.repeat([[1.0], [0.0]], 15, axis=0)
    table = np.hstack([good, good, good, 1 - good])
    table[0] = 1 - table[0]
    found = statistics.set_statistics("abcd", table, table, np.ones(4))
    assert [item.verdict for item in found.items] == ["very good"] * 3 + [statistics.BACKWARDS]


def test_what_may_be_chance_is_no_verdict():
    """A large difference is called nothing where the interval of the correlation crosses zero."""
    wide = Estimate(count=12, value=0.4, low=-0.1, high=0.8)
    assert statistics.verdict(Estimate(count=12, value=0.6), wide) == statistics.MAY_BE_CHANCE


def test_order_of_learners_changes_nothing():
    """Ties at the cut are shared out, so any order of the rows gives the same differences."""
    random = np.random.default_rng(5)
    for learners in range(10, 41):
        table = random.integers(0, 3, size=(learners, 5)).astype(float)
        found = item_statistics.upper_lower_differences(table, np.full(5, 2.0))
        again = item_statistics.upper_lower_differences(random.permutation(table), np.full(5, 2.0))
        assert found == pytest.approx(again, abs=1e-12), "sums of floats in another order"
        assert (np.abs(found) <= 1 + 1e-12).all()


def test_groups_never_overlap():
    """Upper and lower group are at most half of the class each, and at least one."""
    assert [item_statistics.group_size(count) for count in (2, 3, 10, 24, 100)] == [1, 1, 3, 6, 27]
    assert item_statistics.group_size(5, group=0.5) == 2


def test_shares_by_group_leave_gaps_out():
    """A page that was not handed in lowers no share; a group without any answer is a gap."""
    gap = np.nan
    points = [[1.0, 2.0, 0.0], [gap, 1.0, gap], [gap, gap, 4.0]]
    found = statistics.shares_by_group(points, [2.0, 2.0, 4.0], [0, 0, 1], 2)
    assert found == pytest.approx(np.array([[0.75, 0.0], [0.5, gap], [gap, 1.0]]), abs=1e-12, nan_ok=True)


def test_objectives_count_only_those_who_could_earn():
    """Gaps are no learners; those below half are counted."""
    column = np.array([[0.2], [0.4], [0.5], [0.9], [1.0], [np.nan]])
    (found,) = statistics.objective_statistics(["gas"], column)
    assert (found.learners, found.below_half) == (5, 2)
    assert (found.share.low, found.share.value, found.share.high) == pytest.approx((0.4, 0.5, 0.9), abs=1e-12)


def test_distribution_holds_everybody():
    """Every learner stands in one tenth, the best in the last."""
    found = statistics.distribution([0.0, 4.9, 5.0, 10.0], 10.0)
    assert found.counts == (1, 0, 0, 0, 1, 1, 0, 0, 0, 1)
    assert (found.low, found.median, found.high) == pytest.approx((0.0, 4.95, 10.0), abs=1e-12)
    assert statistics.distribution([], 10.0) is None


def test_effort_counts_only_answers():
    """Exercises that were left out count for neither tries nor minutes."""
    tries = [[1], [3], [0], [2], [3], [1]]
    minutes = [[2.0], [4.0], [np.nan], [np.nan], [6.0], [3.0]]
    (found,) = statistics.effort_statistics(["gas.need"], tries, minutes, 3)
    assert (found.learners, found.needed_all) == (5, 2)
    assert found.tries.value == pytest.approx(2.0, abs=1e-12)
    assert found.minutes.in_words() == TOO_FEW


def test_words_of_an_estimate():
    """An estimate writes its interval with it, with a minus that is one."""
    assert Estimate(count=20, value=0.514, low=-0.02, high=0.8).in_words() == "0.51 (\u22120.02 to 0.80)"
    assert Estimate(count=20, value=0.5).in_words(".0%") == "50%"


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: reliability.kr20([[0, 2], [1, 1]]), "right must be 0 or 1, got 2"),
        (
            lambda: reliability.kr20([[1, 1]]),
            "scores must be a table of at least 2 by 2, .*got shape \\(1, 2\\)",
        ),
        (lambda: reliability.cronbach_alpha([[1.0, np.nan], [1, 1]]), "scores must be finite, got nan"),
        (lambda: reliability.standard_error(2.0, 1.1), "reliability must be at most 1, got 1.1"),
        (lambda: reliability.standard_error(2.0, np.nan), "reliability must be at most 1, got nan"),
        (lambda: feldt_interval(0.5, learners=1, items=5), "learners must be at least 2, got 1"),
        (lambda: correlation_interval(0.5, learners=3), "learners must be at least 4, got 3"),
    ],
)
def test_refusals(call, sentence):
    """What cannot be reckoned is refused in one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        call()


def test_negative_reliability_counts_as_none():
    """Where alpha is below zero the standard error is the whole spread."""
    assert reliability.standard_error(2.0, -0.4) == pytest.approx(2.0, abs=1e-12)
