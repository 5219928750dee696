"""Riveted, bonded and hybrid joints after 25 days of salt spray, 2021. Abstract read."""

from secondplate.joint_facts import joint_fact

SOURCE = "salt_spray_2021"


def test_adhesive_suffers_most():
    """Peak load falls by 11.2 % riveted, 26.3 % bonded, 14.4 % hybrid."""
    changes = [joint_fact(f"salt_spray_{kind}").number for kind in ("riveted", "hybrid", "bonded")]
    assert changes == [-11.2, -14.4, -26.3]


def test_riveted_joint_first_gains():
    """Until about 20 days corrosion products raise friction and strength."""
    fact = joint_fact("salt_spray_first_rise")
    assert (fact.number, fact.unit, fact.source) == (20, "days", SOURCE)
