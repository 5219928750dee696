"""Uncertainty budgets against another program on random cases, limiting cases, and refusals."""

import math

import GTC
import numpy as np
import pytest

from secondplate.measuring_budget import Budget, Contribution, sensitivities

CASES = 100
_RANDOM = np.random.default_rng(20)
UNCERTAINTIES = 10 ** _RANDOM.uniform(-3, 0, (4, CASES))
SENSITIVITIES = _RANDOM.normal(size=(4, CASES))
# Freedom high enough that the other program has something to cut, and once endless.
DEGREES = np.vstack([_RANDOM.integers(2, 30, (3, CASES)), np.full(CASES, np.inf)])


def random_budget():
    """Return one budget that holds a column of random cases."""
    lines = zip(UNCERTAINTIES, SENSITIVITIES, DEGREES, strict=True)
    return Budget(
        contributions=tuple(
            Contribution(name=f"input {number}", standard_uncertainty=u, sensitivity=c, degrees_of_freedom=nu)
            for number, (u, c, nu) in enumerate(lines)
        )
    )


def others_result(case):
    """Return combined uncertainty and degrees of freedom of one random case by the other program."""
    lines = zip(UNCERTAINTIES[:, case], SENSITIVITIES[:, case], DEGREES[:, case], strict=True)
    result = sum(float(c) * GTC.ureal(1.0, float(u), float(nu)) for u, c, nu in lines)
    return result.u, result.df


def test_same_as_another_program_on_random_budgets():
    """Combined uncertainty and degrees of freedom of 100 random budgets are those of GTC."""
    budget = random_budget()
    combined, degrees = np.transpose([others_result(case) for case in range(CASES)])
    assert budget.combined_uncertainty == pytest.approx(combined, rel=1e-12)  # arithmetic only
    assert budget.effective_degrees_of_freedom == pytest.approx(degrees, rel=1e-9)  # fourth powers


def test_coverage_factor_is_that_of_another_program():
    """Student's factor, with freedom cut to the whole below, is that of GTC for cut freedom."""
    budget = random_budget()
    whole = np.floor(budget.effective_degrees_of_freedom)
    others = [GTC.reporting.k_factor(df, 95) for df in whole]
    assert budget.coverage_factor(confidence_percent=95) == pytest.approx(
        others, rel=1e-5
    )  # its freedom ends early


def test_endless_freedom_is_normal():
    """Without any limit to the freedom the factor is that of the normal distribution."""
    budget = Budget(contributions=(Contribution(name="only", standard_uncertainty=0.2),))
    assert math.isinf(budget.effective_degrees_of_freedom)
    assert budget.coverage_factor(confidence_percent=95) == pytest.approx(1.959964, abs=1e-6)  # last digit
    assert budget.expanded_uncertainty() == pytest.approx(0.2 * 1.959964, abs=1e-6)  # last digit


def test_nothing_uncertain():
    """A budget of exact inputs has no uncertainty, no shares and endless freedom."""
    budget = Budget(contributions=(Contribution(name="exact", standard_uncertainty=0.0),))
    assert (budget.combined_uncertainty, budget.variance_shares["exact"]) == (0.0, 0.0)
    assert math.isinf(budget.effective_degrees_of_freedom)


def test_shares_add_to_one():
    """Shares of the variance add to one in each case of a column."""
    shares = np.sum(list(random_budget().variance_shares.values()), axis=0)
    assert shares == pytest.approx(np.ones(CASES), rel=1e-12)  # arithmetic only


def test_freedom_lies_between_least_and_sum():
    """Welch-Satterthwaite gives no less than the least freedom of a line and no more than all together."""
    budget = random_budget()
    finite = DEGREES[:3]
    only = Budget(contributions=budget.contributions[:3]).effective_degrees_of_freedom
    assert np.all(only >= finite.min(axis=0) - 1e-9)
    assert np.all(only <= finite.sum(axis=0) + 1e-9)


def test_differences_are_derivatives():
    """Central differences of a formula are its derivatives, also for columns."""
    angle, length = np.linspace(0.1, 1.2, 20), np.linspace(1, 3, 20)
    found = sensitivities(
        lambda angle, length: length * np.sin(angle),
        estimates={"angle": angle, "length": length},
        standard_uncertainties={"angle": 1e-4, "length": 1e-4},
    )
    assert found["angle"] == pytest.approx(length * np.cos(angle), rel=1e-8)  # step squared
    assert found["length"] == pytest.approx(np.sin(angle), rel=1e-8)  # step squared


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: Contribution(name="probe", standard_uncertainty=-0.1),
            "standard uncertainty of probe must be at least 0, got -0.1",
        ),
        (
            lambda: Contribution(name="probe", standard_uncertainty=1, degrees_of_freedom=0),
            "degrees of freedom of probe must be above 0, got 0",
        ),
        (
            lambda: Contribution(name="probe", standard_uncertainty=1, degrees_of_freedom=math.nan),
            "degrees of freedom of probe must be finite",
        ),
        (
            lambda: Contribution(name="probe", standard_uncertainty=1, kind="C"),
            "kind of probe must be one of A, B, got 'C'",
        ),
        (lambda: Budget(contributions=()), "budget must hold at least 1 contribution, got 0"),
        (
            lambda: Budget(contributions=(Contribution(name="a", standard_uncertainty=1),) * 2),
            "contributions must have names of their own, got a, a",
        ),
        (
            lambda: sensitivities(abs, estimates={"x": 1}, standard_uncertainties={"y": 1}),
            "names of estimates and uncertainties must be the same",
        ),
        (
            lambda: sensitivities(abs, estimates={"x": 1}, standard_uncertainties={"x": 0}),
            "standard uncertainty of x must be above 0, got 0",
        ),
        (
            lambda: random_budget().coverage_factor(confidence_percent=100),
            "confidence must be between 50 % and 99.99 %, got 100 %",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What makes no budget is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
