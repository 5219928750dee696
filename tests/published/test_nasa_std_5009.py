"""NASA-STD-5009 Table 1: cracks that a test is held to find. From memory and not sure."""

import pytest

from secondplate.plate_cracks import detectable_length_mm

SOURCE = "nasa_std_5009"


@pytest.mark.parametrize(
    ("method", "place", "thickness_mm", "length_mm"),
    [
        ("penetrant", "open surface", 1.2, 5.08),
        ("penetrant", "open surface", 2.0, 6.36),
        ("penetrant", "edge or hole", 1.5, 3.81),
        ("eddy current", "open surface", 1.2, 2.54),
        ("eddy current", "edge or hole", 1.5, 2.54),
    ],
)
def test_whole_length(method, place, thickness_mm, length_mm):
    """Half lengths 2.54, 3.18 and 1.27 mm are doubled inside a surface; 3.81 and 2.54 mm stand at an edge."""
    found = detectable_length_mm(thickness_mm=thickness_mm, method=method, place=place)
    assert found.high == pytest.approx(length_mm, rel=1e-12)  # twice a number of the table
