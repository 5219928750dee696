"""GUM: example H.1, the calibration of an end gauge. Inputs from memory; results reproduced by GTC."""

import numpy as np
import pytest

from secondplate.measuring_budget import Budget, Contribution, sensitivities
from secondplate.measuring_inputs import (
    certificate_uncertainty,
    degrees_from_doubt,
    limits_uncertainty,
    repeated_uncertainty,
    resolution_uncertainty,
)

SOURCE = "jcgm_100"
# Input: best value, standard uncertainty, degrees of freedom. Lengths in nm, temperatures in C.
END_GAUGE = {
    "standard": (50_000_623.0, 25.0, 18),
    "difference": (215.0, 5.8, 24),
    "comparator_random": (0.0, 3.9, 5),
    "comparator_systematic": (0.0, 6.7, 8),
    "expansion": (11.5e-6, 2e-6 / np.sqrt(3), np.inf),
    "bed": (-0.1, 0.2, np.inf),
    "cycle": (0.0, 0.5 / np.sqrt(2), np.inf),
    "expansion_difference": (0.0, 1e-6 / np.sqrt(3), 50),
    "temperature_difference": (0.0, 0.05 / np.sqrt(3), 2),
}


def end_gauge_nm(
    standard,
    difference,
    comparator_random,
    comparator_systematic,
    expansion,
    bed,
    cycle,
    expansion_difference,
    temperature_difference,
):
    """Return the length of the gauge, equation (H.3)."""
    compared = difference + comparator_random + comparator_systematic
    heat = expansion_difference * (bed + cycle) + expansion * temperature_difference
    return standard + compared - standard * heat


def end_gauge_budget():
    """Return the budget of the example with sensitivities by differences."""
    slopes = sensitivities(
        end_gauge_nm,
        estimates={name: best for name, (best, _, _) in END_GAUGE.items()},
        standard_uncertainties={name: u for name, (_, u, _) in END_GAUGE.items()},
    )
    return Budget(
        contributions=tuple(
            Contribution(name=name, standard_uncertainty=u, sensitivity=slopes[name], degrees_of_freedom=nu)
            for name, (_, u, nu) in END_GAUGE.items()
        )
    )


def test_length_of_the_end_gauge():
    """H.1.6: the length is 50.000838 mm."""
    length = end_gauge_nm(**{name: best for name, (best, _, _) in END_GAUGE.items()})
    assert length * 1e-6 == pytest.approx(50.000838, abs=5e-7)  # six decimals of a millimetre


def test_uncertainty_of_the_end_gauge():
    """H.1.5 and H.1.6: u 32 nm, 16 degrees of freedom (16.75 before the cut), k 2.92, U 93 nm at 99 %."""
    budget = end_gauge_budget()
    assert budget.combined_uncertainty == pytest.approx(32, abs=0.5)  # whole nanometres
    assert budget.effective_degrees_of_freedom == pytest.approx(16.75, abs=0.05)  # as GTC gives it
    assert budget.coverage_factor(confidence_percent=99) == pytest.approx(2.92, abs=0.005)  # two decimals
    assert budget.expanded_uncertainty(confidence_percent=99) == pytest.approx(93, abs=0.6)  # 92.5 printed 93


def test_components_of_the_end_gauge():
    """Table H.1: 16.6 nm by the difference of temperatures, 2.9 nm by that of the expansions."""
    found = {each.name: each.component for each in end_gauge_budget().contributions}
    assert found["temperature_difference"] == pytest.approx(16.6, abs=0.05)  # one decimal
    assert found["expansion_difference"] == pytest.approx(2.9, abs=0.05)  # one decimal


@pytest.mark.parametrize(
    ("shape", "divisor"), [("rectangle", 0.57735), ("triangle", 0.40825), ("arcsine", 0.70711)]
)
def test_divisors(shape, divisor):
    """4.3.7, 4.3.9 and H.1.3: shares of the half width, from memory."""
    assert limits_uncertainty(half_width=1, shape=shape) == pytest.approx(divisor, abs=5e-6)  # five decimals


def test_doubt_of_a_quarter():
    """G.4.2: an uncertainty good to a quarter has 8 degrees of freedom, from memory."""
    assert degrees_from_doubt(0.25) == pytest.approx(8, rel=1e-12)  # exact


def test_shop_budget_of_a_thickness():
    """Worked budget: 0.00447, 0.00289, 0.0020 and 0.00577 mm make 0.00810 mm with 43 degrees of freedom."""
    lines = {
        "repeats": (repeated_uncertainty(standard_deviation=0.010, readings_count=5), 4),
        "display": (resolution_uncertainty(0.01), np.inf),
        "calibration": (certificate_uncertainty(expanded_uncertainty=0.004), np.inf),
        "seating": (limits_uncertainty(half_width=0.010), np.inf),
    }
    printed = [0.00447, 0.00289, 0.0020, 0.00577]
    assert [u for u, _ in lines.values()] == pytest.approx(printed, abs=5e-6)  # five decimals
    budget = Budget(
        contributions=tuple(
            Contribution(name=name, standard_uncertainty=u, degrees_of_freedom=nu)
            for name, (u, nu) in lines.items()
        )
    )
    assert budget.combined_uncertainty == pytest.approx(0.00810, abs=5e-6)  # five decimals
    assert budget.effective_degrees_of_freedom == pytest.approx(43.1, abs=0.05)  # one decimal
    assert 2 * budget.combined_uncertainty == pytest.approx(0.0162, abs=5e-5)  # printed with k = 2
