"""Open check script after EN 1999: 6082-T6 extruded, seen. Two other packages print other factors."""

import pytest

from secondplate.softening_haz import haz_factors

SOURCE = "haz_check_code"


def test_6082_extruded_up_to_5_mm():
    """250 and 290 MPa fall to 125 and 185 MPa, factors 0.50 and 0.64."""
    found = haz_factors("6082-T6", product="extruded", thickness_mm=5)
    assert (found.proof_stress_mpa, found.tensile_strength_mpa) == (250, 290)
    assert (found.zone_proof_stress_mpa, found.zone_tensile_strength_mpa) == (125, 185)
    assert found.proof_stress_share == pytest.approx(0.50, abs=0.005)  # two decimals
    assert found.tensile_strength_share == pytest.approx(0.64, abs=0.005)  # two decimals
