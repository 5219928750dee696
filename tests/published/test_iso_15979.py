"""ISO 15979 Open end blind rivets, St/St. Title seen, loads from memory."""

import pytest

from secondplate.fasteners import blind_rivet

SOURCE = "iso_15979"
LOADS_N = [
    (2.4, 650, 700),
    (3.0, 950, 1100),
    (3.2, 1100, 1200),
    (4.0, 1700, 2200),
    (4.8, 2900, 3100),
    (5.0, 3100, 4000),
    (6.0, 4300, 4800),
    (6.4, 4900, 5700),
]


@pytest.mark.parametrize(("diameter_mm", "shear_n", "tension_n"), LOADS_N)
def test_least_loads(diameter_mm, shear_n, tension_n):
    """Least load in shear and in tension by diameter."""
    rivet = blind_rivet("ISO 15979", diameter_mm)
    assert (rivet.fastener_shear_n, rivet.fastener_tension_n) == (shear_n, tension_n)
