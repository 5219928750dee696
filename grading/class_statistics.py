"""What a class's marks say: exercises, objectives, reliability, spread, slips, tries and time.

Tables of numbers in, records out. Below the counts named here nothing is estimated: the record says so in
words. Where learners did not hand a page in, its exercises are no part of what is reckoned for them.
"""

from dataclasses import dataclass

import numpy as np

from grading import item_statistics, reliability
from grading.intervals import Estimate, correlation_interval, feldt_interval, no_spread, too_few
from secondplate.trials import wilson_interval

FEWEST_FOR_SHARE = 5  # learners; fewer are told as a count, not as a share
FEWEST_FOR_COMPARING = 10  # learners; 27 % of them are three in each group
FEWEST_FOR_RELIABILITY = 10  # learners
FEWEST_ITEMS = 3  # exercises
CONFIDENCE = 0.95

# Guide to the difference between upper and lower group; source: ebel_1965.
_GUIDE = ((0.40, "very good"), (0.30, "reasonable"), (0.20, "marginal"))
POOR, BACKWARDS, MAY_BE_CHANCE = "poor", "the wrong way round", "may be chance"


@dataclass(frozen=True, kw_only=True)
class ItemStatistics:
    """One exercise: mean share of its points, share right at once, and how it tells learners apart."""

    exercise_id: str
    learners: int
    difficulty: Estimate
    right_at_once: Estimate
    upper_lower: Estimate
    item_rest: Estimate
    verdict: str


@dataclass(frozen=True, kw_only=True)
class SetStatistics:
    """A set of exercises that the same learners answered: reliability, standard error and the exercises."""

    learners: int
    items: tuple[ItemStatistics, ...]
    maximum: float
    mean: Estimate
    standard_deviation: float | None
    alpha: Estimate
    kr20: Estimate
    standard_error: Estimate


@dataclass(frozen=True, kw_only=True)
class Distribution:
    """Spread of the marks: counts for each tenth of the maximum, and five places in the order."""

    counts: tuple[int, ...]
    low: float
    lower_quarter: float
    median: float
    upper_quarter: float
    high: float


@dataclass(frozen=True, kw_only=True)
class ObjectiveStatistics:
    """One objective: the median share of its points, and how many learners are below half of them."""

    objective: str
    learners: int
    share: Estimate
    below_half: int


@dataclass(frozen=True, kw_only=True)
class EffortStatistics:
    """Tries and minutes at one exercise: medians over those who answered it, and who needed the last try."""

    exercise_id: str
    learners: int
    tries: Estimate
    minutes: Estimate
    needed_all: int


def set_statistics(exercise_ids, points, right_at_once, maxima):
    """Return the ``SetStatistics`` of one table: a row a learner, a column an exercise, no gaps.

    ``points`` are what was earned of ``maxima``; ``right_at_once`` is 1 where every part was right at the
    first try, else 0. Alpha is that of the points, KR-20 that of ``right_at_once``.
    """
    points = item_statistics.table_of(points)
    right = item_statistics.table_of(right_at_once)
    learners, items = points.shape
    totals = points.sum(axis=1)
    spread = float(totals.std(ddof=1)) if learners >= FEWEST_FOR_SHARE else None
    alpha = _reliability(reliability.cronbach_alpha, points)
    return SetStatistics(
        learners=learners,
        items=_items(exercise_ids, points, right, np.asarray(maxima, dtype=float)),
        maximum=float(np.sum(maxima)),
        mean=mean_estimate(totals),
        standard_deviation=spread,
        alpha=alpha,
        kr20=_reliability(reliability.kr20, right),
        standard_error=_standard_error(spread, alpha),
    )


def mean_estimate(values):
    """Return the mean of values, one a learner, or words where there are too few."""
    values = np.asarray(values, dtype=float)
    if len(values) < FEWEST_FOR_SHARE:
        return too_few(len(values))
    return Estimate(count=len(values), value=float(values.mean()))


def median_estimate(values):
    """Return the median of values, one a learner, with its quarters; or words where there are too few."""
    values = np.asarray(values, dtype=float)
    if len(values) < FEWEST_FOR_SHARE:
        return too_few(len(values))
    low, middle, high = np.percentile(values, (25, 50, 75))
    return Estimate(count=len(values), value=float(middle), low=float(low), high=float(high))


def _reliability(coefficient, table):
    """Return alpha or KR-20 of a table with its interval, or words."""
    learners, items = table.shape
    if learners < FEWEST_FOR_RELIABILITY or items < FEWEST_ITEMS:
        return too_few(learners)
    value = coefficient(table)
    if value is None:
        return no_spread(learners)
    low, high = feldt_interval(value, learners=learners, items=items)
    return Estimate(count=learners, value=value, low=low, high=high)


def _standard_error(spread, alpha):
    """Return the standard error of measurement in points, with the ends that alpha's interval leads to."""
    if alpha.value is None:
        return alpha
    best, low, high = (
        reliability.standard_error(spread, each) for each in (alpha.value, alpha.high, alpha.low)
    )
    return Estimate(count=alpha.count, value=best, low=low, high=high)


