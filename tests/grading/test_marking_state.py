"""A marking that was interrupted goes on: nothing unchanged is marked twice, and the results are the same."""

import csv
import sqlite3
from dataclasses import replace

import pytest

from grading import marking
from grading.demo_class import write_demo_class
from grading.hand_ins import hand_in_files
from grading.marking_state import STATE_FILE
from grading.results import mark_folder
from tests.grading.made_hand_ins import SETTINGS, journals, raw_hand_in, right_hand_in, right_records

SCORES = (
    "select s.student_id, b.name, g.auto_score, g.needs_manual_grade from grade g "
    "join submitted_notebook n on n.id = g.notebook_id join submitted_assignment s on s.id = n.assignment_id "
    "join base_cell b on b.id = g.cell_id order by 1, 2"
)


@pytest.fixture(scope="module")
def hand_ins(tmp_path_factory):
    """Give the folder of a small invented class."""
    folder = tmp_path_factory.mktemp("class")
    write_demo_class(folder, SETTINGS, learners=10)
    return folder


@pytest.fixture
def read(monkeypatch):
    """Mark three files at a time, and list the files that are read."""
    files, read_all = [], marking.read_by_learner

    def listed(chunk, digests):
        files.extend(chunk)
        return read_all(chunk, digests)

    monkeypatch.setattr(marking, "read_by_learner", listed)
    monkeypatch.setattr(marking, "CHUNK", 3)
    return files


def _mark(hand_ins, out, settings=SETTINGS, *, feedback=False, **changes):
    return mark_folder(hand_ins, out, settings, feedback=feedback, report=False, processes=1, **changes)


def _results(out):
    """Return what a marking wrote: scores and tables."""
    with sqlite3.connect(out / "gradebook.db") as connection:
        scores = connection.execute(SCORES).fetchall()
    return scores, *((out / name).read_bytes() for name in ("results.csv", "problems.csv"))


def _interrupt(done, total):
    """Stop as soon as the second chunk is done."""
    if done > 3:
        raise KeyboardInterrupt


def test_an_interrupted_marking_goes_on(hand_ins, tmp_path, read):
    """The second run reads what the first did not get to, and both together come to an undisturbed run."""
    whole = _mark(hand_ins, tmp_path / "whole")
    everything = list(read)
    read.clear()
    with pytest.raises(KeyboardInterrupt):
        _mark(hand_ins, tmp_path / "out", progress=_interrupt)
    assert len(read) == 6
    resumed = _mark(hand_ins, tmp_path / "out")
    assert sorted(read) == sorted(everything)
    assert _results(tmp_path / "out") == _results(tmp_path / "whole")
    assert resumed.as_text().replace(str(tmp_path / "out"), str(tmp_path / "whole")) == whole.as_text()


def test_marking_again_reads_only_what_changed(tmp_path, read):
    """A file with other bytes is marked again, a file that is new too, the others are not; marks follow."""
    folder = tmp_path / "in"
    folder.mkdir()
    paths = [
        right_hand_in(folder, name, file_name=f"{name}.zip") for name in ("Mara", "Bram", "Noor", "Ilse")
    ]
    (folder / "broken.zip").write_bytes(b"PK")
    _mark(folder, tmp_path / "out")
    read.clear()
    raw_hand_in(folder, "Bram", journals(right_records("Bram")[:-1]), file_name="Bram.zip")
    added = right_hand_in(folder, "Tobin", file_name="Tobin.zip")
    summary = _mark(folder, tmp_path / "out")
    assert sorted(read) == sorted(map(str, (paths[1], added)))
    assert (summary.learners, summary.files, len(summary.problems)) == (5, 6, 1)
    _mark(folder, tmp_path / "anew")
    assert _results(tmp_path / "out") == _results(tmp_path / "anew")


def test_a_second_hand_in_joins_one_marked_before(tmp_path, read):
    """A learner's later file is put together with an earlier one whose marks were kept."""
    folder = tmp_path / "in"
    folder.mkdir()
    records = right_records("Mara")
    raw_hand_in(folder, "Mara", journals(records[:5]), file_name="a.zip")
    _mark(folder, tmp_path / "out")
    raw_hand_in(folder, "Mara", journals(records[5:]), file_name="b.zip")
    assert _mark(folder, tmp_path / "out").learners == 1
    _mark(folder, tmp_path / "anew")
    assert _results(tmp_path / "out") == _results(tmp_path / "anew")


def test_another_class_file_marks_everything_again(hand_ins, tmp_path, read):
    """What is kept belongs to one class file; with other credit nothing of it is used."""
    _mark(hand_ins, tmp_path)
    read.clear()
    _mark(hand_ins, tmp_path, replace(SETTINGS, credit_by_try=(1.0, 0.5, 0.25)))
    assert len(read) == len(hand_in_files(hand_ins))


def test_another_version_of_the_marking_marks_everything_again(hand_ins, tmp_path, read, monkeypatch):
    """A correction of an exercise, of the library or of the marking itself reaches every file."""
    _mark(hand_ins, tmp_path)
    read.clear()
    monkeypatch.setattr("grading.marking_state.digest_of_marking", lambda: "corrected")
    _mark(hand_ins, tmp_path)
    assert len(read) == len(hand_in_files(hand_ins))


def test_a_torn_line_is_marked_again(hand_ins, tmp_path, read):
    """Where the power went while a line was written, that chunk is marked again and the file is mended."""
    _mark(hand_ins, tmp_path)
    state = tmp_path / STATE_FILE
    whole = state.read_bytes()
    state.write_bytes(whole[:-20])
    before = _results(tmp_path)
    read.clear()
    _mark(hand_ins, tmp_path)
    assert 0 < len(read) <= 3
    assert _results(tmp_path) == before
    assert state.read_bytes() == whole


def test_a_feedback_page_that_is_gone_is_written_again(hand_ins, tmp_path, read):
    """With feedback pages asked for, a learner without one is marked again; the others are left alone."""
    _mark(hand_ins, tmp_path, feedback=True)
    pages = sorted((tmp_path / "feedback").iterdir())
    pages[0].unlink()
    read.clear()
    _mark(hand_ins, tmp_path, feedback=True)
    assert 1 <= len(read) <= 2, "somebody handed in twice"
    assert sorted((tmp_path / "feedback").iterdir()) == pages


def test_what_cannot_be_read_is_told_each_time(hand_ins, tmp_path):
    """Problems are kept with the marks: the table of the second run names them all again."""
    _mark(hand_ins, tmp_path)
    with (tmp_path / "problems.csv").open(encoding="utf-8-sig", newline="") as file:
        before = list(csv.reader(file))
    _mark(hand_ins, tmp_path)
    with (tmp_path / "problems.csv").open(encoding="utf-8-sig", newline="") as file:
        assert list(csv.reader(file)) == before
    assert len(before) > 1
