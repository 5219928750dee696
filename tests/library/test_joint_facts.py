"""Published facts on riveted joints: whole, each with its origin, no number made up."""

import pytest

from secondplate import joint_facts as facts
from secondplate.sources import BIBLIOGRAPHY


def test_rows_are_known_and_unique():
    """Row ids are unique, sources known, and an identifier equals that of the bibliography."""
    ids = [row.id for row in facts.JOINT_ROWS]
    assert len(ids) == len(set(ids)) == 15
    for row in facts.JOINT_ROWS:
        assert row.doi == BIBLIOGRAPHY[row.source].doi


def test_no_row_claims_what_was_not_read():
    """Each row has a strength or a mode; a strength always says whether it is a mean or the greatest."""
    for row in facts.JOINT_ROWS:
        assert row.lap_shear_n is not None or row.failure_mode
        assert (row.lap_shear_n is None) == (row.statistic == "")
        assert row.statistic in ("", "mean", "greatest")


def test_where_the_order_is_not_stated_no_second_sheet_is_claimed_alone():
    """A row without an order names both sheets together."""
    for row in facts.JOINT_ROWS:
        if row.order_stated == "no" and not row.second_sheet:
            assert " with " in row.top_sheet


@pytest.mark.parametrize("topic", facts.TOPICS)
def test_facts_by_topic(topic):
    """Each topic has facts; figures are numbers and words are words; each is one sentence or two."""
    for fact in facts.joint_facts(topic):
        assert fact.source in BIBLIOGRAPHY
        assert fact.text.endswith(".")
        assert (fact.number is None) == (fact.unit == "-")


def test_no_fact_is_lost_and_ids_are_unique():
    """The topics together hold every fact once."""
    gathered = [fact.id for topic in facts.TOPICS for fact in facts.joint_facts(topic)]
    assert sorted(gathered) == sorted({fact.id for fact in facts.JOINT_FACTS})
    assert all(fact.id.isidentifier() for fact in facts.JOINT_FACTS)


def test_models_left_out_say_why():
    """Each model left out has what is known and what is missing, and its source is in the bibliography."""
    assert len(facts.MODELS_LEFT_OUT) >= 8
    for model in facts.MODELS_LEFT_OUT:
        assert model.source in BIBLIOGRAPHY
        assert model.known
        assert model.reason


def test_unknown_names_are_refused():
    """Unknown topics and facts are refused with the list."""
    with pytest.raises(ValueError, match="topic must be one of adhesive, .*, got 'colour'"):
        facts.joint_facts("colour")
    with pytest.raises(ValueError, match="fact must be one of hybrid_peak_gain, .*, got 'x'"):
        facts.joint_fact("x")
