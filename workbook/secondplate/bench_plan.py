"""What a plan for a row costs on the average over all that the day may bring, beside the best plan.

Computed, not by the luck of a run: over a right or wrong set-up in the morning, drift on the way, what each
pull may show and what a re-set may leave. Time and damage add up along the row, so their means follow by
working back from no rivet left. The best plan is found by trying every plan of a table; without drift and
damage it costs what ``trials_policy`` finds, or less where studs welded at once tell more for one stop.
"""

from dataclasses import dataclass
from itertools import product

import numpy as np

from secondplate.arrays import plain
from secondplate.bench_day import PLAN_LIMITS, RowPlan

HABITS = ("never tests", "tests every stud", "never stops", "gives up at once")
_TRIED = {
    "test_after_reset": (0, 1, 2),
    "weld_at_once": (0, 4, 6, 8, 10, 15),
    "reset_at": (1, 2, 3),
}
_MOST_TESTS, _MOST_RESETS = 5, 2
_TIE_MIN = 1e-9  # a plan is taken for a better one only where it saves more than this
_MINUTES, _DAMAGED = range(2)
_DIGITS = 6  # the last digits of a sum may differ between machines; a millionth hides them


@dataclass(frozen=True, kw_only=True)
class RowExpectation:
    """What a plan costs on the average; floats, or arrays for many plans.

    Parameters
    ----------
    minutes : float or array
        Time of the row [min]
    damaged : float or array
        Damaged places [-]
    cost_min : float or array
        Time with the damage counted [min]

    Examples
    --------
    >>> RowExpectation(minutes=100.0, damaged=0.5, cost_min=130.0).cost_min
    130.0
    """

    minutes: float
    damaged: float
    cost_min: float


@dataclass(frozen=True, kw_only=True)
class PlanJudgement:
    """A plan beside the best one.

    Parameters
    ----------
    own : RowExpectation
        What the plan costs on the average [-]
    best : RowExpectation
        What the best plan costs [-]
    best_plan : RowPlan
        The best plan [-]
    worse_min : float
        How much more the plan costs, 0 where it costs no more [min]
    share_lost : float
        That over the cost of the best plan [-]
    habits : tuple of str
        Which of ``HABITS`` the plan shows, good or bad on this day [-]

    Examples
    --------
    >>> HABITS[0]
    'never tests'
    """

    own: RowExpectation
    best: RowExpectation
    best_plan: RowPlan
    worse_min: float
    share_lost: float
    habits: tuple[str, ...]


class _Chances:
    """What a few studs in a row bring: failures, last state of the set-up, time and damage."""

    def __init__(self, day, most_failures):
        fail, harm = np.array(day.failure_probabilities), np.array(day.damage_probabilities)
        self.day, self.top = day, most_failures
        each = np.stack([day.rivet_min + fail * day.failed_pull_min, harm], axis=-1)  # state, component
        drift = np.array([[1 - day.drift_probability, day.drift_probability], [0.0, 1.0]])
        # failures[b, before, after, j]: chance of j failures, the last entry for so many or more.
        self.failures = np.zeros((day.rivets + 1, 2, 2, most_failures + 1))
        self.mean = np.zeros((day.rivets + 1, 2, 2))
        state = np.eye(2)
        self.failures[0, :, :, 0] = state
        for stud in range(1, day.rivets + 1):
            self.mean[stud] = self.mean[stud - 1] + state @ each
            last = self.failures[stud - 1]
            next_ = last * (1 - fail)[:, None]
            next_[..., 1:] += last[..., :-1] * fail[:, None]
            next_[..., -1] += last[..., -1] * fail
            self.failures[stud] = np.einsum("ahj,hb->abj", next_, drift)
            state = state @ drift
        # By studs and state before; failures and the state after in one axis, to be summed over.
        self.weights = self.failures.transpose(0, 1, 3, 2).reshape(day.rivets + 1, 2, -1)
        self.seen_in_all = np.arange(most_failures)[:, None] + np.arange(most_failures + 1)


def _follows(chances, due, going, reset_at, most):
    """Return the mean cost of what comes after 0, 1, 2 ... failures seen in all, ``most`` of them in one go.

    That is what is due where so many failed, else going on. ``due`` has the axes plan and component,
    ``going`` plan, failures seen, state of the set-up and component.
    """
    counts = np.arange(chances.top + most)
    reached = (counts >= reset_at[:, None])[..., None, None]
    return np.where(reached, due[..., None, None, :], going[..., np.minimum(counts, chances.top - 1), :, :])


