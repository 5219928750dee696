"""The verbs for what a person enters: practicals, changes, and what marking says of both."""

import csv
import json

import pytest

from grading.exercises import PAGES
from grading.rubric import read_rubrics
from tests.grading.made_hand_ins import MAXIMUM, right_hand_in
from tests.grading.test_cli import assert_one_sentence, run

RUBRIC = read_rubrics(PAGES)["stud_welding"]


@pytest.fixture(scope="module")
def marked(tmp_path_factory):
    """Give the folders of hand-ins and results of one learner who is right everywhere."""
    folder = tmp_path_factory.mktemp("records")
    (folder / "in").mkdir()
    right_hand_in(folder / "in", "Mara Quillby")
    result = run("mark", folder / "in", "--out", folder / "out", "--no-feedback")
    assert result.exit_code == 0, result.output
    return folder


def _row(folder):
    """Read the one row of the results."""
    with (folder / "out" / "results.csv").open(encoding="utf-8-sig", newline="") as file:
        (row,) = csv.DictReader(file)
    return row


def _table(folder, *, level="2"):
    """Write a table of practical marks, every line of the rubric at one level."""
    rows = [f"Mara Quillby,stud_welding,{line.id},{level},R. Voss,2026-12-02" for line in RUBRIC.lines]
    path = folder / "practical.csv"
    path.write_text("\n".join(["learner,page,criterion,level,by,when", *rows, ""]), encoding="utf-8")
    return path


def test_practical_marks_join_the_written_ones(marked):
    """Entered from a table they stand in the results, and a second marking keeps and counts them."""
    result = run("practical", _table(marked), "--results", marked / "out")
    assert result.exit_code == 0, result.output
    assert "Entered 1 practicals" in result.output
    assert _row(marked)["stud_welding-practical"] == "10.0"
    result = run("mark", marked / "in", "--out", marked / "out", "--no-feedback")
    assert "Kept 1 score that a person gave" in result.output
    assert float(_row(marked)["points"]) == pytest.approx(MAXIMUM + 10.0, abs=1e-3), (
        "four decimals in the table"
    )


def test_a_table_with_mistakes_enters_nothing(marked):
    """Every mistake is named with its line, in one sentence, and no score changes."""
    before = _row(marked)
    result = run("practical", _table(marked, level="7"), "--results", marked / "out")
    assert_one_sentence(result, "nothing is entered", "practical.csv line 2: level", "line 6: level")
    assert _row(marked) == before


def test_a_change_is_kept_and_told_by_marking(marked):
    """A score given by hand stands in the results and the log, survives marking, and marking says so."""
    where = ("--results", marked / "out", "--by", "R. Voss", "--why", "gauge was broken")
    item = next(each.id for each in PAGES["stud_welding"].exercises if each.counts)
    result = run("change", "mara quillby", item, "0,5", *where, "--json")
    assert result.exit_code == 0, result.output
    assert json.loads(result.stdout)["after"] == 0.5
    column = item.replace(".", "-")
    assert _row(marked)[column] == "0.5"
    result = run("mark", marked / "in", "--out", marked / "out", "--no-feedback")
    assert f"{column}: 0.5 stays, marking came to" in result.output
    assert _row(marked)[column] == "0.5"
    assert "gauge was broken" in (marked / "out" / "changes.csv").read_text(encoding="utf-8-sig")
    assert run("change", "Mara Quillby", item, "automatic", *where).exit_code == 0
    assert float(_row(marked)[column]) > 0.5


def test_changes_that_cannot_be_made_are_one_sentence(marked, tmp_path):
    """An unknown learner or item, a number that is none and a folder without gradebook are refused."""
    where = ("--by", "V", "--why", "w", "--results")
    assert_one_sentence(run("change", "Mora", "x", "1", *where, marked / "out"), "learner must be one who")
    assert_one_sentence(run("change", "Mora", "x", "much", *where, marked / "out"), "points must be a number")
    result = run("change", "Mara Quillby", "stud_welding.energy", "1", *where, marked / "out")
    assert_one_sentence(result, "item must be a column of results.csv, such as", "stud_welding-arc_energy")
    assert len(result.stderr) < 300, "the nearest names, not all"
    assert_one_sentence(
        run("change", "Mora", "x", "1", *where, tmp_path), "found no", "mark the hand-ins first"
    )


def test_scores_are_exported_as_statements(marked, tmp_path):
    """The command writes one list of statements; an address that is none is one sentence."""
    where = ("--results", marked / "out", "--out", tmp_path / "new")
    result = run("statements", *where, "--json")
    assert result.exit_code == 0, result.output
    told = json.loads(result.stdout)
    found = json.loads((tmp_path / "new" / "statements.json").read_text(encoding="utf-8"))
    assert (told["statements"], told["learners"]) == (len(found), 1)
    assert {each["actor"]["account"]["name"] for each in found} == {_row(marked)["learner"]}
    assert_one_sentence(run("statements", *where, "--site", "school"), "site must be an address")
