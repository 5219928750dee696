"""Rows of the virtual bench: runs keep their plan, means agree with runs and with models of test pulls."""

from dataclasses import fields, replace
from itertools import product

import numpy as np
import pytest

from secondplate.bench_day import PLAN_LIMITS, RowPlan, example_day, usual_row_times
from secondplate.bench_plan import best_plan, expected_row, habits_of, judge_plan
from secondplate.bench_row import CAME, MODES, run_rows
from secondplate.removal import mean_of_band, usual_times
from secondplate.trials_policy import RowModel, best_policy
from secondplate.trials_value import plan_with_tests_min

DAY = example_day()
SEED = b"rows"
# No drift and no damage: the model of trials_policy.
PLAIN = replace(
    DAY,
    drift_probability=0.0,
    wrong_after_reset_probability=0.0,
    damage_min=0.0,
    other_min=1000.0,
)
MODEL = RowModel(
    wrong_probability=PLAIN.wrong_probability,
    good_failure_probability=PLAIN.failure_probabilities[0],
    wrong_failure_probability=PLAIN.failure_probabilities[1],
    failed_pull_min=PLAIN.failed_pull_min,
    test_delay_min=PLAIN.test_delay_min,
    reset_min=PLAIN.reset_min,
)


def _plan(*numbers):
    return RowPlan(**dict(zip(PLAN_LIMITS, numbers, strict=True)))


def _extra_min(plan, day):
    """Return what a plan costs beyond the time that every rivet takes anyhow."""
    return expected_row(plan, day).minutes - day.rivets * day.rivet_min


# Means against models that stand apart


@pytest.mark.parametrize("tests", [0, 1, 2, 4])
@pytest.mark.parametrize("rivets", [5, 12, 30])
def test_plain_plans_cost_what_the_model_of_test_pulls_says(tests, rivets):
    """Test so many, re-set at the first failure, weld the rest: the closed sum of trials_value."""
    day = replace(PLAIN, rivets=rivets)
    plan = _plan(tests, 0, 0, 1 if tests else 0, 1)
    wanted = plan_with_tests_min(rivets, MODEL, tests=tests)
    # abs: means are rounded to a millionth
    assert _extra_min(plan, day) == pytest.approx(wanted, abs=2e-6)


@pytest.mark.parametrize("rivets", [4, 12, 30])
def test_one_by_one_no_plan_beats_dynamic_programming(rivets):
    """With single tests only, the best policy of trials_policy is a lower bound, and it is reached."""
    day = replace(PLAIN, rivets=rivets)
    numbers = np.array(
        [row for row in product(range(6), (0, 1), (0,), (1, 2, 3), (0, 1, 2)) if row[0] <= rivets]
    ).T
    extra = _extra_min(_plan(*numbers), day)
    bound = best_policy(rivets, MODEL).expected_min
    assert extra.min() >= bound - 2e-6  # means are rounded to a millionth
    assert extra.min() == pytest.approx(bound, abs=2e-6)


def test_welding_several_at_once_can_beat_single_tests():
    """Studs welded at once tell more for one stop: the best plan may cost less than single tests."""
    wrong = replace(DAY.right, rivet_out=np.arange(400) % 5 > 1)  # 2 in 5 fail: one pull tells little
    day = replace(PLAIN, rivets=30, wrong=wrong, wrong_probability=0.15)
    model = replace(MODEL, wrong_failure_probability=0.4, wrong_probability=0.15)
    assert day.failure_probabilities[1] == 0.4
    assert _extra_min(best_plan(day), day) < best_policy(30, model).expected_min - 0.1


def _by_tree(plan, day):
    """Return the mean cost by following every way that a row can go, one by one: slow and plain."""
    fail, harm = day.failure_probabilities, day.damage_probabilities

    def cost(left, wrong, tests, seen, resets):
        if not left:
            return 0.0
        size = 1 if tests else min(plan.weld_at_once or left, left)
        stop = day.test_delay_min if tests or size < left else 0.0
        return stop + pulls(left, wrong, tests, seen, resets, size)

    def pulls(left, wrong, tests, seen, resets, size):
        if not size:
            return look(left, wrong, max(tests - 1, 0), seen, resets)
        here = day.rivet_min + harm[wrong] * day.damage_min
        total = 0.0
        for failed, chance in ((0, 1 - fail[wrong]), (1, fail[wrong])):
            drift = 1.0 if wrong else day.drift_probability
            after = 0.0
            for then, share in ((0, 1 - drift), (1, drift)):
                if share:
                    after += share * pulls(left - 1, then, tests, seen + failed, resets, size - 1)
            total += chance * (failed * day.failed_pull_min + after)
        return here + total

    def look(left, wrong, tests, seen, resets):
        if not left or not plan.reset_at or seen < plan.reset_at:
            return cost(left, wrong, tests, seen, resets)
        if resets == plan.most_resets:
            return left * (day.other_min + day.other_damage_probability * day.damage_min)
        again = day.wrong_after_reset_probability
        return day.reset_min + sum(
            chance * cost(left, then, plan.test_after_reset, 0, resets + 1)
            for then, chance in ((0, 1 - again), (1, again))
        )

    start = day.wrong_probability
    return (1 - start) * cost(day.rivets, 0, plan.test_first, 0, 0) + start * cost(
        day.rivets, 1, plan.test_first, 0, 0
    )


