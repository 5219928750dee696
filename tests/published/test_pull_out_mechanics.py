"""Mechanics of the collar round a spread tail. Worked out by hand, never tried on a joint: arithmetic."""

import pytest

from secondplate.hardness import tube_strength_n
from secondplate.joint_strength import head_shear_n
from secondplate.pull_out_forces import (
    collar_crush_n,
    collar_shear_n,
    hole_opening_n,
    leg_closure_n,
    shank_friction_n,
)
from secondplate.rivet import Rivet, Sheet, piercing_force_n, rivet_axial_capacity_n
from secondplate.tail_pull_out import first_peak_n, tail_pull_out

SOURCE = "pull_out_mechanics"
RIVET = Rivet(rivet_length_mm=5.0, shank_diameter_mm=5.3, bore_diameter_mm=3.34, hardness_hv=410)
PENETRATION_MM = 1.6
# proof stress and tensile strength in MPa, interlock in mm, then in kN: F1, F2 (c 2.8), F3, F6 (mu 0.2),
# first peak without friction at c 2.8 and at c 1.4
TABLE = {
    "5754-O, 0.2": (100, 215, 0.2, 3.55, 2.08, 8.89, 0.62, 2.1, 1.0),
    "5754-O, 0.4": (100, 215, 0.4, 3.80, 4.31, 7.60, 1.28, 3.8, 2.2),
    "5754-O, 0.6": (100, 215, 0.6, 4.05, 6.69, 6.64, 1.98, 4.1, 3.3),
    "6016 baked, 0.2": (220, 280, 0.2, 4.63, 2.71, 8.89, 1.35, 2.7, 1.4),
    "6016 baked, 0.4": (220, 280, 0.4, 4.95, 5.62, 7.60, 2.81, 5.0, 2.8),
    "6082-T6, 0.4": (270, 320, 0.4, 5.66, 6.42, 7.60, 3.45, 5.7, 3.2),
    "AlSi10MnMg-T7, 0.4": (120, 200, 0.4, 3.54, 4.01, 7.60, 1.53, 3.5, 2.0),
    "HX340LAD, 0.4": (360, 450, 0.4, 7.96, 9.03, 7.60, 4.59, 7.6, 4.5),
}
EACH_ROW = pytest.mark.parametrize("row", TABLE.values(), ids=TABLE)
TWO_DECIMALS_N = 6.0  # last printed digit of 0.01 kN, and the third figure of 0.577


@EACH_ROW
def test_collar_shear(row):
    """Force 1 of each row."""
    _, strength, interlock, shear, *_ = row
    force = collar_shear_n(
        RIVET, interlock_mm=interlock, penetration_mm=PENETRATION_MM, tensile_strength_mpa=strength
    )
    assert force == pytest.approx(1e3 * shear, abs=TWO_DECIMALS_N)


@EACH_ROW
def test_collar_crush(row):
    """Force 2 of each row at c = 2.8, and half of it at 1.4."""
    _, strength, interlock, _, crush, *_ = row
    for factor, share in ((2.8, 1.0), (1.4, 0.5)):
        force = collar_crush_n(
            RIVET, interlock_mm=interlock, tensile_strength_mpa=strength, crush_factor=factor
        )
        assert force == pytest.approx(share * 1e3 * crush, abs=TWO_DECIMALS_N)


@EACH_ROW
def test_leg_closure(row):
    """Force 3 of each row."""
    force = leg_closure_n(RIVET, interlock_mm=row[2])
    assert force == pytest.approx(1e3 * row[5], abs=TWO_DECIMALS_N)


@EACH_ROW
def test_hole_opening(row):
    """Force 6 of each row, top plate of the same alloy, friction 0.2."""
    force = hole_opening_n(RIVET, interlock_mm=row[2], proof_stress_mpa=row[0], friction=0.2)
    assert force == pytest.approx(1e3 * row[6], abs=TWO_DECIMALS_N)


