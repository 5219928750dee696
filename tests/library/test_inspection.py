"""Check list, signs and acceptance facts: whole, in order, with their origin."""

import pytest

from secondplate.inspection import (
    ACCEPTANCE_FACTS,
    COLLAR_SIGNS,
    PRE_WELD_CHECKS,
    PURPOSES,
    WELD_SIGNS,
    acceptance_facts,
    bend_test_angle_deg,
    length_verdict,
    weld_sign,
)
from secondplate.sources import BIBLIOGRAPHY
from secondplate.tables import BASES, load

ORDER = [check.id for check in PRE_WELD_CHECKS]


@pytest.mark.parametrize(
    ("earlier", "later"),
    [
        ("isolate", "earth"),
        ("protect", "test_stud"),
        ("gas", "test_stud"),
        ("holder", "protrusion"),
        ("head_ground", "test_stud"),
        ("square", "test_stud"),
        ("test_stud", "pull"),
        ("pull", "adjust"),
        ("adjust", "row"),
    ],
)
def test_order_of_the_checks(earlier, later):
    """What must come before what."""
    assert ORDER.index(earlier) < ORDER.index(later)


def test_people_and_vehicle_come_first_and_the_row_last():
    """The list opens with isolation and protection and ends with the row."""
    assert ORDER[:2] == ["isolate", "protect"]
    assert ORDER[-1] == "row"


def test_numbers_of_the_checks_have_no_gap():
    """The table counts 1, 2, 3 ... so that no check is lost."""
    numbers = sorted(row.number for row in load("pre_weld_checks"))
    assert numbers == list(range(1, len(PRE_WELD_CHECKS) + 1))


@pytest.mark.parametrize("entries", [PRE_WELD_CHECKS, WELD_SIGNS], ids=["checks", "signs"])
def test_ids_are_unique_and_origin_is_given(entries):
    """Ids are short names used once; source and basis are known."""
    ids = [entry.id for entry in entries]
    assert len(set(ids)) == len(ids)
    for entry in entries:
        assert entry.id.isidentifier()
        assert entry.source in BIBLIOGRAPHY
        assert entry.basis in BASES


def test_good_signs_alone_need_no_correction():
    """Every fault has a correction; the two good signs have none."""
    assert {sign.id for sign in WELD_SIGNS if not sign.correction} == {"good", "slug"}


def test_collar_signs_are_those_on_the_collar():
    """Breaks and plates are listed apart from collars."""
    assert {"good", "cold", "hot", "one_sided", "porous"} <= {sign.id for sign in COLLAR_SIGNS}
    assert "flat_grey" not in {sign.id for sign in COLLAR_SIGNS}
    assert {sign.seen_on for sign in WELD_SIGNS} == {"collar", "fracture", "plate"}


def test_opposite_faults_have_opposite_corrections():
    """Cold asks for more, hot for less."""
    assert weld_sign("cold").correction.startswith("Raise")
    assert weld_sign("hot").correction.startswith("Lower")


def test_unknown_sign_is_refused():
    """An unknown sign is refused with the list."""
    with pytest.raises(ValueError, match="sign must be one of good, necked, .* got 'nice'"):
        weld_sign("nice")


@pytest.mark.parametrize("purpose", PURPOSES)
def test_facts_by_purpose(purpose):
    """Each purpose has facts of its own, all with known origin and values above 0."""
    facts = acceptance_facts(purpose)
    assert facts
    for fact in facts:
        assert fact.purpose == purpose
        assert fact.value > 0
        assert fact.source in BIBLIOGRAPHY


def test_no_fact_is_lost():
    """The purposes together hold every fact."""
    assert sum(len(acceptance_facts(purpose)) for purpose in PURPOSES) == len(ACCEPTANCE_FACTS)


def test_unknown_purpose_is_refused():
    """Purposes without bend angles and unknown purposes are refused."""
    with pytest.raises(ValueError, match="purpose must be one of .* got 'beauty'"):
        acceptance_facts("beauty")
    with pytest.raises(ValueError, match="purpose must be one of before production, .* got 'use'"):
        bend_test_angle_deg(purpose="use")


def test_bend_angles_before_production_disagree():
    """30 against 60 degrees: nothing agreed and both standards named."""
    advice = bend_test_angle_deg(purpose="before production")
    assert sorted(rule.band.best for rule in advice.rules) == [30, 60]
    assert advice.agreed is None
    assert "AWS D1.1" in advice.contradiction
    assert "ISO 14555" in advice.contradiction


@pytest.mark.parametrize(
    ("measured_mm", "verdict"),
    [
        (20.0, "within tolerance"),
        (20.1 + 0.9, "within tolerance"),  # 21.0 but for the last binary digit
        (21.01, "too long"),
        (18.99, "too short"),
    ],
)
def test_length_verdict_at_its_limits(measured_mm, verdict):
    """The ends of the tolerance are within."""
    assert length_verdict(expected_length_mm=20.0, measured_length_mm=measured_mm) == verdict


def test_length_must_be_above_0():
    """A length of 0 is no measurement."""
    with pytest.raises(ValueError, match="measured length must be above 0 mm, got 0 mm"):
        length_verdict(expected_length_mm=20, measured_length_mm=0)
