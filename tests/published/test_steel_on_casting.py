"""Self-piercing riveting of high-strength steel on cast aluminium. Abstract read."""

import pytest

from secondplate.rivet import Sheet, Stack
from secondplate.rivet_rules import rivet_length_advice_mm

SOURCE = "steel_on_casting"


def test_longer_than_the_stack_by_half_to_one_and_a_half():
    """Rivets 0.5 to 1.5 mm longer than the stack; this disagrees with stack + 0.75 D by more than 2 mm."""
    stack = Stack(
        top=Sheet(thickness_mm=1.4, family="steel"), second=Sheet(thickness_mm=2.6, family="cast aluminium")
    )
    advice = rivet_length_advice_mm(stack, shank_diameter_mm=5.0)
    (rule,) = [rule for rule in advice.rules if rule.source == SOURCE]
    assert (rule.band.low, rule.band.high) == pytest.approx((4.5, 5.5), abs=1e-12)  # exact arithmetic
    (other,) = [rule for rule in advice.rules if rule.source == "rivet_features_page"]
    assert other.band.low - rule.band.high > 2