@pytest.mark.parametrize(
    "numbers",
    [
        (0, 0, 0, 0, 0),
        (1, 1, 0, 1, 1),
        (2, 1, 2, 2, 2),
        (0, 0, 3, 1, 1),
        (0, 2, 2, 3, 2),
        (3, 0, 0, 2, 0),
        (6, 1, 1, 1, 2),
    ],
)
def test_means_are_those_of_every_way_a_row_can_go(numbers):
    """With drift, damage, batches and re-sets that fail, a plain tree of all ways gives the same mean."""
    day = replace(DAY, rivets=6, drift_probability=0.1, wrong_after_reset_probability=0.3)
    plan = _plan(*numbers)
    assert expected_row(plan, day).cost_min == pytest.approx(_by_tree(plan, day), abs=1e-4)  # rounded means


@pytest.mark.parametrize("numbers", [(0, 0, 0, 0, 0), (2, 1, 6, 2, 1), (1, 0, 0, 1, 0)])
def test_means_are_those_of_many_runs(numbers):
    """Minutes and damage of 20,000 runs lie within four standard errors of the means."""
    plan, day = _plan(*numbers), replace(DAY, drift_probability=0.02)
    runs, mean = run_rows(plan, day, seed=SEED, rows=20_000), expected_row(plan, day)
    for drawn, wanted in ((runs.minutes, mean.minutes), (runs.damaged, mean.damaged)):
        assert abs(drawn.mean() - wanted) < 4 * drawn.std() / np.sqrt(drawn.size)


def test_many_plans_cost_what_each_costs_alone():
    """Arrays of plans give the same as plan by plan."""
    numbers = np.array([(0, 0, 0, 0, 0), (2, 1, 6, 2, 1), (6, 3, 1, 6, 3), (0, 9, 200, 3, 2)])
    together = expected_row(_plan(*numbers.T), DAY)
    for place, row in enumerate(numbers.tolist()):
        assert expected_row(_plan(*row), DAY).cost_min == pytest.approx(together.cost_min[place], abs=1e-9)


def test_the_best_plan_is_the_best_of_many():
    """No plan of some hundred random ones costs less than the best, but for numbers outside its table."""
    dice = np.random.default_rng(5)
    numbers = [dice.integers(0, most, 300) for most in (6, 3, 25, 4, 3)]
    costs = expected_row(_plan(*numbers), DAY).cost_min
    best = judge_plan(best_plan(DAY), DAY)
    assert best.worse_min == 0
    assert costs.min() > best.own.cost_min - 0.5


# Plans in words


@pytest.mark.parametrize(
    ("numbers", "habits"),
    [
        ((0, 0, 0, 1, 1), ("never tests", "never stops")),
        ((0, 0, 20, 1, 1), ("never tests", "never stops")),
        ((2, 0, 0, 0, 0), ("never stops",)),
        ((2, 0, 0, 3, 1), ("never stops",)),
        ((2, 0, 9, 3, 1), ()),
        ((20, 1, 0, 1, 1), ("tests every stud",)),
        ((1, 1, 1, 1, 1), ("tests every stud",)),
        ((2, 1, 0, 1, 0), ("gives up at once",)),
        ((2, 1, 0, 1, 1), ()),
        ((1, 1, 0, 1, 1), ()),
        ((3, 1, 0, 3, 1), ()),
    ],
)
def test_habits_are_named(numbers, habits):
    """What a plan never does is told from its numbers, whatever the day."""
    assert habits_of(_plan(*numbers), 20) == habits


def test_the_luck_of_a_run_does_not_enter():
    """A plan is judged by its means: what it costs beyond the best plan, and as a share of that."""
    judged = judge_plan(_plan(0, 0, 0, 0, 0), DAY)
    assert judged.worse_min == pytest.approx(judged.own.cost_min - judged.best.cost_min, abs=1e-9)
    assert judged.share_lost == pytest.approx(judged.worse_min / judged.best.cost_min, rel=1e-12)
    assert judged.worse_min > 10
    assert judged.best_plan == best_plan(DAY)


# Runs


def test_a_row_keeps_its_numbers_however_many_are_run():
    """The first row alone is the first of many."""
    plan = _plan(2, 1, 5, 1, 1)
    one, many = (run_rows(plan, DAY, seed=SEED, rows=rows) for rows in (1, 50))
    for field in fields(one):
        assert (getattr(one, field.name)[..., 0] == getattr(many, field.name)[..., 0]).all(), field.name


