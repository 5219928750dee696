"""Page of a gas supplier on the volume of gas in a cylinder. Worked example read."""

import pytest

from secondplate.gas import cylinder_gas_l
from secondplate.units import mpa_from_ksi

SOURCE = "gas_volume_page"


def test_worked_example():
    """29.5 L at 2000 psi hold 4013 L at 14.7 psi; here the gas is counted at 1 bar, 1.4 % more."""
    bar = 10 * mpa_from_ksi(2.0)
    atmosphere_bar = 10 * mpa_from_ksi(0.0147)
    gas = cylinder_gas_l(water_capacity_l=29.5, pressure_bar=bar)
    assert gas / atmosphere_bar == pytest.approx(4013, rel=3e-4)  # printed with cut decimals
