"""Torque and thrust by specific cutting force: thin chips, energy, refusals."""

import numpy as np
import pytest

from secondplate.drilling_kienzle import (
    CUTTING_GROUPS,
    chip_thickness_mm,
    cutting_force_at_chip_mpa,
    cutting_power_w,
    kienzle_thrust_n,
    kienzle_torque_n_m,
    removal_rate_mm3_min,
)

STEEL = CUTTING_GROUPS["38"].constants()
CUT = STEEL | {"drill_diameter_mm": 6.5, "feed_mm_rev": 0.05}
FEEDS_MM_REV = np.linspace(0.01, 0.4, 50)


def test_thin_chips_are_dear():
    """The specific cutting force is the printed one at 1 mm, and falls as the chip gets thicker."""
    thickness = np.array([0.01, 0.05, 0.2, 1.0])
    force = cutting_force_at_chip_mpa(**STEEL, chip_thickness_mm=thickness)
    assert np.all(np.diff(force) < 0)
    assert force[-1] == STEEL["specific_cutting_force_mpa"]


def test_twice_the_feed_is_less_than_twice_the_torque():
    """Torque grows with the feed to the power 1 - mc."""
    gentle, firm = kienzle_torque_n_m(**CUT | {"feed_mm_rev": np.array([0.05, 0.1])})
    assert firm / gentle == pytest.approx(2 ** (1 - STEEL["force_exponent"]), rel=1e-12)  # exact


def test_energy_is_the_same_by_torque_and_by_volume():
    """Power by torque is specific cutting force times metal removed, for many cuts at once."""
    sizes = {"drill_diameter_mm": np.linspace(2, 20, 5)[:, None], "feed_mm_rev": FEEDS_MM_REV}
    power = cutting_power_w(torque_n_m=kienzle_torque_n_m(**STEEL, **sizes), spindle_speed_rpm=500)
    chip = chip_thickness_mm(feed_mm_rev=FEEDS_MM_REV)
    force = cutting_force_at_chip_mpa(**STEEL, chip_thickness_mm=chip)
    by_volume = force * removal_rate_mm3_min(**sizes, spindle_speed_rpm=500) / 60e3
    np.testing.assert_allclose(power, by_volume, rtol=1e-12)  # same energy


def test_thrust_is_a_band_and_a_flat_point_keeps_both_formulas_apart_by_their_factors_only():
    """At 180 degrees the sine is 1, so the ends are 0.5 and 0.7 of the same force."""
    thrust = kienzle_thrust_n(**CUT, point_angle_deg=180)
    assert (thrust.low / thrust.high, thrust.best / thrust.high) == pytest.approx((5 / 7, 6 / 7), rel=1e-12)
    assert np.all(np.diff(kienzle_thrust_n(**CUT | {"feed_mm_rev": FEEDS_MM_REV}).best) > 0)


def test_sharper_point_makes_thinner_chips():
    """The chip is half the feed under a flat point and thinner under a pointed one."""
    thickness = chip_thickness_mm(feed_mm_rev=0.1, point_angle_deg=np.array([90, 118, 140, 180]))
    assert np.all(np.diff(thickness) > 0)
    assert thickness[-1] == pytest.approx(0.05, rel=1e-12)  # exact


@pytest.mark.parametrize(
    ("call", "given", "said"),
    [
        (
            kienzle_torque_n_m,
            CUT | {"feed_mm_rev": -0.1},
            "feed must be between 0.01 mm/rev and 0.4 mm/rev, got -0.1",
        ),
        (
            kienzle_thrust_n,
            CUT | {"drill_diameter_mm": 0},
            "drill diameter must be between 1.5 mm and 25 mm, got 0",
        ),
        (
            kienzle_torque_n_m,
            CUT | {"point_angle_deg": 200},
            "point angle must be between 60 deg and 180 deg",
        ),
        (
            cutting_force_at_chip_mpa,
            STEEL | {"chip_thickness_mm": 0},
            "chip thickness must be above 0 mm, got 0 mm",
        ),
        (
            kienzle_torque_n_m,
            CUT | {"force_exponent": 0.9},
            "exponent of the cutting force must be between 0 and 0.5, got 0.9",
        ),
        (
            kienzle_torque_n_m,
            CUT | {"specific_cutting_force_mpa": -1},
            "specific cutting force must be above 0 MPa, got -1 MPa",
        ),
        (
            cutting_power_w,
            {"torque_n_m": -1, "spindle_speed_rpm": 300},
            "torque must be at least 0 N m, got -1 N m",
        ),
        (
            removal_rate_mm3_min,
            {"drill_diameter_mm": 8, "feed_mm_rev": 0, "spindle_speed_rpm": 300},
            "feed must be above 0 mm/rev, got 0 mm/rev",
        ),
    ],
)
def test_what_cannot_be_is_said(call, given, said):
    """Impossible cuts are refused in one sentence."""
    with pytest.raises(ValueError, match=said):
        call(**given)
