"""Open module for carbon equivalents after EN 1011-2. Formulas read; values worked apart."""

import pytest

from secondplate.weldability_carbon import (
    carbon_equivalent_cet_percent,
    carbon_equivalent_iiw_percent,
    cracking_parameter_percent,
    preheat_c,
)
from secondplate.weldability_composition import composition

SOURCE = "carbon_equivalent_code"


@pytest.mark.parametrize(
    ("formula", "steel", "percent"),
    [
        (carbon_equivalent_iiw_percent, "36MnB4", 0.5683),
        (carbon_equivalent_iiw_percent, "38B2", 0.5500),
        (cracking_parameter_percent, "36MnB4", 0.4400),
        (cracking_parameter_percent, "38B2", 0.4450),
        (carbon_equivalent_cet_percent, "36MnB4", 0.4712),
        (carbon_equivalent_cet_percent, "38B2", 0.4662),
    ],
)
def test_carbon_equivalents_of_rivets(formula, steel, percent):
    """Three equivalents of two rivet steels."""
    assert formula(composition(steel)) == pytest.approx(percent, abs=6e-5)  # four decimals


def test_two_printed_forms_of_preheat_differ_by_half_a_degree():
    """The older form, 700 and -330, lies 0.6 C under the standard's at this CET."""
    found = preheat_c(0.4712, thickness_mm=10, hydrogen_ml_100g=2, heat_input_kj_mm=0.5)
    assert found.high - found.low == pytest.approx(0.6, abs=0.05)  # one decimal


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"heat_input_kj_mm": 0.069}, "heat input must be between 0.5 kJ/mm and 4 kJ/mm, got 0.069 kJ/mm"),
        ({"thickness_mm": 1.5}, "thickness must be between 10 mm and 90 mm, got 1.5 mm"),
        ({"hydrogen_ml_100g": 0.5}, "hydrogen must be between 1 ml/100g and 20 ml/100g, got 0.5 ml/100g"),
    ],
)
def test_range_of_the_method(change, sentence):
    """Method B ends at 10 mm and 0.5 kJ/mm: a stud arc of 480 J on a face of 7 mm lies outside."""
    inside = {"thickness_mm": 10, "hydrogen_ml_100g": 2, "heat_input_kj_mm": 0.5}
    with pytest.raises(ValueError, match=sentence):
        preheat_c(0.47, **(inside | change))
    with pytest.raises(ValueError, match="carbon equivalent CET must be between 0.2 % and 0.5 %, got 0.51 %"):
        preheat_c(0.51, **inside)
