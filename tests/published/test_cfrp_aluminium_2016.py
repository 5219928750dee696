"""Kang and others 2016, rivets of CFRP to AA6111-T82. Abstract read."""

import pytest

from secondplate.fasteners import equal_strength_count
from secondplate.joint_facts import JOINT_ROWS, joint_fact

SOURCE = "cfrp_aluminium_2016"


def test_mean_strength_and_head_side():
    """Average of 3858 N in lap shear; the head comes out of the upper plastic sheet."""
    (row,) = (row for row in JOINT_ROWS if row.source == SOURCE)
    assert (row.lap_shear_n, row.statistic, row.failure_mode) == (3858, "mean", "head side")
    assert row.second_sheet == "AA6111-T82"


def test_fatigue_cracks_are_in_the_lower_sheet():
    """Under fatigue the crack runs along the width of the bottom aluminium sheet."""
    assert joint_fact("fatigue_second_plate").source == SOURCE


@pytest.mark.parametrize(
    ("old_n", "new_n", "old", "new"),
    [
        (3858, 2900, 1, 2),  # St/St 4.8
        (3858, 1850, 1, 3),  # AlA/St class H 4.8
        (3858, 1200, 1, 4),  # AlA/St class L 4.8
        (6000, 2900, 1, 3),
        (5500, 4000, 1, 2),  # A2/A2 4.8
        (3858, 2900, 4, 6),
    ],
)
def test_blind_rivets_for_one_of_these_rivets(old_n, new_n, old, new):
    """Equal-strength count (computed) from the average of this source and the loads of blind rivets."""
    assert equal_strength_count(old_strength_n=old_n, new_strength_n=new_n, old_fasteners=old) == new
