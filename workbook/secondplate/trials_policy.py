"""Weld one and pull it, or weld the row: which costs least time where the set-up may be wrong.

A set-up is right or wrong, each with its own chance that a pull fails. A test pull tells which; a re-set
costs time and makes the set-up right, or nearly. The best policy follows by dynamic programming over rivets
left and pulls seen. A car never has enough rivets to prove a reliability: the test pull finds a wrong set-up.
"""

from dataclasses import dataclass, fields, replace

import numpy as np

from secondplate.arrays import plain
from secondplate.checks import require_at_least
from secondplate.trials_checks import counted, open_share, pulls_and_failures, share, whole

ACTIONS = ("weld all", "test", "re-set first")
LONGEST_ROW = 200
_WELD, _TEST, _RESET = range(3)
_TIE_MIN = 1e-9  # a plan is taken for another only where it saves more than this
_BLOCK_STATES = 50_000  # states worked on at once: they stay near the processor


@dataclass(frozen=True, kw_only=True)
class RowModel:
    """What is believed of the set-up, and what pulls, tests and a re-set cost; floats, or arrays for a class.

    Parameters
    ----------
    wrong_probability : float or array
        Belief that the set-up is wrong before any pull, 0 to 1 [-]
    good_failure_probability : float or array
        Chance that a pull fails with the right set-up, between 0 and 1 [-]
    wrong_failure_probability : float or array
        Chance that a pull fails with a wrong set-up, above the other one [-]
    failed_pull_min : float or array
        Time that a failed pull costs, with the rework of its place, 0 or more [min]
    test_delay_min : float or array
        Time that it costs to stop and pull one stud before the others are welded, 0 or more [min]
    reset_min : float or array
        Time that a re-set of the machine costs, 0 or more [min]
    wrong_after_reset_probability : float or array
        Belief that the set-up is still wrong after a re-set, 0 to 1 [-]

    Raises
    ------
    ValueError
        If a value lies outside its range.

    Notes
    -----
    Source: two_state_row.

    Examples
    --------
    >>> model = RowModel(wrong_probability=0.2, good_failure_probability=0.02,
    ...                  wrong_failure_probability=0.6, failed_pull_min=15, test_delay_min=4, reset_min=25)
    >>> round(model.failure_chance(model.wrong_probability), 3)
    0.136
    """

    wrong_probability: float
    good_failure_probability: float
    wrong_failure_probability: float
    failed_pull_min: float
    test_delay_min: float
    reset_min: float
    wrong_after_reset_probability: float = 0.0

    def __post_init__(self):
        """Refuse values out of range."""
        for field in fields(self):
            words, value = field.name.replace("_", " "), getattr(self, field.name)
            if field.name.endswith("_min"):
                require_at_least(words.removesuffix(" min"), value, 0, unit="min")
            elif "failure" in field.name:
                open_share(words, value)
            else:
                share(words, value)
        good, wrong = map(np.asarray, (self.good_failure_probability, self.wrong_failure_probability))
        if np.any(wrong <= good):
            first = np.argmax(np.atleast_1d(wrong <= good))
            good, wrong = (each.flat[first] for each in np.broadcast_arrays(good, wrong))
            message = f"wrong failure probability must be above the good one of {good:.6g}, got {wrong:.6g}"
            raise ValueError(message)

    def failure_chance(self, wrong):
        """Return the chance that the next pull fails, for a belief that the set-up is wrong."""
        good = self.good_failure_probability
        return plain(good + np.asarray(wrong) * (np.asarray(self.wrong_failure_probability) - good))


def wrong_belief(model, *, pulls, failures):
    """Return the belief that the set-up is wrong after some pulls, by the rule of Bayes.

    Parameters
    ----------
    model : RowModel
        Belief before, and chances [-]
    pulls : int or array
        Pulls since the machine was set, at least 1 [-]
    failures : int or array
        Failures among them [-]

    Returns
    -------
    float or numpy.ndarray
        Belief [-]

    Raises
    ------
    ValueError
        If a count is no whole number in its range or failures exceed pulls.

    Notes
    -----
    Source: two_state_row.

    Examples
    --------
    >>> model = RowModel(wrong_probability=0.2, good_failure_probability=0.02,
    ...                  wrong_failure_probability=0.6, failed_pull_min=15, test_delay_min=4, reset_min=25)
    >>> [round(wrong_belief(model, pulls=1, failures=failed), 4) for failed in (0, 1)]
    [0.0926, 0.8824]
    """
    pulls, failures = pulls_and_failures(pulls, failures)
    return plain(_belief(model, model.wrong_probability, pulls - failures, failures))


