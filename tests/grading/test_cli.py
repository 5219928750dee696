"""The command line: its help is enough, it ends with 0 only on success, and a failure is one sentence."""

import csv
import importlib
import json
import os
import sqlite3
import subprocess
import sys
import zipfile
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from grading.cli import ROOT, main
from grading.cli_shared import EXPECTED, one_sentence
from grading.exercises import PAGES
from tests.grading.made_hand_ins import MAXIMUM, raw_hand_in, right_hand_in
from tests.grading.xapi_rules import statement_fault

VERBS = sorted(main.commands)


def run(*arguments):
    """Run one command and return its result."""
    return CliRunner().invoke(main, [str(each) for each in arguments])


def _rows(path):
    """Read a table as dictionaries."""
    with path.open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


@pytest.fixture(scope="module")
def demo(tmp_path_factory):
    """Give the folder of an invented class and the result of the command that made it."""
    folder = tmp_path_factory.mktemp("demo")
    return folder, run("demo", "--out", folder, "--learners", 8)


@pytest.fixture
def hand_ins(tmp_path):
    """Give a folder with one hand-in that is right everywhere."""
    folder = tmp_path / "hand ins"
    folder.mkdir()
    right_hand_in(folder, "Mara Quillby")
    return folder


def test_the_verbs_are_these():
    """Nothing is missing from the command line and nothing unknown is on it."""
    records = ["change", "forget", "items", "practical", "statements"]
    others = ["check", "collect", "course", "demo", "mark", "pack", "report", "sheet"]
    assert sorted({*records, *others}) == VERBS


@pytest.mark.parametrize("verb", VERBS)
def test_every_verb_has_help(verb):
    """Each verb explains itself, offers --json, and is named in the first help."""
    result = run(verb, "--help")
    assert result.exit_code == 0
    assert "--json" in result.output
    assert len(main.commands[verb].help.split()) > 10
    assert verb in run("--help").output


@pytest.mark.parametrize("verb", VERBS)
def test_every_option_is_explained(verb):
    """No option is without a word on what it does."""
    for parameter in main.commands[verb].params:
        assert parameter.param_type_name == "argument" or parameter.help, parameter.name


def test_no_arguments_show_the_help():
    """Called with nothing it shows what it can do, and that is no failure."""
    assert run().output == run("--help").output
    assert run().exit_code == 0


def test_demo_shows_the_whole_thing(demo):
    """An invented class is marked: gradebook, tables, a page for each learner, a summary in words."""
    folder, result = demo
    assert result.exit_code == 0, result.output
    results = folder / "results"
    assert len(list((results / "feedback").glob("*.html"))) == 8
    assert len(_rows(results / "results.csv")) == 8
    assert (results / "gradebook.db").stat().st_size > 0
    assert "Marked 8 learners" in result.output
    assert "Most frequent slips:" in result.output
    assert any("no zip archive" in row["problem"] for row in _rows(results / "problems.csv"))


def test_mark_after_demo(demo, tmp_path):
    """What demo marked comes out the same from mark, and the marks in all three places agree."""
    folder, _ = demo
    result = run("mark", folder / "hand_ins", "--out", tmp_path, "--json")
    assert result.exit_code == 0, result.output
    summary = json.loads(result.stdout)
    assert summary["learners"] == 8
    assert _rows(tmp_path / "results.csv") == _rows(folder / "results" / "results.csv")
    rows = _rows(tmp_path / "results.csv")
    with sqlite3.connect(tmp_path / "gradebook.db") as connection:
        (total,) = connection.execute("select sum(auto_score) from grade").fetchone()
    # atol 0.01: the table rounds to four decimals for each of eight learners
    assert sum(float(row["points"]) for row in rows) == pytest.approx(total, abs=0.01)
    assert summary["mean_points"] == pytest.approx(total / 8, abs=0.01)
    assert summary["slips"][0]["learners"] >= summary["slips"][-1]["learners"]
    assert all(each["sentence"] for each in summary["slips"])


def test_statements_of_the_demo_class_keep_the_published_schema(demo, tmp_path):
    """Every score of every learner of the invented class is a statement as the schema wants it."""
    result = run("statements", "--results", demo[0] / "results", "--out", tmp_path)
    assert result.exit_code == 0, result.output
    found = json.loads((tmp_path / "statements.json").read_text(encoding="utf-8"))
    assert len({each["actor"]["account"]["name"] for each in found}) == 8
    assert {statement_fault(each) for each in found} == {""}


def test_marking_again_keeps_what_a_person_entered(hand_ins, tmp_path):
    """A practical's mark and a comment are there after a second marking, and stand in the table."""
    out = tmp_path / "out"
    assert run("mark", hand_ins, "--out", out).exit_code == 0
    with sqlite3.connect(out / "gradebook.db") as connection:
        connection.execute(
            "update grade set manual_score = 4.5, needs_manual_grade = 0 where cell_id in "
            "(select id from base_cell where name = 'stud_welding-practical')"
        )
        connection.execute("update comment set manual_comment = 'square and centred'")
    assert run("mark", hand_ins, "--out", out).exit_code == 0
    (row,) = _rows(out / "results.csv")
    assert row["stud_welding-practical"] == "4.5"
    assert float(row["points"]) == pytest.approx(MAXIMUM + 4.5, abs=1e-3), "four decimals in the table"
    with sqlite3.connect(out / "gradebook.db") as connection:
        comments = connection.execute("select distinct manual_comment from comment").fetchall()
    assert comments == [("square and centred",)]


