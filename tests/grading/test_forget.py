"""Forgetting a learner: nothing under the folders names them afterwards, and nobody else loses anything."""

import json
import shutil
import sqlite3
import zipfile

import pytest

from grading.class_settings import SHIPPED_CLASS_FILE, read_class_file
from grading.class_work import read_class_work
from grading.forget import ForgetError, forget_learner
from grading.forget_person import MADE_LIST, Person
from grading.gradebook_scores import read_scores
from grading.hand_in import read_hand_in
from grading.learners import learner_slug
from grading.practical import append_judged
from grading.results import mark_folder
from tests.grading.made_hand_ins import SETTINGS, journals, raw_hand_in, right_records
from tests.grading.test_cli import assert_one_sentence, run

NAME, OTHER = "Zoë Quillby", "Bram Saltby"
FEW = ["start_here.cautions"]


@pytest.fixture(scope="module")
def whole_class(tmp_path_factory):
    """Give a marked class of two: hand-ins, results, a report, an export, a shared computer."""
    folder = tmp_path_factory.mktemp("class")
    hand_ins, out = folder / "in", folder / "out"
    hand_ins.mkdir()
    raw_hand_in(hand_ins, NAME, journals(right_records(NAME, exercises=FEW)))
    both = right_records(OTHER, exercises=FEW) + right_records(NAME, exercises=FEW)
    raw_hand_in(hand_ins, OTHER, journals(both))
    (hand_ins / f"hand_in_{learner_slug(NAME.casefold())}_20261201_101010.zip").write_bytes(b"PK broken")
    (hand_ins / MADE_LIST).write_text("\n".join(sorted(path.name for path in hand_ins.iterdir())))
    mark_folder(hand_ins, out, SETTINGS)
    append_judged(out / "practical.csv", [(NAME, "start_here", "stop", 1, "V", "2026-12-02", "")])
    append_judged(
        out / "practical.csv", [(OTHER, "start_here", "stop", 1, "V", "2026-12-02", f"like {NAME}")]
    )
    entries = [{"actor": {"name": each}, "points": 1} for each in (NAME, OTHER)]
    (out / "statements.json").write_text(json.dumps(entries))
    (out / "class_report.html").write_text(f"<p>Talk to Zo&euml; or {NAME.upper()}.</p>")
    submitted = out / "submitted" / learner_slug(NAME.casefold()) / "1_page"
    submitted.mkdir(parents=True)
    (submitted / "page.ipynb").write_text("{}")
    return folder


@pytest.fixture
def places(whole_class, tmp_path):
    """Give a copy of the class's two folders, hand-ins and results."""
    shutil.copytree(whole_class, tmp_path / "class")
    return tmp_path / "class" / "in", tmp_path / "class" / "out"


def _everything(folder):
    """Give the name and the bytes of every file, and of every file packed in one."""
    for path in sorted(folder.rglob("*")):
        yield path.name.encode()
        if path.is_file():
            yield path.read_bytes()
            if zipfile.is_zipfile(path):
                with zipfile.ZipFile(path) as archive:
                    yield from (archive.read(name) for name in archive.namelist())


def _named(folder):
    """Return the spellings of the learner that still stand anywhere, in bytes or as JSON writes them."""
    spellings = {NAME, NAME.casefold(), NAME.upper(), "Quillby", "quillby", learner_slug(NAME.casefold())}
    found = b"\n".join(_everything(folder))
    ways = {way for each in spellings for way in (each.encode(), json.dumps(each)[1:-1].encode())}
    return sorted(way for way in ways if way in found)


def test_nothing_names_the_learner_afterwards(places):
    """No file, no file name, no packed file and no free page of the gradebook holds name or id."""
    hand_ins, out = places
    assert len(_named(hand_ins.parent)) > 4, "the search finds the learner beforehand"
    done = forget_learner(NAME, results=[out], hand_ins=[hand_ins], do=True)
    assert _named(hand_ins.parent) == []
    assert done.left == ()
    assert len(done.steps) >= 9


