"""WRC-1992 constitution diagram. Equivalents and axes read in an open script; values by hand."""

import pytest

from secondplate.weldability_composition import Composition, composition, mix
from secondplate.weldability_equivalents import wrc_1992_covers, wrc_1992_equivalents

SOURCE = "wrc_1992"


def test_equivalents():
    """Cr + Mo + 0.7 Nb and Ni + 35 C + 20 N + 0.25 Cu of a stabilised steel."""
    steel = Composition(
        carbon_percent=0.04,
        chromium_percent=18,
        nickel_percent=9.5,
        molybdenum_percent=0.3,
        niobium_percent=0.5,
        nitrogen_percent=0.04,
        copper_percent=0.2,
    )
    at = wrc_1992_equivalents(steel)
    assert at.chromium_equivalent_percent == pytest.approx(18.65, rel=1e-12)  # by hand, exact
    assert at.nickel_equivalent_percent == pytest.approx(11.75, rel=1e-12)


def test_axes_end_at_17_to_31_and_9_to_18():
    """A 304 stud lies on the axes, half of it with half a rivet does not and is refused."""
    stud, rivet = composition("304-type"), composition("36MnB4")
    assert wrc_1992_covers(stud)
    half = mix(stud, rivet, dilution=0.5)
    assert not wrc_1992_covers(half)
    with pytest.raises(ValueError, match="WRC-1992 chromium equivalent must be between 17 % and 31 %, got 9"):
        wrc_1992_equivalents(half)
