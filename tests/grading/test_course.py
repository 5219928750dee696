"""The course folder: everything nbgrader needs, nobody's answers, no file of the instructor's lost."""

import json
import re
import runpy
import sqlite3
from pathlib import Path

import pytest

from grading.answers import parse_journal
from grading.course import (
    CourseError,
    nbgrader_api,
    refuse_stray_answers,
    release_pages,
    released_notebook,
    with_written_answer,
    write_course,
    write_page,
)
from grading.exercises import PAGES
from grading.gradebook import graded_cells
from grading.hand_in import practical_id, read_hand_in
from grading.results import mark_folder
from tests.grading.made_hand_ins import SETTINGS, journals, raw_hand_in, right_hand_in, right_records

WORKBOOK = Path(__file__).resolve().parents[2] / "workbook"


def _write(out, **changes):
    """Write a course without releasing it."""
    return write_course(
        out, pages=PAGES, settings=SETTINGS, workbook=WORKBOOK, **{"release": False, **changes}
    )


@pytest.fixture(scope="module")
def course(tmp_path_factory):
    """Give a course with every page released; its path has a space in it."""
    return _write(tmp_path_factory.mktemp("a course") / "spring term", release=True).folder


def test_start_page_and_first_page_are_assignments(course):
    """Each page is an assignment with one notebook of the page's own name."""
    assert (course / "source" / "0_start_here" / "start_here.ipynb").is_file()
    assert (course / "source" / "1_stud_welding" / "stud_welding.ipynb").is_file()
    for page in PAGES.values():
        files = {path.name for path in (course / "release" / page.assignment).iterdir()}
        assert files == {f"{page.id}.ipynb", "class.toml"}


def test_gradebook_holds_the_cells_of_the_bank(course):
    """nbgrader found in the real pages exactly the graded cells, with the points, that the bank names."""
    query = (
        "select assignment.name, base_cell.name, grade_cells.max_score, grade_cells.cell_type "
        "from grade_cells join base_cell using (id) join notebook on notebook.id = base_cell.notebook_id "
        "join assignment on assignment.id = notebook.assignment_id"
    )
    with sqlite3.connect(course / "gradebook.db") as connection:
        found = {(page, cell): (points, kind) for page, cell, points, kind in connection.execute(query)}
    wanted = {
        (page.assignment, cell): values
        for page in PAGES.values()
        for cell, values in graded_cells(page).items()
    }
    assert found == wanted


def test_the_practical_keeps_its_words(course):
    """Releasing a page does not clear what the practical's cell asks for."""
    for page in PAGES.values():
        cells = [json.loads(text)["cells"] for text in _source_and_release(course, page)]
        asked = [
            next("".join(each["source"]) for each in of_one if _grade_id(each) == practical_id(page.id))
            for of_one in cells
        ]
        assert asked[0] == asked[1]
        assert asked[0].strip()


def _source_and_release(course, page):
    """Return both versions of a page as bytes."""
    name = f"{page.id}.ipynb"
    return [(course / step / page.assignment / name).read_bytes() for step in ("source", "release")]


def _grade_id(cell):
    """Return the gradebook's id of a cell, or None."""
    return cell["metadata"].get("nbgrader", {}).get("grade_id")


class _Node(dict):
    """A configuration that makes its sections on the way, as the real one does."""

    def __getattr__(self, name):
        return self.setdefault(name, _Node())

    def __setattr__(self, name, value):
        self[name] = value


@pytest.fixture(scope="module")
def config(course):
    """Give the settings that nbgrader reads."""
    node = _Node()
    runpy.run_path(str(course / "nbgrader_config.py"), init_globals={"get_config": lambda: node})
    return node


def test_config_has_what_was_found_necessary(config, course):
    """Course, root, exchange, time-out, the answers' protection and the collecting of hand-ins are set."""
    assert config.CourseDirectory.course_id == "millbrook-autumn-2026"
    assert config.CourseDirectory.root == str(course)
    assert config.Exchange.root == str(course / "exchange")
    assert (course / "exchange").stat().st_mode & 0o777 == 0o777
    assert config.Execute.timeout > 30
    assert config.Autograde.exclude_overwriting == {
        page.assignment: ["answers.jsonl"] for page in PAGES.values()
    }
    assert config.FileNameCollectorPlugin.valid_ext == [".ipynb", ".jsonl"]


@pytest.mark.parametrize(
    ("path", "expected"),
    [
        ("/c/downloaded/1_x/extracted/hand_in_mara_1f_20261210T120000/answers.jsonl", ("mara_1f", "answers")),
        (r"C:\c\extracted\hand_in_mara_20261210T120000\stud_welding.ipynb", ("mara", "stud_welding")),
        ("/c/extracted/mara/answers.jsonl", None),
    ],
)
def test_collected_names_are_understood(config, path, expected):
    """The pattern finds learner, time and file in what the extractor writes, on every system."""
    match = re.match(config.FileNameCollectorPlugin.named_regexp, path)
    assert (match and (match["student_id"], match["file_id"])) == expected


def test_course_is_moved_with_its_folder(course, tmp_path):
    """The settings name no fixed place, so a course folder can be moved or copied."""
    text = (course / "nbgrader_config.py").read_text()
    assert str(course) not in text


