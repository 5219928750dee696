"""The journal on disk: what append returned for is there, whatever breaks off, and whoever else writes."""

import os
import signal
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor

import pytest
from filelock import FileLock

from grading.answers import parse_journal
from grading.journal import Journal, NotSavedError
from tests.grading.made_journals import ENTRY, entry, lines_of


def test_append_then_read(journal):
    """What is appended is read back, field by field, each record chained to the one before."""
    appended = [journal.append(**entry(number)) for number in range(3)]
    contents = journal.read()
    assert contents.records == tuple(appended)
    assert contents.problems == ()
    assert [record.line for record in appended] == [1, 2, 3]
    assert [record.previous for record in appended] == ["", appended[0].check, appended[1].check]
    assert appended[0].answers == entry(0)["answers"]
    assert appended[0].at.endswith("+00:00")


def test_a_missing_file_is_an_empty_journal(journal):
    """Before the first answer there is no file and nothing wrong."""
    assert journal.read() == parse_journal(b"")
    assert journal.read_bytes() == b""
    assert not journal.path.exists()


def test_a_torn_last_line_is_set_aside_at_the_next_append(filled):
    """What a crash left of a line is reported, kept in its own file, and the journal goes on unbroken."""
    torn = b'{"answers":{"energy":"48'
    with filled.path.open("ab") as file:
        file.write(torn)
    before = filled.read()
    assert len(before.records) == 5
    assert [(problem.kind, problem.line) for problem in before.problems] == [("torn", 6)]
    filled.append(**entry(6))
    with filled.path.open("ab") as file:
        file.write(b"\x00\x00")
    filled.append(**entry(7))
    after = filled.read()
    assert [record.line for record in after.records] == [1, 2, 3, 4, 5, 6, 7]
    assert [problem.kind for problem in after.problems] == ["torn"]
    assert "set aside into answers.jsonl.torn" in after.problems[0].sentence
    assert filled.torn_path.read_bytes() == torn + b"\n\x00\x00\n"


def test_every_way_to_tear_the_last_line(filled, tmp_path):
    """Cut the file at any byte of its last line: no earlier record is lost, and appending goes on."""
    data = filled.path.read_bytes()
    last = data.rindex(b"\n", 0, -1) + 1
    for cut in range(last + 1, len(data), 23):
        torn = Journal(tmp_path / f"cut_{cut}.jsonl")
        torn.path.write_bytes(data[:cut])
        torn.append(**entry(9))
        contents = torn.read()
        assert len(contents.records) == 5
        assert torn.torn_path.read_bytes() == data[last:cut] + b"\n"


def test_a_record_that_only_lacks_its_line_end_is_kept(filled):
    """An editor that dropped the last line end tore nothing."""
    filled.path.write_bytes(filled.path.read_bytes().rstrip(b"\n"))
    assert len(filled.read().records) == 5
    filled.append(**entry(6))
    assert len(filled.read().records) == 6
    assert filled.read().problems == ()
    assert not filled.torn_path.exists()


def test_a_journal_that_holds_only_a_torn_line(journal):
    """The very first answer may be torn."""
    journal.path.write_bytes(b'{"ans')
    record = journal.append(**entry(1))
    assert (record.line, record.previous) == (1, "")
    assert len(lines_of(journal)) == 1


def test_long_lines_are_found_from_the_end(journal):
    """A last line longer than the first look back still gives its check."""
    journal.append(**{**ENTRY, "answers": {"energy": "9" * 60_000}})
    journal.append(**entry(2))
    assert journal.read().problems == ()


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"answers": {"energy": float("nan")}}, "this answer is not saved: Out of range float"),
        (
            {"answers": {"energy": "9" * 200_000}},
            "this answer is not saved: a line must be at most 131072 bytes",
        ),
        ({"answers": ["480 J"]}, "this answer is not saved: a record has no usable answers"),
        ({"answers": {"energy": {1, 2}}}, "this answer is not saved: Object of type set"),
        ({"round_number": "1"}, "this answer is not saved: a record has no usable round"),
    ],
)
def test_what_cannot_be_a_record_is_not_saved(filled, changes, sentence):
    """An answer that could not be read back is refused, and the file stays as it was."""
    before = filled.path.read_bytes()
    with pytest.raises(NotSavedError, match=sentence):
        filled.append(**{**entry(1), **changes})
    assert filled.path.read_bytes() == before


def test_lone_surrogates_survive(journal):
    """Half a character, as a browser can send it, is saved and read back."""
    journal.append(**{**ENTRY, "answers": {"energy": "\ud83d"}})
    assert journal.read().records[0].answers == {"energy": "\ud83d"}


def test_a_folder_that_is_not_there_is_said(tmp_path):
    """Nothing is saved beside a notebook that was moved away; the learner is told."""
    with pytest.raises(NotSavedError, match="this answer is not saved: "):
        Journal(tmp_path / "gone" / "answers.jsonl").append(**entry(1))
    assert not (tmp_path / "gone").exists()


