"""Standard error of measurement as a report of an open package prints it."""

import pytest

from grading.reliability import standard_error

SOURCE = "item_report_example"


def test_standard_error():
    """Spread 2.05 and alpha 0.57 give 1.34, both inputs rounded to two places."""
    assert standard_error(2.05, 0.57) == pytest.approx(1.34, abs=0.006)
