"""Article of a trader on aluminium sheet for car bodies with a table of properties. Read."""

import pytest

from secondplate.sheet_alloys import sheet_band
from tests.sheet_statements import said

SOURCE = "body_sheet_article"


@pytest.mark.parametrize(
    ("sheet", "proof", "strength", "elongation"),
    [("6111-T4", 146, 290, 25), ("6022-T4", 122, 238, 30), ("5182-O", 123, 276, 25.6)],
)
def test_table(sheet, proof, strength, elongation):
    """Typical yield, strength and elongation; the working band holds them."""
    assert said(SOURCE, sheet, "proof stress")[1] == proof
    assert said(SOURCE, sheet, "tensile strength")[1] == strength
    assert said(SOURCE, sheet, "elongation A")[1] == elongation
    assert sheet_band(sheet, "tensile strength").contains(strength)
