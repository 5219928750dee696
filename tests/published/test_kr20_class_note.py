"""Ten learners, ten items: difficulty, correlations and KR-20 of a class note that prints every answer.

The formula is kuder_richardson_1937; the size of the groups is kelley_1939.
"""

import numpy as np
import pytest

from grading.item_statistics import (
    difficulties,
    group_size,
    item_rest_correlations,
    item_total_correlations,
    upper_lower_differences,
)
from grading.reliability import cronbach_alpha, kr20

SOURCE = "kr20_class_note"

ANSWERS = np.array(
    [
        list(map(int, row))
        for row in (
            "1111110110",
            "1011011101",
            "1111011001",
            "0010001000",
            "0000010010",
            "1110111111",
            "1101110111",
            "1111111101",
            "0101111101",
            "1101101110",
        )
    ]
)


def test_difficulty_and_spread():
    """Shares right, sum of products 2.18 and variance of the totals 5.84, exact as printed."""
    shares = difficulties(ANSWERS, np.ones(10))
    assert shares == pytest.approx([0.7, 0.7, 0.6, 0.7, 0.6, 0.8, 0.7, 0.7, 0.5, 0.6], abs=1e-12)
    assert (shares * (1 - shares)).sum() == pytest.approx(2.18, abs=1e-12)
    assert ANSWERS.sum(axis=1).var() == pytest.approx(5.84, abs=1e-12)


def test_reliability():
    """10/9 (1 - 2.18/5.84) = 0.6963; alpha is the same; the mixed variances would give 0.7378."""
    assert kr20(ANSWERS) == pytest.approx(10 / 9 * (1 - 2.18 / 5.84), abs=1e-12)
    assert kr20(ANSWERS) == pytest.approx(0.6963, abs=5e-5)
    assert cronbach_alpha(ANSWERS) == pytest.approx(kr20(ANSWERS), abs=1e-12)
    assert 10 / 9 * (1 - 2.18 / ANSWERS.sum(axis=1).var(ddof=1)) == pytest.approx(0.7378, abs=5e-5)


def test_correlations():
    """Item with total and with the rest, computed from the printed answers elsewhere; four places."""
    total = [0.7946, 0.7946, 0.2027, 0.6140, 0.7095, 0.4345, 0.1625, 0.7946, 0.0828, 0.6251]
    rest = [0.7059, 0.7059, 0.0, 0.4736, 0.5839, 0.2861, -0.0274, 0.7059, -0.1236, 0.4759]
    assert item_total_correlations(ANSWERS) == pytest.approx(total, abs=5e-5)
    assert item_rest_correlations(ANSWERS) == pytest.approx(rest, abs=5e-5)


def test_groups_with_a_tie_at_the_cut():
    """27 % of ten are three; totals 9 9 8 8 7 7 7 7 2 2, so the third above is half of each 8, and so below.

    Counted by hand: item 1 was right for all above and for three of the four with 7 marks.
    """
    assert group_size(10) == 3
    assert sorted(ANSWERS.sum(axis=1)) == [2, 2, 7, 7, 7, 7, 8, 8, 9, 9]
    first = upper_lower_differences(ANSWERS, np.ones(10))[0]
    assert first == pytest.approx(3 / 3 - (0 + 0 + 3 / 4) / 3, abs=1e-12)
