"""Work sheet for the carbon equivalent of pipe steel after CSA Z662, 1999, read."""

import pytest

from secondplate.weldability_carbon import carbon_equivalent_cen_percent
from secondplate.weldability_composition import Composition

SOURCE = "pipe_carbon_equivalent_sheet"


def test_work_sheet():
    """0.25 + 1 (1.28/6 + 0.29/24 + 0.109/15 + 0.06/20 + 0.088/5 + 5 x 0.0009) = 0.5078."""
    steel = Composition(
        carbon_percent=0.25,
        manganese_percent=1.28,
        silicon_percent=0.29,
        copper_percent=0.109,
        nickel_percent=0.06,
        chromium_percent=0.05,
        molybdenum_percent=0.034,
        vanadium_percent=0.004,
        boron_percent=0.0009,
    )
    # The sheet's table rounds the factor 0.9972 to 1.00: 0.0028 of a bracket of 0.258.
    assert carbon_equivalent_cen_percent(steel) == pytest.approx(0.5078, abs=8e-4)
