"""Lesson of a welding engineer on the designations of ISO 14175. Read."""

import pytest

from secondplate.gas import gas_group

SOURCE = "iso_14175_lesson"


@pytest.mark.parametrize(
    ("parts", "designation", "printed"),
    [
        ({"carbon_dioxide_percent": 11}, "M20", "ISO 14175-M20-ArC-11"),
        ({"carbon_dioxide_percent": 15}, "M20", "ISO 14175-M20-ArC-15"),
        ({"carbon_dioxide_percent": 18}, "M21", "ISO 14175-M21-ArC-18"),
        ({"carbon_dioxide_percent": 25}, "M21", "M21 may hold 25 %"),
        ({"helium_percent": 100}, "I2", "I2: 100 % He"),
        ({"carbon_dioxide_percent": 100}, "C1", "ISO 14175-C1: 100 % CO2"),
    ],
)
def test_designations(parts, designation, printed):
    """Each mix of the lesson falls into its group."""
    assert gas_group(**parts).designation == designation, printed
