"""University seminar notes on joints: a worked lap joint. Seen; recomputed."""

import pytest

from secondplate.bonding import bond_peak_mpa, limit_overlap_mm, transfer_rate_per_mm
from secondplate.fasteners import pin_joint_areas_mm2

SOURCE = "pin_joint_notes"
BOND = {"adhesive_modulus_mpa": 800, "adhesive_mm": 0.1}
PLATES = (140000, 140000)


def test_worked_lap_joint():
    """Al 2 mm, L 30, b 25, F 6 kN: rho 10.14, limit overlap 14.8, mean 8.0 and peak 40.6 MPa."""
    assert transfer_rate_per_mm(PLATES, **BOND) * 30 == pytest.approx(10.14, abs=6e-3)  # two decimals
    assert limit_overlap_mm(PLATES, **BOND) == pytest.approx(14.8, abs=0.06)  # one decimal
    peak = bond_peak_mpa(line_load_n_mm=6000 / 25, overlap_mm=30, stiffnesses_n_mm=PLATES, **BOND)
    assert peak == pytest.approx(40.57, abs=6e-3)  # 40.6 as printed, 40.57 recomputed


def test_short_form_of_the_notes_is_wrong():
    """The printed short form gives 28.7; the right one, F/b sqrt(G/(2 E t t_a)), is sqrt(2) times that."""
    printed = 240 / 2 * (800 / (140000 * 0.1)) ** 0.5
    right = 240 * (800 / (2 * 140000 * 0.1)) ** 0.5
    assert printed == pytest.approx(28.7, abs=0.06)  # one decimal
    peak = bond_peak_mpa(line_load_n_mm=240, overlap_mm=30, stiffnesses_n_mm=PLATES, **BOND)
    assert peak == pytest.approx(right, rel=1e-4)  # coth of 5 is 1.0001


@pytest.mark.parametrize(
    ("mode", "strength_mpa", "force_n"),
    [("bearing", 600, 19200), ("net tension", 500, 64000), ("shear-out", 110, 21120), ("cleavage", 50, 8000)],
)
def test_four_failure_modes_of_a_pin(mode, strength_mpa, force_n):
    """Worked composite plate, d 8, t 4, e 24, w 40; strengths taken back from the printed forces."""
    areas = pin_joint_areas_mm2(diameter_mm=8, thickness_mm=4, end_distance_mm=24, width_mm=40)
    assert areas[mode] * strength_mpa == pytest.approx(force_n, rel=1e-12)


def test_pin_too_near_the_end():
    """A hole that reaches over the end or the sides is refused."""
    with pytest.raises(ValueError, match="plate left before the hole must be above 0 mm, got -1 mm"):
        pin_joint_areas_mm2(diameter_mm=8, thickness_mm=4, end_distance_mm=3, width_mm=40)
