"""The worked solutions: they earn full marks for any learner, and show what their stored outputs say."""

import contextlib
import io
import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from grading.class_settings import ClassSettings
from grading.exercises import BANK_VERSION, EXERCISES, PAGES
from grading.journal import Journal
from grading.scoring import mark_learner
from grading.variants import scenario, scenario_digest

ROOT = Path(__file__).parents[2]
SOLUTIONS = ROOT / "solutions"
COURSE_KEY = "another-course"
LEARNERS = [f"other learner {number}" for number in range(20)]
LINES_A_CELL = 12


def _notebook(page):
    """Return the path of the solution of a page; both have the same stem of the assignment."""
    return SOLUTIONS / f"{page.assignment}.ipynb"


def _cells(page, kind):
    cells = json.loads(_notebook(page).read_text(encoding="utf-8"))["cells"]
    return [cell for cell in cells if cell["cell_type"] == kind]


def _code(page):
    return ["".join(cell["source"]) for cell in _cells(page, "code")]


def _solved(page, learner, round_number=1):
    """Run the code of a solution for another learner and return the sheet it filled."""
    parameters, *rest = _code(page)
    assert parameters.splitlines()[-1].startswith("LEARNER, COURSE_KEY, ROUND = ")
    names = {"LEARNER": learner, "COURSE_KEY": COURSE_KEY, "ROUND": round_number}
    with contextlib.redirect_stdout(io.StringIO()):
        exec(compile("\n".join(rest), _notebook(page).name, "exec"), names)  # noqa: S102 our own notebook
    return names["sheet"]


@pytest.fixture(autouse=True)
def _beside_the_notebooks(monkeypatch):
    """Let the code find its own module, as it does when its notebook is run."""
    monkeypatch.syspath_prepend(str(SOLUTIONS))


each_page = pytest.mark.parametrize("page", PAGES.values(), ids=lambda page: page.id)


@each_page
@pytest.mark.parametrize("learner", LEARNERS)
def test_the_way_is_right_for_other_learners(page, learner):
    """The same code answers every part right, predictions included, with numbers it was not written for."""
    sheet = _solved(page, learner)
    earned, possible = sheet.points()
    assert sheet.open_parts() == []
    assert earned == possible == sum(exercise.points for exercise in page.exercises)


@each_page
def test_the_way_is_right_in_a_later_round(page):
    """Fresh numbers of a later round change nothing about the way."""
    assert _solved(page, LEARNERS[0], round_number=3).open_parts() == []


@each_page
def test_marking_a_journal_of_the_solution_gives_full_marks(page, tmp_path):
    """Saved in a journal and marked as a class is marked, the solution earns every point of its page."""
    settings = ClassSettings(course_key=COURSE_KEY, title="Solutions")
    journal = Journal(tmp_path / "answers.jsonl")
    for exercise_id, answers in _solved(page, LEARNERS[0]).typed.items():
        numbers = scenario(EXERCISES[exercise_id], course_key=COURSE_KEY, learner=LEARNERS[0], round_number=1)
        journal.append(
            learner=LEARNERS[0],
            course=COURSE_KEY,
            page=page.id,
            exercise=exercise_id,
            round_number=1,
            bank=BANK_VERSION,
            scenario=scenario_digest(numbers),
            answers=answers,
        )
    result = mark_learner(journal.read().records, settings)
    assert result.problems == ()
    assert result.points == sum(exercise.points for exercise in page.exercises)


@each_page
def test_every_exercise_is_worked(page):
    """Each exercise of the page is shown and answered, and nothing is read off the solution of the bank."""
    code = "\n".join(_code(page))
    assert re.findall(r'sheet\.task\("([^"]+)"\)', code) != []
    assert set(re.findall(r'sheet\.task\("([^"]+)"\)', code)) == {exercise.id for exercise in page.exercises}
    assert not re.search(r"\bsolve\b|row_keys|right_typed", code)


@each_page
def test_cells_are_short_and_stored_with_outputs(page):
    """A cell has at most 12 lines, ran without fault, and keeps what it printed."""
    for cell in _cells(page, "code"):
        source = "".join(cell["source"])
        assert len(source.splitlines()) <= LINES_A_CELL
        assert all(output["output_type"] == "stream" for output in cell["outputs"])
        assert cell["outputs"] or not re.search(r"sheet\.(task|answer|points)", source)
    last = "".join(_cells(page, "code")[-1]["outputs"][0]["text"])
    assert last.endswith("not right or not answered: none\n")


@pytest.mark.slow
def test_stored_outputs_are_what_the_code_prints():
    """Run strictly by nbval, each cell prints what is stored with it."""
    environment = dict(os.environ, PYTHONPATH=os.pathsep.join([str(ROOT), str(ROOT / "workbook")]))
    notebooks = [str(_notebook(page)) for page in PAGES.values()]
    command = [sys.executable, "-m", "pytest", "--nbval", "-q", "-p", "no:cacheprovider", *notebooks]
    done = subprocess.run(command, cwd=ROOT, env=environment, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout[-3000:]
