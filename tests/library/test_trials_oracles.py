"""Test-pull statistics against libraries by others, on several hundred random cases."""

import warnings
from math import comb

import numpy as np
import pandas as pd
import pytest
from scipy import stats
from statsmodels.stats.proportion import proportion_confint

from secondplate import trials

# The import of this one switches numpy's warnings off, adds filters and widens tables for everybody.
with (
    np.errstate(),
    warnings.catch_warnings(),
    pd.option_context("display.width", 80, "display.max_columns", 0),
):
    from reliability.Fitters import Fit_Weibull_2P
    from reliability.Reliability_testing import one_sample_proportion, sample_size_no_failures

CASES = 250
RANDOM = np.random.default_rng(20)  # cases only: no key and no expected value comes from it
PULLS = RANDOM.integers(1, 400, CASES)
FAILURES = RANDOM.integers(0, PULLS + 1)
CONFIDENCE = RANDOM.uniform(0.5, 0.999, CASES)
SHARE = RANDOM.uniform(0.01, 0.99, CASES)


@pytest.mark.parametrize(
    ("method", "interval"),
    [("beta", trials.clopper_pearson_interval), ("wilson", trials.wilson_interval)],
)
def test_intervals(method, interval):
    """250 random proportions: both intervals agree with statsmodels, one confidence in each fifty."""
    for part in np.split(np.arange(CASES), 5):
        confidence = CONFIDENCE[part[0]]
        expected = proportion_confint(FAILURES[part], PULLS[part], alpha=1 - confidence, method=method)
        found = interval(PULLS[part], FAILURES[part], confidence=confidence)
        # Quantiles of two programs; the ends of the score interval at 0 and 1 are rounded there.
        np.testing.assert_allclose(found, expected, rtol=1e-9, atol=1e-12)


def test_exact_interval_of_another_library():
    """All failures of 30 pulls: the exact interval agrees with the reliability package."""
    failures = np.arange(1, 30)
    expected = [
        one_sample_proportion(trials=30, successes=int(count), CI=0.9, print_results=False)
        for count in failures
    ]
    found = np.transpose(trials.clopper_pearson_interval(30, failures, confidence=0.9))
    np.testing.assert_allclose(found, expected, rtol=1e-9)  # the same quantiles


def test_success_run():
    """40 success runs agree with the reliability package, to the whole pull."""
    reliability, confidence = RANDOM.uniform(0.5, 0.999, 40), CONFIDENCE[:40]
    expected = [
        sample_size_no_failures(reliability=r, CI=c, print_results=False)
        for r, c in zip(reliability, confidence, strict=True)
    ]
    found = trials.success_run_pulls(reliability=reliability, confidence=confidence, convention="binomial")
    np.testing.assert_array_equal(found, expected)


def test_binomial_laws():
    """250 random cases of the binomial law and of its posteriors agree with scipy.stats."""
    found = trials.chance_of_at_most(PULLS, FAILURES, failure_probability=SHARE)
    # Sums and an incomplete integral differ in the last digits only.
    np.testing.assert_allclose(found, stats.binom.cdf(FAILURES, PULLS, SHARE), rtol=1e-9, atol=1e-300)
    good = PULLS - FAILURES
    better = trials.chance_better_than(SHARE, pulls=PULLS, failures=FAILURES, prior="Jeffreys")
    expected = stats.beta.sf(SHARE, good + 0.5, FAILURES + 0.5)
    np.testing.assert_allclose(better, expected, rtol=1e-9, atol=1e-300)
    chances = trials.beta_binomial_chances(25, first=2.5, second=0.7)
    np.testing.assert_allclose(chances, stats.betabinom.pmf(np.arange(26), 25, 2.5, 0.7), rtol=1e-9)


@pytest.mark.parametrize("convention", trials.CONVENTIONS)
def test_pulls_needed_are_the_fewest(convention):
    """250 random cases: so many pulls show the reliability, one less does not."""
    allowed, reliability = FAILURES % 6, np.clip(SHARE, 0.3, 0.98)
    given = {"reliability": reliability, "confidence": CONFIDENCE, "convention": convention}
    needed = trials.pulls_needed(failures=allowed, **given)
    shown = {"confidence": CONFIDENCE, "convention": convention}
    # Quantile and tail are inverse to each other but for rounding.
    assert np.all(trials.reliability_shown(needed, allowed, **shown) >= reliability - 1e-9)
    fewer = needed - 1 >= np.maximum(allowed, 1)
    less = trials.reliability_shown(
        needed[fewer] - 1, allowed[fewer], confidence=CONFIDENCE[fewer], convention=convention
    )
    assert np.all(less < reliability[fewer] + 1e-9)


