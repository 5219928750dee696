"""Table of joining methods in a paper on body joints. Flat text read; its columns by inference."""

import pytest

from secondplate.rivet import Sheet, Stack
from secondplate.rivet_rules import flange_findings, stack_findings
from secondplate.tables import values

SOURCE = "joining_methods_table"


@pytest.mark.parametrize(
    ("name", "printed"),
    [
        ("whole stack", 6.5),
        ("aluminium thickness", 0.8),
        ("aluminium elongation", 8),
        ("steel strength", 1600),
        ("steel edge distance", 7.5),
        ("steel flange width", 15),
        ("aluminium edge distance", 12.5),
        ("aluminium flange width", 20),
        ("rivet spacing", 22),
    ],
)
def test_limits_as_printed(name, printed):
    """Whole <= 6.5 mm, aluminium >= 0.8 mm, > 8 %, steel < 1600 MPa, E/C > 7.5/15 and 12.5/20 mm, 22 mm."""
    assert values("stack_rules")[name] == printed


def test_limits_are_applied_with_their_side():
    """What stands on a limit with <= or >= is kept, what must lie beyond it is not."""
    edge = Stack(
        top=Sheet(thickness_mm=0.8, elongation_percent=8.0),
        second=Sheet(thickness_mm=5.7, elongation_percent=9.0),
    )
    kept = {finding.rule: finding.kept for finding in stack_findings(edge)}
    assert kept["whole stack"]
    assert kept["aluminium thickness"]
    assert kept["aluminium elongation"] is False


@pytest.mark.parametrize(("family", "edge", "width"), [("steel", 7.5, 15.0), ("aluminium", 12.5, 20.0)])
def test_flange_must_be_wider_than_the_limits(family, edge, width):
    """Edge distance and width must lie above the limits, the spacing at or above 22 mm."""
    at = flange_findings(family=family, edge_distance_mm=edge, flange_width_mm=width, spacing_mm=22.0)
    beyond = flange_findings(
        family=family, edge_distance_mm=edge + 0.1, flange_width_mm=width + 0.1, spacing_mm=22.0
    )
    assert [finding.kept for finding in at] == [False, False, True]
    assert all(finding.kept for finding in beyond)
