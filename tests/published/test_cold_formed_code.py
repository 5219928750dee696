"""Open structural analysis code, screws after EN 1993-1-3 Table 8.2. Its rules run once, results below."""

import pytest

from secondplate.fastener_bearing import bearing_coefficient, screw_bearing_n

SOURCE = "cold_formed_code"
PARTIAL_FACTOR = 1.25  # gammaM2 of that code


@pytest.mark.parametrize(
    ("strength_mpa", "diameter_mm", "thickness_mm", "supporting_mm", "alpha", "force_n"),
    [
        (420, 4.2, 0.5, 3.0, 1.1041, 779.1),  # its own example: thin sheet on thick, below 1 mm
        (420, 5.5, 1.0, 1.0, 1.3645, 2521.6),
        (420, 5.5, 1.0, 1.75, 1.7322, 3201.2),  # linear part
        (420, 5.5, 1.0, 3.0, 2.1, 3880.8),
        (360, 6.3, 2.0, 3.0, 1.9020, 6902.0),  # linear part
        (360, 4.8, 0.7, 1.2, 1.2220, 1182.5),
        (360, 6.3, 3.0, 3.0, 2.1, 11430.7),  # on the plateau
    ],
)
def test_bearing(strength_mpa, diameter_mm, thickness_mm, supporting_mm, alpha, force_n):
    """Alpha and force agree on every branch."""
    shared = {"shank_diameter_mm": diameter_mm, "supporting_thickness_mm": supporting_mm}
    assert bearing_coefficient(thickness_mm, **shared) == pytest.approx(alpha, abs=6e-5)  # four decimals
    force = screw_bearing_n(
        thickness_mm, tensile_strength_mpa=strength_mpa, partial_factor=PARTIAL_FACTOR, **shared
    )
    assert force == pytest.approx(force_n, abs=0.06)  # one decimal
