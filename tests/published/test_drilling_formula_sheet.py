"""Formula sheets for drilling: torque and thrust from specific cutting force, and a known wrong torque."""

import math

import pytest

from secondplate.drilling_kienzle import (
    cutting_power_w,
    kienzle_thrust_n,
    kienzle_torque_n_m,
    removal_rate_mm3_min,
)

SOURCE = "drilling_formula_sheet"
# No exponent: the specific cutting force is that of any chip.
CUT = {"specific_cutting_force_mpa": 2000, "force_exponent": 0, "drill_diameter_mm": 8, "feed_mm_rev": 0.1}


def test_torque_by_the_balance_of_energy():
    """2000 N/mm2, 0.1 mm/rev and 8 mm are 1.6 N m, at 800 rpm 134.041 W; 3.2 by 4000 is twice too much."""
    torque = kienzle_torque_n_m(**CUT)
    assert torque == pytest.approx(1.6, rel=1e-12)  # exact
    power = cutting_power_w(torque_n_m=torque, spindle_speed_rpm=800)
    assert power == pytest.approx(134.041, rel=1e-5)  # six digits
    assert 2000 * 0.1 * 8**2 / 4000 == pytest.approx(3.2, rel=1e-12) == pytest.approx(2 * torque, rel=1e-12)


def test_power_is_force_times_volume():
    """The power is the specific cutting force times the metal removed, whatever the sizes."""
    rate = removal_rate_mm3_min(drill_diameter_mm=8, feed_mm_rev=0.1, spindle_speed_rpm=800)
    power = cutting_power_w(torque_n_m=kienzle_torque_n_m(**CUT), spindle_speed_rpm=800)
    assert power == pytest.approx(2000 * rate / 60e3, rel=1e-12)  # same energy


def test_thrust_has_both_formulas_as_its_ends():
    """0.7 D/2 f kc as seen is the high end; half of it with the sine of the lip, from memory, the low."""
    thrust = kienzle_thrust_n(**CUT, point_angle_deg=118)
    assert thrust.high == pytest.approx(0.7 * 4 * 0.1 * 2000, rel=1e-12)  # exact
    assert thrust.low == pytest.approx(0.5 * 4 * 0.1 * 2000 * math.sin(math.radians(59)), rel=1e-12)
