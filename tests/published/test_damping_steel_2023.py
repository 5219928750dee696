"""Vibration-damping steel, 2023. Abstract read; greatest values."""

from secondplate.joint_facts import JOINT_ROWS

SOURCE = "damping_steel_2023"


def test_greatest_strengths():
    """6.2 kN with dual-phase steel, 4.0 kN under carbon-fibre plastic."""
    rows = [row for row in JOINT_ROWS if row.source == SOURCE]
    assert [(row.lap_shear_n, row.statistic) for row in rows] == [(6200, "greatest"), (4000, "greatest")]
