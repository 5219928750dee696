"""Open fire engineering code that prints 1820 for 17820 in the branch from 735 to 900 C. Read; a trap."""

import pytest

from secondplate.materials import material

SOURCE = "fire_code_misprint"
STEEL = material("carbon steel")


def test_branches_meet_at_735_c():
    """With 17820 both branches give 5000 J/kgK at 735 C, as clause 3.4.1.2 of the standard intends."""
    below = STEEL.heat_capacity_j_kgk(734.999999)
    above = STEEL.heat_capacity_j_kgk(735.0)
    assert below == pytest.approx(above, rel=1e-5)  # 1e-6 K below the joint
    assert above == pytest.approx(5000, rel=1e-12)


def test_misprint_would_tear_them_apart():
    """With 1820 the curve would jump from 5000 to 1000 J/kgK; the table here holds 17820."""
    pole = next(
        value
        for piece in STEEL.heat_capacity_curves[0].pieces
        for kind, _, value in piece.terms
        if kind == "pole below"
    )
    assert pole == 17820
    assert 545 + 1820 / (735 - 731) == 1000
