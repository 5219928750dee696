"""ISO 15973 Closed end blind rivets, AlA/St. From memory with medium confidence."""

import pytest

from secondplate.fasteners import blind_rivet

SOURCE = "iso_15973"
LOADS_N = [
    (3.2, 1100, 1450),
    (4.0, 1600, 2200),
    (4.8, 2200, 3100),
    (5.0, 2420, 3500),
    (6.4, 3600, 4900),
]


@pytest.mark.parametrize(("diameter_mm", "shear_n", "tension_n"), LOADS_N)
def test_least_loads(diameter_mm, shear_n, tension_n):
    """Least load in shear and in tension by diameter."""
    rivet = blind_rivet("ISO 15973", diameter_mm)
    assert (rivet.fastener_shear_n, rivet.fastener_tension_n) == (shear_n, tension_n)