def test_hypergeometric_law():
    """250 random rows: chances agree with ratios of whole numbers."""
    row = RANDOM.integers(1, 60, CASES)
    bad, pulls = RANDOM.integers(0, row + 1), RANDOM.integers(1, row + 1)
    failures = RANDOM.integers(0, pulls + 1)
    found = trials.chance_of_at_most_in_row(row, bad=bad, pulls=pulls, failures=failures)
    expected = [
        sum(comb(d, x) * comb(n - d, k - x) for x in range(c + 1) if x <= d and k - x <= n - d) / comb(n, k)
        for n, d, k, c in np.transpose([row, bad, pulls, failures]).tolist()
    ]
    np.testing.assert_allclose(found, expected, rtol=1e-9, atol=1e-15)


def test_one_sided_tolerance():
    """250 random cases: the noncentral t law of scipy.stats at the limit gives the confidence back."""
    pulls, content = PULLS + 1, np.clip(SHARE, 0.5, 0.99)
    factor = trials.one_sided_tolerance_factor(pulls, content=content, confidence=CONFIDENCE)
    root = np.sqrt(pulls)
    reached = stats.nct.cdf(factor * root, pulls - 1, stats.norm.ppf(content) * root)
    np.testing.assert_allclose(reached, CONFIDENCE, atol=1e-7)  # its quantile is found to eight places


def test_two_sided_tolerance():
    """Eight random cases: the confidence comes back when mean and spread are summed over, by another way."""
    pulls, content, confidence = PULLS[:8] % 60 + 2, np.clip(SHARE[:8], 0.3, 0.99), CONFIDENCE[:8]
    factors = trials.two_sided_tolerance_factor(pulls, content=content, confidence=confidence)
    spread = np.linspace(1e-4, 4, 800)  # of the sample, over that of the law
    for n, p, c, k in zip(pulls, content, confidence, factors, strict=True):
        mean = np.linspace(-6, 6, 241) / np.sqrt(n)
        held = stats.norm.cdf(mean[:, None] + k * spread) - stats.norm.cdf(mean[:, None] - k * spread)
        # Limits that hold enough for a mean do so for every wider spread: the rest of its law counts.
        least = np.array([np.interp(p, row, spread) for row in held])
        above = stats.chi2.sf((n - 1) * least**2, n - 1)
        weights = stats.norm.pdf(mean * np.sqrt(n))
        assert above @ weights / weights.sum() == pytest.approx(c, abs=1e-4)  # grids of this fineness


@pytest.mark.parametrize("number", range(6))
def test_weibull(number):
    """Random pulls, some stopped before a break: shape and scale agree with the reliability package."""
    law = np.random.default_rng(number)
    failed = law.weibull(2 + number, 14) * 3000
    held = np.full(number, 3500.0)
    fit = Fit_Weibull_2P(
        failures=failed,
        right_censored=held if number else None,
        show_probability_plot=False,
        print_results=False,
    )
    found = trials.fit_weibull(failed, held=held)
    assert (found.shape, found.scale) == pytest.approx((fit.beta, fit.alpha), rel=1e-4)  # its stop rule


def test_weighted_means():
    """A weighted moving mean agrees with the exponential window of pandas, its limits with its weights."""
    values = RANDOM.normal(3000, 60, 40)
    chart = trials.weighted_mean_chart(values, target=3000, scatter=60, weight=0.3)
    expected = pd.Series([3000, *values]).ewm(alpha=0.3, adjust=False).mean()[1:]
    np.testing.assert_allclose(chart.plotted, expected, rtol=1e-12)
    # The scatter of the mean is the root of the sum of squared weights.
    spread = np.sqrt(np.cumsum((0.3 * 0.7 ** np.arange(40)) ** 2))
    np.testing.assert_allclose(chart.upper, 3000 + 3 * 60 * spread, rtol=1e-12)