def test_writing_again_changes_nothing(course):
    """A second writing leaves every file as it was."""
    before = {path: path.read_bytes() for path in (course / "source").rglob("*") if path.is_file()}
    _write(course)
    assert {path: path.read_bytes() for path in before} == before


def test_a_changed_file_is_not_written_over(tmp_path):
    """What the instructor changed stays, all of it, until told to replace it."""
    _write(tmp_path)
    page = tmp_path / "source" / "0_start_here" / "start_here.ipynb"
    page.write_text("{}")
    (tmp_path / "class.toml").unlink()
    with pytest.raises(CourseError, match="has been changed since it was written: pass --replace"):
        _write(tmp_path)
    assert page.read_text() == "{}"
    assert not (tmp_path / "class.toml").exists(), "all files or none"
    _write(tmp_path, replace=True)
    assert json.loads(page.read_text())["cells"]


def test_a_page_without_its_notebook_is_refused(tmp_path):
    """A missing notebook is named before anything is written."""
    with pytest.raises(CourseError, match="page start_here must have its notebook at .*, found none"):
        write_course(tmp_path / "c", pages=PAGES, settings=SETTINGS, workbook=tmp_path, release=False)
    assert not (tmp_path / "c").exists()


def test_stray_answers_stop_everything(tmp_path):
    """Answers beside a page that would be released with it are refused, here and by nbgrader itself."""
    _write(tmp_path)
    stray = tmp_path / "source" / "1_stud_welding" / "answers.jsonl"
    stray.write_text("")
    with pytest.raises(CourseError, match="answers.jsonl must be removed first"):
        refuse_stray_answers(tmp_path, PAGES)
    with pytest.raises(CourseError, match="answers.jsonl must be removed first"):
        _write(tmp_path)
    with pytest.raises((CourseError, SystemExit), match="answers.jsonl"):
        release_pages(tmp_path, ["1_stud_welding"])
    assert not list(tmp_path.glob("release/1_stud_welding/*"))


def test_formgrader_shows_what_mark_wrote(course, tmp_path):
    """Marked into the course, every submission is graded for the formgrader, with its score and its page."""
    hand_ins = tmp_path / "hand_ins"
    hand_ins.mkdir()
    right_hand_in(hand_ins, "Mara Quillby")
    raw_hand_in(hand_ins, "Bram Saltby", journals(right_records("Bram Saltby")[::5]))
    summary = mark_folder(hand_ins, tmp_path / "out", SETTINGS, course=course)
    assert summary.gradebook == course / "gradebook.db"
    assert not (tmp_path / "out" / "gradebook.db").exists()
    api = nbgrader_api(course)
    for page in PAGES.values():
        submissions = {each["student"]: each for each in api.get_submissions(page.assignment)}
        assert len(submissions) == 2
        for each in submissions.values():
            assert each["autograded"], each
            folder = course / "autograded" / each["student"] / page.assignment
            notebook = json.loads((folder / f"{page.id}.ipynb").read_text())
            assert not any(cell.get("outputs") for cell in notebook["cells"])
    mara = next(each for each in submissions.values() if each["first_name"] == "Mara")
    assert api.generate_feedback(page.assignment, mara["student"])["success"]
    assert mara["score"] == sum(exercise.points for exercise in page.exercises)


def test_mark_into_a_course_that_is_none(tmp_path):
    """A folder without released pages is refused in one sentence before anything is marked."""
    right_hand_in(tmp_path, "Mara Quillby")
    with pytest.raises(
        CourseError, match="must hold the released page 0_start_here, found no start_here.ipynb"
    ):
        mark_folder(tmp_path, tmp_path / "out", SETTINGS, course=tmp_path / "none")


def test_written_answer_goes_into_the_practical_only(course):
    """A learner's text takes the place of the practical's, cell and metadata stay as released."""
    page = PAGES["stud_welding"]
    released = released_notebook(course, page)
    changed = json.loads(with_written_answer(released, page, "I welded <b>one</b> \ud800 stud."))
    for before, after in zip(json.loads(released)["cells"], changed["cells"], strict=True):
        if _grade_id(after) == practical_id(page.id):
            assert after["source"].startswith("I welded <b>one</b>")
            assert after["metadata"] == before["metadata"]
        else:
            assert after == before


def test_a_learners_folder_holds_own_answers_only(course, tmp_path):
    """Records of somebody else in a hand-in do not reach the folder that nbgrader marks for the learner."""
    mixed = [*right_records("Mara Quillby")[:9], *right_records("Bram Saltby")]
    path = raw_hand_in(tmp_path, "Mara Quillby", journals(mixed))
    page = PAGES["stud_welding"]
    released = released_notebook(course, page)
    write_page(tmp_path / "folder", page=page, released=released, hand_in=read_hand_in(path))
    contents = parse_journal((tmp_path / "folder" / "answers.jsonl").read_bytes())
    assert {each.learner for each in contents.records} == {"Mara Quillby"}
    assert {each.exercise.partition(".")[0] for each in contents.records} == {page.id}
    assert contents.problems == ()
