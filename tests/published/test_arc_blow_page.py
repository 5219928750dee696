"""Manual page on arc blow. Read."""

from secondplate.inspection import weld_sign

SOURCE = "arc_blow_page"


def test_one_sided_collar():
    """Arc blow melts one side more; two symmetric earth clamps, added mass or a turned gun help."""
    sign = weld_sign("one_sided")
    assert sign.source == SOURCE
    assert "two earth clamps symmetrically" in sign.correction
    assert "grows with the current" in sign.note


def test_slug_of_the_base_is_a_good_weld():
    """A pulled-out slug or a broken shank is the sign of a good weld."""
    assert weld_sign("slug").source == SOURCE
    assert weld_sign("slug").correction == ""