def _after_pulls(chances, studs, due, going, reset_at):
    """Return the mean cost from some pulls on, each plan's own number of them, by failures seen before."""
    top = chances.top
    follows = _follows(chances, due, going, reset_at, top)
    # Summed over how many fell and the state after: weights by state before, what follows by failures seen.
    windows = follows[:, chances.seen_in_all].reshape(len(reset_at), top, -1, 2)
    return chances.weights[studs][:, None] @ windows


def _after_one_pull(chances, due, going, reset_at):
    """Return the mean cost from one pull on, by failures seen before; as many rivets left as are given."""
    follows = _follows(chances, due, going, reset_at, 1)
    total = 0.0
    for fell in range(2):
        for after in range(2):
            weight = chances.failures[1, :, after, fell, None]  # state before, component
            total = total + weight * follows[..., fell : fell + chances.top, after, None, :]
    return total


def _batches(chances, due, weld_at_once, reset_at):
    """Return mean costs by rivets left, plan, failures seen, state and component, once the tests are over."""
    day = chances.day
    costs = np.zeros((day.rivets + 1, len(reset_at), chances.top, 2, 2))
    plans = np.arange(len(reset_at))
    for left in range(1, day.rivets + 1):
        size = np.where(weld_at_once == 0, left, np.minimum(weld_at_once, left))
        rest = left - size
        cost = _after_pulls(chances, size, due[rest, plans], costs[rest, plans], reset_at)
        cost = cost + chances.mean[size][:, None]
        cost[..., _MINUTES] += np.where(rest > 0, day.test_delay_min, 0.0)[:, None, None]
        costs[left] = cost
    return costs


def _one_test_more(chances, due, going, reset_at):
    """Return mean costs, as ``_batches`` does, where one stud is pulled alone before what follows."""
    costs = np.zeros_like(going)
    cost = _after_one_pull(chances, due[:-1], going[:-1], reset_at) + chances.mean[1]
    cost[..., _MINUTES] += chances.day.test_delay_min
    costs[1:] = cost
    return costs


def _tested(chances, due, going, reset_at, most):
    """Return mean costs with 0, 1 ... tests before what follows; no failure seen yet."""
    found = [going[:, :, 0]]
    for _ in range(most):
        going = _one_test_more(chances, due, going, reset_at)
        found.append(going[:, :, 0])
    return np.stack(found)


def _means(day, *, test_after_reset, weld_at_once, reset_at, most_tests, most_resets):
    """Return mean minutes and damaged places by most re-sets, tests at first, and given plan."""
    never = np.where(reset_at == 0, np.iinfo(np.int64).max, reset_at)
    chances = _Chances(day, int(max(1, reset_at.max())))
    which = np.arange(len(never))
    other = np.array([day.other_min, day.other_damage_probability])
    due = np.arange(day.rivets + 1)[:, None, None] * np.broadcast_to(other, (len(never), 2))
    begins, after = (
        np.array([1 - wrong, wrong]) for wrong in (day.wrong_probability, day.wrong_after_reset_probability)
    )
    found = []
    for _ in range(most_resets + 1):
        going = _batches(chances, due, weld_at_once, never)
        tested = _tested(chances, due, going, never, int(max(most_tests, test_after_reset.max())))
        found.append(np.einsum("h,kphc->kpc", begins, tested[: most_tests + 1, day.rivets]))
        again = tested[test_after_reset, :, which]  # plan, left, state, component
        due = np.einsum("h,plhc->lpc", after, again) + np.array([day.reset_min, 0.0])
        due[0] = 0.0
    return np.stack(found)


def _expectation(means, damage_min):
    """Put minutes and damaged places together."""
    minutes, damaged = (np.round(means[..., part], _DIGITS) + 0.0 for part in (_MINUTES, _DAMAGED))
    return RowExpectation(
        minutes=plain(minutes), damaged=plain(damaged), cost_min=plain(minutes + damage_min * damaged)
    )