@EACH_ROW
def test_first_peak(row):
    """First peak of each row by both crush factors, friction left out."""
    joint = {"interlock_mm": row[2], "penetration_mm": PENETRATION_MM, "tensile_strength_mpa": row[1]}
    for factor, peak in ((2.8, row[7]), (1.4, row[8])):
        force = first_peak_n(RIVET, crush_factor=factor, **joint)
        assert force == pytest.approx(1e3 * peak, abs=60)  # one decimal of a kN


@EACH_ROW
def test_band_holds_both_peaks_and_the_opening(row):
    """The band of the whole pull holds both printed first peaks and the printed opening of the hole."""
    pull = tail_pull_out(
        RIVET,
        interlock_mm=row[2],
        penetration_mm=PENETRATION_MM,
        second_tensile_strength_mpa=row[1],
        top_proof_stress_mpa=row[0],
        contact_pressure_mpa=0,
    )
    for peak in (row[7], row[8]):
        assert pull.first_peak_n.low - 60 <= 1e3 * peak <= pull.first_peak_n.high + 60  # one decimal of a kN
    assert pull.second_peak_n.contains(1e3 * row[6])


def test_tube_section_and_snap():
    """A tube of 5.3 over 3.34 mm has 13.30 mm2 and snaps at 17.4 kN with 410 HV."""
    assert RIVET.tube_area_mm2 == pytest.approx(13.30, abs=6e-3)
    assert rivet_axial_capacity_n(RIVET) == pytest.approx(17.4e3, abs=60)


@pytest.mark.parametrize(
    ("hardness_hv", "strength_mpa", "tension_kn", "shear_kn"),
    [(280, 896, 11.9, 6.9), (410, 1312, 17.4, 10.1), (480, 1536, 20.4, 11.8), (555, 1776, 23.6, 13.6)],
)
def test_tube_by_hardness(hardness_hv, strength_mpa, tension_kn, shear_kn):
    """Strength, tension and shear of the tube by hardness, one decimal of a kN."""
    rivet = Rivet(rivet_length_mm=5.0, bore_diameter_mm=3.34, hardness_hv=hardness_hv)
    tension = tube_strength_n(rivet).best
    assert tension / rivet.tube_area_mm2 == pytest.approx(strength_mpa, rel=1e-12)
    assert tension == pytest.approx(1e3 * tension_kn, abs=60)
    assert tube_strength_n(rivet, in_shear=True).best == pytest.approx(1e3 * shear_kn, abs=60)


def test_friction_of_3_mm_of_shank():
    """50 MPa, 0.2 and 3 mm give 0.50 kN."""
    force = shank_friction_n(RIVET, contact_length_mm=3, contact_pressure_mpa=50, friction=0.2)
    assert force == pytest.approx(500, abs=5)  # two figures


def test_friction_band():
    """From memory: friction 0.1 to 0.2, so 3 mm at 50 MPa hold none, 375 N, 500 N."""
    joint = {"interlock_mm": 0.4, "penetration_mm": PENETRATION_MM, "second_tensile_strength_mpa": 215}
    friction = tail_pull_out(RIVET, top_proof_stress_mpa=100, **joint).friction_n
    assert friction.low == 0
    assert (friction.best, friction.high) == pytest.approx((375, 500), abs=1)  # whole newtons


def test_head_shear_and_piercing():
    """A 7.75 mm head shears 2.0 mm of 215 MPa at 6.04 kN; a 5.3 mm shank pierces it at 4.13 kN."""
    plate = Sheet(thickness_mm=2.0, tensile_strength_mpa=215)
    assert head_shear_n(RIVET, plate) == pytest.approx(6040, abs=TWO_DECIMALS_N)
    pierced = piercing_force_n(shank_diameter_mm=5.3, thickness_mm=2.0, tensile_strength_mpa=215)
    assert pierced == pytest.approx(4130, abs=TWO_DECIMALS_N)
