"""Weldability of advanced high strength steel in drawn arc stud welding (2011). Abstract read."""

from secondplate.inspection import ACCEPTANCE_FACTS

SOURCE = "ahss_stud_welding"


def test_70_percent_nugget_pull():
    """The practical criterion for M6 studs is 70 % of the nugget pulled."""
    (fact,) = [fact for fact in ACCEPTANCE_FACTS if fact.source == SOURCE]
    assert (fact.value, fact.unit) == (70, "%")