def expected_row(plan, day):
    """Return what a plan costs on the average over all that the day may bring.

    Parameters
    ----------
    plan : RowPlan
        One plan, or arrays of plans [-]
    day : RowDay
        The row and its day [-]

    Returns
    -------
    RowExpectation
        Minutes, damaged places, cost [-]

    Notes
    -----
    Source: two_state_row, with drift, studs welded at once, damage and another method added.

    Examples
    --------
    >>> from secondplate.bench_day import example_day
    >>> plans = RowPlan(test_first=[0, 1], test_after_reset=1, weld_at_once=0, reset_at=1, most_resets=1)
    >>> bool(np.diff(expected_row(plans, example_day()).cost_min) < 0)
    True
    """
    columns = np.broadcast_arrays(*(np.asarray(getattr(plan, name)) for name in PLAN_LIMITS))
    shape, flat = (
        columns[0].shape,
        {name: np.ravel(column) for name, column in zip(PLAN_LIMITS, columns, strict=True)},
    )
    first, resets = flat.pop("test_first"), flat.pop("most_resets")
    means = _means(day, **flat, most_tests=int(first.max()), most_resets=int(resets.max()))
    return _expectation(means[resets, first, np.arange(len(first))].reshape(*shape, 2), day.damage_min)


def best_plan(day):
    """Return the plan that costs least on the average, of all that a table of sensible numbers makes.

    Parameters
    ----------
    day : RowDay
        The row and its day [-]

    Returns
    -------
    RowPlan
        The plan; where several cost the same, the one that asks for less [-]

    Notes
    -----
    Up to 5 tests at first, 2 after a re-set, 4 to 15 studs at once or all, 3 failures, 2 re-sets. Source: see
    ``expected_row``.

    Examples
    --------
    >>> from secondplate.bench_day import example_day
    >>> best_plan(example_day()).test_first
    2
    """
    tried = [(0, 0, 0), *product(*_TRIED.values())]  # never testing again nor setting again is a plan too
    test_after_reset, weld_at_once, reset_at = np.array(tried).T
    means = _means(
        day,
        test_after_reset=test_after_reset,
        weld_at_once=weld_at_once,
        reset_at=reset_at,
        most_tests=min(_MOST_TESTS, day.rivets),
        most_resets=_MOST_RESETS,
    )
    cost = means[..., _MINUTES] + day.damage_min * means[..., _DAMAGED]
    resets, tests, which = np.unravel_index(np.argmax(cost <= cost.min() + _TIE_MIN), cost.shape)
    return RowPlan(
        test_first=int(tests),
        test_after_reset=int(test_after_reset[which]),
        weld_at_once=int(weld_at_once[which]),
        reset_at=int(reset_at[which]),
        most_resets=int(resets),
    )


def habits_of(plan, rivets):
    """Name the habits that a plan shows, good or bad as the day may be.

    Parameters
    ----------
    plan : RowPlan
        One plan [-]
    rivets : int
        Rivets in the row [-]

    Returns
    -------
    tuple of str
        Those of ``HABITS`` that it shows [-]

    Examples
    --------
    >>> plan = RowPlan(test_first=0, test_after_reset=0, weld_at_once=0, reset_at=1, most_resets=1)
    >>> habits_of(plan, 12)
    ('never tests', 'never stops')
    """
    whole_row = plan.weld_at_once == 0 or plan.weld_at_once >= rivets - plan.test_first
    first = min(plan.test_first, rivets)
    rest = rivets - first
    # What is pulled before the last studs are welded: only that can still change anything.
    before_last = first if whole_row else first + (rest - 1) // plan.weld_at_once * plan.weld_at_once
    shown = (
        first == 0 and whole_row,
        rest == 0 or (plan.weld_at_once == 1 and not whole_row),
        plan.reset_at == 0 or before_last < plan.reset_at,
        plan.reset_at == 1 and plan.most_resets == 0,
    )
    return tuple(habit for habit, shows in zip(HABITS, shown, strict=True) if shows)


def judge_plan(plan, day, *, best=None, least=None):
    """Judge a plan by what it costs on the average, beside the best plan for the day.

    The luck of a run does not enter: a good plan may meet a bad day.

    Parameters
    ----------
    plan : RowPlan
        One plan [-]
    day : RowDay
        The row and its day [-]
    best : RowPlan or None
        The best plan where it is known already [-]
    least : RowExpectation or None
        What the best plan costs, where that is known too [-]

    Returns
    -------
    PlanJudgement
        Both costs, the difference, the habits [-]

    Notes
    -----
    Source: see ``expected_row``.

    Examples
    --------
    >>> from secondplate.bench_day import example_day
    >>> day = example_day()
    >>> judge_plan(best_plan(day), day).worse_min
    0.0
    """
    best = best_plan(day) if best is None else best
    own, least = expected_row(plan, day), expected_row(best, day) if least is None else least
    worse = max(own.cost_min - least.cost_min, 0.0)
    return PlanJudgement(
        own=own,
        best=least,
        best_plan=best,
        worse_min=worse,
        share_lost=worse / least.cost_min if least.cost_min else 0.0,
        habits=habits_of(plan, day.rivets),
    )
