"""What a learner is told about late work: how much was taken off, when it was due and came, and the rule."""

import sqlite3
from dataclasses import replace
from datetime import timedelta

import pytest

from grading.gradebook_scores import read_scores
from grading.hand_in import learner_slug
from grading.late import extensions_in
from grading.late_words import in_words
from grading.results import mark_folder
from grading.times import utc
from tests.grading.made_hand_ins import MADE_AT, SETTINGS, journals, raw_hand_in, right_records

RULE = replace(SETTINGS, late_grace_minutes=30, late_share_by_day=0.1, late_floor=0.5)
DUE = MADE_AT.replace(day=18, hour=18)
NAME = "Mara Quillby"
EXERCISES = ["stud_welding.arc_energy", "rivet_anatomy.name_parts"]


@pytest.fixture
def told(tmp_path):
    """Return a function that marks one hand-in and gives the text of its feedback page."""

    def tell(late_by, settings=RULE):
        hand_ins = tmp_path / "hand_ins"
        if not hand_ins.exists():
            hand_ins.mkdir()
            records = right_records(NAME, exercises=EXERCISES, settings=SETTINGS)
            raw_hand_in(hand_ins, NAME, journals(records), made_at=DUE + late_by)
        mark_folder(hand_ins, tmp_path / "out", settings, report=False, processes=1)
        return (tmp_path / "out" / "feedback" / f"{learner_slug(NAME)}.html").read_text(encoding="utf-8")

    return tell


def test_late_points_are_told_as_the_gradebook_has_them(told, tmp_path):
    """The page says what is taken off and from which pages, when work was due and came, and the rule."""
    page = told(timedelta(days=1, hours=15, minutes=12))
    (mara,) = read_scores(tmp_path / "out" / "gradebook.db")
    off, earned = mara.late_points_off, sum(mara.scores.values())
    assert off == pytest.approx(0.2 * earned, abs=1e-4)  # two days begun; the gradebook rounds to 1e-4
    assert f"<strong>{earned - off:.2f}".rstrip("0").rstrip(".") in page
    assert f"{earned:g} earned, {off:g} taken off for late work." in page
    assert page.count("<td>18 December 2026, 18:00 UTC</td><td>1 day 15 hours</td>") == 2
    assert page.count(", 20% of ") == 2
    assert "Handed in 20 December 2026, 09:12 UTC, after it was due" in page
    assert (
        "Nothing is taken off within 30 minutes after work is due. Each day begun after that takes off 10%"
        in page
    )
    assert "until 50% of them are left. A practical is never late." in page


def test_work_in_time_is_told_nothing(told):
    """A hand-in that came when it was due has no word on late work."""
    page = told(timedelta(0))
    assert "late work" not in page.lower()
    assert "after it was due" not in page


def test_nothing_is_taken_off_within_the_grace(told):
    """Within the grace the page says that it came late and that nothing is taken off."""
    page = told(timedelta(minutes=30))
    assert "nothing taken off" in page
    assert "<td>30 minutes</td><td>nothing</td>" in page
    assert "taken off for late work" not in page


def test_an_extension_is_told_at_the_next_marking(told, tmp_path):
    """Granted in the gradebook for one page, it moves that page's due time; the other stays late."""
    told(timedelta(days=1))
    book = tmp_path / "out" / "gradebook.db"
    with sqlite3.connect(book) as connection:
        connection.execute(
            "update submitted_assignment set extension = '1970-01-01 20:00:00.000000' where assignment_id = "
            "(select id from assignment where name = '1_stud_welding')"
        )
    page = told(timedelta(days=1))
    assert "<td>19 December 2026, 14:00 UTC, 20 hours granted to you included</td><td>4 hours</td>" in page
    assert "<td>18 December 2026, 18:00 UTC</td><td>1 day</td>" in page
    from grading.exercises import PAGES

    assert extensions_in(book, pages=PAGES) == {learner_slug(NAME): {"stud_welding": timedelta(hours=20)}}


def test_a_class_without_a_late_rule(told):
    """Where the rule takes nothing, the page says so."""
    page = told(timedelta(days=3), replace(RULE, late_share_by_day=0.0))
    assert "In this class nothing is taken off for late work." in page


@pytest.mark.parametrize(
    ("time", "words"),
    [
        (timedelta(seconds=5), "1 minute"),
        (timedelta(minutes=61), "1 hour 1 minute"),
        (timedelta(days=2), "2 days"),
        (timedelta(days=1, hours=1, minutes=59), "1 day 1 hour"),
        (timedelta(days=3, minutes=7), "3 days 7 minutes"),
    ],
)
def test_lengths_of_time(time, words):
    """A length of time is written in its two largest units."""
    assert in_words(time) == words


def test_due_time_is_in_utc():
    """The tests' due time is the class file's."""
    assert utc(SETTINGS.due) == DUE.replace(tzinfo=None)
