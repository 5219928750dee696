"""Pull-out of the tail as bands: whole, in step with its forces, and vectorised."""

import numpy as np
import pytest

from secondplate import tail_pull_out as pull
from secondplate.rivet import Rivet

RIVET = Rivet(rivet_length_mm=5.0)
JOINT = {"interlock_mm": 0.4, "penetration_mm": 1.6}


def drawn(**changes):
    """Draw a usual rivet with changes to its joint."""
    usual = {"second_tensile_strength_mpa": 215, "top_proof_stress_mpa": 100}
    return pull.tail_pull_out(changes.pop("rivet", RIVET), **(JOINT | usual | changes))


def test_first_peak_is_the_hold_and_friction():
    """The first peak adds friction to the least of the four modes, end by end."""
    found = drawn()
    for end in ("low", "best", "high"):
        hold = min(getattr(band, end) for band in found.modes.forces_n.values())
        total = hold + getattr(found.friction_n, end)
        assert getattr(found.first_peak_n, end) == pytest.approx(total, rel=1e-12)


def test_second_peak_is_not_added():
    """A stronger top plate raises the second peak alone; the whole pull needs the larger of both."""
    soft, hard = drawn(), drawn(top_proof_stress_mpa=1500)
    assert hard.first_peak_n == soft.first_peak_n
    assert hard.second_peak_n.best == pytest.approx(15 * soft.second_peak_n.best, rel=1e-12)
    assert hard.peak_n.best == hard.second_peak_n.best
    assert soft.peak_n.best == soft.first_peak_n.best


def test_no_interlock_holds_by_friction_alone():
    """Without interlock the hold is nothing and the tail needs no opening."""
    found = drawn(interlock_mm=0.0)
    assert found.modes.strength_n.high == 0
    assert found.first_peak_n.high == found.friction_n.high
    assert found.second_peak_n.high == 0
    assert found.modes.margin == 1


def test_pressure_of_0_leaves_friction_out():
    """Friction can be left out, as the printed table does."""
    assert drawn(contact_pressure_mpa=0).friction_n.high == 0
    assert drawn().friction_n.low == 0


def test_peak_is_never_narrower_than_a_factor_of_2():
    """Nobody tried the mechanics on a joint: high over low is 2 at least, for all joints tried."""
    rng = np.random.default_rng(5)
    found = drawn(
        interlock_mm=rng.uniform(0.05, 1.0, 500),
        penetration_mm=rng.uniform(0.5, 3.0, 500),
        second_tensile_strength_mpa=rng.uniform(150, 350, 500),
    )
    peak = found.first_peak_n
    assert np.all(peak.high / peak.low >= 2 * (1 - 1e-9))


def test_in_aluminium_the_tube_is_never_the_first_to_give():
    """A usual rivet moves or tears aluminium; it does not snap."""
    interlocks = np.linspace(0.05, 0.8, 16)[:, None]
    for hardness_hv in (280.0, 410.0, 480.0, 555.0):
        found = drawn(
            rivet=Rivet(rivet_length_mm=5.0, hardness_hv=hardness_hv),
            interlock_mm=interlocks,
            second_tensile_strength_mpa=np.linspace(150, 340, 20)[None, :],
        )
        assert not found.modes.can_be_first["tube snaps"].any()


def test_leg_closes_before_the_tube_snaps():
    """Whatever the wall, hardness and interlock, the leg bends in at a lower best force than the tube breaks.

    The ratio is s D / (2 (f + s) (D - s)), below 1 for every wall s thinner than half of the shank D.
    """
    rivets = Rivet(
        rivet_length_mm=5.0,
        bore_diameter_mm=np.linspace(1.0, 5.2, 22)[:, None],
        hardness_hv=np.linspace(200.0, 650.0, 4)[None, :],
    )
    for interlock_mm in (0.0, 0.4, 1.0):
        hold = pull.tail_hold(rivets, interlock_mm=interlock_mm, penetration_mm=1.6, tensile_strength_mpa=450)
        assert np.all(hold.forces_n["leg closure"].best < hold.forces_n["tube snaps"].best)


def test_mode_of_a_small_interlock_in_soft_plate_is_decided():
    """A small interlock in a soft plate is crushed; a usual one is not decided between shear and crush."""
    hold = pull.tail_hold(RIVET, interlock_mm=0.15, penetration_mm=1.6, tensile_strength_mpa=200)
    assert hold.likely_mode == "collar crush"
    assert drawn().modes.likely_mode == "not decided"


def test_columns_equal_one_by_one():
    """A column of joints gives what each joint gives alone."""
    interlocks = np.array([0.1, 0.4, 0.7])
    column = drawn(interlock_mm=interlocks)
    for i, interlock in enumerate(interlocks):
        single = drawn(interlock_mm=interlock)
        assert column.first_peak_n.best[i] == pytest.approx(single.first_peak_n.best, rel=1e-12)
        assert column.second_peak_n.high[i] == pytest.approx(single.second_peak_n.high, rel=1e-12)
        assert column.modes.likely_mode[i] == single.modes.likely_mode


def test_one_set_of_constants_lies_inside_the_band():
    """The least force with the low and the high crush factor lies inside the band of the hold."""
    hold = pull.tail_hold(RIVET, **JOINT, tensile_strength_mpa=215).strength_n
    for factor in (1.4, 2.8):
        force = pull.first_peak_n(RIVET, **JOINT, tensile_strength_mpa=215, crush_factor=factor)
        assert hold.contains(force)
