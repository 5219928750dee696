"""The gradebook: nbgrader's own tables, written in bulk, a person's entries left alone."""

import sqlite3
from contextlib import closing
from dataclasses import replace
from datetime import datetime
from functools import partial

import pytest

from grading.gradebook import MarksWriter, course_id, write_marks
from grading.gradebook_file import GradebookError
from grading.gradebook_scores import read_scores
from grading.times import utc
from tests.grading.made_gradebook import PAGE, PAGES, SETTINGS, marks, one_choice

_marks = partial(marks, name="Ann Holt, Jr")


@pytest.fixture
def path(tmp_path):
    """Give the path of a gradebook with one learner in it."""
    path = tmp_path / "gradebook.db"
    write_marks(path, [_marks()], pages=PAGES, settings=SETTINGS)
    return path


def _run(path, statement, *values):
    """Run one statement on the gradebook file and return its rows."""
    with sqlite3.connect(path) as connection:
        return connection.execute(statement, values).fetchall()


def test_tables_are_those_of_nbgrader(tmp_path, path):
    """An empty gradebook of ours and of nbgrader hold the same tables and the same layout version."""
    from alembic.config import Config
    from alembic.script import ScriptDirectory
    from nbgrader.api import Base
    from nbgrader.dbutil import _temp_alembic_ini
    from sqlalchemy import create_engine

    theirs = tmp_path / "theirs.db"
    Base.metadata.create_all(create_engine(f"sqlite:///{theirs}"))
    query = "select name, sql from sqlite_master where type = 'table' and name != 'alembic_version'"
    clean = {name: " ".join(text.split()) for name, text in _run(theirs, query)}
    assert {name: " ".join(text.split()) for name, text in _run(path, query)} == clean
    with _temp_alembic_ini(f"sqlite:///{theirs}") as ini:
        head = ScriptDirectory.from_config(Config(ini)).get_current_head()
    assert _run(path, "select version_num from alembic_version") == [(head,)]


def test_scores_come_back_as_written(path):
    """What was written is read back, the practical waits for a person, a prediction is no cell."""
    (ann,) = read_scores(path)
    assert ann.name == "Ann Holt, Jr"
    assert ann.scores == {"bench-one": 1.5, "bench-two": 0.0, "bench-practical": 0.0}
    assert ann.waiting == {"bench-practical"}
    assert ann.handed_in == datetime(2026, 12, 1, 9, 30)
    assert not ann.late


def test_nbgrader_reads_it(path):
    """nbgrader's own data model finds learner, submission, score and maximum."""
    from nbgrader.api import Gradebook

    with Gradebook(f"sqlite:///{path}", course_id(SETTINGS)) as book:
        submission = book.find_submission("1_bench", "ann")
        # atol 0: the same floats travel through the file
        assert (submission.score, submission.max_score) == (1.5, 10.0)
        assert submission.needs_manual_grade
        assert [each.name for each in submission.notebooks[0].comments] == ["bench-practical"]
        assert book.find_assignment("1_bench").duedate == datetime(2026, 12, 18, 17, 0)


def test_a_page_that_has_changed_brings_its_cells_up_to_date(path):
    """Other points reach the cells that are there, a new exercise gets one, and none is made twice."""
    grown = replace(PAGE, exercises=(*PAGE.exercises, one_choice("three")), practical_points=7.0)
    for _ in range(2):
        write_marks(path, [_marks()], pages={"bench": grown}, settings=SETTINGS)
    query = "select name, max_score, cell_type from grade_cells join base_cell using (id) order by name"
    assert _run(path, query) == [
        ("bench-one", 2.0, "code"),
        ("bench-practical", 7.0, "markdown"),
        ("bench-three", 2.0, "code"),
        ("bench-two", 2.0, "code"),
    ]
    assert _run(path, "select name from solution_cells join base_cell using (id)") == [("bench-practical",)]


def test_marking_again_leaves_what_a_person_entered(path):
    """Manual scores, comments, extra credit, extensions and names survive a second marking."""
    _run(path, "update grade set manual_score = 5.0, extra_credit = 0.5 where auto_score is null")
    _run(path, "update comment set manual_comment = 'clean collar'")
    _run(path, "update submitted_assignment set extension = '1970-01-03 00:00:00.000000'")
    _run(path, "update student set first_name = 'Anne', email = 'anne@mill.example'")
    _run(path, "update grade set manual_score = 1.75, needs_manual_grade = 0 where auto_score = 1.5")
    later = datetime(2026, 12, 19, 8, 0)
    write_marks(path, [_marks(one=2.0, when=later)], pages=PAGES, settings=SETTINGS)
    (ann,) = read_scores(path)
    assert ann.scores == {"bench-one": 1.75, "bench-two": 0.0, "bench-practical": 5.5}
    assert ann.name == "Anne Holt, Jr"
    assert ann.handed_in == later
    assert not ann.late, "two days of extension were granted"
    assert _run(path, "select manual_comment from comment") == [("clean collar",)]
    automatic = "select auto_score, needs_manual_grade from grade where manual_score = 1.75"
    assert _run(path, automatic) == [(2.0, 1)], "an overruled score that changed is put up for review"