def test_one_file_can_be_marked(hand_ins, tmp_path):
    """A single file is marked like a folder; without feedback pages none are written."""
    (file,) = hand_ins.iterdir()
    result = run("mark", file, "--out", tmp_path / "out", "--no-feedback")
    assert result.exit_code == 0, result.output
    assert len(_rows(tmp_path / "out" / "results.csv")) == 1
    assert not (tmp_path / "out" / "feedback").exists()


def test_marking_one_more_keeps_the_others(hand_ins, tmp_path):
    """A straggler marked into the same results joins the table and drives nobody out."""
    out = tmp_path / "out"
    run("mark", hand_ins, "--out", out)
    late = tmp_path / "late"
    late.mkdir()
    right_hand_in(late, "Bram Saltby")
    assert run("mark", late, "--out", out).exit_code == 0
    assert [row["name"] for row in _rows(out / "results.csv")] == ["Bram Saltby", "Mara Quillby"]


def test_a_class_file_changes_credit(hand_ins, tmp_path):
    """The class file given is the one that is used; a faulty one is refused in one sentence."""
    faulty = tmp_path / "class.toml"
    faulty.write_text('[class]\ncourse_key = "x"\ntitle = "X"\ncredit_by_tries = [1.0]\n')
    result = run("mark", hand_ins, "--out", tmp_path / "out", "--class", faulty)
    assert_one_sentence(result, "credit_by_tries")


def assert_one_sentence(result, *words):
    """Check that a command failed with one sentence on standard error that holds these words."""
    assert result.exit_code == 1, result.output
    assert result.stderr.startswith("Error: ")
    assert result.stderr.count("\n") == 1
    assert "Traceback" not in result.stderr
    for word in words:
        assert word in result.stderr


@pytest.mark.parametrize(("name", "module"), EXPECTED.items())
def test_an_expected_failure_is_one_sentence(name, module):
    """Each failure of the list is there, and becomes a sentence once its module is loaded."""
    failure = getattr(importlib.import_module(module), name)("it did not work")
    with pytest.raises(click.ClickException, match="it did not work"), one_sentence():
        raise failure


def test_an_empty_folder_is_one_sentence(tmp_path):
    """A folder without hand-ins fails with one sentence, and nothing is written."""
    (tmp_path / "in").mkdir()
    assert_one_sentence(run("mark", tmp_path / "in", "--out", tmp_path / "out"), "found none")
    assert_one_sentence(run("mark", tmp_path / "nowhere", "--out", tmp_path / "out"), "found nothing at")


def test_nothing_but_broken_files_is_a_failure(tmp_path):
    """Where no file could be marked the command fails, and the table of problems says why for each."""
    (tmp_path / "in").mkdir()
    (tmp_path / "in" / "notes.txt").write_text("hello")
    result = run("mark", tmp_path / "in", "--out", tmp_path / "out")
    assert_one_sentence(result, "none of the 1 files could be marked", "problems.csv")
    (row,) = _rows(tmp_path / "out" / "problems.csv")
    assert row["file"] == "notes.txt"


def test_results_that_cannot_be_written_are_one_sentence(hand_ins, tmp_path):
    """A file where the results folder should be is told before anything is marked, and is left alone."""
    (tmp_path / "out").write_text("in the way")
    result = run("mark", hand_ins, "--out", tmp_path / "out")
    assert_one_sentence(result, str(tmp_path / "out"), "results cannot be written there")
    assert (tmp_path / "out").read_text() == "in the way"


@pytest.mark.skipif(
    not Path("/proc/self").exists(), reason="needs a folder that even the superuser cannot write"
)
def test_a_folder_that_nobody_may_write_is_one_sentence(hand_ins):
    """A results folder that may not be written is told in one sentence."""
    assert_one_sentence(run("mark", hand_ins, "--out", "/proc/results"), "results cannot be written there")


def test_a_full_disk_is_one_sentence(hand_ins, tmp_path, monkeypatch):
    """Where the disk refuses, the sentence names it and the earlier results are still there."""
    out = tmp_path / "out"
    run("mark", hand_ins, "--out", out)
    before = (out / "results.csv").read_bytes()

    def refuse(*_arguments, **_named):
        raise OSError(28, "No space left on device", str(out))

    monkeypatch.setattr("grading.results.tempfile.TemporaryFile", refuse)
    assert_one_sentence(run("mark", hand_ins, "--out", out), "No space left on device")
    assert (out / "results.csv").read_bytes() == before


def test_check_of_the_bank():
    """The shipped bank has no fault."""
    result = run("check")
    assert result.exit_code == 0, result.output
    assert "exercises" in result.output


