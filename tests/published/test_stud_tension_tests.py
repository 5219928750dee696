"""Tension tests on welded threaded studs with a tensile strength of 800 N/mm2. Read in part."""

import pytest

from secondplate.studs import property_class

SOURCE = "stud_tension_tests"


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("4.8", "at most 0.20 %"),
        ("8.8", "limited extent"),
        ("10.9", "not among"),
        ("A2-50", "weldable"),
    ],
)
def test_weldable_stud_steels(name, words):
    """4.8 with carbon at most 0.20 % and austenitic grades; 20MnB4 to a limited extent."""
    assert words in property_class(name).as_weld_stud
