"""The instructor's form for the bench: what it writes is the table that the command line enters."""

import json
from pathlib import Path

import pytest

from exercise_forms.practical_form import PracticalForm
from grading.exercises import PAGES
from grading.practical import read_practical
from grading.rubric import read_rubrics

ROOT = Path(__file__).resolve().parents[2]
RUBRICS = read_rubrics(PAGES)
RUBRIC = RUBRICS["stud_welding"]
WHO = {
    "kind": "judge",
    "learner": " Mara  Quillby",
    "by": "R. Voss",
    "when": "2026-12-02",
    "note": 'steady, "calm"',
}


@pytest.fixture
def sat(tmp_path, wrap):
    """Return somebody at the form of a practical, whose table does not exist yet."""
    return wrap(PracticalForm(RUBRIC, tmp_path / "practical.csv"))


def _levels(level):
    """Return the same level for every line."""
    return {line.id: level for line in RUBRIC.lines}


def test_every_level_can_be_chosen(sat):
    """Each line offers its levels with their points, the best first, described or between the two."""
    part = sat.form.state["parts"][0]
    assert [option["id"] for option in part["options"]] == ["4", "3", "2", "1", "0"]
    assert part["options"][0]["text"] == "4: all of it, unprompted, before switching on"
    assert part["options"][1]["text"] == "3: between the two"


def test_levels_become_rows_of_the_table(sat):
    """What is saved is read back by the reader of the table, once for each line, and the sum is told."""
    assert sat.say(**WHO, levels=_levels("3")) == {
        "kind": "saved",
        "sentence": "Saved for Mara Quillby: 15 of 20 points.",
        "ticket": "ticket 7",
    }
    rows, problems = read_practical(sat.form.table, RUBRICS)
    assert problems == []
    assert [(row.learner, row.criterion, row.level) for row in rows] == [
        ("Mara Quillby", line.id, 3) for line in RUBRIC.lines
    ]


def test_lines_can_be_judged_later(sat):
    """Some lines now and the others later are one practical in one table; an unsafe act ends it at once."""
    reply = sat.say(**WHO, levels={**_levels(""), "collar": "4"})
    assert reply["sentence"].endswith("1 of 5 lines. The others can follow.")
    sat.say(**WHO, levels={"pull": "2"})
    rows, _ = read_practical(sat.form.table, RUBRICS)
    assert [row.criterion for row in rows] == ["collar", "pull"]
    assert "0 of 20 points. An unsafe act ends the try" in sat.say(**WHO, levels={"safe": "0"})["sentence"]


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"learner": "  "}, "Not saved. Learner must be a name"),
        ({"by": ""}, "Not saved. By must be a name"),
        ({"when": "today"}, "Not saved. When must be a date"),
        ({"levels": _levels("5")}, "Not saved. Level must be a whole number from 0 to 4"),
        ({"levels": {"other": "4"}}, "Not saved. Choose a level in at least one line."),
    ],
)
def test_what_cannot_be_saved_is_said(sat, changes, sentence):
    """Nothing half is written: the table is not even made."""
    reply = sat.say(**{**WHO, "levels": _levels("3"), **changes})
    assert (reply["kind"], reply["sentence"][: len(sentence)]) == ("problem", sentence)
    assert not sat.form.table.exists()


def test_a_table_that_cannot_be_written_is_said(tmp_path, wrap):
    """A folder in the table's place is a sentence, not a lost judgement that looks saved."""
    reply = wrap(PracticalForm(RUBRIC, tmp_path)).say(**WHO, levels=_levels("3"))
    assert (reply["kind"], reply["sentence"]) == ("problem", "Not saved. Is a directory.")


def test_the_page_for_instructors_has_every_practical(tmp_path, monkeypatch):
    """The notebook beside the notes shows one form for each practical, and its cells run."""
    cells = json.loads((ROOT / "instructor_notes" / "practical_marks.ipynb").read_text(encoding="utf-8"))[
        "cells"
    ]
    monkeypatch.chdir(tmp_path)
    scope = {}
    for cell in cells:
        assert cell.get("outputs", []) == []
        if cell["cell_type"] == "code":
            exec("".join(cell["source"]), scope)  # noqa: S102, the cells are our own
    called = ["".join(cell["source"]) for cell in cells if cell["id"].startswith("form_")]
    assert called == [f'practical("{page}", TABLE)' for page in RUBRICS]
