"""Scores given by hand: logged with who, when and why, and never replaced by marking."""

import csv
import sqlite3
from datetime import UTC, datetime

import pytest

from grading.changes import ChangeError, ChangeLog, change_score, keep_changes
from grading.gradebook import write_marks
from grading.gradebook_scores import read_scores
from grading.learner_names import LearnerNames, UnknownLearnerError
from tests.grading.made_gradebook import PAGES, SETTINGS, marks

NOW = datetime(2026, 12, 3, 10, 0, tzinfo=UTC)


@pytest.fixture
def gradebook(tmp_path):
    """Give the path of a gradebook with two learners."""
    path = tmp_path / "gradebook.db"
    write_marks(path, [marks(), marks("bo", "Bo Ash")], pages=PAGES, settings=SETTINGS)
    return path


def _change(gradebook, item="bench-one", points=0.5, *, learner="ann", by="R. Voss", why="unit misread"):
    """Change one score."""
    return change_score(gradebook, learner=learner, item=item, points=points, by=by, why=why, now=NOW)


def _log(gradebook):
    """Read the log as lists."""
    with open(gradebook.with_name("changes.csv"), encoding="utf-8-sig", newline="") as file:
        return list(csv.reader(file))


def _by_hand(gradebook, score):
    """Enter a score as the formgrader does."""
    with sqlite3.connect(gradebook) as connection:
        connection.execute(
            "update grade set manual_score = ? where cell_id in "
            "(select id from base_cell where name = 'bench-two') and notebook_id in (select n.id from "
            "submitted_notebook n join submitted_assignment a on a.id = n.assignment_id "
            "where a.student_id = 'ann')",
            [score],
        )


def test_a_change_is_scored_and_logged(gradebook):
    """The score counts, nbgrader's own field holds it, and the log says who, when, why, from what to what."""
    _change(gradebook, points=2.0)
    _change(gradebook, "bench.one", 1.0, learner="ann holt", why="seen again,\nwith care")
    ann, bo = read_scores(gradebook)
    assert (ann.scores["bench-one"], bo.scores["bench-one"]) == (1.0, 1.5)
    assert _log(gradebook) == [
        ["learner", "item", "from", "to", "by", "at_utc", "why"],
        ["ann", "bench-one", "", "2.0", "R. Voss", "2026-12-03 10:00:00", "unit misread"],
        ["ann", "bench-one", "2.0", "1.0", "R. Voss", "2026-12-03 10:00:00", "seen again, with care"],
    ]


def test_nbgrader_shows_a_change(gradebook):
    """nbgrader's own data model takes the score given by hand, and nothing waits there any more."""
    from nbgrader.api import Gradebook

    _change(gradebook, "bench-practical", 4.5)
    with Gradebook(f"sqlite:///{gradebook}", "brook-lane-7") as book:
        grade = book.find_grade("bench-practical", "bench", "1_bench", "ann")
        assert (grade.manual_score, grade.score, grade.needs_manual_grade) == (4.5, 4.5, False)


def test_a_change_can_be_taken_back(gradebook):
    """Taken back, the automatic score counts again, and a practical waits for a person again."""
    for item in ("bench-one", "bench-practical"):
        _change(gradebook, item)
        assert _change(gradebook, item, None).after is None
    (ann, _) = read_scores(gradebook)
    assert ann.scores["bench-one"] == 1.5
    assert ann.waiting == {"bench-practical"}


def test_marking_again_keeps_a_change(gradebook):
    """A second marking leaves the score alone, whatever its own comes to, and what was kept is told."""
    _change(gradebook)
    write_marks(gradebook, [marks(one=2.0)], pages=PAGES, settings=SETTINGS)
    kept = keep_changes(gradebook)
    assert {key: (score.automatic, score.manual) for key, score in kept.items()} == {
        ("ann", "bench-one"): (2.0, 0.5)
    }
    assert read_scores(gradebook)[0].scores["bench-one"] == 0.5
    assert len(_log(gradebook)) == 2, "nothing new was found"


def test_what_was_entered_in_the_formgrader_is_logged_once(gradebook):
    """A score entered there, changed there and removed there makes one line each at the next marking."""
    for score in (1.5, 0.25, 0.25, None, None):
        _by_hand(gradebook, score)
        keep_changes(gradebook, now=NOW)
    assert [row[:5] for row in _log(gradebook)[1:]] == [
        ["ann", "bench-two", "", "1.5", "not known"],
        ["ann", "bench-two", "1.5", "0.25", "not known"],
        ["ann", "bench-two", "0.25", "", "not known"],
    ]


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"points": 2.1}, "points must be from 0 to 2 for bench-one, got 2.1"),
        ({"points": float("nan")}, "points must be from 0 to 2"),
        ({"points": -1.0}, "points must be from 0 to 2"),
        (
            {"item": "bench-guess"},
            "item must be one of bench-one, bench-practical, bench-two, got 'bench-guess'",
        ),
        ({"by": " "}, "by must be a text of 1 to 200 characters, got 0"),
        ({"why": "x" * 201}, "why must be a text of 1 to 200 characters, got 201"),
    ],
)
def test_a_change_that_cannot_be_made_is_refused(gradebook, changes, sentence):
    """Points beyond the item's, an unknown item, a change without name or reason: refused, nothing logged."""
    with pytest.raises(ChangeError, match=sentence):
        _change(gradebook, **changes)
    assert not gradebook.with_name("changes.csv").exists()
    assert read_scores(gradebook)[0].scores["bench-one"] == 1.5


def test_no_change_without_its_line(gradebook, monkeypatch):
    """Where the log cannot be written the score stays as it was."""

    def refuse(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(ChangeLog, "append", refuse)
    with pytest.raises(OSError, match="No space"):
        _change(gradebook)
    assert read_scores(gradebook)[0].scores["bench-one"] == 1.5


def test_a_missing_gradebook_is_not_made(tmp_path):
    """A wrong folder gets its sentence and stays empty."""
    with pytest.raises(ChangeError, match="mark the hand-ins first"):
        _change(tmp_path / "gradebook.db")
    assert list(tmp_path.iterdir()) == []


def test_a_log_that_is_none_is_refused(gradebook):
    """A file with other columns, or a score that is none, is refused and left alone."""
    path = gradebook.with_name("changes.csv")
    for text, sentence in [("a,b\n1,2\n", "must begin with the columns"), (None, "line 2: from and to")]:
        path.write_text(text or "learner,item,from,to,by,at_utc,why\nann,x,much,,,,\n")
        with pytest.raises(ChangeError, match=sentence):
            keep_changes(gradebook)


def test_names_find_learners():
    """An id, a name in any spelling and the name that an id was made of find the learner; others do not."""
    names = LearnerNames({"ann_1f": "Ann Holt", "bo": "", "c1": "Cy Oak", "c2": "cy  oak"})
    assert [names.find(each) for each in ("ann_1f", "ANN  holt", "Bo")] == ["ann_1f", "ann_1f", "bo"]
    with pytest.raises(UnknownLearnerError, match="named by id, got 'Cy Oak', the name of c1, c2"):
        names.find("Cy Oak")
    with pytest.raises(UnknownLearnerError, match="got 'Anne Holt'; the nearest name is 'ann holt'"):
        names.find("Anne Holt")
    with pytest.raises(UnknownLearnerError, match="got ' '$"):
        names.find(" ")
