"""Aluminum Design Manual, J.3: bearing of bolts and rivets. From memory."""

import pytest

from secondplate.eurocode9 import edge_factor, end_factor, handbook_bearing_ratio, manual_bearing_n

SOURCE = "aluminium_manual"


@pytest.mark.parametrize(("ratio", "factor"), [(1.5, 1.5), (2.0, 2.0), (3.0, 2.0)])
def test_bearing_over_tensile_strength(ratio, factor):
    """R_n = d_e t F_tu, at most 2 D t F_tu, with the resistance factor 0.75."""
    found = manual_bearing_n(1.0, diameter_mm=5, tensile_strength_mpa=200, end_distance_mm=5 * ratio)
    assert found == pytest.approx(0.75 * factor * 5 * 200, rel=1e-12)


@pytest.mark.parametrize(
    ("ratio", "handbook", "manual", "european"), [(1.5, 1.595, 1.5, 1.25), (2.0, 2.095, 2.0, 1.667)]
)
def test_three_codes_side_by_side(ratio, handbook, manual, european):
    """Bearing over tensile strength by aerospace handbook, manual and Eurocode (computed)."""
    found = manual_bearing_n(1.0, diameter_mm=5, tensile_strength_mpa=200, end_distance_mm=5 * ratio)
    product = end_factor(ratio * 5, hole_diameter_mm=5) * edge_factor(10, hole_diameter_mm=5)
    expected = (handbook, manual, european)
    assert (handbook_bearing_ratio(ratio), found / 750, product) == pytest.approx(
        expected, abs=6e-4
    )  # 3 decimals


def test_least_edge():
    """J.3, from memory: no bearing is given below 1.5 D."""
    with pytest.raises(
        ValueError, match=r"end distance in diameters \(aluminium design manual\) must be at least 1.5"
    ):
        manual_bearing_n(1.0, diameter_mm=5, tensile_strength_mpa=200, end_distance_mm=7)
