"""Trade article on the change from EN 439 to ISO 14175. Read."""

from secondplate.gas import gas_group

SOURCE = "iso_14175_article"


def test_fifteen_per_cent_belongs_to_m20():
    """M20 holds up to and including 15 % carbon dioxide."""
    assert gas_group(carbon_dioxide_percent=15).designation == "M20"


def test_m21_begins_above_fifteen_per_cent():
    """M21 holds more than 15 % carbon dioxide."""
    assert gas_group(carbon_dioxide_percent=15.1).designation == "M21"
