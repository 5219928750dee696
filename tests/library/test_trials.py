"""Test pulls: what they show, refusals, charts, and the best policy against every plan there is."""

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from secondplate import trials
from secondplate.trials import RowModel

MODEL = RowModel(
    wrong_probability=0.3,
    good_failure_probability=0.05,
    wrong_failure_probability=0.7,
    failed_pull_min=12.0,
    test_delay_min=3.0,
    reset_min=20.0,
    wrong_after_reset_probability=0.1,
)
PLAN = {
    "good_failure_probability": 0.02,
    "bad_failure_probability": 0.3,
    "producer_risk": 0.1,
    "consumer_risk": 0.1,
}


def cheapest(left, wrong, model, fresh=False):
    """Try every plan for a row, test by test, in plain floats: the slow way to the best policy."""
    if left == 0:
        return 0.0
    good, bad = model.good_failure_probability, model.wrong_failure_probability
    failing = (1 - wrong) * good + wrong * bad
    costs = [left * failing * model.failed_pull_min]
    after_fail = wrong * bad / failing
    after_good = wrong * (1 - bad) / (1 - failing)
    costs.append(
        model.test_delay_min
        + failing * (model.failed_pull_min + cheapest(left - 1, after_fail, model))
        + (1 - failing) * cheapest(left - 1, after_good, model)
    )
    if not fresh:  # a second re-set in a row finds nothing out
        costs.append(model.reset_min + cheapest(left, model.wrong_after_reset_probability, model, fresh=True))
    return min(costs)


@settings(max_examples=25)
@given(st.integers(1, 4), st.floats(0.05, 0.9), st.floats(0, 8), st.floats(0, 30), st.floats(0, 0.3))
def test_policy_against_every_plan(rivets, wrong, delay, reset, still_wrong):
    """The best policy costs what the best of all plans costs, tried one by one."""
    model = replace(
        MODEL,
        wrong_probability=wrong,
        test_delay_min=delay,
        reset_min=reset,
        wrong_after_reset_probability=still_wrong,
    )
    found = trials.best_policy(rivets, model).expected_min
    assert found == pytest.approx(cheapest(rivets, wrong, model), rel=1e-9, abs=1e-9)  # ties within 1e-9 min


def test_policy_is_no_dearer_than_plain_plans():
    """The best policy never costs more than weld all, re-set first, or one to three tests."""
    rows = np.arange(3, 60)
    best = trials.best_policy(rows, MODEL).expected_min
    plans = [trials.plan_with_tests_min(rows, MODEL, tests=tests) for tests in range(4)]
    for plan in (trials.weld_all_min(rows, MODEL), trials.reset_first_min(rows, MODEL), *plans):
        assert np.all(best <= plan + 1e-9)


def test_policy_over_the_length_of_the_row():
    """Cost rises with the row; a short row is welded, a long one is tested or re-set."""
    found = trials.best_policy(np.arange(1, 201), replace(MODEL, wrong_after_reset_probability=0.0))
    assert np.all(np.diff(found.expected_min) > 0)
    assert found.action[0] == "weld all"
    assert set(found.action[20:]) <= {"test", "re-set first"}


def test_policies_of_a_class_are_those_of_each():
    """A column of rows and models gives what each gives alone."""
    wrong, rows = np.array([0.05, 0.2, 0.6]), np.array([30, 12, 7])
    model = replace(MODEL, wrong_probability=wrong)
    column = trials.best_policy(rows, model)
    for number, row in enumerate(rows):
        alone = trials.best_policy(int(row), replace(MODEL, wrong_probability=float(wrong[number])))
        assert column.expected_min[number] == pytest.approx(alone.expected_min, rel=1e-12)
        assert (column.words[number], column.most_tests[number]) == (alone.words, alone.most_tests)


def test_next_step_follows_the_policy():
    """After a failed test the row is re-set or welded as the cheaper of both says, and never costs less."""
    steps = trials.next_step(11, MODEL, pulls=1, failures=[0, 1])
    assert steps.words[1] == "re-set first"
    assert steps.expected_min[0] < steps.expected_min[1]


def test_certain_beliefs_stay():
    """A belief of 0 or 1 is not moved by any pull, and no long series underflows."""
    for belief in (0.0, 1.0):
        found = trials.wrong_belief(replace(MODEL, wrong_probability=belief), pulls=200, failures=[0, 200])
        assert found.tolist() == [belief] * 2
    assert trials.wrong_belief(MODEL, pulls=200, failures=100) == pytest.approx(1.0)


def test_value_of_information_is_never_negative():
    """Knowing is worth at least nothing, a test no more, and nothing less where the row would be welded."""
    model = replace(MODEL, wrong_probability=np.linspace(0, 1, 21), wrong_after_reset_probability=0.0)
    test, knowing = (value(12, model) for value in (trials.value_of_one_test, trials.value_of_knowing))
    welded = trials.weld_all_min(12, model) <= trials.reset_first_min(12, model)
    assert np.all(test[welded] >= -1e-9)
    assert np.all(knowing >= np.maximum(test, 0) - 1e-9)
    assert knowing[[0, -1]] == pytest.approx([0, 0], abs=1e-9)


