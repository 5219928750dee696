"""Answered question on the carbon equivalent of a pipe steel, read."""

import pytest

from secondplate.weldability_carbon import carbon_equivalent_iiw_percent
from secondplate.weldability_composition import Composition

SOURCE = "pipe_carbon_equivalent_answer"


def test_worked_example():
    """0.25 + 0.23 + 0.16 + 0.06 = 0.70, each part rounded in print."""
    steel = Composition(
        carbon_percent=0.25,
        manganese_percent=1.40,
        chromium_percent=0.50,
        molybdenum_percent=0.25,
        vanadium_percent=0.05,
        nickel_percent=0.50,
        copper_percent=0.40,
    )
    assert carbon_equivalent_iiw_percent(steel) == pytest.approx(0.70, abs=5e-3)  # two decimals
