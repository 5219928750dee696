"""ASTM E140-12b Standard hardness conversion tables, Table 1. Rows read in an open-source table."""

import pytest

from secondplate.hardness import brinell_hardness_hbw, vickers_from_rockwell_hv

SOURCE = "astm_e140"
# HRC, HV, HBW
TABLE_1 = [(25, 266, 253), (30, 302, 286), (35, 345, 327), (40, 392, 371), (45, 446, 421), (55, 595, 560)]


@pytest.mark.parametrize(("hrc", "vickers", "hbw"), TABLE_1)
def test_formula_from_rockwell_fits_the_table(hrc, vickers, hbw):
    """The formula from Rockwell C is within 1 % of each row."""
    assert vickers_from_rockwell_hv(hrc) == pytest.approx(vickers, rel=0.01)


@pytest.mark.parametrize(("hrc", "vickers", "hbw"), TABLE_1[:5])
def test_two_tables_give_the_same_brinell(hrc, vickers, hbw):
    """The other standard's Brinell is within 1 % of this one's at equal Vickers, where both reach."""
    assert brinell_hardness_hbw(vickers) == pytest.approx(hbw, rel=0.01)
