"""Both ways to a drill's thrust and torque, side by side."""

import numpy as np
import pytest

from secondplate.drilling_factors import SPLIT_POINT, handbook_thrust_n, handbook_torque_n_m
from secondplate.drilling_forces import WORK_MATERIALS, drill_forces
from secondplate.drilling_kienzle import CUTTING_GROUPS, kienzle_thrust_n, kienzle_torque_n_m

DRILL = {"drill_diameter_mm": 8.0, "feed_mm_rev": 0.1}


@pytest.mark.parametrize("name", list(WORK_MATERIALS))
def test_both_are_what_their_own_modules_give(name):
    """Neither way is bent towards the other: each is the value of its own formula."""
    material = WORK_MATERIALS[name]
    point = {"chisel_edge": SPLIT_POINT, "wear_factor": 1.3}
    both = drill_forces(work_material=name, **DRILL, point_angle_deg=140, **point)
    handbook = {"work_material_factor": material.work_material_factor} | point
    assert both.handbook_thrust_n == handbook_thrust_n(**handbook, **DRILL)
    assert both.handbook_torque_n_m == handbook_torque_n_m(**handbook, **DRILL)
    groups = [CUTTING_GROUPS[group].constants() for group in material.cutting_groups]
    torques = [kienzle_torque_n_m(**group, **DRILL, point_angle_deg=140) for group in groups]
    thrusts = [kienzle_thrust_n(**group, **DRILL, point_angle_deg=140) for group in groups]
    assert (both.kienzle_torque_n_m.low, both.kienzle_torque_n_m.high) == (min(torques), max(torques))
    assert both.kienzle_thrust_n.low == min(thrust.low for thrust in thrusts)
    assert both.kienzle_thrust_n.high == max(thrust.high for thrust in thrusts)
    middle = (thrusts[0].best + thrusts[-1].best) / 2
    assert both.kienzle_thrust_n.best == pytest.approx(middle, rel=1e-12)  # same arithmetic


def test_both_are_within_a_factor_of_two():
    """The two ways differ, but are not worlds apart, for every metal and feed of a hand."""
    feeds = np.linspace(0.03, 0.2, 10)
    for name in WORK_MATERIALS:
        both = drill_forces(work_material=name, drill_diameter_mm=6.5, feed_mm_rev=feeds)
        ratio = both.handbook_torque_n_m / both.kienzle_torque_n_m.best
        assert np.all((ratio > 0.5) & (ratio < 2))
        assert np.all(ratio != 1)


def test_rivet_stands_between_two_groups():
    """No group lies between 350 HB and 55 HRC: a band of more than a factor of two, the handbook inside."""
    both = drill_forces(work_material="steel 400 HB", **DRILL)
    torque = both.kienzle_torque_n_m
    assert torque.high / torque.low > 2
    assert torque.contains(both.handbook_torque_n_m)
    assert torque.basis == "group 9 to group 38"


def test_rivet_takes_several_times_what_aluminium_takes():
    """A hardened rivet takes five to eight times the thrust and torque of aluminium by the handbook."""
    rivet, aluminium = (drill_forces(work_material=name, **DRILL) for name in ("steel 400 HB", "aluminium"))
    for quantity in ("handbook_thrust_n", "handbook_torque_n_m"):
        assert 4 < getattr(rivet, quantity) / getattr(aluminium, quantity) < 8


def test_every_factor_from_memory_says_so():
    """The data tell a printed factor from a remembered one."""
    assert {name: material.basis for name, material in WORK_MATERIALS.items()} == {
        "steel 200 HB": "handbook",
        "steel 300 HB": "from memory",
        "steel 400 HB": "from memory",
        "aluminium": "handbook",
        "austenitic stainless": "from memory",
    }


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"work_material": "cheese"}, "work material must be one of steel 200 HB, .*, got 'cheese'"),
        ({"feed_mm_rev": -0.05}, "feed must be between 0.01 mm/rev and 0.4 mm/rev, got -0.05 mm/rev"),
        ({"point_angle_deg": 20}, "point angle must be between 60 deg and 180 deg, got 20 deg"),
    ],
)
def test_what_cannot_be_is_said(given, said):
    """Unknown metals and impossible cuts are refused in one sentence."""
    with pytest.raises(ValueError, match=said):
        drill_forces(**{"work_material": "aluminium"} | DRILL | given)
