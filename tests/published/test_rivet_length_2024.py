"""Riveted and bonded DC04 and AA5052, rivets of 4, 5 and 6 mm. Abstract read."""

from secondplate.joint_facts import joint_fact, joint_facts, length_series
from secondplate.joint_strength import HEAD_SIDE, TAIL_SIDE, cross_tension
from secondplate.rivet import Rivet, Sheet, Stack

SOURCE = "rivet_length_2024"


def test_series():
    """1, 2 and 3 mm longer than a stack of 3.0 mm: no hold, tail pull-out, head side."""
    rows = length_series()
    assert [(row.rivet_length_mm, row.added_length_mm) for row in rows] == [(4, 1), (5, 2), (6, 3)]
    modes = [row.failure_mode for row in rows]
    assert modes == ["no hold", "tail pull-out", "head side"]
    assert [fact.value for fact in joint_facts("rivet length")] == modes
    assert {row.source for row in rows} == {SOURCE}


def test_model_goes_the_same_way_with_interlock():
    """A longer rivet has more interlock: the model passes from the tail side to the head side in that order.

    The paper gives no interlock, so only the order is checked; steel of 1.0 mm and 300 MPa on aluminium.
    """
    plates = Stack(
        top=Sheet(thickness_mm=1.0, family="steel", tensile_strength_mpa=300),
        second=Sheet(thickness_mm=2.0, tensile_strength_mpa=195),
    )
    weakest = []
    for interlock_mm, penetration_mm in ((0.02, 0.4), (0.2, 1.2), (0.8, 2.0)):
        forces = cross_tension(
            Rivet(rivet_length_mm=5.0), plates, interlock_mm=interlock_mm, penetration_mm=penetration_mm
        ).forces_n
        weakest.append(min(forces, key=lambda mode: forces[mode].best))
    assert weakest == [TAIL_SIDE, TAIL_SIDE, HEAD_SIDE]


def test_thin_adhesive_is_best():
    """0.1 mm is the best of 0.1, 0.2 and 0.3 mm: more adhesive, less interlock."""
    assert joint_fact("adhesive_best_layer").number == 0.1
    assert joint_fact("adhesive_interlock").source == SOURCE
