"""Andrews 1965, start of martensite. Formula from memory; values worked apart from this library."""

import pytest

from secondplate.weldability_carbon import martensite_start_c
from secondplate.weldability_composition import composition

SOURCE = "andrews_1965"


@pytest.mark.parametrize(("steel", "start_c"), [("36MnB4", 354.5), ("38B2", 354.3)])
def test_rivets(steel, start_c):
    """Two rivet steels begin to turn at about 354 C."""
    assert martensite_start_c(composition(steel)) == pytest.approx(start_c, abs=0.06)  # one decimal
