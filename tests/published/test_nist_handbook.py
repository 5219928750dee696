"""NIST/SEMATECH e-Handbook of Statistical Methods, sections 6.2.6, 7.2.4.1, 7.2.6.3 and 8.4.1.2."""

import pytest

from secondplate.trials import (
    SequentialPlan,
    clopper_pearson_interval,
    fit_weibull,
    howe_two_sided_factor,
    natrella_one_sided_factor,
    one_sided_tolerance_factor,
    two_sided_tolerance_factor,
)

SOURCE = "nist_handbook"
MEAN, SPREAD = 97.07, 0.0268
FAILED = (54, 187, 216, 240, 244, 335, 361, 373, 375, 386)


def test_sequential_lines():
    """Section 6.2.6: intercepts and slope computed to five places; first acceptance at 24 pulls seen."""
    plan = SequentialPlan(
        good_failure_probability=0.01, bad_failure_probability=0.1, producer_risk=0.05, consumer_risk=0.1
    )
    lines = (plan.accept_intercept, plan.reject_intercept, plan.slope)
    assert lines == pytest.approx((0.93886, 1.20538, 0.03975), abs=1e-5)
    assert plan.first_acceptance == 24
    assert (plan.accept_at(24), plan.reject_at(24)) == (0, 3)


def test_first_acceptance_with_a_greater_risk():
    """With a consumer's risk of 0.20 the first acceptance comes at 17 pulls; computed."""
    plan = SequentialPlan(
        good_failure_probability=0.01, bad_failure_probability=0.1, producer_risk=0.05, consumer_risk=0.2
    )
    assert plan.first_acceptance == 17


def test_exact_interval():
    """Section 7.2.4.1: 4 of 20 at 90 %, six places, from memory."""
    found = clopper_pearson_interval(20, 4, confidence=0.9)
    assert found == pytest.approx((0.071354, 0.401029), abs=2e-6)


def test_tolerance_factors():
    """Section 7.2.6.3: 43 wafers, content 90 %, confidence 99 %; both approximations, seven places seen."""
    given = {"content": 0.9, "confidence": 0.99}
    assert natrella_one_sided_factor(43, **given) == pytest.approx(1.8751896, abs=5e-6)
    assert howe_two_sided_factor(43, **given) == pytest.approx(2.2173159, abs=5e-6)
    assert one_sided_tolerance_factor(43, **given) == pytest.approx(1.87395, abs=5e-6)
    assert two_sided_tolerance_factor(43, **given) == pytest.approx(2.22283, abs=5e-6)
    assert natrella_one_sided_factor(40, content=0.9, confidence=0.99) == pytest.approx(1.9034, abs=1e-4)
    assert one_sided_tolerance_factor(40, content=0.9, confidence=0.99) == pytest.approx(1.9017, abs=1e-4)


def test_tolerance_limits():
    """Section 7.2.6.3: limits of the wafers; the page's last line uses s = 2.68 and is wrong."""
    given = {"content": 0.9, "confidence": 0.99}
    two, one = howe_two_sided_factor(43, **given), natrella_one_sided_factor(43, **given)
    found = (MEAN - two * SPREAD, MEAN + two * SPREAD, MEAN + one * SPREAD, MEAN - one * SPREAD)
    # Six places, but for the last digit of the upper limits.
    assert found == pytest.approx((97.010576, 97.12942, 97.120255, 97.019745), abs=5e-6)


def test_weibull_with_units_that_held():
    """Section 8.4.1.2: 10 of 20 failed by 500; from memory, four places."""
    law = fit_weibull(FAILED, held=[500] * 10)
    assert (law.shape, law.scale) == pytest.approx((1.7208, 606.528), rel=2e-4)