def test_nobody_else_loses_anything(places):
    """The other's scores, page, rows and own answers stay; a mention of the name is cut out of a note."""
    hand_ins, out = places
    before = [each for each in read_scores(out / "gradebook.db") if each.name == OTHER]
    forget_learner("zoë quillby", results=[out], hand_ins=[hand_ins], do=True)
    assert list(read_scores(out / "gradebook.db")) == before
    (file,) = hand_ins.glob("*.zip")
    assert (hand_ins / MADE_LIST).read_text() == file.name
    hand_in = read_hand_in(file)
    assert [each.learner for each in hand_in.records] == [OTHER]
    assert hand_in.problems == (), "the chain of the records that are left is whole"
    assert [path.name for path in (out / "feedback").iterdir()] == [f"{learner_slug(OTHER.casefold())}.html"]
    assert "like [forgotten]" in (out / "practical.csv").read_text(encoding="utf-8-sig")
    assert [each["actor"]["name"] for each in json.loads((out / "statements.json").read_text())] == [OTHER]
    kept = read_class_work(out).learners
    assert [each.student_id for each in kept] == [learner_slug(OTHER.casefold())], (
        "the report can be made again"
    )
    again = mark_folder(hand_ins, out, SETTINGS)
    assert again.learners == 1


def test_without_yes_nothing_is_deleted(places):
    """What would be done is listed in the same steps, and no file changes."""
    hand_ins, out = places
    before = {path: path.read_bytes() for path in hand_ins.parent.rglob("*") if path.is_file()}
    where = ("--results", out, "--hand-ins", hand_ins)
    result = run("forget", NAME, *where)
    assert result.exit_code == 1
    assert "deleted the hand-in" in result.output
    assert "run it again with --yes" in result.stderr
    assert {path: path.read_bytes() for path in hand_ins.parent.rglob("*") if path.is_file()} == before
    planned = [line for line in result.stdout.splitlines() if line.startswith("  ")]
    result = run("forget", NAME, *where, "--yes")
    assert result.exit_code == 0, result.output
    assert [line for line in result.stdout.splitlines() if line.startswith("  ")] == planned


def test_a_file_that_still_names_the_learner_is_listed(places):
    """A file of a kind that is not ours is left alone, named, and makes the command fail."""
    hand_ins, out = places
    (out / "my notes.txt").write_text(f"call {NAME} on Monday")
    result = run("forget", NAME, "--results", out, "--hand-ins", hand_ins, "--yes")
    assert_one_sentence(result, "still named", "my notes.txt")
    assert "my notes.txt" not in result.stdout


def test_an_unknown_learner_is_refused(places, tmp_path):
    """A name of whom nothing is kept, and a folder that is not there, are refused in a sentence."""
    hand_ins, out = places
    with pytest.raises(ForgetError, match="found nothing of 'Nobody Here'"):
        forget_learner("Nobody Here", results=[out], hand_ins=[hand_ins], do=True)
    with pytest.raises(ForgetError, match="folder must be there"):
        forget_learner(NAME, results=[tmp_path / "x"], hand_ins=[hand_ins], do=True)


def test_a_learner_called_by_a_number_takes_no_text_along(tmp_path):
    """A bare number goes from tables and hand-ins, but no other number in a text is touched."""
    for name in ("17", OTHER):
        raw_hand_in(tmp_path, name, journals(right_records(name, exercises=FEW)))
    out = tmp_path / "out"
    mark_folder(tmp_path, out, read_class_file(SHIPPED_CLASS_FILE))
    done = forget_learner("17", results=[out], hand_ins=[tmp_path], do=True)
    assert done.left == ()
    assert [each.student_id for each in read_scores(out / "gradebook.db")] == [learner_slug(OTHER.casefold())]
    assert len(list((out / "feedback").iterdir())) == 1


def test_a_name_is_found_as_a_whole_word_only():
    """Inside another word, in a picture's letters or as too short a name nothing is found."""
    person = Person("anna", ["Anna Öz"])
    assert person.is_in("for anna, or ANNA ÖZ; Anna \\u00d6z")
    assert not person.is_in("annas annealed savanna")
    assert not person.is_in('src="data:image/png;base64,ab/anna+cd=="')
    assert Person("bo", ["Bo"]).pattern is None
    assert person.is_named("'ANNA  öz")
    assert not person.is_named("")


def test_no_page_of_the_gradebook_keeps_the_name(places):
    """The gradebook file is written anew: its raw bytes do not hold the deleted name."""
    hand_ins, out = places
    forget_learner(NAME, results=[out], hand_ins=[hand_ins], do=True)
    assert b"Quillby" not in (out / "gradebook.db").read_bytes()
    with sqlite3.connect(out / "gradebook.db") as connection:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        orphans = "SELECT count(*) FROM grade WHERE notebook_id NOT IN (SELECT id FROM submitted_notebook)"
        assert connection.execute(orphans).fetchone() == (0,)
