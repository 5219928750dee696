"""Chips and heat of drilling: volumes, masses, energies."""

import numpy as np
import pytest

from secondplate.drilling_chips import chips_left, cutting_heat_j, swarf_volume_mm3
from secondplate.drilling_forces import drill_forces
from secondplate.drilling_kienzle import cutting_power_w
from secondplate.rivet import Rivet

SWARF = {"swarf_volume_mm3": 76.0, "missed_share": 0.01, "chip_volume_mm3": 0.02}


def test_tube_of_a_rivet_becomes_its_chips():
    """A drill as wide as the shank turns the tube into chips of the tube's section times its length."""
    rivet = Rivet(rivet_length_mm=5.0)
    volume = swarf_volume_mm3(
        drill_diameter_mm=rivet.shank_diameter_mm,
        drilled_length_mm=4.0,
        bore_diameter_mm=rivet.bore_diameter_mm,
    )
    assert volume == pytest.approx(4.0 * rivet.tube_area_mm2, rel=1e-12)  # same geometry


def test_mass_and_number_of_chips():
    """One per cent of 76 mm3 at 7830 kg/m3 is 5.95 mg in 38 chips of 0.02 mm3."""
    left = chips_left(**SWARF)
    assert left.chips_mg == pytest.approx(0.76 * 7.83, rel=1e-12)  # 7.83 mg/mm3
    assert left.chips == pytest.approx(38, rel=1e-12)
    assert chips_left(**SWARF | {"missed_share": np.array([0, 1.0])}).chips.tolist() == [0, 3800]


def test_heat_is_power_times_time():
    """Torque times angle is the power of the cut times how long it lasts."""
    torque = drill_forces(work_material="steel 400 HB", drill_diameter_mm=6.5, feed_mm_rev=0.05)
    heat = cutting_heat_j(torque_n_m=torque.handbook_torque_n_m, drilled_depth_mm=5, feed_mm_rev=0.05)
    power = cutting_power_w(torque_n_m=torque.handbook_torque_n_m, spindle_speed_rpm=300)
    assert heat == pytest.approx(power * 60 * 5 / (0.05 * 300), rel=1e-12)  # same energy


@pytest.mark.parametrize(
    ("call", "given", "said"),
    [
        (
            swarf_volume_mm3,
            {"drill_diameter_mm": 5, "drilled_length_mm": 3, "bore_diameter_mm": 6},
            "bore diameter must be at most the drill diameter of 5 mm, got 6 mm",
        ),
        (chips_left, SWARF | {"missed_share": 1.5}, "missed share must be between 0 and 1, got 1.5"),
        (chips_left, SWARF | {"chip_volume_mm3": 0}, "volume of a chip must be above 0 mm3, got 0 mm3"),
        (
            cutting_heat_j,
            {"torque_n_m": 5, "drilled_depth_mm": 2, "feed_mm_rev": -0.1},
            "feed must be above 0 mm/rev, got -0.1 mm/rev",
        ),
    ],
)
def test_what_cannot_be_is_said(call, given, said):
    """Impossible chips are refused in one sentence."""
    with pytest.raises(ValueError, match=said):
        call(**given)
