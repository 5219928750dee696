"""Clocks set back or on: no answer is lost, marks rest on the journal's order, odd times are told."""

import csv
import os
from datetime import datetime, timedelta
from itertools import count
from pathlib import Path

import pytest

from grading import marking
from grading.answers import content_of, journal_bytes
from grading.class_settings import read_class_file
from grading.hand_in import read_hand_in
from grading.hand_ins import hand_in_files
from grading.journal import Journal
from grading.results import mark_folder
from tests.grading.gradebook_contents import contents
from tests.grading.made_hand_ins import MADE_AT, journals, raw_hand_in, right_records
from tests.hostile.crash_class import CHOSEN, write_class_file, write_hand_ins
from tests.hostile.crash_journal import entry

LEARNERS = 6


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    """Give a small class: its settings, the folder of its hand-ins, and the folder of their results."""
    folder = tmp_path_factory.mktemp("clock")
    settings = read_class_file(write_class_file(folder))
    write_hand_ins(folder / "hand_ins", range(LEARNERS), settings)
    return settings, folder / "hand_ins", _mark(folder / "hand_ins", folder / "results", settings)


def _mark(hand_ins, out, settings):
    mark_folder(hand_ins, out, settings, feedback=False, report=False, processes=1)
    return out


def _problems(out, kind=None):
    """Read the table of problems, or those of one kind."""
    with (out / "problems.csv").open(encoding="utf-8-sig", newline="") as file:
        return [row for row in csv.DictReader(file) if kind in (None, row["kind"])]


def _stamped_anew(source, target, stamp):
    """Write the hand-ins of a folder with other time stamps, ``stamp(number, at)`` for each answer."""
    target.mkdir()
    (target / "note.txt").write_bytes((source / "note.txt").read_bytes())
    for path in sorted(source.glob("*.zip")):
        hand_in = read_hand_in(path)
        journals = {}
        for page, journal in hand_in.journals.items():
            journals[page] = journal_bytes(
                {**content_of(record), "at": stamp(number, record.at)}
                for number, record in enumerate(journal.records)
            )
        raw_hand_in(
            target,
            hand_in.display_name,
            journals,
            made_at=datetime.fromisoformat(hand_in.made_at),
            file_name=path.name,
        )


def _shifted(at, **by):
    return (datetime.fromisoformat(at) + timedelta(**by)).isoformat(timespec="milliseconds")


STAMPS = {
    "set back in the middle": (lambda number, at: _shifted(at, days=-2 * (number >= 2)), "earlier than"),
    "running backwards": (lambda number, at: _shifted(at, hours=-number), "earlier than"),
    "years behind at first": (
        lambda number, at: "1970-01-01T00:00:00.000+00:00" if number else at,
        "earlier",
    ),
    "set on": (lambda number, at: _shifted(at, days=400), "later than the hand-in"),
    "no time": (lambda number, at: at if number else "yesterday", "no usable time"),
    "beyond every calendar": (
        lambda number, at: at if number else "9999-12-31T23:59:59-23:59",
        "no usable time",
    ),
}


@pytest.mark.parametrize("how", STAMPS)
def test_marks_rest_on_no_time_stamp(made, tmp_path, record_property, how):
    """Whatever the clock said, each answer counts in its place; each journal with odd times is named."""
    settings, hand_ins, results = made
    stamp, sentence = STAMPS[how]
    _stamped_anew(hand_ins, tmp_path / "hand_ins", stamp)
    out = _mark(tmp_path / "hand_ins", tmp_path / "out", settings)
    assert contents(out / "gradebook.db") == contents(results / "gradebook.db")
    assert (out / "results.csv").read_bytes() == (results / "results.csv").read_bytes()
    told = _problems(out, "odd time")
    assert {row["learner"] for row in told} == {
        read_hand_in(path).display_name for path in hand_ins.glob("*.zip")
    }
    assert all(sentence in row["problem"] and row["page"] and int(row["line"]) > 0 for row in told)
    assert [row for row in _problems(out) if row not in told] == _problems(results)
    record_property("table", ["clocks", {f"journals with times {how}": len(told)}])


def test_ordinary_times_are_not_told(made):
    """Nobody whose clock ran well is told of."""
    assert _problems(made[2], "odd time") == []


def test_a_clock_set_back_between_two_answers(tmp_path, monkeypatch):
    """The journal takes every answer in the order in which it was saved, whatever the clock says."""
    hours = count()

    class Backwards(datetime):
        @classmethod
        def now(cls, zone=None):
            return MADE_AT.astimezone(zone) - timedelta(hours=next(hours))

    monkeypatch.setattr("grading.journal.datetime", Backwards)
    book = Journal(tmp_path / "answers.jsonl")
    for number in range(5):
        book.append(**entry(number))
    contents_of = book.read()
    assert [each.answers["energy"] for each in contents_of.records] == [f"{each} J" for each in range(5)]
    stamps = [each.at for each in contents_of.records]
    assert stamps == sorted(stamps, reverse=True)
    assert contents_of.problems == ()


def test_a_second_hand_in_stamped_before_the_first(tmp_path, made):
    """A clock set back between two hand-ins of one learner loses no answer and changes no mark."""
    settings, name = made[0], "Mara Quillby"
    records = right_records(name, exercises=CHOSEN, settings=settings)
    half = len(records) // 2
    late_ones = [{**each, "at": _shifted(each["at"], days=-3)} for each in records[half:]]
    for folder, files in {
        "two": {
            "a.zip": (records[:half], MADE_AT),
            "b.zip": (records[:half] + late_ones, MADE_AT - timedelta(days=2)),
        },
        "one": {"a.zip": (records, MADE_AT)},
    }.items():
        (tmp_path / folder).mkdir()
        for file_name, (some, made_at) in files.items():
            raw_hand_in(tmp_path / folder, name, journals(some), made_at=made_at, file_name=file_name)
        _mark(tmp_path / folder, tmp_path / f"{folder} out", settings)
    both, single = (contents(tmp_path / f"{each} out" / "gradebook.db") for each in ("two", "one"))
    assert both["grade"] == single["grade"]
    assert _problems(tmp_path / "two out", "odd time")


def test_times_of_files_decide_nothing(tmp_path, made, monkeypatch):
    """A file counts as marked by its bytes: another time changes nothing, the old time hides no change."""
    settings, hand_ins, results = made
    read, read_all = [], marking.read_by_learner
    monkeypatch.setattr(
        marking, "read_by_learner", lambda files, *more: read.extend(files) or read_all(files, *more)
    )
    folder = tmp_path / "hand_ins"
    folder.mkdir()
    for path in hand_in_files(hand_ins):
        (folder / path.name).write_bytes(path.read_bytes())
    out = _mark(folder, tmp_path / "out", settings)
    read.clear()
    for path, moment in zip(
        hand_in_files(folder), (0, 4_000_000_000, 1_000_000_000) * LEARNERS, strict=False
    ):
        os.utime(path, (moment, moment))
    _mark(folder, out, settings)
    assert read == []
    assert (out / "results.csv").read_bytes() == (results / "results.csv").read_bytes()
    path = folder / "000.zip"
    times = path.stat()
    path.write_bytes(b"PK")
    os.utime(path, ns=(times.st_atime_ns, times.st_mtime_ns))
    _mark(folder, out, settings)
    assert [Path(each).name for each in read] == ["000.zip"]
