"""The learner's journal on disk: a file next to the notebook that only grows, whatever happens meanwhile."""

import os
from datetime import UTC, datetime
from pathlib import Path

from filelock import FileLock, Timeout

from grading.answers import JournalContents, Problem, claimed_check, line_of, parse_journal, read_line
from grading.whole_files import add_to, add_whole

LOCK_WAIT_S = 10.0
_LOCK_POLL_S = 0.005  # an append takes a few milliseconds; a kernel that waits must find its gap


class NotSavedError(Exception):
    """Raised where an answer is not on the disk; the message is one sentence for the learner."""


class Journal:
    """One journal on disk; any number of kernels may append to it at the same time."""

    def __init__(self, path):
        self.path = Path(path)
        self.torn_path = self.path.with_name(self.path.name + ".torn")

    def _lock(self):
        """Return the lock that every reader and writer of this file takes."""
        return FileLock(str(self.path) + ".lock", timeout=LOCK_WAIT_S, poll_interval=_LOCK_POLL_S)

    def append(self, *, learner, course, page, exercise, round_number, bank, scenario, answers, at=None):
        """Save one submission and return its record once it is on the disk, else raise ``NotSavedError``."""
        content = {
            "at": at or datetime.now(UTC).isoformat(timespec="milliseconds"),
            "learner": learner,
            "course": course,
            "page": page,
            "exercise": exercise,
            "round": round_number,
            "bank": bank,
            "scenario": scenario,
            "answers": answers,
        }
        try:
            self.path.parent.stat()  # the lock would make a folder that is missing
            with self._lock():
                return self._append_locked(content)
        except Timeout as error:
            message = (
                f"this answer is not saved: another program has held {self.path.name} for {LOCK_WAIT_S:.0f} s"
            )
            raise NotSavedError(message) from error
        except (OSError, ValueError, TypeError, RecursionError) as error:
            reason = getattr(error, "strerror", None) or str(error)
            message = f"this answer is not saved: {reason}"
            raise NotSavedError(message) from error

    def _append_locked(self, content):
        """Append while nobody else reads or writes."""
        new = not self.path.exists()
        with open(self.path, "ab+", buffering=0) as file:
            content["previous"] = self._repair_end(file)
            line = line_of(content)
            record, _, sentence = read_line(line, _count_lines(file) + 1)
            if record is None:
                raise ValueError(sentence)
            add_whole(file, line + b"\n")
        if new:
            _sync_folder(self.path.parent)
        return record

    def _repair_end(self, file):
        """Make the file end with a whole line and return that line's check, empty where there is none.

        What a crash left of a line is moved to the torn file before it is cut off, so nothing is thrown away.
        """
        start, tail = _last_line(file)
        if not tail:
            return ""
        if tail.endswith(b"\n"):
            return claimed_check(tail.strip()) or ""
        record, _, _ = read_line(tail.strip(), 0)
        if record is not None:  # whole but for its line end
            add_whole(file, b"\n")
            return record.check
        add_to(self.torn_path, tail + b"\n")
        file.truncate(start)
        os.fsync(file.fileno())
        return self._repair_end(file)

    def read_bytes(self):
        """Return the file as it is between two appends; a missing file is empty.

        Where no lock is to be had, as in a folder that cannot be written, nobody appends either.
        """
        if not self.path.exists():
            return b""
        try:
            with self._lock():
                return self.path.read_bytes()
        except OSError:
            return self.path.read_bytes()

    def read(self):
        """Return what the journal holds, with a word on what was set aside earlier."""
        contents = parse_journal(self.read_bytes(), place=self.path.name)
        if not self.torn_path.exists():
            return contents
        sentence = f"an incomplete line was set aside into {self.torn_path.name}"
        torn = Problem(kind="torn", sentence=sentence, place=self.torn_path.name)
        return JournalContents(records=contents.records, problems=(*contents.problems, torn))


def _last_line(file):
    """Return where the last line starts and its bytes, read backwards from the end."""
    end = file.seek(0, os.SEEK_END)
    size = min(end, 4096)
    while True:
        file.seek(end - size)
        data = file.read(size)
        cut = data.rfind(b"\n", 0, -1)
        if cut >= 0 or size == end:
            return end - size + cut + 1, data[cut + 1 :]
        size = min(end, size * 8)


def _count_lines(file):
    """Return how many lines the file holds."""
    file.seek(0)
    return sum(block.count(b"\n") for block in iter(lambda: file.read(1 << 20), b""))


def _sync_folder(folder):
    """Wait until a new file's name is on the disk; Windows has no such call and needs none."""
    if os.name == "nt":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
