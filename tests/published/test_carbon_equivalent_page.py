"""Page on the carbon equivalent with a worked example, read."""

import pytest

from secondplate.weldability_carbon import carbon_equivalent_iiw_percent
from secondplate.weldability_composition import Composition

SOURCE = "carbon_equivalent_page"


def test_worked_example():
    """0.18 C, 1.2 Mn, 0.2 Cr, 0.05 Mo, 0.1 Ni and 0.15 Cu give 0.4467."""
    steel = Composition(
        carbon_percent=0.18,
        manganese_percent=1.2,
        chromium_percent=0.2,
        molybdenum_percent=0.05,
        nickel_percent=0.1,
        copper_percent=0.15,
    )
    assert carbon_equivalent_iiw_percent(steel) == pytest.approx(0.4467, abs=6e-5)  # four decimals
