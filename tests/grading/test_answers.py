"""The journal: what append returned for is on the disk, and what is wrong in a file is said and set aside."""

import json
import os
import signal
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from hashlib import blake2b

import pytest
from filelock import FileLock
from hypothesis import given, settings
from hypothesis import strategies as st

from grading import answers
from grading.answers import parse_journal
from grading.journal import Journal, NotSavedError

ENTRY = {
    "learner": "ann",
    "course": "test-class",
    "page": "arcs",
    "exercise": "arcs.energy",
    "round_number": 1,
    "bank": "test",
    "scenario": "0123456789abcdef",
}


def _entry(number):
    """Return the fields of a numbered answer."""
    return {**ENTRY, "answers": {"energy": f"{number} J", "note": "J\u00fcrgen, 20,5 \u2212 \U0001f600"}}


@pytest.fixture
def journal(tmp_path):
    """Return a journal that does not exist yet."""
    return Journal(tmp_path / "answers.jsonl")


@pytest.fixture
def filled(journal):
    """Return a journal of five records."""
    for number in range(5):
        journal.append(**_entry(number))
    return journal


def _lines(journal):
    """Return the lines of a journal's file, without their ends."""
    return journal.path.read_bytes().splitlines()


def test_append_then_read(journal):
    """What is appended is read back, field by field, each record chained to the one before."""
    appended = [journal.append(**_entry(number)) for number in range(3)]
    contents = journal.read()
    assert contents.records == tuple(appended)
    assert contents.problems == ()
    assert [record.line for record in appended] == [1, 2, 3]
    assert [record.previous for record in appended] == ["", appended[0].check, appended[1].check]
    assert appended[0].answers == _entry(0)["answers"]
    assert appended[0].at.endswith("+00:00")


def test_a_missing_file_is_an_empty_journal(journal):
    """Before the first answer there is no file and nothing wrong."""
    assert journal.read() == parse_journal(b"")
    assert journal.read_bytes() == b""
    assert not journal.path.exists()


def test_check_is_the_documented_hash(filled):
    """The check is BLAKE2b (16 bytes) of the record without it as JSON with sorted names and no spaces."""
    content = json.loads(_lines(filled)[2])
    check = content.pop("check")
    canonical = json.dumps(content, sort_keys=True, separators=(",", ":")).encode()
    assert check == blake2b(canonical, digest_size=16).hexdigest()


def test_lines_that_were_only_laid_out_anew_are_sound(filled):
    """A tool that rewrites the JSON with spaces and another order changes no answer, so nothing is wrong."""
    anew = b"\r\n".join(
        json.dumps(dict(reversed(json.loads(line).items()))).encode() for line in _lines(filled)
    )
    contents = parse_journal(b"\xef\xbb\xbf" + anew)
    assert contents.problems == ()
    assert contents.records == filled.read().records


@pytest.mark.parametrize("odd", [b"1e400", b"[" * 980 + b"]" * 980, b"[" * 110 + b"]" * 110])
def test_a_record_that_cannot_be_written_again_is_set_aside(filled, odd):
    """A number beyond any float, or lists within lists by the hundred, spoil one record and no more."""
    contents = parse_journal(filled.path.read_bytes().replace(b'"2 J"', odd))
    assert [record.line for record in contents.records] == [1, 2, 4, 5]
    assert [problem.line for problem in contents.problems] == [3]


def test_an_edited_record_is_set_aside_with_its_line(filled):
    """A changed answer is found by its check; the records around it stay."""
    edited = filled.path.read_bytes().replace(b'"2 J"', b'"9 J"')
    contents = parse_journal(edited)
    assert [record.line for record in contents.records] == [1, 2, 4, 5]
    assert [(problem.kind, problem.line) for problem in contents.problems] == [("bad check", 3)]
    assert "a record was changed after it was saved (line 3)" in contents.problems[0].sentence


@pytest.mark.parametrize("removed", [0, 1, 3])
def test_a_removed_record_is_noticed(filled, removed):
    """The record after a gap does not name the check of the one before it; it still counts."""
    lines = _lines(filled)
    del lines[removed]
    contents = parse_journal(b"\n".join(lines))
    assert len(contents.records) == 4
    assert [(problem.kind, problem.line) for problem in contents.problems] == [
        ("missing record", removed + 1)
    ]


def test_moved_and_doubled_records_are_noticed(filled):
    """Swapped and copied lines break the chain."""
    lines = _lines(filled)
    kinds = [problem.kind for problem in parse_journal(b"\n".join([lines[1], lines[0], *lines[2:]])).problems]
    assert set(kinds) == {"missing record"}


