"""Weld one and pull it, or weld the row: two-state model with its numbers, computed independently."""

import pytest

from secondplate.trials import (
    RowModel,
    best_policy,
    plan_with_tests_min,
    reset_first_min,
    value_of_knowing,
    value_of_one_test,
    weld_all_min,
    wrong_belief,
)

SOURCE = "two_state_row"
MODEL = RowModel(
    wrong_probability=0.2,
    good_failure_probability=0.02,
    wrong_failure_probability=0.6,
    failed_pull_min=15,
    test_delay_min=4,
    reset_min=25,
)
# rivets, expected minutes, most tests (0 for weld all)
POLICIES = ((3, 6.12, 0), (5, 10.2, 0), (8, 16.32, 0), (12, 20.396, 1), (20, 25.895, 2), (30, 31.235, 3))


def test_belief():
    """First pull fails with 0.136; wrong with 0.882 after a failure, with 0.0926 after a good pull."""
    assert MODEL.failure_chance(0.2) == pytest.approx(0.136, abs=1e-12)
    found = wrong_belief(MODEL, pulls=1, failures=[1, 0])
    assert found == pytest.approx([0.882, 0.0926], abs=5e-4)


def test_plain_plans():
    """Weld all, re-set first and test one for 12 rivets: 24.48, 28.60 and 20.40 min."""
    found = [weld_all_min(12, MODEL), reset_first_min(12, MODEL), plan_with_tests_min(12, MODEL, tests=1)]
    assert found == pytest.approx([24.48, 28.6, 20.396], abs=1e-3)


def test_value_of_information():
    """One test is worth 8.08 min before its delay, knowing for certain 15.88 min."""
    found = [value_of_one_test(12, MODEL), value_of_knowing(12, MODEL)]
    assert found == pytest.approx([8.08, 15.88], abs=5e-3)


@pytest.mark.parametrize(("rivets", "minutes", "tests"), POLICIES)
def test_best_policy(rivets, minutes, tests):
    """Expected time and most tests by row length, to a thousandth of a minute."""
    found = best_policy(rivets, MODEL)
    assert found.expected_min == pytest.approx(minutes, abs=1e-3)
    assert found.most_tests == tests
    assert found.action == ("test" if tests else "weld all")
