"""Rules side by side: what is shared, what is not, and how it is said."""

import pytest

from secondplate.advice import RuledBand, place, side_by_side
from secondplate.bands import Band


def _rule(name, low, high):
    """A rule for the time of a weld that exists only here."""
    return RuledBand(
        quantity="time",
        band=Band(low=low, best=(low + high) / 2, high=high, basis="invented for this test"),
        rule=name,
        source="practice",
        locator="none",
        basis="common practice",
    )


def test_overlap_of_three_is_the_part_that_all_share():
    """The agreed band runs from the highest low to the lowest high, its best in the middle."""
    rules = (_rule("a", 10, 30), _rule("b", 20, 40), _rule("c", 15, 28))
    found = side_by_side("time", "ms", rules, reason="-")
    assert (found.agreed.low, found.agreed.best, found.agreed.high) == (20, 24, 28)
    assert "3 rules" in found.agreed.basis
    assert found.contradiction == ""


def test_bands_that_touch_agree_on_one_value():
    """Ends count as inside, so bands that touch share their common end."""
    found = side_by_side("time", "ms", (_rule("a", 10, 20), _rule("b", 20, 30)), reason="-")
    assert found.agreed.low == found.agreed.high == 20


def test_two_that_meet_and_a_third_apart_agree_on_nothing():
    """One rule apart is enough; the sentence names the two that lie farthest apart, and the reason."""
    rules = (_rule("old chart", 10, 20), _rule("new chart", 15, 25), _rule("shop", 30, 40))
    found = side_by_side("time", "ms", rules, reason="the shop is in no hurry")
    assert found.agreed is None
    assert found.contradiction == (
        "Old chart gives 10 to 20 ms but shop gives 30 to 40 ms: the shop is in no hurry."
    )


def test_single_values_are_written_once():
    """A rule of one value is written without a range."""
    found = side_by_side("time", "ms", (_rule("a", 10, 10), _rule("b", 1234, 1234)), reason="so")
    assert found.contradiction == "A gives 10 ms but b gives 1234 ms: so."


def test_one_rule_keeps_its_best():
    """A rule alone is agreed as it stands, and its basis says that it is alone."""
    rule = _rule("a", 10, 30)
    found = side_by_side("time", "ms", (rule,), reason="-")
    assert (found.agreed.low, found.agreed.best, found.agreed.high) == (10, 20, 30)
    assert found.agreed.basis == "one rule only: a"


def test_no_rule_makes_no_value():
    """Without rules nothing is agreed and the sentence sends to the chart."""
    found = side_by_side("lift", "mm", (), reason="-")
    assert found.agreed is None
    assert found.contradiction == (
        "No rule for the lift of this stud is held here; take the equipment's chart."
    )


@pytest.mark.parametrize(
    ("value", "where"), [(9.9, "below"), (10, "inside"), (30, "inside"), (30.1, "above")]
)
def test_place(value, where):
    """The ends of a band count as inside."""
    assert place(_rule("a", 10, 30).band, value) == where
