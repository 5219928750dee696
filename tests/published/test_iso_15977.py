"""ISO 15977 Open end blind rivets, AlA/St, classes L and H. Loads and holes from memory."""

import pytest

from secondplate.fasteners import blind_rivet, mandrel_break_n

SOURCE = "iso_15977"
SIZES_MM = (2.4, 3.0, 3.2, 4.0, 4.8, 5.0, 6.0, 6.4)
SHEAR_L_N = (250, 400, 500, 850, 1200, 1400, 2100, 2200)
TENSION_L_N = (350, 550, 700, 1200, 1700, 2000, 3000, 3150)
SHEAR_H_N = (350, 550, 750, 1250, 1850, 2150, 3200, 3400)
TENSION_H_N = (550, 850, 1100, 1800, 2600, 3100, 4600, 4850)
MANDREL_N = (2000, 3000, 3500, 5000, 6500, 6500, 9000, 11000)


@pytest.mark.parametrize(
    ("class_name", "shear_n", "tension_n"), [("L", SHEAR_L_N, TENSION_L_N), ("H", SHEAR_H_N, TENSION_H_N)]
)
def test_least_loads(class_name, shear_n, tension_n):
    """From memory: least shear and tension by diameter and class."""
    rivets = [blind_rivet(f"ISO 15977 {class_name}", size) for size in SIZES_MM]
    assert tuple(rivet.fastener_shear_n for rivet in rivets) == shear_n
    assert tuple(rivet.fastener_tension_n for rivet in rivets) == tension_n


def test_mandrel_break():
    """From memory with medium confidence: greatest load at which the mandrel breaks."""
    assert tuple(mandrel_break_n(size) for size in SIZES_MM) == MANDREL_N


@pytest.mark.parametrize(
    ("diameter_mm", "least_mm", "most_mm"),
    [
        (3.0, 3.1, 3.2),
        (3.2, 3.3, 3.4),
        (4.0, 4.1, 4.2),
        (4.8, 4.9, 5.0),
        (5.0, 5.1, 5.2),
        (6.0, 6.1, 6.2),
        (6.4, 6.5, 6.6),
    ],
)
def test_holes(diameter_mm, least_mm, most_mm):
    """From memory: hole 0.1 to 0.2 mm over the rivet."""
    rivet = blind_rivet("ISO 15977 L", diameter_mm)
    assert (rivet.hole_least_mm, rivet.hole_most_mm) == (least_mm, most_mm)
