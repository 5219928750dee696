"""ISO 15983 Open end blind rivets, A2/A2. From memory."""

import pytest

from secondplate.fasteners import blind_rivet

SOURCE = "iso_15983"
LOADS_N = [
    (3.0, 1800, 2200),
    (3.2, 1900, 2500),
    (4.0, 2700, 3500),
    (4.8, 4000, 5000),
    (5.0, 4700, 5800),
]


@pytest.mark.parametrize(("diameter_mm", "shear_n", "tension_n"), LOADS_N)
def test_least_loads(diameter_mm, shear_n, tension_n):
    """Least load in shear and in tension by diameter."""
    rivet = blind_rivet("ISO 15983", diameter_mm)
    assert (rivet.fastener_shear_n, rivet.fastener_tension_n) == (shear_n, tension_n)
