"""Heating times of the trade with a loss of about 5 %, from memory and unsure."""

import pytest

from secondplate.softening_exposure import exposure_index
from secondplate.softening_strength import over_ageing_share

SOURCE = "heating_limits_memory"


@pytest.mark.parametrize(
    ("temperature_f", "minutes"), [(450, 5), (425, 15), (400, 30), (375, 90), (350, 540)]
)
def test_loss_is_about_5_per_cent(temperature_f, minutes):
    """Every pair loses 4 to 7 % by the exposure index and the cube root of coarsening."""
    index = exposure_index([0, 60 * minutes], [(temperature_f - 32) / 1.8] * 2)
    assert over_ageing_share(index) == pytest.approx(0.95, abs=0.02)  # "about 5 %"
