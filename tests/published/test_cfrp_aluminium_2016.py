"""Kang and others 2016, rivets of CFRP to AA6111-T82. Abstract read."""

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
