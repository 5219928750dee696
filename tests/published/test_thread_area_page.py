"""Engineering page on fasteners, areas after ASME B1.13M. Read; four figures."""

import pytest

from secondplate.studs import minor_diameter_mm, stress_area_mm2

SOURCE = "thread_area_page"


@pytest.mark.parametrize(
    ("diameter_mm", "pitch_mm", "area_mm2"),
    [
        (3, 0.5, 5.031),
        (4, 0.7, 8.779),
        (5, 0.8, 14.18),
        (6, 1.0, 20.12),
        (8, 1.25, 36.61),
        (8, 1.0, 39.17),
        (10, 1.5, 57.99),
        (12, 1.75, 84.27),
        (16, 2.0, 156.7),
    ],
)
def test_tensile_stress_areas(diameter_mm, pitch_mm, area_mm2):
    """Tensile stress areas of coarse threads and one fine thread."""
    # Four printed figures.
    assert stress_area_mm2(diameter_mm, pitch_mm=pitch_mm) == pytest.approx(area_mm2, rel=4e-4)


def test_minor_diameter_formula():
    """The page writes d3 = d - 1.226869 P."""
    assert minor_diameter_mm(6, pitch_mm=1) == pytest.approx(6 - 1.226869, abs=5e-5)  # ours has four decimals
