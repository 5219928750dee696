"""MIL-STD-414 and its successor Z1.9, sampling by variables, Table B-1, form 1, normal inspection; seen."""

import pytest

from secondplate.trials import variables_plan

SOURCE = "mil_std_414"
# letter, pulls, factor by quality limit in percent
ROWS = (
    ("B", 3, {2.5: 1.12, 4.0: 0.958}),
    ("C", 4, {1.0: 1.45, 1.5: 1.34, 2.5: 1.17}),
    ("D", 5, {0.65: 1.65, 1.0: 1.53, 1.5: 1.4, 2.5: 1.24, 4.0: 1.07}),
    ("E", 7, {1.0: 1.62, 2.5: 1.33}),
    ("F", 10, {0.65: 1.84, 1.0: 1.72, 1.5: 1.58, 2.5: 1.41, 4.0: 1.23}),
    ("G", 15, {0.65: 1.91, 1.0: 1.79, 1.5: 1.65}),
)


@pytest.mark.parametrize(("letter", "pulls", "factors"), ROWS)
def test_factors(letter, pulls, factors):
    """Pulls and acceptance factor of each plan: copied, so exact."""
    for quality_limit, factor in factors.items():
        plan = variables_plan(letter, quality_limit=quality_limit)
        assert (plan.pulls, plan.acceptance_factor) == (pulls, factor)
