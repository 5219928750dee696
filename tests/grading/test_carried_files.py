"""Files that are carried between computers: read from memory, collected, not written, in one thread only."""

import threading
from pathlib import Path

import pytest

from grading.carried_files import carried
from grading.course import write_page
from grading.exercises import PAGES
from grading.hand_in import HandInError, file_bytes, read_hand_in
from grading.hand_ins import file_digest, read_by_learner
from grading.whole_files import write_whole
from tests.grading.made_hand_ins import journals, raw_hand_in, right_records

PAGE = PAGES["rivet_anatomy"]


@pytest.fixture
def hand_in(tmp_path):
    """Give the path of a hand-in."""
    (tmp_path / "in").mkdir()
    return raw_hand_in(
        tmp_path / "in", "Mara", journals(right_records("Mara", exercises=[PAGE.exercises[0].id]))
    )


def test_what_is_carried_is_read(hand_in):
    """A hand-in that is nowhere on the disk is read as the file was, and has its digest."""
    data, digest, before = hand_in.read_bytes(), file_digest(hand_in), read_hand_in(hand_in)
    hand_in.unlink()
    digests = {}
    with carried({str(hand_in): data}):
        assert read_hand_in(hand_in) == before
        assert file_digest(str(hand_in)) == digest
        ((found,),), problems = read_by_learner([str(hand_in)], digests)
    assert (found, problems, digests) == ((str(hand_in), before), [], {str(hand_in): digest})


def test_the_disk_is_not_looked_at(hand_in):
    """A file of the same name that lies here is not the one that is meant."""
    with carried({str(hand_in): b"sent"}):
        assert file_bytes(hand_in) == b"sent"


def test_why_a_file_cannot_be_read_is_carried(hand_in):
    """What went wrong where the file lies is told as it would be there."""
    with carried({"gone.zip": HandInError("gone.zip cannot be read: moved")}):
        _, problems = read_by_learner(["gone.zip"])
        assert file_digest("gone.zip") == ""
    assert [each.sentence for each in problems] == ["gone.zip cannot be read: moved"]


def test_what_would_be_written_is_collected(hand_in, tmp_path):
    """Pages for a course and feedback are not written here, nor are their folders made."""
    learner = read_hand_in(hand_in)
    folder = tmp_path / "there" / "mara"
    with carried({}) as written:
        write_page(folder, page=PAGE, released=b'{"cells": []}', hand_in=learner)
        write_whole(tmp_path / "page.html", b"page")
    assert not folder.parent.exists()
    assert not (tmp_path / "page.html").exists()
    assert [Path(path).name for path, _ in written] == ["rivet_anatomy.ipynb", "answers.jsonl", "page.html"]
    assert written[-1] == (str(tmp_path / "page.html"), b"page")
    write_whole(tmp_path / "page.html", b"again")
    assert (tmp_path / "page.html").read_bytes() == b"again"


def test_other_threads_go_on_as_before(tmp_path):
    """Only the thread that carries files is concerned."""
    other = threading.Thread(target=write_whole, args=(tmp_path / "page.html", b"here"))
    with carried({}) as written:
        other.start()
        other.join()
    assert (written, (tmp_path / "page.html").read_bytes()) == ([], b"here")