def test_a_belief_without_another_action_pays_for_no_test():
    """Where a re-set costs more than any row, the best policy welds all: a test could change nothing."""
    found = trials.best_policy(np.arange(1, 60), replace(MODEL, reset_min=1e6, test_delay_min=0.1))
    assert set(found.action) == {"weld all"}


def test_a_car_never_has_enough_rivets():
    """The finding says so, for short rows and for those that are long enough."""
    short, long = (trials.row_proof(row, reliability=0.9, confidence=0.9) for row in (12, 40))
    assert (short.pulls_needed, short.enough, long.enough) == (22, False, True)
    assert "a car never has enough rivets to prove a reliability" in short.finding
    assert "then 18 rivets are left, and on the next car it proves nothing" in long.finding
    for proof in (short, long):
        assert proof.finding.endswith("The test pull finds a wrong set-up.")


def test_short_rows_tell_more():
    """Whole rows pulled leave nothing open; each pull without a failure leaves fewer bad ones."""
    left = [trials.most_bad_left(12, pulls=pulls, failures=0, confidence=0.9) for pulls in range(1, 13)]
    assert (left[0], left[-1]) == (10, 0)  # one of twelve: (12 - D) / 12 above 0.1
    assert all(later <= earlier for earlier, later in pairwise(left))
    assert trials.chance_of_at_most_in_row(12, bad=2, pulls=12, failures=1) == 0
    assert trials.pulls_to_find(12, bad=12, confidence=0.999) == 1


def test_intervals_at_the_ends():
    """No failure starts at 0, all failures end at 1; all failed shows no reliability at all."""
    for interval in (trials.clopper_pearson_interval, trials.wilson_interval):
        low, high = interval(7, [0, 7], confidence=0.9)
        assert (low[0], high[1]) == (0, 1)
        assert 0 < high[0] < 0.5 < low[1] < 1
    assert trials.reliability_shown(5, 5, confidence=0.9, convention="binomial") == 0


def test_sequential_decisions():
    """The plan goes on between its lines and ends beyond them; followed to the end it keeps its risks."""
    plan = trials.SequentialPlan(**PLAN)
    assert [plan.decide(20, failures) for failures in (0, 2, 20)] == ["accept", "go on", "reject"]
    assert plan.decide([20, 20], [0, 9]).tolist() == ["accept", "reject"]
    accepted, rejected, going, average = trials.exact_sequential(
        plan, failure_probability=0.02, last_pull=400
    )
    assert accepted + rejected + going == pytest.approx(1, abs=1e-12)
    assert rejected <= 0.1 / 0.9  # the bound of the two risks together
    assert average >= trials.average_pulls(plan, bad=False) * 0.9  # overshoot is left out there
    assert trials.exact_sequential(plan, failure_probability=0.0, last_pull=400)[3] == plan.first_acceptance


def test_tolerance_limits_of_a_series():
    """Limits widen with content and confidence, and say whether a force is cleared."""
    forces = [2900, 3100, 3000, 2950, 3050, 3010]
    some, more = (trials.tolerance_limits(forces, content=c, confidence=0.9) for c in (0.9, 0.99))
    assert more.lower_n < some.lower_n
    assert more.between_n[0] < some.between_n[0] < some.mean_n < some.between_n[1] < more.between_n[1]
    assert some.clears(2700)
    assert not some.clears(2900)


def test_weibull_law():
    """Survival and its inverse belong together; a law without scatter to find is refused."""
    law = trials.Weibull(shape=np.array([2.0, 10.0]), scale=3200.0)
    np.testing.assert_allclose(law.survival(law.reached_by(0.1)), 0.9, rtol=1e-12)
    forces = trials.Weibull(shape=12.0, scale=3000.0).reached_by(trials.median_ranks(200, exact=True))
    fitted = trials.fit_weibull(forces)
    assert (fitted.shape, fitted.scale) == pytest.approx((12, 3000), rel=0.03)  # ranks in place of draws


def test_charts_see_a_shift():
    """A jump of three standard deviations shows in every chart, and none signals before."""
    steady = 3000 + 40 * np.tile([0.3, -0.9, 0.5, 0.8, -0.6, -0.1], 4)
    jumped = np.concatenate((steady, steady[:6] - 120))
    sums = trials.cumulative_sums(jumped, target=3000, scatter=40)
    means = trials.weighted_mean_chart(jumped, target=3000, scatter=40)
    rows, ranges = trials.mean_and_range_charts(jumped.reshape(-1, 3))
    for chart in (sums, means):
        assert chart.signals[0] >= 24
    assert rows.signals[0] >= 8
    assert ranges.signals.size == 0
    values, _ = trials.individuals_charts(steady)
    assert values.signals.size == 0


