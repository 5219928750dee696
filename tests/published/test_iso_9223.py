"""ISO 9223: losses of the first year. From memory; C1 of steel also seen on a page."""

import pytest

from secondplate.corrosion_steps import CATEGORIES, first_year_loss

SOURCE = "iso_9223"


@pytest.mark.parametrize(
    ("metal", "losses"),
    [("steel", [1.3, 25, 50, 80, 200, 700]), ("zinc", [0.1, 0.7, 2.1, 4.2, 8.4, 25])],
)
def test_upper_ends(metal, losses):
    """Micrometres in C1 to CX."""
    assert [first_year_loss(metal, category) for category in CATEGORIES] == [(loss, "um") for loss in losses]


def test_aluminium_is_given_by_mass():
    """Aluminium pits, so its loss is given as 0.6, 2, 5 and 10 g/m2 in C2 to C5."""
    found = [first_year_loss("aluminium", category) for category in ("C2", "C3", "C4", "C5")]
    assert found == [(0.6, "g/m2"), (2, "g/m2"), (5, "g/m2"), (10, "g/m2")]
