"""The hand-ins of a class: found in a folder, read one by one, put together where a learner sent several."""

import heapq
import os
from collections import defaultdict
from dataclasses import dataclass, replace
from hashlib import blake2b
from operator import attrgetter
from pathlib import Path

from grading.answers import JournalContents, Problem
from grading.exercises import PAGES
from grading.export import printable
from grading.hand_in import HandInError, file_bytes, hand_in_of
from grading.times import utc


class NoHandInsError(ValueError):
    """There is nothing to mark; the message is one sentence for the instructor."""


@dataclass(frozen=True, kw_only=True, slots=True)
class ClassProblem:
    """Something that the instructor should know about one file: whose it is, where in it, and what."""

    file: str
    learner: str = ""
    page: str = ""
    line: int = 0
    kind: str = "hand-in"
    sentence: str

    def seen_from(self, folder):
        """Return the problem with its file named from the folder of the hand-ins on."""
        return replace(self, file=self.file.replace(f"{folder}{os.sep}", ""))

    @property
    def in_words(self):
        """Return the problem in one line."""
        whose = f" ({self.learner})" if self.learner else ""
        return f"{self.file}{whose}: {self.sentence}"


def hand_in_files(path):
    """Return the files to mark, sorted: the one file, or every file in the folder and the folders in it.

    Files whose name begins with a point belong to the system that made the folder and are left out.
    """
    path = Path(path)
    if path.is_file():
        return [path]
    if not path.is_dir():
        message = f"hand-ins must be a folder or a file, found nothing at {path}"
        raise NoHandInsError(message)
    files = [
        Path(folder, name)
        for folder, _, names in os.walk(path)
        for name in names
        if not name.startswith(".") and "__MACOSX" not in folder
    ]
    if not files:
        message = f"folder {path} must hold at least one hand-in, found none"
        raise NoHandInsError(message)
    return sorted(files, key=attrgetter("parts"))


def file_digest(path):
    """Return a digest of the bytes of a file, or an empty text where they cannot be read or are too many."""
    try:
        return _digest(file_bytes(path))
    except HandInError:
        return ""


def _digest(data):
    """Return the digest of the bytes of a hand-in."""
    return blake2b(data, digest_size=16).hexdigest()


def read_by_learner(files, digests=None):
    """Read hand-in files; return groups of ``(path, hand-in)``, one a learner, and what cannot be read.

    Into the dict ``digests`` goes a digest of what was read of each file, empty where nothing could be.
    """
    found, problems = defaultdict(list), []
    for file in files:
        try:
            data = file_bytes(file)
            if digests is not None:
                digests[file] = _digest(data)
            hand_in = hand_in_of(data, pages=PAGES)
        except HandInError as error:
            problems.append(ClassProblem(file=str(file), sentence=printable(str(error))))
            if digests is not None:
                digests.setdefault(file, "")
        else:
            found[hand_in.learner].append((file, hand_in))
    return list(found.values()), problems


def merge_hand_ins(group):
    """Put the hand-ins of one learner together and return ``(hand-in, paths)``.

    Every record counts once. Each journal keeps its own order, whatever the clock of its computer said;
    between journals the time of the record decides.
    """
    if len(group) == 1:
        ((path, hand_in),) = group
        return hand_in, (path,)
    group = sorted(group, key=lambda pair: (pair[1].made_at, str(pair[0])))
    paths = tuple(path for path, _ in group)
    latest = group[-1][1]
    pages = dict.fromkeys(page for _, each in group for page in each.journals)
    journals = {page: _merge([each.journals.get(page) for _, each in group]) for page in pages}
    written = {page: text for _, each in group for page, text in each.written.items() if text}
    sentence = f"{len(group)} hand-ins of one learner were put together, every answer counted once"
    problems = dict.fromkeys(problem for _, each in group for problem in each.problems)
    problems[Problem(kind="several hand-ins", sentence=sentence)] = None
    return replace(latest, journals=journals, written=written, problems=tuple(problems)), paths


def _merge(journals):
    """Put the journals of one page together."""
    journals = [each for each in journals if each is not None]
    records = {each.check: each for each in heapq.merge(*(j.records for j in journals), key=lambda r: r.at)}
    problems = dict.fromkeys(problem for each in journals for problem in each.problems)
    return JournalContents(records=tuple(records.values()), problems=tuple(problems))


def hand_in_pages(hand_in):
    """Return the ids of the pages that a hand-in holds answers or a written part for, in reading order."""
    return tuple(page for page in PAGES if page in hand_in.journals or page in hand_in.written)


def made_at(hand_in):
    """Return when a hand-in says it was made, in UTC without time zone, or None where it names no time."""
    try:
        return utc(hand_in.made_at)
    except (ValueError, OverflowError):
        return None
