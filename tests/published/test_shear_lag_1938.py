"""Shear lag in lap joints (1938). Closed form from memory; the values agree with a boundary value solver."""

import pytest

from secondplate.bonding import bond_peak_mpa, bond_shear_mpa, transfer_rate_per_mm

SOURCE = "shear_lag_1938"
# Modulus of aluminium times thickness.
AL = 70000


@pytest.mark.parametrize(
    ("overlap", "thicknesses", "shear_modulus", "layer", "rate", "left", "right", "centre"),
    [
        (25, (2, 2), 1000, 0.2, 0.26726, 13.3966, 13.3966, 0.9476),
        (50, (2, 2), 1000, 0.2, 0.26726, 13.3631, 13.3631, 0.0335),
        (12.5, (1.5, 1.5), 800, 0.3, 0.22537, 12.7015, 12.7015, 5.8604),
        (20, (1.5, 2.5), 700, 0.3, 0.18856, 12.1234, 7.6215, 2.9286),
    ],
)
def test_shear_along_the_overlap(overlap, thicknesses, shear_modulus, layer, rate, left, right, centre):
    """100 N/mm: rate of transfer, shear at both ends and in the middle (computed two ways)."""
    stiffnesses = tuple(AL * thickness for thickness in thicknesses)
    bond = {"adhesive_modulus_mpa": shear_modulus, "adhesive_mm": layer}
    assert transfer_rate_per_mm(stiffnesses, **bond) == pytest.approx(rate, abs=6e-6)  # five decimals
    lap = {"line_load_n_mm": 100, "overlap_mm": overlap, "stiffnesses_n_mm": stiffnesses, **bond}
    found = [bond_shear_mpa(place, **lap) for place in (-overlap / 2, overlap / 2, 0)]
    assert found == pytest.approx([left, right, centre], abs=6e-5)  # four decimals


def test_twice_the_overlap_hardly_lowers_the_peak():
    """Seen as a factor of 1.003: 25 mm against 50 mm peak 1.0025 times as high while the mean halves."""
    lap = {
        "line_load_n_mm": 100,
        "stiffnesses_n_mm": (2 * AL, 2 * AL),
        "adhesive_modulus_mpa": 1000,
        "adhesive_mm": 0.2,
    }
    ratio = bond_peak_mpa(overlap_mm=25, **lap) / bond_peak_mpa(overlap_mm=50, **lap)
    assert ratio == pytest.approx(1.0025, abs=6e-5)  # four decimals
