"""Statistics of a class against packages by others, on tables of every size."""

import warnings

import numpy as np
import pandas as pd
import pytest
from scipy import stats

from grading import item_statistics, reliability
from grading.intervals import correlation_interval, feldt_interval

# The import of this one may warn and set options; nobody else is to notice.
with warnings.catch_warnings():
    import pingouin

from girth import classical_test_statistics
from girth.common import cronbach_alpha as girth_alpha

RANDOM = np.random.default_rng(7)  # cases only: no expected value comes from it
SIZES = [(10, 3), (15, 10), (24, 7), (60, 40), (200, 12)]


def _table(learners, items, *, steps=4):
    """Return scores of learners of different skill: whole steps from 0 up."""
    skill = RANDOM.normal(size=(learners, 1))
    noise = RANDOM.normal(size=(learners, items)) + RANDOM.normal(size=items)
    return np.clip(np.round(steps / 2 + skill + noise), 0, steps)


TABLES = [_table(*size) for size in SIZES] + [_table(*size, steps=1) for size in SIZES[1:]]


@pytest.mark.parametrize("table", TABLES, ids=lambda table: "by".join(map(str, table.shape)))
def test_alpha_and_its_interval(table):
    """Alpha is that of two packages, the interval that of one, which rounds it to three places."""
    learners, items = table.shape
    alpha = reliability.cronbach_alpha(table)
    theirs, interval = pingouin.cronbach_alpha(pd.DataFrame(table))
    assert alpha == pytest.approx(theirs, abs=1e-10)
    assert alpha == pytest.approx(girth_alpha(table.T), abs=1e-10)
    assert feldt_interval(alpha, learners=learners, items=items) == pytest.approx(tuple(interval), abs=5.1e-4)


@pytest.mark.parametrize("table", TABLES, ids=lambda table: "by".join(map(str, table.shape)))
def test_item_with_rest(table):
    """Item-rest correlations and difficulties are those of an independent package."""
    table = table[:, table.std(axis=0) > 0]
    theirs = classical_test_statistics(table.T)
    found = item_statistics.item_rest_correlations(table)
    assert found == pytest.approx(theirs["Item-Score Correlation"], abs=1e-10)
    assert item_statistics.difficulties(table, np.ones(table.shape[1])) == pytest.approx(
        theirs["Mean"], abs=1e-12
    )


def test_item_with_total_is_the_point_biserial_correlation():
    """With right and wrong only, each correlation with the total is scipy's point-biserial one."""
    table = TABLES[-1]
    theirs = [stats.pointbiserialr(column, table.sum(axis=1)).statistic for column in table.T]
    assert item_statistics.item_total_correlations(table) == pytest.approx(theirs, abs=1e-10)


@pytest.mark.parametrize("learners", [10, 24, 200])
def test_interval_of_a_correlation(learners):
    """Both ends are those that scipy gives with its correlation."""
    first, second = RANDOM.normal(size=(2, learners))
    result = stats.pearsonr(first, first + second)
    theirs = result.confidence_interval(0.95)
    found = correlation_interval(result.statistic, learners=learners)
    assert found == pytest.approx((theirs.low, theirs.high), abs=1e-10)


def test_gaps_by_rows():
    """A package's data set, learners with gaps left out, gives the 0.8017 of its documentation."""
    table = pingouin.read_dataset("cronbach_wide_missing").dropna().to_numpy()
    assert reliability.cronbach_alpha(table) == pytest.approx(0.8016949152542373, abs=1e-12)
