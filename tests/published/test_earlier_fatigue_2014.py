"""Li and others 2014, riveted joints after fatigue. Abstract read."""

from secondplate.joint_facts import joint_facts

SOURCE = "earlier_fatigue_2014"


def test_lap_gains_and_peel_loses():
    """Remaining strength is higher in lap shear and lower in T-peel."""
    values = [fact.value for fact in joint_facts("fatigue") if fact.source == SOURCE]
    assert values == ["remaining lap-shear strength higher", "remaining T-peel strength lower"]
