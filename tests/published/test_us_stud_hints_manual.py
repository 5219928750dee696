"""Operating manual of a drawn-arc stud welder, page 21: hints. Read."""

import pytest

from secondplate.inspection import acceptance_facts
from secondplate.stud_weld import polarity, set_up

SOURCE = "us_stud_hints_manual"


def test_two_studs_each_shift():
    """Two studs are bent at the beginning of each shift or change of stud."""
    facts = [fact for fact in acceptance_facts("before production") if fact.source == SOURCE]
    assert [(fact.value, "30 deg" in fact.conditions) for fact in facts] == [(2, True)]


def test_negative_to_the_gun():
    """Negative polarity goes to the gun."""
    rules = polarity(stud_material="carbon steel", base="steel sheet").rules
    assert [rule.choice for rule in rules if rule.source == SOURCE] == ["stud negative"]


def test_stick_out():
    """3/16 to 1/4 in of the stud stands out beyond the ferrule."""
    found = set_up(
        stud_diameter_mm=12,
        stud_material="carbon steel",
        base="steel sheet",
        process="drawn arc with ferrule",
    )
    (rule,) = [rule for rule in found.protrusion_mm.rules if rule.source == SOURCE]
    # Stored to six digits.
    assert (rule.band.low, rule.band.high) == pytest.approx((25.4 * 3 / 16, 25.4 / 4), rel=1e-5)