def _items(exercise_ids, points, right, maxima):
    """Return the statistics of every exercise of a table."""
    learners, items = points.shape
    difficulty = item_statistics.difficulties(points, maxima)
    apart = rest = np.full(items, np.nan)
    enough = learners >= FEWEST_FOR_COMPARING and items >= FEWEST_ITEMS
    if enough:
        apart = item_statistics.upper_lower_differences(points, maxima)
        rest = item_statistics.item_rest_correlations(points)
    return tuple(
        _item(*each, learners, compare=enough)
        for each in zip(exercise_ids, difficulty, right.sum(axis=0), apart, rest, strict=True)
    )


def _item(exercise_id, difficulty, right, apart, rest, learners, *, compare):
    """Return the statistics of one exercise."""
    enough = learners >= FEWEST_FOR_SHARE
    item_rest = _correlation(rest, learners) if compare else too_few(learners)
    upper_lower = item_rest
    if item_rest.value is not None:
        upper_lower = Estimate(count=learners, value=float(apart))
    return ItemStatistics(
        exercise_id=exercise_id,
        learners=learners,
        difficulty=Estimate(count=learners, value=float(difficulty)) if enough else too_few(learners),
        right_at_once=share_estimate(round(right), learners),
        upper_lower=upper_lower,
        item_rest=item_rest,
        verdict=verdict(upper_lower, item_rest),
    )


def share_estimate(count, learners):
    """Return the share of learners with its interval, or words where there are too few."""
    if learners < FEWEST_FOR_SHARE:
        return too_few(learners)
    low, high = wilson_interval(learners, count, confidence=CONFIDENCE)
    return Estimate(count=learners, value=count / learners, low=low, high=high)


def _correlation(value, learners):
    """Return a correlation with its interval, or words."""
    if np.isnan(value):
        return no_spread(learners)
    low, high = correlation_interval(float(value), learners=learners)
    return Estimate(count=learners, value=float(value), low=low, high=high)


def verdict(upper_lower, item_rest):
    """Say in words how an exercise tells learners apart; an interval across zero gives no verdict."""
    if upper_lower.value is None or item_rest.value is None:
        return upper_lower.why
    if item_rest.high < 0:
        return BACKWARDS
    if item_rest.low <= 0:
        return MAY_BE_CHANCE
    return next((words for least, words in _GUIDE if upper_lower.value >= least - 1e-9), POOR)


def distribution(totals, maximum):
    """Return the ``Distribution`` of the marks of a class, or None where there is nobody."""
    totals = np.asarray(totals, dtype=float)
    if not len(totals):
        return None
    counts, _ = np.histogram(np.clip(totals / maximum, 0, 1), bins=np.linspace(0, 1, 11))
    low, lower, middle, upper, high = np.percentile(totals, (0, 25, 50, 75, 100))
    return Distribution(
        counts=tuple(int(each) for each in counts),
        low=float(low),
        lower_quarter=float(lower),
        median=float(middle),
        upper_quarter=float(upper),
        high=float(high),
    )


def shares_by_group(points, maxima, groups, count):
    """Return a table of learner by group (objective): the share of the points earned.

    ``groups`` names the group of each column by its place, 0 to ``count`` - 1. A column that is a gap for a
    learner (not a number) is left out for that learner; where a whole group is left out the share is a gap.
    """
    points, maxima = np.asarray(points, dtype=float), np.asarray(maxima, dtype=float)
    member = np.equal.outer(np.asarray(groups), np.arange(count)).astype(float)
    there = ~np.isnan(points)
    possible = (there * maxima) @ member
    earned = np.where(there, points, 0.0) @ member
    return np.divide(earned, possible, out=np.full(possible.shape, np.nan), where=possible > 0)


def objective_statistics(objectives, shares):
    """Return the ``ObjectiveStatistics`` of each column of a table of learner by objective."""
    shares = np.asarray(shares, dtype=float)
    return tuple(
        _objective(name, column[~np.isnan(column)]) for name, column in zip(objectives, shares.T, strict=True)
    )


def _objective(name, shares):
    """Return the statistics of one objective from the shares of those who could earn anything."""
    return ObjectiveStatistics(
        objective=name,
        learners=len(shares),
        share=median_estimate(shares),
        below_half=int((shares < 0.5).sum()),
    )


def effort_statistics(exercise_ids, tries, minutes, most_tries):
    """Return the ``EffortStatistics`` of each exercise: tables of learner by exercise.

    ``tries`` is 0 where nothing was answered; ``minutes`` is not a number where no time is known.
    """
    tries, minutes = np.asarray(tries, dtype=float), np.asarray(minutes, dtype=float)
    return tuple(
        EffortStatistics(
            exercise_id=name,
            learners=int((tried > 0).sum()),
            tries=mean_estimate(tried[tried > 0]),
            minutes=median_estimate(spent[~np.isnan(spent)]),
            needed_all=int((tried >= most_tries).sum()),
        )
        for name, tried, spent in zip(exercise_ids, tries.T, minutes.T, strict=True)
    )
