"""ISO 15976 Closed end blind rivets, St/St. Shear from memory with low confidence; no tension is given."""

import pytest

from secondplate.fasteners import blind_rivet

SOURCE = "iso_15976"
LOADS_N = [
    (3.2, 1150, None),
    (4.0, 1700, None),
    (4.8, 2400, None),
    (6.4, 3600, None),
]


@pytest.mark.parametrize(("diameter_mm", "shear_n", "tension_n"), LOADS_N)
def test_least_loads(diameter_mm, shear_n, tension_n):
    """Least load in shear and in tension by diameter."""
    rivet = blind_rivet("ISO 15976", diameter_mm)
    assert (rivet.fastener_shear_n, rivet.fastener_tension_n) == (shear_n, tension_n)
