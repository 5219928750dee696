"""Page of a trader that reproduces specified properties of 5xxx sheet. Read."""

from tests.sheet_statements import said

SOURCE = "sheet_trader_page"


def test_thin_5754():
    """5754-O of 0.2 to 0.5 mm: the standard's strengths, less elongation than thicker sheet."""
    assert said(SOURCE, "5754-O", "proof stress") == (80, None, None)
    assert said(SOURCE, "5754-O", "tensile strength") == (190, None, 240)
    assert said(SOURCE, "5754-O", "elongation A50")[0] == 12
    for quantity in ("proof stress", "tensile strength"):
        assert said(SOURCE, "5754-O", quantity) == said("en_485_2", "5754-O", quantity, thickness_mm=1.0)
