"""EN 1999-1-4:2007 Aluminium sheeting, clause 8.3.2.1. Read in a copy that lost the root sign."""

import pytest

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
