"""MIL-HDBK-5, Table 3.6.2.0: 6061-T6 sheet 0.25 to 6.3 mm, A basis. From memory."""

import pytest

from secondplate.eurocode9 import handbook_bearing_ratio
from secondplate.tables import values

SOURCE = "mil_hdbk_5"
MPA_IN_KSI = 6.894757  # exact to seven figures


@pytest.mark.parametrize(
    ("name", "mpa"),
    [
        ("handbook tensile strength", 289.6),
        ("handbook bearing at 1.5", 461.9),
        ("handbook bearing at 2", 606.7),
    ],
)
def test_values_in_megapascal(name, mpa):
    """42, 67 and 88 ksi, turned into MPa (computed)."""
    assert values("thin_sheet")[name] * MPA_IN_KSI == pytest.approx(mpa, abs=0.06)  # one decimal


def test_bearing_ratios():
    """F_bru/F_tu is 1.595 at e/D 1.5 and 2.095 at 2.0 (computed)."""
    assert handbook_bearing_ratio(1.5) == pytest.approx(1.595, abs=6e-4)  # three decimals
    assert handbook_bearing_ratio(2.0) == pytest.approx(2.095, abs=6e-4)  # three decimals
