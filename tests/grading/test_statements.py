"""xAPI statements: as the published schema wants them, one for each score, the same ones every time."""

import json
from datetime import datetime

import pytest

from grading.gradebook_scores import StudentScores
from grading.statements import StatementsError, statements, write_statements
from tests.grading.made_gradebook import PAGES, SETTINGS
from tests.grading.xapi_rules import statement_fault

ANN = StudentScores(
    student_id="ann",
    name="Ann Holt",
    handed_in=datetime(2026, 12, 19, 9, 30),
    late_points_off=0.3,
    scores={"bench-one": 1.5, "bench-two": 2.5, "bench-practical": 0.0},
    waiting={"bench-practical"},
)
BO = StudentScores(student_id="bö_1f", name="Bö")
SITE = "https://school.example/second plate".replace(" ", "-")


def _written(folder, students, **changes):
    """Write statements and read them back."""
    path = folder / "statements.json"
    count = write_statements(path, students, pages=PAGES, settings=SETTINGS, **changes)
    found = json.loads(path.read_text(encoding="utf-8"))
    assert count == len(found)
    return found


def test_statements_keep_the_published_schema(tmp_path):
    """Every statement has the properties and types of the schema, and its points lie between its ends."""
    found = _written(tmp_path, [ANN, BO], site=SITE)
    assert {statement_fault(each) for each in found} == {""}
    for each in found:
        score = each["result"]["score"]
        assert score["min"] <= score["raw"] <= score["max"]


@pytest.mark.parametrize(
    ("change", "fault"),
    [
        ({"result": {"score": {"scaled": 1.5}}}, "scaled must be smaller than or equal to 1"),
        ({"result": {"score": {"scaled": 0.5, "late": 0.1}}}, "must not contain {'late'}"),
        ({"id": "17"}, "id must be uuid"),
        ({"learner": "ann"}, "must not contain {'learner'}"),
        ({"timestamp": "yesterday"}, "timestamp must be iso_date"),
        ({"verb": {"id": "scored"}}, "id must be iri"),
        ({"actor": {"objectType": "Agent"}}, "actor must be valid"),
        (
            {"object": {"id": "https://school.example/one", "definition": {"name": "one"}}},
            "object must be valid",
        ),
        ({"context": {"contextActivities": {"above": []}}}, "must not contain {'above'}"),
    ],
)
def test_the_schema_sees_a_fault(tmp_path, change, fault):
    """The schema refuses what the standard refuses: a score above 1, a bad id, an unknown property."""
    (good, *_) = _written(tmp_path, [ANN])
    assert fault in statement_fault({**good, **change})


def test_each_score_that_counts_is_one_statement(tmp_path):
    """Exercises and the course, with what was taken off for lateness; what waits for a person is not told."""
    one, two, whole = _written(tmp_path, [ANN, BO], site=SITE)
    assert one["actor"] == {"objectType": "Agent", "account": {"homePage": SITE, "name": "ann"}}
    assert one["object"]["id"] == f"{SITE}/brook-lane-7/bench/one"
    assert one["result"]["score"] == {"scaled": 0.75, "raw": 1.5, "min": 0, "max": 2.0}
    assert one["timestamp"] == "2026-12-19T09:30:00+00:00"
    assert two["result"]["score"]["raw"] == 2.0, "extra credit is cut to the maximum, as the standard wants"
    assert whole["result"]["score"]["raw"] == 3.7
    assert whole["result"]["extensions"] == {f"{SITE}/brook-lane-7/late_points_off": 0.3}


def test_the_same_scores_make_the_same_ids():
    """Ids depend on course, learner and item, so a store that has them already takes nothing twice."""
    first, again, other = (
        [each["id"] for each in statements([student], pages=PAGES, settings=SETTINGS)]
        for student in (ANN, ANN, StudentScores(student_id="cy", name="", scores=ANN.scores))
    )
    assert first == again
    assert len({*first, *other}) == len(first) + len(other)


def test_nobody_makes_an_empty_list(tmp_path):
    """A class without scores is a list without entries; an address that is none is refused."""
    assert _written(tmp_path, [BO]) == []
    with pytest.raises(StatementsError, match="site must be an address .* got 'school'"):
        _written(tmp_path, [ANN], site="school")
