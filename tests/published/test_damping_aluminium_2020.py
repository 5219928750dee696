"""Kam, Jeong and Kim 2020, vibration-damping aluminium. Abstract read; greatest values of several dies."""

from secondplate.joint_facts import JOINT_ROWS

SOURCE = "damping_aluminium_2020"


def test_greatest_strengths():
    """3.28, 3.6 and 2.26 kN, each the best of flat, cone and nipple die."""
    rows = [row for row in JOINT_ROWS if row.source == SOURCE]
    assert [row.lap_shear_n for row in rows] == [3280, 3600, 2260]
    assert {row.statistic for row in rows} == {"greatest"}
