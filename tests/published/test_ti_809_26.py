"""TI 809-26 (US Army, 2000), page that quotes AWS D1.1 7.7.1 and 7.8. Read."""

from secondplate.inspection import NEW_TEST_AFTER, bend_test_angle_deg

SOURCE = "ti_809_26"


def test_bend_before_production():
    """7.7.1: look, then bend about 30 degrees."""
    rules = bend_test_angle_deg(purpose="before production").rules
    assert [rule.band.best for rule in rules if rule.source == SOURCE] == [30]


def test_bend_of_a_suspect_stud():
    """7.8: bend about 15 degrees away from the missing flash."""
    advice = bend_test_angle_deg(purpose="suspect stud")
    assert (advice.agreed.low, advice.agreed.high) == (15, 15)
    assert advice.rules[0].source == SOURCE


def test_changes_that_ask_for_a_new_test():
    """7.7.1: voltage, current, time, lift and plunge."""
    assert set(NEW_TEST_AFTER) == {"voltage", "current", "time", "lift", "plunge"}