def test_a_full_disk_is_said_and_leaves_no_half_line(filled, monkeypatch):
    """Where the disk refuses, the half line is taken back and the answer is called not saved."""
    before = filled.path.read_bytes()

    def full(handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("grading.journal.os.fsync", full)
    with pytest.raises(NotSavedError, match="this answer is not saved: No space left on device"):
        filled.append(**entry(6))
    assert filled.path.read_bytes() == before


def test_a_lock_that_is_never_released_is_said(filled, monkeypatch):
    """Another program that holds the file for long ends the waiting with a sentence."""
    monkeypatch.setattr("grading.journal.LOCK_WAIT_S", 0.1)
    with (
        FileLock(str(filled.path) + ".lock"),
        pytest.raises(NotSavedError, match="another program has held answers.jsonl"),
    ):
        filled.append(**entry(6))


def test_reading_needs_no_lock_where_there_is_none(filled, monkeypatch):
    """A journal in a folder that cannot be written, or behind a stuck lock, can still be read."""
    monkeypatch.setattr("grading.journal.LOCK_WAIT_S", 0.1)
    with FileLock(str(filled.path) + ".lock"):
        assert len(filled.read().records) == 5


def test_threads_of_one_kernel_lose_nothing(journal):
    """Several threads of one process append at once: every answer is there, in one unbroken chain."""
    with ThreadPoolExecutor(4) as pool:
        list(pool.map(lambda number: journal.append(**entry(number)), range(40)))
    contents = journal.read()
    assert contents.problems == ()
    assert {record.answers["energy"] for record in contents.records} == {
        f"{number} J" for number in range(40)
    }


def test_saved_means_on_the_disk(journal, monkeypatch):
    """The file is synchronised before append returns, and the folder once for a new file."""
    synced = []
    real = os.fsync
    monkeypatch.setattr(
        "grading.journal.os.fsync", lambda handle: (synced.append(os.fstat(handle).st_size), real(handle))
    )
    journal.append(**entry(1))
    assert synced[0] == journal.path.stat().st_size
    assert len(synced) == (1 if os.name == "nt" else 2)
    journal.append(**entry(2))
    assert synced[-1] == journal.path.stat().st_size


WRITER = """
import sys, time
from grading.journal import Journal
journal, count, name = Journal(sys.argv[1]), int(sys.argv[2]), sys.argv[3]
print("ready", flush=True)
sys.stdin.readline()
for number in range(count):
    journal.append(learner=name, course="c", page="arcs", exercise="arcs.energy", round_number=1, bank="b",
                   scenario="0" * 16, answers={"energy": f"{number} J"})
    print(number, flush=True)
    time.sleep(0.001)
"""


def _writer(journal, count, name):
    """Start a process that appends when it is told to and prints the number of each answer that was saved."""
    return subprocess.Popen(
        [sys.executable, "-c", WRITER, str(journal.path), str(count), name],
        env={**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)},
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )


def test_two_processes_lose_nothing(journal):
    """Two kernels that append at once: every answer is there, in one unbroken chain, in the order of each."""
    writers = [_writer(journal, 120, name) for name in ("one", "two")]
    for writer in writers:
        assert writer.stdout.readline() == "ready\n"
    for writer in writers:
        writer.stdin.write("\n")
        writer.stdin.flush()
    for writer in writers:
        writer.communicate(timeout=60)
        assert writer.returncode == 0
    contents = journal.read()
    assert contents.problems == ()
    for name in ("one", "two"):
        typed = [record.answers["energy"] for record in contents.records if record.learner == name]
        assert typed == [f"{number} J" for number in range(120)]
    names = [record.learner for record in contents.records]
    turns = sum(one != other for one, other in zip(names, names[1:], strict=False))
    assert turns > 1  # they did write at the same time


@pytest.mark.skipif(os.name == "nt", reason="Windows has no SIGKILL")
@pytest.mark.parametrize("delay_s", [0.0, 0.013, 0.05, 0.17])
def test_killed_at_any_moment_nothing_confirmed_is_lost(journal, delay_s):
    """Kill the process: every answer it had confirmed is in the journal, and appending goes on."""
    writer = _writer(journal, 100_000, "one")
    assert writer.stdout.readline() == "ready\n"
    writer.stdin.write("\n")
    writer.stdin.flush()
    first = writer.stdout.readline()
    time.sleep(delay_s)
    writer.send_signal(signal.SIGKILL)
    printed = first + writer.stdout.read()
    writer.stdin.close()
    writer.wait(timeout=60)
    confirmed = [int(line) for line in printed.split("\n")[:-1]]
    saved = [record.answers["energy"] for record in journal.read().records]
    assert len(confirmed) > 0
    assert saved[: len(confirmed)] == [f"{number} J" for number in confirmed]
    assert len(saved) <= len(confirmed) + 1
    journal.append(**entry(1))
    assert [problem.kind for problem in journal.read().problems] in ([], ["torn"])
