"""Paper on body adhesives 2021, seen: to stay tough from -40 to 80 C."""

from secondplate.softening_limits import typical_heat_limits

SOURCE = "adhesive_toughness_2021"


def test_warning_begins_where_toughness_is_no_longer_asked_for():
    """The warning for a bond line stands at the upper end of the range."""
    assert typical_heat_limits()["bond line"].warn_above == 80
