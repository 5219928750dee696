"""Directive 2013/35/EU on electromagnetic fields at work, Annex II. From memory, distances computed."""

import pytest

from secondplate.cautions import cautions_about
from secondplate.electrics import distance_for_field_m, magnetic_field_ut, pair_field_ut

SOURCE = "directive_2013_35_eu"
FIELD = {caution.name: caution for caution in cautions_about("field")}


@pytest.mark.parametrize(("current_a", "distance_m"), [(1000, 0.400), (800, 0.320), (500, 0.200)])
def test_distance_for_implants(current_a, distance_m):
    """The level of 0.5 mT for implants (Table B4, from memory) is reached at these distances."""
    level = FIELD["field for implants"]
    assert level.value == 500
    assert level.basis == "from memory"
    found = distance_for_field_m(current_a=current_a, field_ut=level.value)
    assert found == pytest.approx(distance_m, abs=5e-4)  # three decimals


@pytest.mark.parametrize("current_a", [1000, 600])
def test_cautions_state_the_computed_distance(current_a):
    """The distances that pages show are those that the formula gives."""
    shown = FIELD[f"distance for implants at {current_a} A"].value
    found = distance_for_field_m(current_a=current_a, field_ut=500)
    assert found == pytest.approx(shown, rel=1e-6)  # only rounding


def test_single_cable_against_pair():
    """At 0.3 m a single cable with 1000 A gives 666.7 uT, a pair 50 mm apart 111.1 uT: below the level."""
    assert magnetic_field_ut(current_a=1000, distance_m=0.3) == pytest.approx(666.7, abs=0.05)
    assert pair_field_ut(current_a=1000, distance_m=0.3, spacing_m=0.05) == pytest.approx(111.1, abs=0.05)
