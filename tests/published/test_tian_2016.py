"""Tian and others 2016: Voce's law of AA6022-T4, seen in an open data repository."""

import pytest

from secondplate.plate_hardening import HARDENING_LAWS

SOURCE = "tian_2016"


def test_law_of_6022():
    """A 436, B 222, C 6.75: necks at 0.2034 with 309.9 MPa, begins at 214 MPa."""
    (law,) = HARDENING_LAWS["6022-T4"].values()
    assert law.necking_strain == pytest.approx(0.2034, abs=6e-5)  # four decimals
    assert law.tensile_strength_mpa == pytest.approx(309.9, abs=0.06)  # one decimal
    assert law.flow_stress_mpa(0.0) == pytest.approx(214, rel=1e-12)  # A less B
