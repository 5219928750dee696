"""Page on the martensite start temperature with four formulas, 2026, read."""

import pytest

from secondplate.weldability_carbon import martensite_start_c
from secondplate.weldability_composition import Composition

SOURCE = "martensite_start_page"


def test_carbon_lowers_the_start():
    """Each 0.1 % carbon lowers the start by about 42 C."""
    low, high = (
        martensite_start_c(Composition(carbon_percent=carbon, manganese_percent=1)) for carbon in (0.3, 0.4)
    )
    assert low - high == pytest.approx(42, abs=0.5)  # printed as a whole number
