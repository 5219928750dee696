"""ISO 15975 Closed end blind rivets, Al/AlA. Title seen, loads from memory with low confidence."""

import pytest

from secondplate.fasteners import blind_rivet

SOURCE = "iso_15975"
LOADS_N = [
    (3.2, 460, 540),
    (4.0, 720, 760),
    (4.8, 1000, 1400),
]


@pytest.mark.parametrize(("diameter_mm", "shear_n", "tension_n"), LOADS_N)
def test_least_loads(diameter_mm, shear_n, tension_n):
    """Least load in shear and in tension by diameter."""
    rivet = blind_rivet("ISO 15975", diameter_mm)
    assert (rivet.fastener_shear_n, rivet.fastener_tension_n) == (shear_n, tension_n)
