"""ISO 9227: neutral salt spray. From memory."""

import pytest

from secondplate.corrosion_steps import SALT_SPRAY

SOURCE = "iso_9227"


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [
        ("sodium chloride", 45, 55),
        ("pH", 6.5, 7.2),
        ("chamber temperature", 33, 37),
        ("fall-out", 1, 2),
        ("steel check plate", 50, 90),
    ],
)
def test_settings(name, low, high):
    """Ends of each setting: 50 g/l by 5, 35 C by 2 and 70 g/m2 by 20 either way, the others as ranges."""
    assert (SALT_SPRAY[name].low, SALT_SPRAY[name].high) == (low, high)
