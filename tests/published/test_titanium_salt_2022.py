"""Salt spray on TA1-Al5052 riveted joints, 2022. Abstract read."""

from secondplate.joint_facts import JOINT_ROWS, joint_fact

SOURCE = "titanium_salt_2022"


def test_fresh_joints_break_the_lower_sheet():
    """Without corrosion the lower aluminium sheet breaks; after long corrosion the rivet fails."""
    (row,) = (row for row in JOINT_ROWS if row.source == SOURCE)
    assert row.failure_mode == "second sheet breaks"
    assert "rivet fails" in joint_fact("salt_spray_titanium").text
