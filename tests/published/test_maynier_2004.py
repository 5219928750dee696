"""Maynier's hardness equations, read in a research note; values worked apart from this library."""

import pytest

from secondplate.weldability_composition import composition
from secondplate.weldability_maynier import (
    maynier_bainite_hv,
    maynier_ferrite_pearlite_hv,
    maynier_martensite_hv,
)

SOURCE = "maynier_2004"


@pytest.mark.parametrize(
    ("steel", "rate_c_h", "hardness_hv"),
    [
        ("36MnB4", 1e5, 593.1),
        ("36MnB4", 1e6, 614.1),
        ("36MnB4", 3.6e6, 625.8),
        ("38B2", 1e5, 605.1),
        ("38B2", 1e6, 626.1),
        ("38B2", 3.6e6, 637.8),
    ],
)
def test_martensite_of_rivets(steel, rate_c_h, hardness_hv):
    """Two rivet steels at three rates of cooling."""
    found = maynier_martensite_hv(composition(steel), cooling_rate_c_h=rate_c_h)
    assert found == pytest.approx(hardness_hv, abs=0.06)  # one decimal


def test_softer_structures_by_hand():
    """36MnB4 at 1e4 C/h, each term worked by hand: bainite 273.7 HV, ferrite with pearlite 195.4 HV."""
    # -323 + 66.6 + 66 + 145.35 + 3.25 + 28.8 and (89 + 19.08 - 11 - 20.9 - 0.5 - 4) x 4
    bainite = maynier_bainite_hv(composition("36MnB4"), cooling_rate_c_h=1e4)
    assert bainite == pytest.approx(-13.0 + 71.68 * 4, abs=1e-6)
    # 42 + 80.28 + 10.6 + 28.5 + 0.63 + 1.4 and (10 - 3.8 + 0.2 + 1.6) x 4
    ferrite = maynier_ferrite_pearlite_hv(composition("36MnB4"), cooling_rate_c_h=1e4)
    assert ferrite == pytest.approx(163.41 + 8.0 * 4, abs=1e-6)
