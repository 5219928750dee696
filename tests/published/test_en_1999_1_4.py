"""EN 1999-1-4:2007 Aluminium sheeting, clause 8.3.2.1. Read in a copy that lost the root sign."""

import pytest

from secondplate.eurocode9 import aluminium_rivet_n
from secondplate.fastener_bearing import ALUMINIUM_STANDARD, screw_bearing_n

SOURCE = "en_1999_1_4"


@pytest.mark.parametrize(
    ("thickness_mm", "supporting_mm", "strength_mpa", "force_n"),
    [
        (1.0, 1.0, 200, 1172.6),  # 2.5 f sqrt(t3 d), (8.9a)
        (2.0, 2.0, 200, 3300.0),  # 1.5 f t d is less than the root
        (1.0, 2.5, 200, 1650.0),  # 1.5 f t d, (8.9b)
        (1.0, 1.75, 200, 1411.3),  # half way in a straight line
        (1.0, 2.5, 320, 2145.0),  # more than 260 MPa is not taken into account
    ],
)
def test_bearing_of_a_5_5_mm_screw(thickness_mm, supporting_mm, strength_mpa, force_n):
    """Both formulas, the straight line between them and the limit of strength."""
    force = screw_bearing_n(
        thickness_mm,
        shank_diameter_mm=5.5,
        tensile_strength_mpa=strength_mpa,
        supporting_thickness_mm=supporting_mm,
        standard=ALUMINIUM_STANDARD,
    )
    assert force == pytest.approx(force_n, abs=0.06)  # one decimal


@pytest.mark.parametrize(("thickness_mm", "force_n"), [(1.5, 1529.5), (1.0, 832.5)])
def test_bearing_of_a_blind_rivet(thickness_mm, force_n):
    """2.5 f sqrt(t3 d)/1.25 for d 4.8 and 190 MPa, worked out; the root from memory."""
    force = screw_bearing_n(
        thickness_mm,
        shank_diameter_mm=4.8,
        tensile_strength_mpa=190,
        supporting_thickness_mm=thickness_mm,
        standard=ALUMINIUM_STANDARD,
        partial_factor=1.25,
    )
    assert force == pytest.approx(force_n, abs=0.06)  # one decimal


def test_aluminium_blind_rivet():
    """8.3.3, from memory with low confidence: 38 d^2 in shear and 47 d^2 in tension over 1.25."""
    assert aluminium_rivet_n(5.0) == pytest.approx(38 * 25 / 1.25, rel=1e-12)
    assert aluminium_rivet_n(5.0, in_shear=False) == pytest.approx(47 * 25 / 1.25, rel=1e-12)
