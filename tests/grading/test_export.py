"""The tables of results and problems: whole, quoted, and harmless in a spreadsheet."""

import csv
from datetime import datetime
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from grading.exercise import Choice, Exercise, Option, Page
from grading.export import harmless, marks_in_words, write_problems, write_results
from grading.gradebook_scores import ClassScores, StudentScores

PAGE = Page(
    id="bench",
    title="Bench",
    folder="1_bench",
    notebook="bench.ipynb",
    assignment="1_bench",
    objectives={},
    exercises=(
        Exercise(
            id="bench.one",
            objective="o",
            title="One",
            prompt="",
            parts=(Choice(id="w", ask="", options=(Option(id="a", text="A"),), points=2.0),),
            draw=dict,
            solve=dict,
            reasons="",
            read_again="",
        ),
    ),
    practical_points=6.0,
)


def _class_of(student):
    """Return a class of one, whose scores stand in arrays."""
    cells = tuple(student.scores)
    waits = np.array([[cell in student.waiting for cell in cells]], dtype=bool).reshape(1, len(cells))
    return ClassScores([student], cells, np.array([[*student.scores.values()]], dtype=float), waits)


def _rows(path):
    """Read a table back."""
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.reader(file))


def test_results_hold_marks_sums_and_what_waits(tmp_path):
    """A row has name, time, lateness, every mark, and the practical stays empty until a person marks it."""
    ann = StudentScores(
        student_id="ann",
        name="Ann Holt, Jr",
        handed_in=datetime(2026, 12, 1, 9, 30),
        late=True,
        late_points_off=0.3,
        scores={"bench-one": 1.2, "bench-practical": 0.0},
        waiting={"bench-practical"},
    )
    write_results(tmp_path / "results.csv", _class_of(ann), pages={"bench": PAGE})
    header, row = _rows(tmp_path / "results.csv")
    assert dict(zip(header, row, strict=True)) == {
        "learner": "ann",
        "name": "Ann Holt, Jr",
        "handed_in_utc": "2026-12-01 09:30:00",
        "late": "late",
        "bench-one": "1.2",
        "bench-practical": "",
        "waiting_for_a_person": "1",
        "late_points_off": "0.3",
        "points": "0.9",
        "maximum": "8.0",
    }


def test_a_zero_that_a_person_gave_is_shown(tmp_path):
    """A practical marked with nothing is a 0, not an empty cell."""
    ann = StudentScores(student_id="ann", name="Ann", scores={"bench-practical": 0.0})
    write_results(tmp_path / "results.csv", _class_of(ann), pages={"bench": PAGE})
    header, row = _rows(tmp_path / "results.csv")
    assert dict(zip(header, row, strict=True))["bench-practical"] == "0.0"


@pytest.mark.parametrize(
    "text",
    ["=cmd()", "+1", "-1", "@sum(a1)", "\t=1", "\r=1", " =1", "\x00=1", "\u200b=1", "\uff1dcmd()", "\n-2"],
)
def test_no_text_acts_as_a_formula(tmp_path, text):
    """A name that begins like a formula gets an apostrophe in front, spaces and unseen letters or not."""
    assert harmless(text).startswith("'")
    whose = StudentScores(student_id=text, name=text)
    write_results(tmp_path / "r.csv", _class_of(whose), pages={"bench": PAGE})
    _, row = _rows(tmp_path / "r.csv")
    assert row[0].startswith("'")
    assert row[1].startswith("'")


@given(st.text(st.characters(exclude_categories=("C", "Zl", "Zp", "Zs"))))
def test_ordinary_text_is_kept(text):
    """A printable text stays as it is, at most with an apostrophe in front."""
    assert harmless(text) in (text, f"'{text}")


@given(st.lists(st.floats() | st.integers(-20_000, 200_000).map(lambda n: n / 20_000), min_size=1))
def test_scores_are_rounded_as_python_does(scores):
    """Each score, on the middle of two or huge, is written as Python rounds it; none is an empty text."""
    written = marks_in_words(np.array([scores]), np.zeros((1, len(scores)), dtype=bool)).tolist()[0]
    wanted = ["" if each != each else str(round(each, 4) + 0.0) for each in scores]
    assert [text if text == "" else str(float(text) + 0.0) for text in written] == wanted


def test_problems_name_file_learner_and_reason(tmp_path):
    """Each problem is one row with file, learner, page, line, kind and sentence."""
    problem = SimpleNamespace(
        file="a,b.zip", learner="=cmd()", page="bench", line=3, kind="torn", sentence="the last line is torn"
    )
    write_problems(tmp_path / "problems.csv", [problem])
    assert _rows(tmp_path / "problems.csv") == [
        ["file", "learner", "page", "line", "kind", "problem"],
        ["a,b.zip", "'=cmd()", "bench", "3", "torn", "the last line is torn"],
    ]
