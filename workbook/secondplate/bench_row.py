"""A whole row at the virtual bench, run by a plan: minutes used, rivets out, damage.

The day begins with a set-up that is right or wrong, nobody knows which; it can go wrong on the way; a re-set
makes it right, or nearly. Every stud is drawn from the studs of ``bench_day``, so each has a force and a
trace of its own. ``bench_plan`` gives the means of what is drawn here, without luck.
"""

from dataclasses import dataclass, fields

import numpy as np

from secondplate.bench_day import RowPlan
from secondplate.bench_pull import RESULTS
from secondplate.bench_random import uniform
from secondplate.removal_methods import MOST_RIVETS
from secondplate.trials_checks import whole

OTHER_WAY = "other method"
CAME = (*RESULTS, OTHER_WAY)
MODES = ("tested", "in the row", "other method")
_TESTED, _IN_ROW, _OTHER = range(len(MODES))
MOST_ROWS = 1_000_000
_FAULTS = np.array([RESULTS.index(word) for word in ("stud broke", "weld peeled", "head tore")])
_SORTED = np.sort(np.array(RESULTS))
_RANK = np.array([RESULTS.index(str(word)) for word in _SORTED])


@dataclass(frozen=True, kw_only=True)
class RowRuns:
    """What came of rows run by one plan: sums by row, and every place of every row.

    Parameters
    ----------
    minutes : numpy.ndarray
        Time of each row [min]
    out_at_once : numpy.ndarray
        Rivets that came at the first pull [-]
    failures : numpy.ndarray
        Rivets whose pull failed and that were done again [-]
    by_other_method : numpy.ndarray
        Rivets left to the other method [-]
    damaged : numpy.ndarray
        Damaged places [-]
    resets : numpy.ndarray
        Re-sets of the machine [-]
    came : numpy.ndarray
        Place in ``CAME`` for each place of the row (first index) and each row [-]
    mode : numpy.ndarray
        Place in ``MODES``, likewise [-]
    reset_before : numpy.ndarray
        Whether the machine was set again just before this stud, likewise [-]
    harmed : numpy.ndarray
        Whether the place was damaged, likewise [-]
    pool_index : numpy.ndarray
        Which stud of its pool this one is, likewise; -1 by the other method [-]
    was_wrong : numpy.ndarray
        Whether the set-up was wrong when the stud was welded: nobody at the bench sees it, likewise [-]

    Examples
    --------
    >>> CAME[-1], MODES[0]
    ('other method', 'tested')
    """

    minutes: np.ndarray
    out_at_once: np.ndarray
    failures: np.ndarray
    by_other_method: np.ndarray
    damaged: np.ndarray
    resets: np.ndarray
    came: np.ndarray
    mode: np.ndarray
    reset_before: np.ndarray
    harmed: np.ndarray
    pool_index: np.ndarray
    was_wrong: np.ndarray


