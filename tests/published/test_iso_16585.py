"""ISO 16585 Closed end blind rivets, A2/SSt. Tension seen, its diameters inferred; shear from memory."""

import pytest

from secondplate.fasteners import blind_rivet

SOURCE = "iso_16585"
LOADS_N = [
    (3.2, 2000, 2200),
    (4.0, 3000, 3500),
    (4.8, 4000, 4400),
    (6.4, 6000, 8000),
]


@pytest.mark.parametrize(("diameter_mm", "shear_n", "tension_n"), LOADS_N)
def test_least_loads(diameter_mm, shear_n, tension_n):
    """Least load in shear and in tension by diameter."""
    rivet = blind_rivet("ISO 16585", diameter_mm)
    assert (rivet.fastener_shear_n, rivet.fastener_tension_n) == (shear_n, tension_n)
