"""EN 10263-4 Steel wire for cold heading, boron steels. Compositions from memory."""

import pytest

from secondplate.weldability_composition import composition

SOURCE = "en_10263_4"


@pytest.mark.parametrize(
    ("steel", "carbon", "manganese"),
    [
        ("36MnB4", (0.33, 0.38), (0.80, 1.10)),
        ("38B2", (0.35, 0.40), (0.60, 0.90)),
        ("33B2", (0.30, 0.35), (0.60, 0.90)),
        ("37MnB5", (0.35, 0.40), (1.15, 1.45)),
    ],
)
def test_range_of_carbon_and_manganese(steel, carbon, manganese):
    """Leanest and richest cast of four grades; boron 0.0008 to 0.005 %."""
    low, high = (composition(steel, end=end) for end in ("low", "high"))
    assert (low.carbon_percent, high.carbon_percent) == carbon
    assert (low.manganese_percent, high.manganese_percent) == manganese
    assert (low.boron_percent, high.boron_percent) == (0.0008, 0.005)