class _Rows:
    """State of many rows worked on side by side, one rivet of each at a time."""

    def __init__(self, plan, day, seed, rows):
        self.plan, self.day, self.seed = plan, day, seed
        self.number = np.arange(rows) * (MOST_RIVETS + 1)
        self.wrong = self._below("set-up", 0, day.wrong_probability)
        self.tests = np.full(rows, plan.test_first)
        self.batch = np.zeros(rows, dtype=np.int64)
        self.failed, self.resets = np.zeros_like(self.batch), np.zeros_like(self.batch)
        self.stopped = np.zeros(rows, dtype=bool)
        self.minutes = np.zeros(rows)
        self.pools = np.concatenate([pool.rivet_out for pool in day.pools])
        self.harms = np.concatenate([pool.top_plate_dished | pool.second_plate_torn for pool in day.pools])
        words = np.concatenate([np.asarray(pool.result) for pool in day.pools])
        self.words = np.searchsorted(_SORTED, words).astype(np.int8)
        self.studs = self.pools.size // 2

    def _below(self, name, place, chance):
        """Throw the dice of one place of each row against a chance."""
        return uniform(self.seed, f"row {name}", self.number + place) < chance

    def begin_batch(self, left):
        """Take the next studs to weld at once where neither tests nor a batch are open."""
        fresh = ~self.stopped & (self.tests == 0) & (self.batch == 0)
        size = min(self.plan.weld_at_once, left) or left
        self.batch = np.where(fresh, size, self.batch)
        # The last studs of a row are pulled in the end anyhow: only an earlier pull is a stop.
        if size < left:
            self.minutes = self.minutes + np.where(fresh, self.day.test_delay_min, 0.0)

    def step(self, place):
        """Weld and pull one rivet of each row, or hand it to the other method."""
        day, other = self.day, self.stopped
        testing = ~other & (self.tests > 0)
        drawn = uniform(self.seed, "row stud", self.number + place) * self.studs
        index = drawn.astype(np.int64)
        at = index + np.where(self.wrong, self.studs, 0)
        failed = ~other & ~self.pools[at]
        again = failed & self._below("again", place, day.damage_after_failure_probability)
        harmed = np.where(
            other, self._below("other", place, day.other_damage_probability), self.harms[at] | again
        )
        self.minutes = (
            self.minutes
            + np.where(other, day.other_min, day.rivet_min + np.where(failed, day.failed_pull_min, 0.0))
            + np.where(testing, day.test_delay_min, 0.0)
        )
        self.failed = self.failed + failed
        self.tests = self.tests - testing
        self.batch = self.batch - (~other & ~testing)
        seen = {
            "came": np.where(other, len(RESULTS), _RANK[self.words[at]]).astype(np.int8),
            "mode": np.where(other, _OTHER, np.where(testing, _TESTED, _IN_ROW)).astype(np.int8),
            "harmed": harmed,
            "pool_index": np.where(other, -1, index).astype(np.int32),
            "was_wrong": self.wrong & ~other,
        }
        self.wrong = self.wrong | self._below("drift", place, day.drift_probability)
        return seen

    def look(self, place):
        """After a test or a batch: set the machine again where the plan says so, or stop; say where."""
        due = self.plan.reset_at and ~self.stopped & (self.batch == 0) & (self.failed >= self.plan.reset_at)
        again = due & (self.resets < self.plan.most_resets)
        self.stopped = self.stopped | (due & ~again)
        self.resets = self.resets + again
        self.minutes = self.minutes + np.where(again, self.day.reset_min, 0.0)
        chance = self.day.wrong_after_reset_probability
        self.wrong = np.where(again, self._below("set-up", place + 1, chance), self.wrong)
        self.failed = np.where(again, 0, self.failed)
        self.tests = np.where(again, self.plan.test_after_reset, self.tests)
        return again


def run_rows(plan, day, *, seed, rows=1):
    """Run a row by a plan, or many rows of the same kind of day.

    Parameters
    ----------
    plan : RowPlan
        One plan [-]
    day : RowDay
        The row and its day [-]
    seed : bytes
        Seed [-]
    rows : int
        Rows, 1 to 1 000 000; the first is the same however many there are [-]

    Returns
    -------
    RowRuns
        What came of them [-]

    Raises
    ------
    ValueError
        If a value lies outside its range or the seed is not bytes.

    Notes
    -----
    A stop to pull, by a test or before the row is all welded, costs the delay each time. Failures are looked
    at after each test and after each batch. Source: see the text of the module; splitmix64 for the draws.

    Examples
    --------
    >>> from secondplate.bench_day import example_day
    >>> plan = RowPlan(test_first=1, test_after_reset=1, weld_at_once=0, reset_at=1, most_resets=0)
    >>> run = run_rows(plan, example_day(), seed=b"a day at the shop")
    >>> int(run.out_at_once[0] + run.failures[0] + run.by_other_method[0])
    20
    """
    plan = RowPlan(**{field.name: int(getattr(plan, field.name)) for field in fields(RowPlan)})
    count = int(whole("rows", rows, least=1, most=MOST_ROWS))
    work, before, seen = _Rows(plan, day, seed, count), np.zeros(count, dtype=bool), []
    for place in range(day.rivets):
        work.begin_batch(day.rivets - place)
        seen.append(work.step(place) | {"reset_before": before})
        before = work.look(place) if place + 1 < day.rivets else before
    columns = {name: np.stack([each[name] for each in seen]) for name in seen[0]}
    other, fault = columns["came"] == CAME.index(OTHER_WAY), np.isin(columns["came"], _FAULTS)
    return RowRuns(
        minutes=np.round(work.minutes, 6),
        out_at_once=(~other & ~fault).sum(axis=0),
        failures=fault.sum(axis=0),
        by_other_method=other.sum(axis=0),
        damaged=columns["harmed"].sum(axis=0),
        resets=work.resets,
        **columns,
    )
