"""Joints in cross tension and lap shear: sides in step, verdicts honest, vectors equal to singles."""

import numpy as np
import pytest

from secondplate import joint_strength as joints
from secondplate.hardness import tube_strength_n
from secondplate.rivet import Rivet, Sheet, Stack

RIVET = Rivet(rivet_length_mm=5.0)
HOLD = {"interlock_mm": 0.4, "penetration_mm": 1.6}


def stack(top_mm=2.0, second_mm=2.0, **second):
    """Stack two aluminium sheets."""
    return Stack(top=Sheet(thickness_mm=top_mm), second=Sheet(thickness_mm=second_mm, **second))


def test_thin_top_plate_moves_the_failure_to_the_head_side():
    """Under a thin top plate the head side is first, under a thick one with little interlock the tail."""
    thin = joints.cross_tension(RIVET, stack(top_mm=0.8), interlock_mm=0.6, penetration_mm=2.5)
    assert thin.likely_mode == joints.HEAD_SIDE
    thick = joints.cross_tension(RIVET, stack(top_mm=3.0), interlock_mm=0.2, penetration_mm=1.6)
    assert thick.likely_mode == joints.TAIL_SIDE
    assert joints.cross_tension(RIVET, stack(), **HOLD).likely_mode == "not decided"


def test_rivet_is_never_the_weak_part_in_aluminium():
    """Neither in tension nor in shear can the usual rivet be the first between 2 mm sheets."""
    tension = joints.cross_tension(RIVET, stack(), **HOLD)
    shear = joints.lap_shear(RIVET, stack())
    assert not tension.can_be_first[joints.RIVET]
    assert not shear.can_be_first[joints.RIVET]


def test_weak_rivet_is_a_mode_of_its_own():
    """A thin soft tube in strong steel breaks; that is the rivet's force and not the tail's."""
    weak = Rivet(rivet_length_mm=6.0, bore_diameter_mm=5.0, hardness_hv=200)
    steel = Sheet(thickness_mm=2.5, family="steel", tensile_strength_mpa=1200)
    plates = Stack(top=steel, second=steel)
    tension = joints.cross_tension(weak, plates, interlock_mm=0.05, penetration_mm=2.0).forces_n
    shear = joints.lap_shear(weak, plates).forces_n
    assert tension[joints.RIVET] == tube_strength_n(weak)
    assert shear[joints.RIVET] == tube_strength_n(weak, in_shear=True)


def test_tail_side_leaves_the_tube_out():
    """The tail side is collar and leg; the tube is the rivet's own mode and not counted twice."""
    tail = joints.cross_tension(RIVET, stack(), **HOLD).forces_n[joints.TAIL_SIDE]
    assert tail.basis == "least of collar shear, collar crush, leg closure"


def test_thick_plate_behind_a_thin_one_helps_it():
    """A thin plate bears more where the other is thick; a thinner one behind it counts as equal."""
    plate, thick, thin = (Sheet(thickness_mm=thickness) for thickness in (1.0, 2.5, 0.6))
    equal = joints.plate_bearing_n(RIVET, plate, plate).best
    assert joints.plate_bearing_n(RIVET, plate, thick).best > 1.2 * equal
    assert joints.plate_bearing_n(RIVET, plate, thin).best == equal


def test_more_interlock_never_weakens_the_tail_side_in_aluminium():
    """The tail side rises with interlock until the collar shears; the head side does not change."""
    modes = joints.cross_tension(RIVET, stack(), interlock_mm=np.linspace(0.05, 0.6, 12), penetration_mm=1.6)
    tail = modes.forces_n[joints.TAIL_SIDE]
    assert np.all(np.diff(tail.best) > 0)
    head = modes.forces_n[joints.HEAD_SIDE]
    assert np.ndim(head.best) == 0


def test_likeliest_plate_in_shear_is_the_thinner_one():
    """A thin plate on a thick one bears less, on either side of the joint."""
    assert joints.lap_shear(RIVET, stack(1.0, 3.0)).likely_mode == joints.TOP_BEARING
    assert joints.lap_shear(RIVET, stack(3.0, 1.0)).likely_mode == joints.SECOND_BEARING
    assert joints.lap_shear(RIVET, stack()).likely_mode == "not decided"


def test_steel_leaves_the_aluminium_form_out():
    """A steel sheet is not measured by the aluminium standard, so its least estimate is higher."""
    same = {"thickness_mm": 1.0, "tensile_strength_mpa": 250.0}
    steel, aluminium = Sheet(family="steel", **same), Sheet(**same)
    assert (
        joints.plate_bearing_n(RIVET, steel, steel).low
        > joints.plate_bearing_n(RIVET, aluminium, aluminium).low
    )


def test_polymer_is_refused_in_bearing():
    """The forms are for metals."""
    polymer = Sheet(thickness_mm=2.0, family="polymer", tensile_strength_mpa=40)
    with pytest.raises(ValueError, match="sheet family must be a metal for bearing, got 'polymer'"):
        joints.lap_shear(RIVET, Stack(top=polymer, second=Sheet(thickness_mm=2.0)))


def test_columns_equal_one_by_one():
    """A column of joints gives what each gives alone."""
    tops = np.array([0.8, 1.5, 3.0])
    tension = joints.cross_tension(RIVET, stack(tops), interlock_mm=0.3, penetration_mm=1.6)
    shear = joints.lap_shear(RIVET, stack(tops, 2.0))
    for i, top_mm in enumerate(tops):
        one = joints.cross_tension(RIVET, stack(top_mm), interlock_mm=0.3, penetration_mm=1.6)
        assert tension.likely_mode[i] == one.likely_mode
        assert tension.strength_n.best[i] == pytest.approx(one.strength_n.best, rel=1e-12)
        single = joints.lap_shear(RIVET, stack(top_mm, 2.0))
        assert shear.strength_n.high[i] == pytest.approx(single.strength_n.high, rel=1e-12)


def test_head_band_is_its_three_estimates():
    """Low, best and high of the head side are the two standards' pull-through and the perimeter shear."""
    band = joints.head_pull_through_n(RIVET, Sheet(thickness_mm=2.0))
    assert band.best / band.low == pytest.approx(1.5, rel=1e-12)
    assert band.high / band.low == pytest.approx(0.577 * np.pi, rel=1e-12)
