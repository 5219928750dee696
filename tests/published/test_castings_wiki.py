"""Public page on die castings and riveting into them. Read; its own source is not shown."""

from secondplate.joint_facts import joint_fact

SOURCE = "castings_wiki"


def test_more_silicon_more_cracks():
    """3.0 cracks a joint at 7 % silicon, 5.3 at 10 %."""
    little, much = joint_fact("cracks_7_percent_silicon"), joint_fact("cracks_10_percent_silicon")
    assert (little.number, much.number) == (3.0, 5.3)
    assert little.source == much.source == SOURCE
