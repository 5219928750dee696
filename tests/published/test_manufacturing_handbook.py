"""Handbook of manufacturing: Hollomon's constants, bending, drilling by specific energy. From memory."""

import numpy as np
import pytest

from secondplate.drilling_kienzle import cutting_power_w, kienzle_torque_n_m, removal_rate_mm3_min
from secondplate.plate_dome import bending_strain, least_bend_ratio
from secondplate.plate_hardening import HARDENING_LAWS

SOURCE = "manufacturing_handbook"


@pytest.mark.parametrize(
    ("sheet", "strength_mpa"),
    [("6061-O", 121.6), ("6061-T6", 335.8), ("5052-O", 136.1), ("1100-O", 106.8), ("2024-T4", 438.6)],
)
def test_strength_by_the_power_law(sheet, strength_mpa):
    """Table 2.3 from memory; strengths computed apart from its constants."""
    (law,) = HARDENING_LAWS[sheet].values()
    assert law.tensile_strength_mpa == pytest.approx(strength_mpa, abs=0.06)  # one decimal


def test_bending_over_a_radius():
    """Strain of the skin by radius over thickness, and its logarithm, computed apart."""
    ratios = np.array([0.5, 1, 1.5, 2.5, 3.5, 5])
    found = bending_strain(bend_radius_mm=ratios, sheet_mm=1)
    assert found == pytest.approx([0.5, 0.3333, 0.25, 0.1667, 0.125, 0.0909], abs=5e-5)  # four decimals
    logarithms = [0.4055, 0.2877, 0.2231, 0.1542, 0.1178, 0.0870]
    assert np.log1p(found) == pytest.approx(logarithms, abs=6e-5)  # four decimals


def test_least_bend_from_the_tensile_test():
    """R/t = 50/r - 1, from memory: 20 % give 1.5, half the area gives a sharp bend."""
    assert least_bend_ratio(np.array([20, 50, 60])).tolist() == [1.5, 0, 0]


def test_drilling_in_magnesium():
    """10 mm, 0.2 mm/rev, 800 rpm at 0.5 W s/mm3: 12570 mm3/min, 105 W and 1.25 N m; recomputed."""
    rate = removal_rate_mm3_min(drill_diameter_mm=10, feed_mm_rev=0.2, spindle_speed_rpm=800)
    assert rate == pytest.approx(12_570, rel=5e-4)  # four digits
    # A specific energy of 0.5 W s/mm3 is a specific cutting force of 500 MPa at any chip.
    torque = kienzle_torque_n_m(
        specific_cutting_force_mpa=500, force_exponent=0, drill_diameter_mm=10, feed_mm_rev=0.2
    )
    assert torque == pytest.approx(1.25, rel=1e-12)  # exact
    power = cutting_power_w(torque_n_m=torque, spindle_speed_rpm=800)
    assert power == pytest.approx(105, rel=5e-3)  # three digits
    assert power == pytest.approx(0.5 * rate / 60, rel=1e-12)  # same energy