def _belief(model, start, good_pulls, failures):
    """Update a belief in logarithms of odds, so that no long series underflows."""
    start = np.asarray(start, dtype=float)
    right, wrong = map(np.asarray, (model.good_failure_probability, model.wrong_failure_probability))
    with np.errstate(divide="ignore"):  # a belief of 0 or 1 stays what it is
        odds = np.log(start) - np.log1p(-start)
    odds = odds + good_pulls * np.log((1 - wrong) / (1 - right)) + failures * np.log(wrong / right)
    with np.errstate(over="ignore"):
        return 1 / (1 + np.exp(-odds))


@dataclass(frozen=True, kw_only=True)
class Policy:
    """Best thing to do with a row; arrays for several rows.

    Parameters
    ----------
    row_rivets : int or numpy.ndarray
        Rivets in the row [-]
    action : str or numpy.ndarray
        What to do first, one of ``ACTIONS`` [-]
    most_tests : int or numpy.ndarray
        Most test pulls that the policy makes before it welds all or re-sets [-]
    expected_min : float or numpy.ndarray
        Time that failures, tests and re-sets cost, on the average [min]

    Examples
    --------
    >>> Policy(row_rivets=30, action="test", most_tests=3, expected_min=31.2).words
    'test up to 3'
    """

    row_rivets: int
    action: str
    most_tests: int
    expected_min: float

    @property
    def words(self):
        """The policy in words: weld all, re-set first, test 1, test up to 3."""
        tests, action = np.asarray(self.most_tests), np.asarray(self.action, dtype=object)
        upto = np.where(tests > 1, "test up to ", "test ").astype(object) + tests.astype(str).astype(object)
        words = np.where(action == "test", upto, action)
        return str(words) if words.ndim == 0 else words.astype(str)


def best_policy(row_rivets, model):
    """Return the policy that costs least time on the average, for one row or for each row of a class.

    Parameters
    ----------
    row_rivets : int or array
        Rivets in the row, 1 to 200 [-]
    model : RowModel
        Beliefs and times; arrays go with the rows [-]

    Returns
    -------
    Policy
        First action, most tests, expected time [-]

    Raises
    ------
    ValueError
        If a row is no whole number from 1 to 200.

    Notes
    -----
    Source: two_state_row; raiffa_schlaifer for the reasoning back from what a test may show.

    Examples
    --------
    >>> model = RowModel(wrong_probability=0.2, good_failure_probability=0.02,
    ...                  wrong_failure_probability=0.6, failed_pull_min=15, test_delay_min=4, reset_min=25)
    >>> policy = best_policy([8, 12, 30], model)
    >>> policy.words.tolist(), policy.expected_min.round(2).tolist()
    (['weld all', 'test 1', 'test up to 3'], [16.32, 20.4, 31.23])
    """
    rows = whole("row of rivets", row_rivets, least=1, most=LONGEST_ROW)
    given = [np.asarray(getattr(model, field.name), dtype=float) for field in fields(model)]
    shape = np.broadcast_shapes(rows.shape, *(each.shape for each in given))
    if all(each.ndim == 0 for each in given):  # one model: a single table serves every row
        columns, table_of = [each.reshape(1) for each in given], np.zeros(shape, dtype=int)
    else:
        columns = [np.broadcast_to(each, shape).ravel() for each in given]
        table_of = np.arange(columns[0].size).reshape(shape)
    costs, actions, tests = _tables(columns, int(rows.max()))
    rows = np.broadcast_to(rows, shape)
    words = np.array(ACTIONS)[actions[rows, table_of]]
    return Policy(
        row_rivets=counted(rows),
        action=str(words) if words.ndim == 0 else words,
        most_tests=counted(tests[rows, table_of]),
        expected_min=plain(costs[rows, table_of]),
    )