@pytest.mark.parametrize("place", [0, 2, 5])
def test_a_copied_record_counts_once(filled, place):
    """A line that stands there twice is no second try; the copy is named, and breaks no chain."""
    lines = _lines(filled)
    copied = [*lines[:place], lines[0], *lines[place:]] if place else [lines[0], *lines]
    contents = parse_journal(b"\n".join(copied))
    assert [each.check for each in contents.records] == [each.check for each in filled.read().records]
    assert [(each.kind, each.line) for each in contents.problems] == [
        ("copied record", place + 1 if place else 2)
    ]


def test_a_journal_of_rubbish_is_told_in_brief(filled):
    """Of many bad lines the first are named and the others counted; sound records still count."""
    contents = parse_journal(b"x\n" * 5_000 + filled.path.read_bytes())
    assert len(contents.records) == 5
    assert len(contents.problems) == answers.MOST_TOLD + 1
    assert "4,900 more" in contents.problems[-1].sentence


def test_a_journal_of_endless_lines_is_not_read_whole(filled):
    """A million lines, for which somebody would wait for minutes, are read to a limit; that is named."""
    contents = parse_journal(filled.path.read_bytes() + b"x\n" * 1_000_000 + filled.path.read_bytes())
    assert len(contents.records) == 5
    assert contents.problems[-1].kind == "unreadable"
    assert "at most 20,000 lines" in contents.problems[-1].sentence
    assert parse_journal(filled.path.read_bytes() + b"\n" * 1_000_000).problems == ()


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        (b"not json", "a line is not a record"),
        (b"[1, 2]", "a line is not a record"),
        (b"5", "a line is not a record"),
        (b"\xff\xfe", "a line is not a record"),
        (b"\x00" * 500, "a line is not a record"),
        (b"[" * 100_000, "a line is not a record"),
        (b"9" * 50_000, "a line is not a record"),
        (b'{"a": NaN}', "a line is not a record"),
        (b"{}", "a record has no usable at"),
        (b"x" * 200_001, "a line must be at most 131072 bytes long, got 200001"),
    ],
)
def test_unreadable_lines_are_set_aside(filled, line, sentence):
    """Rubbish between two records is reported with its line and harms no other."""
    lines = _lines(filled)
    contents = parse_journal(b"\n".join([*lines[:2], line, *lines[2:], b""]))
    assert len(contents.records) == 5
    assert [(problem.kind, problem.line) for problem in contents.problems] == [("unreadable", 3)]
    assert sentence in contents.problems[0].sentence


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("answers", "x"),
        ("answers", None),
        ("round", "1"),
        ("round", True),
        ("round", 1.0),
        ("learner", None),
        ("previous", 5),
    ],
)
def test_fields_of_the_wrong_kind_are_set_aside(filled, name, value):
    """A record with a sound check but a field of the wrong kind is not used."""
    content = json.loads(_lines(filled)[4])
    content.pop("check")
    content[name] = value
    forged = answers.line_of(content)
    contents = parse_journal(b"\n".join([*_lines(filled)[:4], forged, b""]))
    assert len(contents.records) == 4
    assert contents.problems[0].sentence == f"a record has no usable {name} (line 5)"


@given(st.binary(max_size=400))
@settings(deadline=None)
def test_no_bytes_crash_the_reading(data):
    """Any bytes give records or problems."""
    contents = parse_journal(data)
    assert contents.records == ()
    assert len(contents.problems) == sum(
        1 for line in data.removeprefix(b"\xef\xbb\xbf").split(b"\n") if line.strip()
    )


def _rewritten(line, name, text):
    """Return a stored line with the text of one value replaced and its check made to fit again."""
    content = json.loads(line)
    del content["check"]
    body = json.dumps(content, sort_keys=True, separators=(",", ":"))
    value = json.dumps(content[name], sort_keys=True, separators=(",", ":"))
    body = body.replace(f'"{name}":{value}', f'"{name}":{text}', 1)
    check = blake2b(body.encode(), digest_size=16).hexdigest()
    return f'{body[:-1]},"check":"{check}"}}'.encode()


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("round", "1.0"),
        ("round", "1e0"),
        ("round", "-0"),
        ("round", "true"),
        ("round", "99999999999999999999999"),
        ("round", "9" * 5000),
        ("round", '1,"line":7'),
        ("bank", "null"),
        ("bank", '"\\ud800"'),
        ("bank", '"a\\/b\\u0041"'),
        ("bank", '"x","bank":"y"'),
        ("bank", '"x","more":"y"'),
        ("answers", '{"a":1}'),
        ("answers", '{"a":[{"b":{"c":"d"}},null,["e"]]}'),
        ("answers", '{"a":[[[[["deep"]]]]]}'),
        ("answers", "[]"),
        ("answers", '{"a":"b","a":"c"}'),
    ],
)
def test_the_short_way_reads_what_the_general_one_reads(filled, name, text, monkeypatch):
    """Whatever a line holds that fits its check, both ways of reading give the same records and problems."""
    first, *rest = _lines(filled)
    data = b"\n".join([_rewritten(first, name, text), *rest, b""])
    short = parse_journal(data)
    monkeypatch.setattr(answers, "_sound_records", lambda data: None)
    general = parse_journal(data)
    assert short == general
    assert repr(short.records) == repr(general.records)


