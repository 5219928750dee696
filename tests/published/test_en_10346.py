"""EN 10346:2015 Hot-dip coated strip. Scope read; grades from memory."""

from secondplate.sheet_alloys import sheet_properties

SOURCE = "en_10346"


def test_hct590x_is_not_hct600x():
    """From memory: the later standard's dual-phase grade is 590, and its proof stress starts 10 MPa lower."""
    (proof,) = sheet_properties("HCT590X", "proof stress")
    (strength,) = sheet_properties("HCT590X", "tensile strength")
    assert (proof.least, proof.greatest, strength.least) == (330, 430, 590)
    assert proof.source == strength.source == SOURCE
    assert proof.basis == "from memory"
