"""Distributor's sheet of swaged lock bolts. Seen second-hand; meaning of the aluminium columns inferred."""

import pytest

from secondplate.fasteners import lock_bolt

SOURCE = "lock_bolt_sheet"


@pytest.mark.parametrize(
    ("metal", "diameter_mm", "hole_mm", "shear_n", "tension_n"),
    [
        ("steel", 4.8, 5.2, 7600, 6200),
        ("steel", 6.4, 6.8, 9700, 11300),
        ("steel", 7.9, 8.5, 13300, 17300),
        ("steel", 9.5, 10.0, 18600, 25000),
        ("aluminium", 4.8, 5.2, 3300, 4000),
        ("aluminium", 6.4, 6.8, 5300, 7200),
        ("aluminium", 7.9, 8.5, 9800, 11100),
        ("aluminium", 9.5, 10.0, 13300, 17800),
    ],
)
def test_rows_as_listed(metal, diameter_mm, hole_mm, shear_n, tension_n):
    """Hole 0.1 mm either way, least shear and least tension."""
    pin = lock_bolt(metal, diameter_mm)
    assert (pin.fastener_shear_n, pin.fastener_tension_n) == (shear_n, tension_n)
    assert (pin.hole_least_mm, pin.hole_most_mm) == pytest.approx((hole_mm - 0.1, hole_mm + 0.1), abs=1e-9)
