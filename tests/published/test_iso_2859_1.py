"""ISO 2859-1, sampling by attributes, general level II, single normal plans; seen in a government table."""

import pytest

from secondplate.trials import plans_for_lot

SOURCE = "iso_2859_1"
# smallest and largest lot, letter, pulls, accepted failures by quality limit in percent
ROWS = (
    (2, 8, "A", 2, {6.5: 0}),
    (9, 15, "B", 3, {4.0: 0}),
    (16, 25, "C", 5, {2.5: 0}),
    (26, 50, "D", 8, {1.5: 0, 6.5: 1, 10: 2}),
    (51, 90, "E", 13, {1.0: 0, 4.0: 1, 6.5: 2}),
    (91, 150, "F", 20, {0.65: 0, 2.5: 1, 4.0: 2}),
    (151, 280, "G", 32, {1.5: 1, 2.5: 2, 4.0: 3}),
)


@pytest.mark.parametrize(("smallest", "largest", "letter", "pulls", "accepted"), ROWS)
def test_plans_of_a_lot(smallest, largest, letter, pulls, accepted):
    """Letter, pulls and accepted failures at both ends of each range of lots."""
    for lot in (smallest, largest):
        plans = plans_for_lot(lot)
        assert {plan.quality_limit: plan.accepted_failures for plan in plans} == accepted
        assert {(plan.letter, plan.pulls) for plan in plans} == {(letter, pulls)}
