"""Page on procedures for the mechanical testing of stud welds (2015). Read."""

from secondplate.inspection import ACCEPTANCE_FACTS

SOURCE = "stud_test_page"


def test_counts():
    """Two studs each production period; ten for a base metal or position that is not approved."""
    counts = {fact.purpose: fact.value for fact in ACCEPTANCE_FACTS if fact.source == SOURCE}
    assert counts == {"before production": 2, "qualification": 10}
