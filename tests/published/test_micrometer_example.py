"""Published budget of a micrometer, seen second-hand."""

import pytest

from secondplate.measuring_budget import Budget, Contribution
from secondplate.measuring_inputs import (
    certificate_uncertainty,
    repeated_uncertainty,
    resolution_uncertainty,
)

SOURCE = "micrometer_example"


def test_budget_of_the_micrometer():
    """Three readings, display and block: 0.00033, 0.00029 and 0.00025 mm make 0.00051, expanded 0.0010 mm."""
    lines = {
        "readings": repeated_uncertainty(standard_deviation=0.00058, readings_count=3),
        "display": resolution_uncertainty(0.001),
        "block": certificate_uncertainty(expanded_uncertainty=0.0005),
    }
    assert list(lines.values()) == pytest.approx([0.00033, 0.00029, 0.00025], abs=6e-6)  # five decimals
    budget = Budget(
        contributions=tuple(Contribution(name=name, standard_uncertainty=u) for name, u in lines.items())
    )
    assert budget.combined_uncertainty == pytest.approx(0.00051, abs=6e-6)  # five decimals
    assert 2 * budget.combined_uncertainty == pytest.approx(0.0010, abs=5e-5)  # four decimals, k = 2
