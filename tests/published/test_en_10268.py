"""EN 10268 Cold rolled high-strength steel. Older edition read in a mill's handbook; 2006 from memory."""

from secondplate.sheet_alloys import sheet_properties

SOURCE = "en_10268"


def test_editions_of_hc340la_stand_side_by_side():
    """Older: 320 to 410 and 400 to 500 MPa, 22 %; 2006, from memory: 340 to 420 and 410 to 510 MPa, 21 %."""
    proof = sheet_properties("HC340LA", "proof stress")
    assert [(each.least, each.greatest) for each in proof] == [(320, 410), (340, 420)]
    strength = sheet_properties("HC340LA", "tensile strength")
    assert [(each.least, each.greatest) for each in strength] == [(400, 500), (410, 510)]
    elongation = sheet_properties("HC340LA", "elongation A80")
    assert [(each.least, each.basis) for each in elongation] == [(22, "published"), (21, "from memory")]
