"""What late work loses: by the class file, in the gradebook's own field, never off a practical."""

import sqlite3
from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from grading.changes import change_score
from grading.gradebook import write_marks
from grading.gradebook_file import opened
from grading.gradebook_scores import read_scores
from grading.late import extensions_in, write_late_penalties
from tests.grading.made_gradebook import PAGES, SETTINGS, marks

RULE = replace(SETTINGS, late_grace_minutes=30, late_share_by_day=0.1, late_floor=0.5)
DUE = datetime(2026, 12, 18, 17, 0)  # the class's due time in UTC


def _gradebook(tmp_path, late_by, **changes):
    """Write a gradebook with one learner who handed in that long after the due time."""
    path = tmp_path / "gradebook.db"
    write_marks(path, [marks(one=1.5, two=2.0, when=DUE + late_by, **changes)], pages=PAGES, settings=RULE)
    return path


@pytest.mark.parametrize(
    ("late_by", "off"),
    [
        (timedelta(hours=-1), 0.0),
        (timedelta(minutes=30), 0.0),
        (timedelta(minutes=31), 0.35),
        (timedelta(days=2), 0.7),
        (timedelta(days=30), 1.75),
    ],
)
def test_a_late_hand_in_loses_its_share(tmp_path, late_by, off):
    """In time and within the grace nothing is lost, then a tenth for each day begun, down to the floor."""
    path = _gradebook(tmp_path, late_by)
    assert write_late_penalties(path, RULE, pages=PAGES) == ({("ann", "bench"): off} if off else {})
    (ann,) = read_scores(path)
    # abs 1e-4: points are kept to four decimals
    assert ann.late_points_off == pytest.approx(off, abs=1e-4)


def test_nbgrader_takes_it_off(tmp_path):
    """nbgrader's own data model holds the points taken off where its exports look for them."""
    from nbgrader.api import Gradebook

    path = _gradebook(tmp_path, timedelta(days=2))
    write_late_penalties(path, RULE, pages=PAGES)
    with Gradebook(f"sqlite:///{path}", "brook-lane-7") as book:
        submission = book.find_submission("1_bench", "ann")
        assert (submission.score, submission.late_submission_penalty) == (3.5, 0.7)


def test_a_practical_is_never_late(tmp_path):
    """A practical's points count in full, a changed score of an exercise counts as changed."""
    path = _gradebook(tmp_path, timedelta(days=1))
    for item, points in (("bench-practical", 6.0), ("bench-one", 0.5)):
        change_score(path, learner="ann", item=item, points=points, by="V", why="seen")
    assert write_late_penalties(path, RULE, pages=PAGES) == {("ann", "bench"): 0.25}


def test_an_extension_moves_the_due_time(tmp_path):
    """Granted in the gradebook, an extension gives back what was taken off."""
    path = _gradebook(tmp_path, timedelta(days=2))
    write_late_penalties(path, RULE, pages=PAGES)
    with sqlite3.connect(path) as connection:
        connection.execute("update submitted_assignment set extension = '1970-01-03 00:00:00.000000'")
    assert write_late_penalties(path, RULE, pages=PAGES) == {}
    assert read_scores(path)[0].late_points_off == 0.0


def test_another_rule_brings_the_points_up_to_date(tmp_path):
    """A class file that takes nothing off gives everything back."""
    path = _gradebook(tmp_path, timedelta(days=2))
    write_late_penalties(path, RULE, pages=PAGES)
    assert write_late_penalties(path, replace(RULE, late_share_by_day=0.0), pages=PAGES) == {}
    assert read_scores(path)[0].late_points_off == 0.0


def test_extensions_are_read_while_somebody_writes(tmp_path):
    """Reading waits for no writer and sees what stood there before; an empty place is made whole first."""
    assert extensions_in(tmp_path / "new.db", pages=PAGES) == {}
    path = _gradebook(tmp_path, timedelta(days=2))
    with sqlite3.connect(path) as connection:
        connection.execute("update submitted_assignment set extension = '1970-01-03 00:00:00.000000'")
    with opened(path) as (connection, tables):
        connection.execute(tables["submitted_assignment"].update().values(extension=None))
        assert extensions_in(path, pages=PAGES) == {"ann": {"bench": timedelta(days=2)}}