def _tables(columns, longest):
    """Return cost, action and most tests for every row length up to the longest, by model, in blocks."""
    names = [field.name for field in fields(RowModel)]
    step = max(1, _BLOCK_STATES // (longest + 1) ** 2)
    blocks = []
    for first in range(0, columns[0].size, step):
        part = [each[first : first + step, None, None] for each in columns]
        model = RowModel(**dict(zip(names, part, strict=True)))
        after = _after_reset(model, longest)
        blocks.append(_programme(model, model.wrong_probability, after, longest))
    return tuple(np.concatenate(parts, axis=1) for parts in zip(*blocks, strict=True))


def _after_reset(model, longest):
    """Return what a row costs from a re-set on, by its length; the re-set itself comes on top."""
    if not np.any(model.wrong_after_reset_probability):
        # Nothing is left to find out: every rivet fails with the chance of the right set-up.
        one = np.ravel(model.good_failure_probability * model.failed_pull_min)
        return np.arange(longest + 1)[:, None] * one
    return _programme(model, model.wrong_after_reset_probability, None, longest)[0]


def _programme(model, start, after, longest):
    """Work back from no rivet left; returns cost, action and most tests of a fresh row by its length.

    State: rivets left, good pulls and failures seen. ``after`` is the cost from a re-set on; without it the
    start itself is a state after a re-set.
    """
    size = np.size(start)
    shape = (longest + 1, size)
    costs, actions, tests = np.zeros(shape), np.zeros(shape, dtype=int), np.zeros(shape, dtype=int)
    seen = np.arange(longest + 1)
    chances = model.failure_chance(_belief(model, start, seen[None, :, None], seen[None, None, :]))
    cost = np.zeros((size, longest + 1, longest + 1))
    count = np.zeros(cost.shape, dtype=int)
    for left in range(1, longest + 1):
        side = longest - left + 1  # so many good pulls or failures can have been seen at most
        chance = chances[:, :side, :side]
        weld = left * chance * model.failed_pull_min
        worse, better = cost[:, :side, 1 : side + 1], cost[:, 1 : side + 1, :side]
        test = model.test_delay_min + chance * (model.failed_pull_min + worse) + (1 - chance) * better
        fresh = after[left] if after is not None else np.minimum(weld, test)[:, 0, 0]
        reset = np.broadcast_to(model.reset_min + fresh[:, None, None], chance.shape)
        cost_now, action = _cheapest(weld, test, reset)
        more = 1 + np.maximum(count[:, :side, 1 : side + 1], count[:, 1 : side + 1, :side])
        cost, count = cost_now, np.where(action == _TEST, more, 0)
        costs[left], actions[left], tests[left] = cost[:, 0, 0], action[:, 0, 0], count[:, 0, 0]
    return costs, actions, tests


def _cheapest(weld, test, reset):
    """Return the least of three costs and which it is; where they tie, the plan that asks for less work."""
    cost, action = weld, np.full(weld.shape, _WELD)
    for number, other in ((_RESET, reset), (_TEST, test)):
        saves = other < cost - _TIE_MIN
        cost, action = np.where(saves, other, cost), np.where(saves, number, action)
    return cost, action


def next_step(rivets_left, model, *, pulls, failures):
    """Return the best policy for what is left of a row after some pulls since the machine was set.

    Parameters
    ----------
    rivets_left : int or array
        Rivets still in the row, 1 to 200 [-]
    model : RowModel
        Beliefs before those pulls, and times [-]
    pulls : int or array
        Pulls since the machine was set, at least 1 [-]
    failures : int or array
        Failures among them [-]

    Returns
    -------
    Policy
        What to do with the rivets left [-]

    Raises
    ------
    ValueError
        If a count is no whole number in its range or failures exceed pulls.

    Notes
    -----
    Source: two_state_row.

    Examples
    --------
    >>> model = RowModel(wrong_probability=0.2, good_failure_probability=0.02,
    ...                  wrong_failure_probability=0.6, failed_pull_min=15, test_delay_min=4, reset_min=25)
    >>> next_step(11, model, pulls=1, failures=[0, 1]).words.tolist()
    ['weld all', 're-set first']
    """
    belief = wrong_belief(model, pulls=pulls, failures=failures)
    return best_policy(rivets_left, replace(model, wrong_probability=belief))
