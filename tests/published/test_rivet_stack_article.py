"""Technical article of a maker of rivets on stacks. Read."""

import pytest

from secondplate.rivet import Sheet, Stack
from secondplate.rivet_rules import reasons_against, stack_findings

SOURCE = "rivet_stack_article"


@pytest.mark.parametrize(
    ("top", "second", "kept"), [(2.0, 1.0, False), (2.0, 1.1, True), (2.5, 1.2, False), (1, 2, True)]
)
def test_more_than_33_percent_at_the_bottom(top, second, kept):
    """The second sheet is more than 33 % of the whole (worked as a third)."""
    stack = Stack(top=Sheet(thickness_mm=top), second=Sheet(thickness_mm=second))
    (finding,) = [finding for finding in stack_findings(stack) if finding.rule == "one third"]
    assert finding.source == SOURCE
    assert finding.kept is kept
    assert (reasons_against(stack) == ()) is kept


@pytest.mark.parametrize(("below", "kept"), [(8.5, False), (20.0, True)])
def test_ductile_sheet_at_the_bottom(below, kept):
    """The more ductile sheet lies at the bottom."""
    stack = Stack(
        top=Sheet(thickness_mm=1.0, elongation_percent=12.0),
        second=Sheet(thickness_mm=2.0, elongation_percent=below),
    )
    (finding,) = [finding for finding in stack_findings(stack) if finding.rule == "ductile at the bottom"]
    assert finding.kept is kept