@pytest.mark.parametrize("numbers", [(2, 1, 5, 1, 1), (0, 0, 4, 2, 0), (3, 2, 0, 1, 2)])
def test_runs_keep_their_plan(numbers):
    """Tests come first and after each re-set, a stop is for good, every rivet is accounted for."""
    plan = _plan(*numbers)
    runs = run_rows(plan, DAY, seed=SEED, rows=2000)
    tested, other = (runs.mode == MODES.index(mode) for mode in ("tested", "other method"))
    assert tested[: plan.test_first].all()
    assert (runs.out_at_once + runs.failures + runs.by_other_method == DAY.rivets).all()
    assert (runs.by_other_method == other.sum(axis=0)).all()
    assert (other == (runs.came == CAME.index("other method"))).all()
    assert (np.diff(other.astype(int), axis=0) >= 0).all()
    assert runs.resets.max() <= plan.most_resets
    assert (runs.reset_before.sum(axis=0) == runs.resets).all()
    assert (runs.damaged == runs.harmed.sum(axis=0)).all()
    if plan.test_after_reset:
        assert tested[runs.reset_before].all()


def test_minutes_of_a_run_add_up():
    """Rivets, failures, stops, re-sets and the other method make the minutes of a row."""
    plan = _plan(2, 1, 0, 1, 1)
    runs = run_rows(plan, DAY, seed=SEED, rows=500)
    tested = (runs.mode == MODES.index("tested")).sum(axis=0)
    pulled = runs.out_at_once + runs.failures
    wanted = (
        pulled * DAY.rivet_min
        + runs.failures * DAY.failed_pull_min
        + tested * DAY.test_delay_min
        + runs.resets * DAY.reset_min
        + runs.by_other_method * DAY.other_min
    )
    np.testing.assert_allclose(runs.minutes, wanted, rtol=0, atol=1e-6)  # rounded to a millionth


def test_every_stud_is_one_of_its_pool():
    """What came of a stud is what its own stud of the right or the wrong set-up gave."""
    runs = run_rows(_plan(1, 1, 6, 2, 1), DAY, seed=SEED, rows=300)
    pulled = runs.pool_index >= 0
    for wrong, pool in enumerate(DAY.pools):
        mine = pulled & (runs.was_wrong == wrong)
        words = np.array(CAME)[runs.came[mine]]
        assert (words == pool.result[runs.pool_index[mine]]).all()
    assert set(np.unique(runs.came)) <= set(range(len(CAME)))


def test_a_set_up_that_cannot_go_wrong_hardly_fails():
    """Without a wrong set-up and drift only the failures of the right one are left."""
    day = replace(DAY, wrong_probability=0.0, drift_probability=0.0)
    runs = run_rows(_plan(0, 0, 0, 0, 0), day, seed=SEED, rows=2000)
    assert not runs.was_wrong.any()
    # four standard errors of a share
    share = DAY.failure_probabilities[0]
    assert abs(runs.failures.sum() / 40_000 - share) < 4 * np.sqrt(share * (1 - share) / 40_000)


def test_usual_times_are_those_of_the_methods():
    """Times of a row are the means of the bands of pull and drill."""
    times = usual_row_times()
    assert times["rivet_min"] == round(mean_of_band(usual_times("pull").first_min), 1)
    assert times["other_min"] > times["rivet_min"]
    thin = usual_row_times(1.0)
    assert thin["other_damage_probability"] > times["other_damage_probability"]


# Bad input


@pytest.mark.parametrize(
    ("numbers", "sentence"),
    [
        ((-1, 0, 0, 0, 0), "test first must be at least 0, got -1"),
        ((21, 0, 0, 0, 0), "test first must be between 0 and 20, got 21"),
        ((0, 0.5, 0, 0, 0), "test after reset must"),
        ((0, 0, 201, 0, 0), "weld at once must be between 0 and 200, got 201"),
        ((0, 0, 0, float("nan"), 0), "reset at must be"),
        ((0, 0, 0, 0, 6), "most resets must be between 0 and 5, got 6"),
    ],
)
def test_a_plan_that_is_none_is_refused(numbers, sentence):
    """Counts below none, parts of a stud and endless plans are refused in a sentence."""
    with pytest.raises(ValueError, match=sentence):
        _plan(*numbers)


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"rivets": 0}, "rivets must be at least 1, got 0"),
        ({"wrong_probability": 1.2}, "wrong probability must be between 0 and 1, got 1.2"),
        ({"drift_probability": -0.1}, "drift probability must be between 0 and 1, got -0.1"),
        ({"reset_min": -1.0}, "reset must be at least 0 min, got -1 min"),
        ({"damage_min": float("inf")}, "damage must be"),
    ],
)
def test_a_day_that_is_none_is_refused(change, sentence):
    """One sentence names what must be and what was got."""
    with pytest.raises(ValueError, match=sentence):
        replace(DAY, **change)


def test_unlike_pools_are_refused():
    """Both set-ups need as many studs to draw from."""
    few = {field.name: getattr(DAY.wrong, field.name)[:10] for field in fields(DAY.wrong)}
    with pytest.raises(ValueError, match="studs with the wrong set-up must be between 400 and 400, got 10"):
        replace(DAY, wrong=replace(DAY.wrong, **few))
