"""The verb `report`: reads the gradebook as it stands, with or without names, and fails in one sentence."""

import json
import sqlite3

import pytest
from click.testing import CliRunner

from grading.cli import main
from tests.grading.made_hand_ins import right_hand_in


def run(*arguments):
    """Run one command and return its result."""
    return CliRunner().invoke(main, [str(each) for each in arguments])


@pytest.fixture(scope="module")
def results(tmp_path_factory):
    """Give a folder of results of one learner who is right everywhere."""
    folder = tmp_path_factory.mktemp("class")
    (folder / "in").mkdir()
    right_hand_in(folder / "in", "Mara Quillby")
    assert run("mark", folder / "in", "--out", folder / "out", "--no-feedback").exit_code == 0
    return folder / "out"


def test_a_mark_changed_by_a_person_counts(results):
    """A score that a person put into the gradebook is in the report that is written after it."""
    page = results / "class_report.html"
    assert "handed in: 100 %." in page.read_text(encoding="utf-8")
    with sqlite3.connect(results / "gradebook.db") as database:
        database.execute("UPDATE grade SET manual_score = 0, needs_manual_grade = 0")
    result = run("report", results)
    assert result.exit_code == 0
    assert str(page) in result.output
    assert "handed in: 0 %." in page.read_text(encoding="utf-8")


def test_without_names_into_a_file_of_its_own(results):
    """The page without names stands beside the one with names, and the summary is JSON where asked for."""
    result = run("report", results, "--no-names", "--json")
    page = results / "class_report_no_names.html"
    assert json.loads(result.output) == {"report": str(page), "learners": 1, "names": False}
    assert "Quillby" not in page.read_text(encoding="utf-8")


def test_a_folder_without_results_is_one_sentence(tmp_path):
    """What is no folder of results is refused in one sentence."""
    result = run("report", tmp_path)
    assert result.exit_code == 1
    assert "must hold class_work.json" in result.output
    assert "Traceback" not in result.output


def test_a_gradebook_elsewhere_is_asked_for(results, tmp_path):
    """Where the gradebook lies in a course, the sentence says which option names it."""
    (tmp_path / "class_work.json").write_bytes((results / "class_work.json").read_bytes())
    result = run("report", tmp_path)
    assert result.exit_code == 1
    assert "with a course give --course" in result.output
    assert run("report", tmp_path, "--course", results).exit_code == 0
