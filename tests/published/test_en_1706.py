"""EN 1706:2020 Aluminium castings, EN AC-43500. Read in a reproduction."""

import pytest

from tests.sheet_statements import said

SOURCE = "en_1706"


@pytest.mark.parametrize(
    ("temper", "proof", "strength", "elongation", "brinell"),
    [("F", 120, 200, 5, 65), ("T5", 150, 270, 4, 80), ("T7", 120, 200, 12, 60)],
)
def test_die_casting(temper, proof, strength, elongation, brinell):
    """Strengths, elongation and hardness by temper; modulus 74 GPa."""
    sheet = f"AlSi10MnMg-{temper}"
    assert said(SOURCE, sheet, "proof stress")[0] == proof
    assert said(SOURCE, sheet, "tensile strength")[0] == strength
    assert said(SOURCE, sheet, "elongation A")[0] == elongation
    assert said(SOURCE, sheet, "Brinell hardness")[1] == brinell
    assert said(SOURCE, sheet, "modulus")[1] == 74
