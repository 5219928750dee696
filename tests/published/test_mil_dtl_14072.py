"""MIL-DTL-14072: anodic index. Rules seen; index of 6061 and limits second-hand, the rest from memory."""

import pytest

from secondplate.corrosion_couples import index_allows, index_difference_v

SOURCE = "mil_dtl_14072"


def test_steel_is_let_pass():
    """Carbon steel and 6xxx differ by only 0.05 V, although measured attack is near the top of its list."""
    assert index_difference_v("carbon steel") == pytest.approx(0.05, abs=1e-9)  # two decimals, exact
    assert index_allows("carbon steel", environment="harsh")


@pytest.mark.parametrize(
    ("environment", "allowed"), [("harsh", False), ("normal", False), ("controlled", True)]
)
def test_limits_by_surroundings(environment, allowed):
    """0.15, 0.25 and 0.50 V: tin plate, 0.30 V from aluminium, is allowed in dry rooms only."""
    assert index_allows("chromium or tin plate", environment=environment) is allowed
