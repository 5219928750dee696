"""Page of a supplier that offers 6016-T4 body sheet of 0.5 to 1.5 mm. Read."""

from tests.sheet_statements import said

SOURCE = "body_sheet_offer"


def test_6016_offer_lies_inside_the_standard():
    """Proof stress 85 to 130 and strength 205 to 240 MPa lie inside what the standard allows."""
    for quantity, offered in (("proof stress", (85, 130)), ("tensile strength", (205, 240))):
        low, _, high = said(SOURCE, "6016-T4", quantity)
        assert (low, high) == offered
        least, _, greatest = said("en_485_2", "6016-T4", quantity)
        assert least <= low <= high <= greatest
    assert said(SOURCE, "6016-T4", "hardening exponent")[0] == 0.26
