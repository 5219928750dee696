"""A thousand answers to five items of a law school test, given as counts of the 32 patterns."""

import numpy as np
import pytest

from grading.item_statistics import difficulties
from grading.reliability import cronbach_alpha, kr20

SOURCE = "lsat_section_6"

# How often each pattern occurred, from 00000 to 11111 in the order of binary numbers.
COUNTS = (
    [3, 6, 2, 11, 1, 1, 3, 4, 1, 8, 0, 16, 0, 3, 2, 15]
    + [10, 29, 14, 81, 3, 28, 15, 80, 16, 56, 21, 173, 11, 61, 28, 298]
)  # fmt: skip
PATTERNS = np.array([[number >> place & 1 for place in (4, 3, 2, 1, 0)] for number in range(32)])
ANSWERS = np.repeat(PATTERNS, COUNTS, axis=0)


def test_shares_right_and_totals():
    """Shares right to three places as printed, and how many had 0 to 5 right."""
    assert len(ANSWERS) == 1000
    shares = difficulties(ANSWERS, np.ones(5))
    assert shares == pytest.approx([0.924, 0.709, 0.553, 0.763, 0.870], abs=1e-12)
    assert list(np.bincount(ANSWERS.sum(axis=1))) == [3, 20, 85, 237, 357, 298]


def test_five_items_are_too_few_to_be_sure():
    """KR-20 is 0.295 (from memory, three places): five items sort nobody, however many answer them."""
    assert kr20(ANSWERS) == pytest.approx(0.295, abs=5e-4)
    assert cronbach_alpha(ANSWERS) == pytest.approx(kr20(ANSWERS), abs=1e-12)
