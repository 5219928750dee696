"""ISO 18265:2013 Conversion of hardness values, Table A.1. Rows read in reproductions; trend from memory."""

import pytest

from secondplate.hardness import (
    brinell_hardness_hbw,
    rockwell_hardness_hrc,
    steel_strength_band_mpa,
    table_strength_mpa,
)
from secondplate.rivet import steel_strength_mpa

SOURCE = "iso_18265"
# HV10, HBW, HRC, tensile strength in MPa
TABLE_A_1 = [
    (250, 238, 22.2, 800),
    (300, 285, 29.8, 965),
    (350, 333, 35.5, 1125),
    (400, 380, 40.8, 1290),
    (420, 399, 42.7, 1350),
    (440, 418, 44.5, 1420),
    (450, 428, 45.3, 1455),
    (460, 437, 46.1, 1485),
    (480, 456, 47.7, 1555),
    (500, 475, 49.1, 1630),
    (520, 494, 50.5, 1700),
    (540, 513, 51.7, 1775),
    (560, 532, 53.0, 1845),
]


@pytest.mark.parametrize(("hardness_hv", "hbw", "hrc", "strength_mpa"), TABLE_A_1)
def test_rows(hardness_hv, hbw, hrc, strength_mpa):
    """Each row comes back as printed."""
    assert brinell_hardness_hbw(hardness_hv) == hbw
    assert rockwell_hardness_hrc(hardness_hv) == hrc
    assert table_strength_mpa(hardness_hv) == strength_mpa


@pytest.mark.parametrize(("hardness_hv", "hbw", "hrc", "strength_mpa"), TABLE_A_1)
def test_rule_of_thumb_fits_the_table(hardness_hv, hbw, hrc, strength_mpa):
    """R_m = 3.2 HV is within 3 % of each row, its band holds the row; Brinell is 0.95 of Vickers."""
    assert steel_strength_mpa(hardness_hv) == pytest.approx(strength_mpa, rel=0.03)
    assert steel_strength_band_mpa(hardness_hv).contains(strength_mpa)
    assert hbw / hardness_hv == pytest.approx(0.95, abs=0.003)  # rounded to whole numbers
