"""Encyclopaedia page with a table of n and K of alloys. Read; one row does not fit its sheet."""

import pytest

from secondplate.sheet_alloys import sheet_band
from secondplate.sheet_hardening import strength_at_necking_mpa

SOURCE = "hardening_table_page"


def test_6061_fits_its_specified_strength():
    """6061-T6 with n 0.05 and K 410 MPa has 336 MPa: above the 290 MPa of the standard, 8 % above typical."""
    strength = strength_at_necking_mpa(strength_coefficient_mpa=410, hardening_exponent=0.05)
    band = sheet_band("6061-T6", "tensile strength")
    assert strength > band.low
    assert strength == pytest.approx(band.best, rel=0.09)  # two printed figures of n


def test_5052_row_contradicts_its_sheet():
    """5052-O with n 0.13 and K 210 MPa would have 141 MPa; a mill prints 195 MPa with n 0.26."""
    strength = strength_at_necking_mpa(strength_coefficient_mpa=210, hardening_exponent=0.13)
    assert strength == pytest.approx(141, abs=1)
    assert strength < 0.8 * sheet_band("5052-O", "tensile strength").best
