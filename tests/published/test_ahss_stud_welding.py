"""Weldability of advanced high strength steel in drawn arc stud welding (2011). Abstract read."""

import pytest

from secondplate.inspection import ACCEPTANCE_FACTS
from secondplate.weldability_published import published_warnings

SOURCE = "ahss_stud_welding"


def test_70_percent_nugget_pull():
    """The practical criterion for M6 studs is 70 % of the nugget pulled."""
    (fact,) = [fact for fact in ACCEPTANCE_FACTS if fact.source == SOURCE]
    assert (fact.value, fact.unit) == (70, "%")


@pytest.mark.parametrize(
    ("surface", "bears", "words"), [("bare", "for", "hot and fast"), ("coated", "against", "slow, cool")]
)
def test_bare_and_coated_boron_sheet(surface, bears, words):
    """Bare boron sheet took studs very well, coated sheet was marginal."""
    (reason,) = (each for each in published_warnings("33B2", surface=surface) if each.source == SOURCE)
    assert reason.bears == bears
    assert words in reason.text
