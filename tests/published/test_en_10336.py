"""EN 10336 Coated multiphase steels, HCT600X. Read in a mill's handbook."""

from tests.sheet_statements import said

SOURCE = "en_10336"


def test_hct600x():
    """Proof stress 340 to 420, strength 600 MPa and more, 20 %."""
    assert said(SOURCE, "HCT600X", "proof stress") == (340, None, 420)
    assert said(SOURCE, "HCT600X", "tensile strength")[0] == 600
    assert said(SOURCE, "HCT600X", "elongation A80")[0] == 20
