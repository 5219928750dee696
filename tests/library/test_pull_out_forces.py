"""Six forces against drawing a rivet out: limits, directions and ranges."""

import numpy as np
import pytest

from secondplate import pull_out_forces as forces
from secondplate.rivet import Rivet

RIVET = Rivet(rivet_length_mm=5.0)
INTERLOCKS = np.linspace(0.0, 1.0, 21)


def test_without_interlock_only_collar_and_leg_hold():
    """No interlock: nothing to crush, no hole to open; the sheared collar is the shank's own wall."""
    assert forces.collar_crush_n(RIVET, interlock_mm=0, tensile_strength_mpa=215, crush_factor=2) == 0
    assert forces.hole_opening_n(RIVET, interlock_mm=0, proof_stress_mpa=100, friction=0.2) == 0
    shear = forces.collar_shear_n(RIVET, interlock_mm=0, penetration_mm=1, tensile_strength_mpa=100)
    assert shear == pytest.approx(np.pi * 5.3 * 57.7, rel=1e-12)


def test_more_interlock_holds_more_but_bends_the_leg_easier():
    """Collar forces and the hole rise with interlock, the leg's lever grows and its force falls."""
    plate = {"interlock_mm": INTERLOCKS, "tensile_strength_mpa": 215}
    assert np.all(np.diff(forces.collar_shear_n(RIVET, penetration_mm=1.6, **plate)) > 0)
    assert np.all(np.diff(forces.collar_crush_n(RIVET, crush_factor=2, **plate)) > 0)
    opening = forces.hole_opening_n(RIVET, interlock_mm=INTERLOCKS, proof_stress_mpa=100, friction=0.2)
    assert np.all(np.diff(opening) > 0)
    assert np.all(np.diff(forces.leg_closure_n(RIVET, interlock_mm=INTERLOCKS)) < 0)


def test_forces_are_in_proportion_to_strength():
    """Twice the strength is twice the force."""
    for strength in (100.0, 300.0):
        plate = {"interlock_mm": 0.4, "tensile_strength_mpa": np.array([strength, 2 * strength])}
        shear = forces.collar_shear_n(RIVET, penetration_mm=1.6, **plate)
        crush = forces.collar_crush_n(RIVET, crush_factor=2, **plate)
        assert shear[1] / shear[0] == pytest.approx(2, rel=1e-12)
        assert crush[1] / crush[0] == pytest.approx(2, rel=1e-12)


def test_leg_of_a_harder_rivet_and_of_a_thicker_wall():
    """The leg's force goes with hardness, and with wall squared over wall where there is no interlock."""
    harder = Rivet(rivet_length_mm=5.0, hardness_hv=2 * 280.0)
    softer = Rivet(rivet_length_mm=5.0, hardness_hv=280.0)
    ratio = forces.leg_closure_n(harder, interlock_mm=0.4) / forces.leg_closure_n(softer, interlock_mm=0.4)
    assert ratio == pytest.approx(2, rel=1e-12)
    thick = Rivet(rivet_length_mm=5.0, bore_diameter_mm=1.3)  # wall of 2 instead of 1 mm
    ratio = forces.leg_closure_n(thick, interlock_mm=0) / forces.leg_closure_n(RIVET, interlock_mm=0)
    assert ratio == pytest.approx(2, rel=1e-12)


def test_no_friction_leaves_the_bare_opening_of_the_hole():
    """Without friction the opening is 1.15 proof stress times the ring, with it more."""
    bare = forces.hole_opening_n(RIVET, interlock_mm=0.4, proof_stress_mpa=100, friction=0)
    assert bare == pytest.approx(115 * np.pi / 4 * (6.1**2 - 5.3**2), rel=1e-12)
    rough = forces.hole_opening_n(RIVET, interlock_mm=0.4, proof_stress_mpa=100, friction=0.2)
    assert rough / bare == pytest.approx(1 + 0.2 / np.tan(np.pi / 9), rel=1e-12)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: forces.collar_shear_n(
                RIVET, interlock_mm=-0.1, penetration_mm=1, tensile_strength_mpa=200
            ),
            "interlock must be between 0 mm and 2 mm, got -0.1 mm",
        ),
        (
            lambda: forces.collar_shear_n(
                RIVET, interlock_mm=0.1, penetration_mm=0, tensile_strength_mpa=200
            ),
            "penetration must be between 0.1 mm and 6 mm, got 0 mm",
        ),
        (
            lambda: forces.collar_crush_n(RIVET, interlock_mm=0.1, tensile_strength_mpa=5, crush_factor=2),
            "tensile strength must be between 20 MPa and 2000 MPa, got 5 MPa",
        ),
        (
            lambda: forces.collar_crush_n(RIVET, interlock_mm=0.1, tensile_strength_mpa=200, crush_factor=9),
            "crush factor must be between 1 and 3.5, got 9",
        ),
        (
            lambda: forces.leg_closure_n(RIVET, interlock_mm=np.array([0.1, np.nan])),
            "interlock must be finite, got nan mm",
        ),
        (
            lambda: forces.shank_friction_n(
                RIVET, contact_length_mm=3, contact_pressure_mpa=50, friction=1.2
            ),
            "friction must be between 0 and 1, got 1.2",
        ),
        (
            lambda: forces.hole_opening_n(RIVET, interlock_mm=0.1, proof_stress_mpa="soft", friction=0.1),
            "proof stress must be a number in MPa, got 'soft'",
        ),
    ],
)
def test_ranges_are_kept(call, sentence):
    """What lies outside a range is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
