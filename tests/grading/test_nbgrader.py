"""nbgrader for real: the same journals get the same scores from its own commands as from our marking.

The pages are the workbook's own, cut down to the cells that carry marks: pictures and panels do not change
a mark and would take most of the time. Everything is autograded in one process.
"""

import csv
import json
import os
import random
import shutil
import subprocess
import sys
from datetime import timedelta
from pathlib import Path

import pytest

from grading.course import nbgrader_api, released_notebook, with_written_answer, write_course
from grading.demo_class import invent_records, write_demo_class
from grading.exercises import PAGES
from grading.gradebook_scores import read_scores
from grading.hand_in import learner_slug
from grading.results import mark_folder
from tests.grading.made_hand_ins import MADE_AT, SETTINGS, journals, raw_hand_in, right_records

pytestmark = pytest.mark.slow

ROOT = Path(__file__).resolve().parents[2]
PAGE = PAGES["stud_welding"]


def _only_marks(notebook):
    """Return a page with its set-up cell for marks and the cells that the gradebook knows."""
    cells = [each for each in notebook["cells"] if "nbgrader" in each["metadata"]]
    set_up = {
        "cell_type": "code",
        "id": "setup",
        "metadata": {},
        "source": "from exercise_forms import mark",
        "outputs": [],
        "execution_count": None,
    }
    return {**notebook, "cells": [set_up, *cells]}


def _workbook(folder):
    """Write the cut-down pages of a workbook."""
    for page in PAGES.values():
        notebook = json.loads((ROOT / "workbook" / page.folder / page.notebook).read_text(encoding="utf-8"))
        path = folder / page.folder / page.notebook
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(json.dumps(_only_marks(notebook)), encoding="utf-8")
    return folder


def _spoilt():
    """Return journals that something happened to, by learner's name."""

    def mixed(name):
        return invent_records(name, SETTINGS, random.Random(name), skill=0.7, until=MADE_AT, diligence=0.95)

    def of_page(records):
        return journals(records)["stud_welding"]

    def answered(name, typed):
        return [{**each, "answers": dict.fromkeys(each["answers"], typed)} for each in right_records(name)]

    def without(data, line):
        lines = data.splitlines(keepends=True)
        return b"".join(lines[:line] + lines[line + 1 :])

    edited = of_page(mixed("Edited")).replace(b'"round":1', b'"round":2', 3)
    other_bank = [{**each, "bank": "1999.1"} for each in mixed("Other Bank")]
    other_numbers = [{**each, "scenario": "0" * 16} for each in mixed("Other Numbers")]
    skipped = [
        {**each, "round": 4 if number % 3 else 1} for number, each in enumerate(mixed("Skipped Rounds"))
    ]
    return {
        "Torn": of_page(mixed("Torn"))[:-40],
        "Edited": edited,
        "Line Gone": without(of_page(mixed("Line Gone")), 5),
        "Other Bank": of_page(other_bank),
        "Other Numbers": of_page(other_numbers),
        "Skipped Rounds": of_page(skipped),
        "Empty": b"",
        "Not Json": b"hello\nyou\n",
        "Digits": of_page(answered("Digits", "7" * 10_000)),
        "Wrong Unit": of_page(answered("Wrong Unit", "480 furlongs")),
        "Odd Shapes": of_page(answered("Odd Shapes", {"low": [None]})),
        "All Right": of_page(right_records("All Right")),
    }


def _submit_raw(course, name, data):
    """Put a journal into the course as nbgrader's own exchange does, byte for byte."""
    folder = course / "submitted" / learner_slug(name) / PAGE.assignment
    folder.mkdir(parents=True)
    released = released_notebook(course, PAGE)
    (folder / f"{PAGE.id}.ipynb").write_bytes(with_written_answer(released, PAGE, None))
    (folder / "answers.jsonl").write_bytes(data)
    (folder / "timestamp.txt").write_text("2026-12-10 12:00:00 UTC")


def _nbgrader(course, *arguments):
    """Run one of nbgrader's own commands in a course folder and return its output."""
    paths = [str(ROOT), str(ROOT / "workbook"), os.environ.get("PYTHONPATH", "")]
    result = subprocess.run(
        [sys.executable, "-m", "nbgrader", *arguments],
        cwd=course,
        env={**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, paths))},
        capture_output=True,
        text=True,
        check=False,
        timeout=300,
    )
    assert result.returncode == 0, result.stderr[-3000:]
    return result.stderr