def test_a_mark_that_changes_on_the_way_is_not_put_up_for_review(path, monkeypatch):
    """Half of a learner's marks, then all of them: the score that a person gave is as sure as it was."""
    monkeypatch.setattr("grading.gradebook.AT_ONCE", 1)
    _run(path, "update grade set manual_score = 1.75 where auto_score = 1.5")
    with closing(MarksWriter(path, pages=PAGES, settings=SETTINGS)) as writer:
        for each in (_marks(one=0.25), marks("bo", "Bo Ash"), _marks()):
            writer.take([each])
        writer.finish()
    assert _run(path, "select auto_score, needs_manual_grade from grade where manual_score = 1.75") == [
        (1.5, 0)
    ]
    assert [each.student_id for each in read_scores(path)] == ["ann", "bo"]


def test_marking_again_unchanged_writes_nothing_new(path):
    """The same marks a second time leave every row as it was, row ids included."""
    everything = [
        f"select * from {each}" for each in ("grade", "comment", "submitted_assignment", "base_cell")
    ]
    before = [_run(path, query) for query in everything]
    write_marks(path, [_marks()], pages=PAGES, settings=SETTINGS)
    assert [_run(path, query) for query in everything] == before


def test_others_stay_when_one_is_marked(path):
    """Marking one more hand-in into the same gradebook keeps everyone else."""
    write_marks(path, [_marks("bo", one=0.5)], pages=PAGES, settings=SETTINGS)
    assert {each.student_id: each.scores["bench-one"] for each in read_scores(path)} == {
        "ann": 1.5,
        "bo": 0.5,
    }


def test_our_fault_waits_for_a_person(path):
    """A mark that could not be computed is no silent zero: the cell waits for a person."""
    write_marks(path, [_marks("cy", one=None)], pages=PAGES, settings=SETTINGS)
    scores = {each.student_id: each for each in read_scores(path)}
    assert "bench-one" in scores["cy"].waiting
    write_marks(path, [_marks("cy", one=2.0)], pages=PAGES, settings=SETTINGS)
    scores = {each.student_id: each for each in read_scores(path)}
    assert "bench-one" not in scores["cy"].waiting


def test_a_page_without_marks(tmp_path):
    """A page on which nothing counts is handed in like the others."""
    page = replace(PAGE, exercises=PAGE.exercises[2:], practical_points=0.0)
    write_marks(tmp_path / "book.db", [_marks()], pages={"bench": page}, settings=SETTINGS)
    (ann,) = read_scores(tmp_path / "book.db")
    assert (ann.scores, ann.handed_in) == ({}, datetime(2026, 12, 1, 9, 30))


def test_late_is_told(path):
    """A hand-in after the due time is late; the due time follows the class file."""
    write_marks(path, [_marks(when=datetime(2026, 12, 18, 17, 0, 1))], pages=PAGES, settings=SETTINGS)
    assert read_scores(path)[0].late


def test_a_later_bank_adds_its_cells(path):
    """An exercise that came to the page later gets its cell; its points follow the bank."""
    grown = replace(PAGE, exercises=(*PAGE.exercises, one_choice("three")))
    write_marks(path, [_marks("bo")], pages={"bench": grown}, settings=SETTINGS)
    scores = {each.student_id: each.scores for each in read_scores(path)}
    assert "bench-three" in scores["bo"]


@pytest.mark.parametrize("content", [b"not a database at all, not at all", b""])
def test_a_file_that_is_no_gradebook(tmp_path, content):
    """A file that is no database is refused with one sentence; an empty one becomes a gradebook."""
    path = tmp_path / "gradebook.db"
    path.write_bytes(content)
    if content:
        with pytest.raises(GradebookError, match="must be a database that can be read and written"):
            read_scores(path)
        assert path.read_bytes() == content
    else:
        assert list(read_scores(path)) == []


def test_a_gradebook_of_another_nbgrader(path):
    """A layout that this nbgrader does not have is refused, not written over."""
    _run(path, "update alembic_version set version_num = '0123456789ab'")
    with pytest.raises(GradebookError, match="must be one of this nbgrader version, got layout 0123456789ab"):
        write_marks(path, [_marks()], pages=PAGES, settings=SETTINGS)


def test_times_are_utc_without_zone():
    """Times are kept as nbgrader keeps them."""
    assert utc("2026-11-25T10:15:00.250000+01:00") == datetime(2026, 11, 25, 9, 15)
    assert utc("2026-11-25T10:15:00Z") == datetime(2026, 11, 25, 10, 15)
