"""Two answered textbook questions on the field of a long straight wire. Read."""

import pytest

from secondplate.electrics import distance_for_field_m, magnetic_field_ut

SOURCE = "physics_questions"


def test_distance_at_which_a_wire_equals_the_field_of_the_earth():
    """5 A give 5e-5 T at a distance of 2 cm (first question)."""
    assert distance_for_field_m(current_a=5, field_ut=50) == pytest.approx(0.02, rel=1e-6)  # given exactly


def test_field_of_a_known_current():
    """68.75 A give 0.55e-4 T at a distance of 25 cm (second question)."""
    assert magnetic_field_ut(current_a=68.75, distance_m=0.25) == pytest.approx(55, rel=1e-6)  # given exactly
