"""Riveted multi-layer joints in different specimens. Abstract read."""

from secondplate.joint_facts import joint_fact

SOURCE = "specimen_configuration"


def test_bending_decides_the_mode():
    """With secondary bending the interlock fails, without it the sheet."""
    fact = joint_fact("secondary_bending")
    assert fact.source == SOURCE
    assert "interlock fails" in fact.value
