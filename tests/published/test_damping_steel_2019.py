"""AA5052 and vibration-damping steel, 2019, dies and both orders. Abstract read; modes only."""

from secondplate.joint_facts import JOINT_ROWS, joint_fact

SOURCE = "damping_steel_2019"


def test_tail_comes_out_in_both_orders():
    """Pull-out of the rivet in both orders; aluminium on top is the stronger one."""
    rows = [row for row in JOINT_ROWS if row.source == SOURCE]
    assert [row.failure_mode for row in rows] == ["tail pull-out"] * 2
    assert "stronger" in rows[0].detail
    assert rows[0].top_sheet == "AA5052-H32"
    assert joint_fact("flat_die").source == SOURCE