def test_cumulative_sum_without_drift():
    """Where the shift is just the slack the run length is the square of the reach."""
    near = trials.cumulative_sum_run_length(shift=[0.5, 0.5 + 1e-5])
    assert near == pytest.approx([6.166**2] * 2, rel=1e-3)  # the limit of the formula


def test_plan_by_forces():
    """Five forces far above the limit are accepted, five that hardly clear it are not."""
    plan = trials.variables_plan("D", quality_limit=2.5)
    forces = np.array([2900, 3100, 3000, 2950, 3050.0])
    assert plan.quality(forces, least_n=2800) == pytest.approx(200 / np.sqrt(25_000 / 4), rel=1e-12)
    assert plan.accepts(forces, least_n=2800)
    assert not plan.accepts(forces, least_n=2950)


REFUSED = [
    (
        lambda: trials.success_run_reliability(0, confidence=0.9, convention="binomial"),
        "pulls must be at least 1, got 0",
    ),
    (
        lambda: trials.success_run_reliability(2.5, confidence=0.9, convention="binomial"),
        "pulls must be a whole number, got 2.5",
    ),
    (
        lambda: trials.success_run_pulls(reliability=0.9, confidence=90, convention="binomial"),
        "confidence must be between 0 and 1, ends excluded, got 90",
    ),
    (
        lambda: trials.success_run_pulls(reliability=0.9, confidence=0.9, convention="n+1"),
        "convention must be one of binomial, uniform prior, got 'n[+]1'",
    ),
    (
        lambda: trials.pulls_needed(
            failures=0, reliability=0.9999999, confidence=0.99, convention="binomial"
        ),
        "pulls needed must be at most 10000000, got more: ask for less reliability",
    ),
    (
        lambda: trials.clopper_pearson_interval([9, 5], [3, 6], confidence=0.9),
        "failures must be at most the 5 pulls, got 6",
    ),
    (
        lambda: trials.chance_of_at_most(5, 1, failure_probability=1.2),
        "failure probability must be between 0 and 1, got 1.2",
    ),
    (lambda: trials.wilson_interval(5, -1, confidence=0.9), "failures must be at least 0, got -1"),
    (lambda: trials.wilson_interval("5", 1, confidence=0.9), "pulls must be a number, got '5'"),
    (
        lambda: trials.chance_of_at_most_in_row(12, bad=13, pulls=3, failures=0),
        "bad rivets must be at most the 12 rivets of the row, got 13",
    ),
    (lambda: trials.good_pull_mean(5, 0, prior="flat"), "prior must be one of uniform, Jeffreys, got 'flat'"),
    (
        lambda: trials.SequentialPlan(**(PLAN | {"bad_failure_probability": 0.01})),
        "bad failure probability must be above the good one of 0.02, got 0.01",
    ),
    (
        lambda: trials.SequentialPlan(**(PLAN | {"producer_risk": 0.9, "consumer_risk": 0.2})),
        "both risks together must be below 1, got 1.1",
    ),
    (
        lambda: trials.tolerance_limits([3000, 3000], content=0.9, confidence=0.9),
        "pull forces must differ, got 2 times 3000 N",
    ),
    (
        lambda: trials.tolerance_limits([3000], content=0.9, confidence=0.9),
        "pull forces must be a row of at least 2 numbers, got 1",
    ),
    (
        lambda: trials.natrella_one_sided_factor(2, content=0.9, confidence=0.99),
        "pulls must be enough for the approximation at this confidence, got 2",
    ),
    (lambda: trials.fit_weibull([3000, 3000]), "failed values must differ, got 2 times 3000"),
    (lambda: trials.fit_weibull([3000, 0]), "failed values must be above 0, got 0"),
    (
        lambda: trials.individuals_charts([3000, 3000]),
        "values must differ within the series or subgroups, got ranges that are all 0",
    ),
    (
        lambda: trials.mean_and_range_charts([[1, 2, 3]]),
        r"subgroups must be at least 2 rows of 2 to 10 values, got the shape \(1, 3\)",
    ),
    (lambda: trials.plans_for_lot(300), "lot must be between 2 and 280, got 300"),
    (
        lambda: trials.variables_plan("B", quality_limit=1.0),
        "quality limit must be one of 2.5 %, 4 % for the letter B, got 1 %",
    ),
    (
        lambda: trials.variables_plan("B", quality_limit=2.5).quality([1, 2], least_n=1),
        "pull forces must be the 3 of the plan, got 2",
    ),
    (
        lambda: replace(MODEL, wrong_failure_probability=0.05),
        "wrong failure probability must be above the good one of 0.05, got 0.05",
    ),
    (lambda: replace(MODEL, reset_min=-1), "reset must be at least 0 min, got -1 min"),
    (lambda: replace(MODEL, wrong_probability=2), "wrong probability must be between 0 and 1, got 2"),
    (lambda: trials.best_policy(201, MODEL), "row of rivets must be between 1 and 200, got 201"),
]


@pytest.mark.parametrize(("call", "sentence"), REFUSED)
def test_refusals(call, sentence):
    """Counts below one, probabilities out of range, more failures than pulls: one clear sentence each."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        call()