def test_any_flipped_byte_is_noticed(filled):
    """Whichever byte of a record is changed, no changed record is taken for a sound one."""
    data = filled.path.read_bytes()
    sound = {record.check: record for record in filled.read().records}
    for place in range(0, len(data), 7):
        changed = bytearray(data)
        changed[place] ^= 0x15
        contents = parse_journal(bytes(changed))
        assert contents.problems
        for record in contents.records:
            assert record.answers == sound[record.check].answers


def test_a_torn_last_line_is_set_aside_at_the_next_append(filled):
    """What a crash left of a line is reported, kept in its own file, and the journal goes on unbroken."""
    torn = b'{"answers":{"energy":"48'
    with filled.path.open("ab") as file:
        file.write(torn)
    before = filled.read()
    assert len(before.records) == 5
    assert [(problem.kind, problem.line) for problem in before.problems] == [("torn", 6)]
    filled.append(**_entry(6))
    with filled.path.open("ab") as file:
        file.write(b"\x00\x00")
    filled.append(**_entry(7))
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
        torn.append(**_entry(9))
        contents = torn.read()
        assert len(contents.records) == 5
        assert torn.torn_path.read_bytes() == data[last:cut] + b"\n"


def test_a_record_that_only_lacks_its_line_end_is_kept(filled):
    """An editor that dropped the last line end tore nothing."""
    filled.path.write_bytes(filled.path.read_bytes().rstrip(b"\n"))
    assert len(filled.read().records) == 5
    filled.append(**_entry(6))
    assert len(filled.read().records) == 6
    assert filled.read().problems == ()
    assert not filled.torn_path.exists()


def test_a_journal_that_holds_only_a_torn_line(journal):
    """The very first answer may be torn."""
    journal.path.write_bytes(b'{"ans')
    record = journal.append(**_entry(1))
    assert (record.line, record.previous) == (1, "")
    assert len(_lines(journal)) == 1


def test_long_lines_are_found_from_the_end(journal):
    """A last line longer than the first look back still gives its check."""
    journal.append(**{**ENTRY, "answers": {"energy": "9" * 60_000}})
    journal.append(**_entry(2))
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
        filled.append(**{**_entry(1), **changes})
    assert filled.path.read_bytes() == before


def test_lone_surrogates_survive(journal):
    """Half a character, as a browser can send it, is saved and read back."""
    journal.append(**{**ENTRY, "answers": {"energy": "\ud83d"}})
    assert journal.read().records[0].answers == {"energy": "\ud83d"}


def test_a_folder_that_is_not_there_is_said(tmp_path):
    """Nothing is saved beside a notebook that was moved away; the learner is told."""
    with pytest.raises(NotSavedError, match="this answer is not saved: "):
        Journal(tmp_path / "gone" / "answers.jsonl").append(**_entry(1))
    assert not (tmp_path / "gone").exists()


def test_a_full_disk_is_said_and_leaves_no_half_line(filled, monkeypatch):
    """Where the disk refuses, the half line is taken back and the answer is called not saved."""
    before = filled.path.read_bytes()

    def full(handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("grading.journal.os.fsync", full)
    with pytest.raises(NotSavedError, match="this answer is not saved: No space left on device"):
        filled.append(**_entry(6))
    assert filled.path.read_bytes() == before


def test_a_lock_that_is_never_released_is_said(filled, monkeypatch):
    """Another program that holds the file for long ends the waiting with a sentence."""
    monkeypatch.setattr("grading.journal.LOCK_WAIT_S", 0.1)
    with (
        FileLock(str(filled.path) + ".lock"),
        pytest.raises(NotSavedError, match="another program has held answers.jsonl"),
    ):
        filled.append(**_entry(6))


def test_reading_needs_no_lock_where_there_is_none(filled, monkeypatch):
    """A journal in a folder that cannot be written, or behind a stuck lock, can still be read."""
    monkeypatch.setattr("grading.journal.LOCK_WAIT_S", 0.1)
    with FileLock(str(filled.path) + ".lock"):
        assert len(filled.read().records) == 5


def test_threads_of_one_kernel_lose_nothing(journal):
    """Several threads of one process append at once: every answer is there, in one unbroken chain."""
    with ThreadPoolExecutor(4) as pool:
        list(pool.map(lambda number: journal.append(**_entry(number)), range(40)))
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
    journal.append(**_entry(1))
    assert synced[0] == journal.path.stat().st_size
    assert len(synced) == (1 if os.name == "nt" else 2)
    journal.append(**_entry(2))
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
    journal.append(**_entry(1))
    assert [problem.kind for problem in journal.read().problems] in ([], ["torn"])
