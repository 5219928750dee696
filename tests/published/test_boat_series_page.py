"""Galvanic series of a boat builder in sea water, seen."""

import pytest

from secondplate.corrosion_couples import PROTECT_ABOVE_MV, potential_difference_mv

SOURCE = "boat_series_page"


@pytest.mark.parametrize(
    ("metal", "difference_mv"),
    [("zinc plate", -310), ("carbon steel", 30), ("stainless steel, active", 270), ("tin", 320)],
)
def test_differences_to_aluminium_sheet(metal, difference_mv):
    """Differences to 6061, zinc being the anode."""
    assert potential_difference_mv(metal) == difference_mv


def test_protect_above_200_mv():
    """The sheet asks for protection above 200 mV."""
    assert PROTECT_ABOVE_MV == 200