def test_check_of_a_class_file(tmp_path):
    """A class file is told in words; a faulty one fails with its reason."""
    assert run("check", ROOT / "workbook" / "class.toml").exit_code == 0
    (tmp_path / "class.toml").write_text("[class]\ntitle = 3\n")
    assert_one_sentence(run("check", tmp_path / "class.toml"), "course_key")


def test_check_of_a_hand_in(hand_ins, tmp_path):
    """A sound hand-in passes; a torn journal and a strange file fail, each with its reason."""
    (file,) = hand_ins.iterdir()
    assert "Mara Quillby" in run("check", file).output
    torn = raw_hand_in(tmp_path, "Bram Saltby", {"stud_welding": b'{"at"'})
    assert_one_sentence(run("check", torn), "incomplete")
    strange = tmp_path / "photo.zip"
    strange.write_bytes(b"PK")
    assert_one_sentence(run("check", strange), "not a hand-in")
    data = json.loads(run("check", file, "--json").stdout)
    assert data["problems"] == []


def test_pack_holds_nothing_of_the_instructors(tmp_path):
    """The bundle is one folder with workbook and grading, without solutions, notes, tests or answers."""
    own = tmp_path / "class.toml"
    own.write_text('[class]\ncourse_key = "brook-lane-7"\ntitle = "Brook Lane"\n')
    result = run("pack", "--out", tmp_path, "--class", own, "--json")
    assert result.exit_code == 0, result.output
    with zipfile.ZipFile(json.loads(result.stdout)["bundle"]) as bundle:
        names = bundle.namelist()
        assert bundle.read("second_plate/workbook/class.toml") == own.read_bytes()
    assert {name.split("/")[0] for name in names} == {"second_plate"}
    tops = {name.split("/")[1] for name in names}
    assert {"workbook", "grading", "requirements.txt"} <= tops
    assert not tops & {"solutions", "instructor_notes", "tests", ".git", ".ci", "DEVELOPERS.md"}
    for page in PAGES.values():
        assert f"second_plate/{(Path('workbook') / page.folder / page.notebook).as_posix()}" in names
    ends = ("answers.jsonl", "learner.json", ".pyc", ".lock")
    assert not [name for name in names if name.endswith(ends) or "__pycache__" in name]


def test_pack_holds_all_that_runs(tmp_path):
    """Every file of code, of style and of tables is in the bundle, whatever its name begins with."""
    run("pack", "--out", tmp_path)
    with zipfile.ZipFile(next(tmp_path.iterdir())) as bundle:
        names = set(bundle.namelist())
    kinds = {".py", ".js", ".css", ".csv", ".json", ".jinja", ".sql"}
    files = [
        path for top in ("workbook", "grading") for path in (ROOT / top).rglob("*") if path.suffix in kinds
    ]
    wanted = {
        f"second_plate/{path.relative_to(ROOT).as_posix()}" for path in files if path.name != "learner.json"
    }
    assert wanted - names == set()


def test_pack_twice_makes_the_same_file(tmp_path):
    """The same workbook makes the same bundle, byte for byte."""
    run("pack", "--out", tmp_path / "one")
    run("pack", "--out", tmp_path / "two")
    one, two = (next((tmp_path / each).iterdir()).read_bytes() for each in ("one", "two"))
    assert one == two


def _plain_python(arguments, **changes):
    """Run `python -m grading` with a Python that has none of the libraries."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT), **changes}
    return subprocess.run(
        [sys.executable, "-S", "-m", "grading", *arguments],
        env=environment,
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )


def test_a_python_without_the_libraries_says_what_to_do(tmp_path):
    """Without libraries and without the workbook's environment one sentence says what to run first."""
    result = _plain_python(["--help"], GRADING_OWN_PYTHON="1")
    assert result.returncode == 1
    assert result.stderr.strip().startswith("Run `python3 workbook/open.py` first")
    assert result.stderr.count("\n") == 1


def test_a_python_without_the_libraries_uses_the_workbooks_own(tmp_path):
    """Where the workbook's environment is there, the command runs with it and keeps its exit code."""
    script = (
        "import sys; sys.argv = ['grading', 'mark', 'x y']; import grading.__main__ as m; "
        f"m.own_python = lambda: {sys.executable!r}; m.start()"
    )
    result = subprocess.run(
        [sys.executable, "-S", "-c", script],
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )
    assert result.returncode == 2
    assert "Missing option '--out'" in result.stderr


def test_help_loads_nothing_heavy():
    """Help comes without loading nbgrader, pandas, numpy or the bank."""
    script = (
        "import sys, grading.cli; "
        "heavy = ('nbgrader', 'pandas', 'numpy', 'sqlalchemy', 'grading.exercises'); "
        "print([each for each in heavy if each in sys.modules])"
    )
    paths = os.pathsep.join([str(ROOT), str(ROOT / "workbook")])
    result = subprocess.run(
        [sys.executable, "-c", script],
        env={**os.environ, "PYTHONPATH": paths},
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    assert result.stdout.strip() == "[]"