@pytest.fixture(scope="module")
def marked(tmp_path_factory):
    """Mark one class twice, with nbgrader in a course folder and with our own marking; give both places."""
    base = tmp_path_factory.mktemp("twice marked")
    hand_ins, course = base / "hand_ins", base / "course"
    write_demo_class(hand_ins, SETTINGS, learners=9)
    write_course(course, pages=PAGES, settings=SETTINGS, workbook=_workbook(base / "workbook"))
    archive = course / "downloaded" / PAGE.assignment / "archive"
    shutil.copytree(hand_ins, archive)
    log = _nbgrader(course, "zip_collect", PAGE.assignment)
    for name, data in _spoilt().items():
        _submit_raw(course, name, data)
        raw_hand_in(hand_ins, name, {PAGE.id: data}, made_at=MADE_AT + timedelta(0))
    paths = os.pathsep.join([str(ROOT), str(ROOT / "workbook")])
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("PYTHONPATH", paths)
        api = nbgrader_api(course)
        graded = api.autograde(PAGE.assignment, "*")
        feedback = api.generate_feedback(PAGE.assignment)
    mark_folder(hand_ins, base / "results", SETTINGS)
    assert graded["success"], graded["error"][-3000:]
    assert feedback["success"], feedback["error"][-3000:]
    return base, log


def _scores(path):
    """Return the scores of the page's cells of everyone in a gradebook."""
    return {
        each.student_id: {name: score for name, score in each.scores.items() if name.startswith(PAGE.id)}
        for each in read_scores(path)
    }


def test_every_cell_has_the_same_score(marked):
    """At least twenty learners, malformed journals among them, have the same score in every cell."""
    base, _ = marked
    theirs = _scores(base / "course" / "gradebook.db")
    ours = _scores(base / "results" / "gradebook.db")
    assert len(theirs) >= 20
    assert theirs.keys() == ours.keys()
    assert {each: theirs[each] for each in theirs} == {each: ours[each] for each in theirs}


def test_scores_are_of_every_sort(marked):
    """The comparison means something: full marks, none, and many between are among the scores."""
    base, _ = marked
    totals = {each: sum(cells.values()) for each, cells in _scores(base / "course" / "gradebook.db").items()}
    maximum = sum(exercise.points for exercise in PAGE.exercises)
    assert totals[learner_slug("All Right")] == pytest.approx(maximum, abs=1e-9), "sums of floats"
    assert totals[learner_slug("Not Json")] == 0.0, "atol 0: nothing was read"
    assert sum(0.2 * maximum < total < 0.9 * maximum for total in totals.values()) >= 8


def test_collecting_leaves_out_what_cannot_be_read(marked):
    """nbgrader's collecting names the broken file and goes on with the others."""
    base, log = marked
    assert "Left out" in log
    assert "no zip archive" in log
    assert len(list((base / "course" / "submitted").iterdir())) >= 9


def test_everyone_has_feedback(marked):
    """nbgrader's own feedback page is made for every learner."""
    base, _ = marked
    pages = {path.parts[-3] for path in (base / "course" / "feedback").rglob("*.html")}
    assert pages == set(_scores(base / "course" / "gradebook.db"))


def test_nbgraders_export_reads_our_gradebook(marked, tmp_path):
    """nbgrader's export of the gradebook that marking wrote has everyone with the points of our table."""
    base, _ = marked
    out = tmp_path / "grades.csv"
    database = f"sqlite:///{base / 'results' / 'gradebook.db'}"
    _nbgrader(tmp_path, "export", "--to", str(out), f"--CourseDirectory.db_url={database}")
    with out.open(newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["assignment"] == PAGE.assignment]
    exported = {row["student_id"]: float(row["score"]) for row in rows}
    ours = {each: sum(cells.values()) for each, cells in _scores(base / "results" / "gradebook.db").items()}
    assert exported == pytest.approx(ours, abs=1e-9), "the same floats, added in another order"
    assert {float(row["max_score"]) for row in rows} == {
        sum(each.points for each in PAGE.exercises) + PAGE.practical_points
    }
