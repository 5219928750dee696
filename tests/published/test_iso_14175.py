"""ISO 14175:2008 Gases and gas mixtures for fusion welding. Examples read in a national edition."""

import pytest

from secondplate.gas import GAS_GROUPS, gas_group

SOURCE = "iso_14175"


@pytest.mark.parametrize(
    ("parts", "designation", "locator"),
    [
        ({"helium_percent": 30}, "I3", "clause 4, example 1; the edition prints 13 for I3"),
        ({"carbon_dioxide_percent": 10, "oxygen_percent": 3}, "M24", "clause 4, example 2"),
    ],
)
def test_designation_examples(parts, designation, locator):
    """The designation examples of the standard come out."""
    assert gas_group(**parts).designation == designation, locator


@pytest.mark.parametrize(
    ("designation", "low_percent", "high_percent"),
    [("M12", 0.5, 5), ("M20", 5, 15), ("M21", 15, 25), ("M24", 5, 15)],
)
def test_carbon_dioxide_limits(designation, low_percent, high_percent):
    """The limits of carbon dioxide (Table 2) are those remembered, and say so."""
    carbon_dioxide = GAS_GROUPS[designation].carbon_dioxide_percent
    assert (carbon_dioxide.low, carbon_dioxide.high) == (low_percent, high_percent)
    assert GAS_GROUPS[designation].basis == "from memory"
