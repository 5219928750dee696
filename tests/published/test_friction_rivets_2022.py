"""Metal trapped in the bore of friction rivets, AA7075-T6, 2022. Abstract read."""

from secondplate.joint_facts import joint_fact

SOURCE = "friction_rivets_2022"


def test_bore_metal_counts_only_where_bonded():
    """14.3 % more in cross tension, with the condition beside it."""
    fact = joint_fact("bore_metal_gain")
    assert (fact.number, fact.source) == (14.3, SOURCE)
    assert "only where it is bonded" in fact.text
