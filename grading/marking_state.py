"""What a marking has done so far, kept in the results so that it goes on where it was interrupted.

One line of JSON for each chunk of files, with the digest of every file beside its marks. A file counts as
done while its bytes are the same, and so are the exercises, the library, the marking and the class file.
"""

import os
from datetime import datetime
from functools import lru_cache
from hashlib import blake2b
from pathlib import Path

import msgspec

from grading.hand_ins import ClassProblem, file_digest
from grading.marking import LearnerMarks, MarkedLearner
from grading.whole_files import add_to, write_whole

STATE_FILE = "marking_state.jsonl"
_ROOT = Path(__file__).resolve().parent.parent
_MARKS_REST_ON = (
    ("grading", "*.py"),
    ("grading", "*.csv"),
    ("grading", "*.json"),
    ("grading/templates", "*.*"),  # of feedback pages
    ("workbook/secondplate", "*.py"),
    ("workbook/secondplate", "*.csv"),
)


class MarkingState:
    """The state file of a folder of results; one that belongs to another marking is begun anew.

    ``rests_on`` is what marks and feedback rest on beside files and code: the class settings, for one.
    ``still_there(learner)`` tells whether what marking wrote for a learner beside the marks is in its place.
    """

    def __init__(self, folder, rests_on, *, still_there=lambda learner: True):
        self.path = Path(folder) / STATE_FILE
        self._header = msgspec.json.encode({"marking": digest_of_marking(), "class": repr(rests_on)})
        self._still_there = still_there

    def split(self, files):
        """Return ``(learners, problems, files still to mark)`` from what is kept of these files."""
        todo, learners, problems = dict.fromkeys(files), [], []
        for digests, marked, unread in self._chunks():
            same = {
                path
                for path, digest in digests.items()
                if digest and path in todo and digest == file_digest(path)
            }
            kept = [each for each in marked if same.issuperset(each.paths) and self._still_there(each)]
            told = [each for each in unread if each.file in same]
            learners += kept
            problems += told
            for path in [*(path for each in kept for path in each.paths), *(each.file for each in told)]:
                todo.pop(path, None)
        return learners, problems, list(todo)

    @staticmethod
    def line_of(digests, learners, problems):
        """Return what is kept of one chunk as a line; nothing where a file's name is no text.

        Such a chunk is marked again. The line is written where the chunk was marked, which may be elsewhere.
        """
        try:
            return msgspec.json.encode([digests, [_plain(each) for each in learners], problems]) + b"\n"
        except UnicodeEncodeError:
            return b""

    def add(self, line):
        """Keep one chunk that is done, given as its line."""
        add_to(self.path, line, on_disk=False)  # what a power cut takes of it is marked again

    def _chunks(self):
        """Give ``(digests, learners, problems)`` of each whole line; a line torn at the end is cut off.

        A line that a power cut spoilt is passed over: its files are marked again.
        """
        lines = self.path.read_bytes().split(b"\n") if self.path.exists() else []
        if lines[:1] != [self._header]:
            write_whole(self.path, self._header + b"\n")
            return
        if lines[-1]:
            os.truncate(self.path, self.path.stat().st_size - len(lines[-1]))
        for line in lines[1:-1]:
            try:
                digests, learners, problems = msgspec.json.decode(line)
            except (msgspec.DecodeError, UnicodeDecodeError):
                continue
            yield digests, map(_marked, learners), [ClassProblem(**each) for each in problems]


def _plain(learner):
    """Return one learner's marks as plain values."""
    return [list(learner.marks), *learner[1:-2], learner.problems]


def _marked(plain):
    """Return one learner's marks from plain values."""
    marks, display_name, paths, slips, points, problems = plain
    student_id, first, last, handed_in, pages, by_exercise = marks
    moment = None if handed_in is None else datetime.fromisoformat(handed_in)
    return MarkedLearner(
        marks=LearnerMarks(student_id, first, last, moment, tuple(pages), by_exercise),
        display_name=display_name,
        paths=tuple(paths),
        slips=tuple(slips),
        points=points,
        problems=tuple(ClassProblem(**each) for each in problems),
    )


@lru_cache(maxsize=1)
def digest_of_marking():
    """Return a digest of every file that a mark or its page can rest on: code, tables, templates."""
    found = blake2b(digest_size=16)
    for folder, names in _MARKS_REST_ON:
        for path in sorted((_ROOT / folder).rglob(names)):
            found.update(path.relative_to(_ROOT).as_posix().encode() + b"\0" + path.read_bytes() + b"\0")
    return found.hexdigest()
