"""Verdicts with a guard band: symmetric, monotone, and in step with the probability of conformity."""

import numpy as np
import pytest
from scipy import stats

from secondplate import measuring_decision as decision

READINGS = np.linspace(0.30, 0.70, 161)


def test_verdicts_go_once_from_bad_to_good_and_back():
    """Along rising readings the verdicts are: not, not decided, conforms, not decided, not."""
    found = decision.conformity(READINGS, standard_uncertainty_mm=0.01, least_mm=0.4, most_mm=0.6)
    runs = [word for place, word in enumerate(found) if place == 0 or word != found[place - 1]]
    good, doubt, bad = decision.VERDICTS
    assert runs == [bad, doubt, good, doubt, bad]


def test_verdict_is_the_probability_of_one_limit():
    """With one limit, to conform is to have at least 95 % probability, not to conform to have at most 5 %."""
    setting = {"standard_uncertainty_mm": 0.01, "least_mm": 0.4}
    likely = decision.conformity_probability(READINGS, **setting)
    words = decision.conformity(READINGS, **setting)
    clear = np.abs(likely - 0.95) > 1e-6
    assert np.array_equal((words == "conforms")[clear], (likely > 0.95)[clear])
    assert np.array_equal(words == "does not conform", likely < 0.05)


def test_probability_is_the_integral_of_the_bell():
    """Probability with both limits is that of the normal distribution by another program, in both tails."""
    found = decision.conformity_probability(READINGS, standard_uncertainty_mm=0.01, least_mm=0.4, most_mm=0.6)
    bell = stats.norm(READINGS, 0.01)
    # Up to 10 standard deviations out; below that both are rounding.
    assert found == pytest.approx(bell.cdf(0.6) - bell.cdf(0.4), rel=1e-6, abs=1e-15)


def test_both_sides_are_alike():
    """A reading beyond the greatest value is as unlikely to conform as one as far below the least one."""
    beyond = np.linspace(0, 0.35, 8)
    low = decision.conformity_probability(0.4 - beyond, standard_uncertainty_mm=0.01, least_mm=0.4)
    high = decision.conformity_probability(0.4 + beyond, standard_uncertainty_mm=0.01, most_mm=0.4)
    # 1e-9: the distances differ in their last digit, and so far out the curve is steep.
    np.testing.assert_allclose(high, low, rtol=1e-9, atol=0)
    assert np.all(high > 0)


def test_no_uncertainty_decides_everything():
    """An exact reading conforms on the limit and fails a hair below it."""
    exact = {"standard_uncertainty_mm": 0.0, "least_mm": 0.4}
    assert decision.conformity(0.4, **exact) == "conforms"
    assert decision.conformity(0.3999, **exact) == "does not conform"


def test_edges_of_the_guard_band_are_decided():
    """A reading on the edge of the guard band is decided, whichever side."""
    band = decision.guard_band_mm(0.01)
    limits = {"standard_uncertainty_mm": 0.01, "least_mm": 0.4}
    assert decision.conformity(0.4 + band, **limits) == "conforms"
    assert decision.conformity(0.4 - band, **limits) == "does not conform"


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: decision.guard_band_mm(-0.01), "standard uncertainty must be at least 0 mm, got -0.01 mm"),
        (
            lambda: decision.guard_band_mm(0.01, two_sided="no"),
            "two-sided must be true or false, got 'no'",
        ),
        (
            lambda: decision.guard_band_mm(0.01, confidence_percent=30),
            "confidence must be between 50 % and 99.99 %, got 30 %",
        ),
        (
            lambda: decision.conformity(0.4, standard_uncertainty_mm=0.01),
            "limits must be at least one of least and most, got neither",
        ),
        (
            lambda: decision.conformity(0.4, standard_uncertainty_mm=0.01, least_mm=0.6, most_mm=0.4),
            "greatest value must be at least the least value in mm, got 0.4 below 0.6",
        ),
        (
            lambda: decision.conformity_probability(0.4, standard_uncertainty_mm=0, least_mm=0.4),
            "standard uncertainty must be between 1e-09 mm",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What cannot be decided on is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
