"""A full disk, a folder or a file that may not be written: told in one sentence, and nothing is lost."""

import os
import random
import shutil
import tempfile
from collections import Counter
from functools import partial
from pathlib import Path

import pytest

from grading.gradebook_scores import read_scores
from grading.journal import Journal, NotSavedError
from grading.marking_state import STATE_FILE
from tests.hostile.crash_forks import done
from tests.hostile.crash_journal import entry

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="this system splits no process off")
if hasattr(os, "fork"):
    from tests.hostile.crash_disk import (
        REFUSED,
        as_somebody_else,
        full_for,
        make_room,
        no_file_longer_than,
        refused,
        small_disk,
    )
    from tests.hostile.crash_marking import four_markings, goes_on

TIMES = 14
PAGE_BYTES = 4096  # what such a disk hands out at a time


@pytest.fixture(scope="module")
def markings(open_folder):
    """Give the markings, in a folder that everybody may read."""
    return four_markings(open_folder)


@pytest.fixture(scope="module")
def open_folder():
    """Give a folder that everybody may go into, which pytest's own ones are not."""
    with tempfile.TemporaryDirectory() as folder:
        Path(folder).chmod(0o755)
        yield Path(folder)


def _copy(one, out):
    """Copy the results that a marking starts from."""
    shutil.copytree(one.start, out)
    return out


def test_no_room_for_a_file(markings, tmp_path, record_property):
    """Where a file cannot grow further, marking says which; with room again it comes to the same."""
    dice, hits = random.Random("no room"), Counter()
    for number in range(TIMES):
        one, out = markings[(1, 3)[number % 2]], tmp_path / "out"
        _copy(one, out)
        size = dice.choice((dice.randrange(0, 8_000), dice.randrange(8_000, 400_000)))
        sentence = refused(one, out, prepare=partial(no_file_longer_than, size))
        hits[full_for(sentence, out)] += 1
        goes_on(one, out, f"after there was no room: {sentence}")
        shutil.rmtree(out)
    assert hits.total() - hits["room enough"] > TIMES / 2
    record_property("table", ["marking with no room for", dict(hits)])


def _on_a_small_disk(one, start, out, more):
    """Mark with so many pages of the disk left, make room and mark again; print what had no room."""
    out.mkdir()
    used = sum(-(-path.stat().st_size // PAGE_BYTES) for path in start.rglob("*"))
    small_disk(out, (used + more) * PAGE_BYTES)
    shutil.copytree(start, out, dirs_exist_ok=True)
    sentence = refused(one, out, prepare=lambda: None)
    make_room(out)
    goes_on(one, out, f"after a full disk: {sentence}")
    print(full_for(sentence, out))


def test_a_full_disk(markings, tmp_path, record_property):
    """On a disk that is really full marking says what it cannot write; with room it comes to the same."""
    one, hits = markings[1], Counter()
    marked = one.start.with_name(f"undisturbed {one.name}")
    for start, more in [*((one.start, each) for each in (1, 3, 6, 12, 25, 50)), (marked, 1), (marked, 3)]:
        out, output = tmp_path / f"{start.name} {more}", tmp_path / "told.txt"
        code = done(partial(_on_a_small_disk, one, start, out, more), output=output)
        if code == REFUSED:
            pytest.skip("this system lets nobody make a small disk")
        told = output.read_text(encoding="utf-8")
        assert code == 0, told
        hits[told.strip()] += 1
    assert hits.total() - hits["room enough"] > 2
    record_property("table", ["marking on a full disk, no room for", dict(hits)])


def _save_until_refused(book):
    """Append answers; return how many were saved before one was not, and what was said of that one."""
    saved = 0
    while True:
        try:
            book.append(**entry(saved))
        except NotSavedError as error:
            return saved, str(error)
        saved += 1


def _journal_without_room(path, size):
    """Save answers until one is not saved; check that all saved ones are whole; make room and save on."""
    book = Journal(path)
    no_file_longer_than(size)
    saved, sentence = _save_until_refused(book)
    assert sentence == "this answer is not saved: File too large"
    before = path.read_bytes() if path.exists() else b""
    assert before.endswith(b"\n") or not before, "a half line is left"
    no_file_longer_than(10_000_000)
    book.append(**entry(saved))
    contents = book.read()
    assert [each.answers["energy"] for each in contents.records] == [f"{each} J" for each in range(saved + 1)]
    assert contents.problems == ()


@pytest.mark.parametrize("size", [0, 100, 350, 1000, 2345])
def test_no_room_for_an_answer(tmp_path, size):
    """An answer that does not fit is called not saved and leaves nothing behind; later ones are saved."""
    output = tmp_path / "told.txt"
    code = done(partial(_journal_without_room, tmp_path / "answers.jsonl", size), output=output)
    assert code == 0, output.read_text(encoding="utf-8")


def _give_away(*paths):
    """Let everybody do with files and folders what their owner may, so that only what is set later holds."""
    for path in paths:
        path.chmod(0o777 if path.is_dir() else 0o666)


def test_results_that_may_not_be_written(markings, open_folder, record_property):
    """A folder of results, or a gradebook in it, that may not be written is named, and stays as it was."""
    one, out = markings[1], _copy(markings[1], open_folder / "closed")
    _give_away(out, *out.rglob("*"))
    before = {path: path.read_bytes() for path in out.rglob("*") if path.is_file()}
    out.chmod(0o555)
    assert "results cannot be written there: Permission denied" in refused(one, out, prepare=as_somebody_else)
    assert {path: path.read_bytes() for path in out.rglob("*") if path.is_file()} == before
    out.chmod(0o777)
    book = out / "gradebook.db"
    book.chmod(0o444)
    sentence = refused(one, out, prepare=as_somebody_else, named=book)
    assert "readonly database" in sentence
    del before[out / STATE_FILE]  # what is marked is kept, and need not be marked again
    assert {path: path.read_bytes() for path in before} == before
    book.chmod(0o666)
    goes_on(one, out, "after it could not be written")
    record_property("table", ["may not be written", {"folder of results": 1, "gradebook": 1}])


def test_results_that_may_only_be_read(markings, open_folder):
    """Scores are read out of a gradebook that may not be written, in a folder that may not be written."""
    out = _copy(markings[1], open_folder / "to_read")
    out.chmod(0o555)
    (out / "gradebook.db").chmod(0o444)

    def read():
        as_somebody_else()
        assert len(list(read_scores(out / "gradebook.db"))) > 10

    output = open_folder / "read.txt"
    assert done(read, output=output) == 0, output.read_text(encoding="utf-8")


@pytest.mark.parametrize("what", ["folder", "file"])
def test_a_journal_that_may_not_be_written(open_folder, record_property, what):
    """In a folder, or to a file, that may not be written an answer is called not saved; the file is read."""
    folder = open_folder / f"journal in a closed {what}"
    folder.mkdir()
    book = Journal(folder / "answers.jsonl")
    book.append(**entry(1))
    before = book.path.read_bytes()

    def refuse():
        as_somebody_else()
        with pytest.raises(NotSavedError, match="this answer is not saved: .*Permission denied"):
            book.append(**entry(2))
        assert len(book.read().records) == 1

    _give_away(folder, *folder.iterdir())
    for path in [folder, *folder.iterdir()] if what == "folder" else [book.path]:
        path.chmod(0o555 if path.is_dir() else 0o444)
    output = open_folder / "refused.txt"
    assert done(refuse, output=output) == 0, output.read_text(encoding="utf-8")
    assert book.path.read_bytes() == before
    record_property("table", ["may not be written", {f"journal, its {what}": 1}])
