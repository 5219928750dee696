"""EN 1011-2 Recommendations for welding, arc welding of ferritic steels. Formulas from memory."""

import pytest

from secondplate.heat.cooling_times import standard_thick_cooling_time_s, standard_thin_cooling_time_s
from secondplate.weldability_carbon import carbon_equivalent_cet_percent, preheat_c
from secondplate.weldability_composition import composition

SOURCE = "en_1011_2"


def test_cooling_times():
    """Annex D.5 worked apart: 0.6 kJ/mm from 20 C, thick and 3 mm."""
    assert standard_thick_cooling_time_s(0.6) == pytest.approx(3.173077, abs=6e-7)  # six decimals
    assert standard_thin_cooling_time_s(0.6, thickness_mm=3) == pytest.approx(45.454265, abs=6e-7)


@pytest.mark.parametrize(("steel", "preheat"), [("36MnB4", 120), ("38B2", 117)])
def test_preheat(steel, preheat):
    """Annex C.3 worked apart: 10 mm, 2 ml/100g and 0.5 kJ/mm, the corner of the range nearest to a stud."""
    cet = carbon_equivalent_cet_percent(composition(steel))
    found = preheat_c(cet, thickness_mm=10, hydrogen_ml_100g=2, heat_input_kj_mm=0.5)
    assert found.best == pytest.approx(preheat, abs=0.5)  # whole degrees
