"""Pack a learner's answers into one file, and read such files from anybody.

What is read is data from a stranger: only listed members, within size limits, never unpacked to disk and
never run.
"""

import json
import os
import stat
import zipfile
from collections import Counter
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import msgspec

from grading.answers import JOURNAL_FILE, JournalContents, Problem, parse_journal
from grading.carried_files import carried_bytes
from grading.class_settings import settings_of
from grading.hand_in_members import MANIFEST, MEMBER, MOST_BYTES, HandInError, Unread, members_of
from grading.journal import Journal
from grading.learners import Learner, learner_of, learner_slug, save_learner
from grading.packed_counts import lost_answers, packed_counts
from grading.variants import PRACTICE, normalise_learner
from grading.written_answers import is_untouched, notebook_of, practical_id, written_answer

__all__ = [
    "HandIn",
    "HandInError",
    "Learner",
    "is_untouched",
    "learner_of",
    "learner_slug",
    "pack_hand_in",
    "practical_id",
    "read_hand_in",
    "save_learner",
    "written_answer",
]

_FORMAT = "second plate hand-in"
_VERSION = 1
MOST_FILE_BYTES = 20_000_000
# Without waiting: to open a pipe would mean to wait for somebody who writes into it.
TO_READ = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0)


@dataclass(frozen=True, kw_only=True)
class HandIn:
    """What a hand-in holds: who made it and when, the journal and the written answer of each page."""

    learner: str
    display_name: str
    course: str
    bank: str
    made_at: str
    journals: dict[str, JournalContents]
    written: dict[str, str]
    problems: tuple[Problem, ...]

    @property
    def records(self):
        """All sound records, page by page."""
        return tuple(record for contents in self.journals.values() for record in contents.records)


def pack_hand_in(workbook_folder, out_folder, *, pages=None, bank_version=None, settings=None, now=None):
    """Put every page's journal and written answer into one file, and return its path.

    Raises ``HandInError`` where nobody is signed in, nothing is saved or the file cannot be written.
    """
    if pages is None:
        from grading.exercises import BANK_VERSION, PAGES

        pages, bank_version = PAGES, BANK_VERSION
    workbook, now = Path(workbook_folder), now or datetime.now(UTC)
    who = learner_of(workbook)
    if who.learner == PRACTICE:
        raise HandInError(who.problem or "nobody is signed in: sign in on the first page, then hand in")
    members = _collect(workbook, pages.values())
    if not any(name.startswith("answers/") for name in members):
        message = "there are no saved answers to hand in yet"
        raise HandInError(message)
    manifest = {
        "format": _FORMAT,
        "version": _VERSION,
        "learner": who.learner,
        "display_name": who.display_name,
        "course": (settings or settings_of(workbook)).course_key,
        "bank": bank_version or "",
        "made_at": now.isoformat(timespec="seconds"),
        "journals": packed_counts(members),
    }
    members = {MANIFEST: json.dumps(manifest, indent=1).encode(), **members}
    path = Path(out_folder) / f"hand_in_{learner_slug(who.learner)}_{now:%Y%m%d_%H%M%S}.zip"
    try:
        _write_zip(path, members)
    except OSError as error:
        message = f"the hand-in cannot be written to {path.parent}: {error.strerror or error}"
        raise HandInError(message) from error
    return path


def _collect(workbook, pages):
    """Return the members of a hand-in, without the manifest."""
    members = {}
    for page in pages:
        folder = workbook / page.folder
        journal = Journal(folder / JOURNAL_FILE).read_bytes()
        if journal:
            members[f"answers/{page.id}.jsonl"] = journal
        notebook = folder / page.notebook
        text = written_answer(notebook.read_bytes(), page.id) if notebook.is_file() else None
        if text and not is_untouched(text, page):
            members[f"pages/{page.id}.ipynb"] = notebook_of(page.id, text)
    for name, data in members.items():
        limit = MOST_BYTES[name.partition("/")[0]]
        if len(data) > limit:
            message = f"{name} must be at most {limit:,} bytes to be handed in, got {len(data):,}"
            raise HandInError(message)
    return members


def _write_zip(path, members):
    """Write the members; a file that could not be finished does not stay."""
    fresh = path.with_name(path.name + ".new")
    try:
        with zipfile.ZipFile(fresh, "w", zipfile.ZIP_DEFLATED) as archive:
            for name, data in members.items():
                archive.writestr(name, data)
        fresh.replace(path)
    finally:
        fresh.unlink(missing_ok=True)


def read_hand_in(path, *, pages=None):
    """Return what a hand-in holds, or raise ``HandInError`` where the file is not a whole hand-in of ours."""
    return hand_in_of(file_bytes(path), pages=pages)


def hand_in_of(data, *, pages=None):
    """Return what the bytes of a hand-in hold, or raise ``HandInError``."""
    if pages is None:
        from grading.exercises import PAGES

        pages = PAGES
    members = members_of(data)
    manifest, counts = _read_manifest(members.pop(MANIFEST))
    journals, written, problems = {}, {}, []
    for name, data in members.items():
        match = MEMBER.fullmatch(name)
        page = match["page"]
        if isinstance(data, Unread):
            problems.append(Problem(kind="hand-in", sentence=str(data), place=name))
            continue
        if match["kind"] == "answers":
            journals[page] = parse_journal(data, place=name)
            problems.extend(journals[page].problems)
            continue
        text = written_answer(data, page)
        if text is None:
            sentence = f"{name} holds no written answer that can be read"
            problems.append(Problem(kind="hand-in", sentence=sentence, place=name))
        elif not (page in pages and is_untouched(text, pages[page])):
            written[page] = text
    at_home = _at_home(journals, pages, problems)
    problems.extend(lost_answers(counts, members, {**at_home, **journals}, pages))
    return HandIn(**manifest, journals=at_home, written=written, problems=tuple(problems))


def _at_home(journals, pages, problems):
    """Return the records under the pages that their exercises are of, whatever name their file was given.

    Marks are shown page by page: under another name they would be left out without a word.
    """
    homes = ((f"{page}.", each.records) for page, each in journals.items())
    if all(record.exercise.startswith(home) for home, records in homes for record in records):
        return journals
    strays = Counter()
    records = {page: [] for page in journals}
    for page, contents in journals.items():
        for record in contents.records:
            home = record.exercise.partition(".")[0]
            home = home if home in pages else page
            strays[page, home] += home != page
            records.setdefault(home, []).append(record)
    if not strays.total():
        return journals
    for (page, home), count in strays.items():
        if count:
            sentence = f"{count} of the records in answers/{page}.jsonl are of page {home} and count there"
            problems.append(Problem(kind="other page", sentence=sentence, place=f"answers/{page}.jsonl"))
    told = {page: contents.problems for page, contents in journals.items()}
    return {
        page: JournalContents(records=tuple(found), problems=told.get(page, ()))
        for page, found in records.items()
    }


def file_bytes(path):
    """Return the bytes of a file of bearable size, or raise ``HandInError``."""
    data = carried_bytes(path)
    if data is not None:
        return data
    try:
        handle = os.open(path, TO_READ)
        try:
            return bytes_of_open(handle, path)
        finally:
            os.close(handle)
    except (OSError, ValueError) as error:
        message = f"{Path(path).name} cannot be read: {getattr(error, 'strerror', None) or error}"
        raise HandInError(message) from error


def bytes_of_open(handle, path):
    """Return the bytes of an open file of bearable size, or raise ``HandInError``."""
    found = os.fstat(handle)
    if not stat.S_ISREG(found.st_mode):  # a pipe would never end
        message = f"{Path(path).name} is not a file"
        raise HandInError(message)
    data = os.read(handle, min(found.st_size, MOST_FILE_BYTES) + 1)
    if len(data) != found.st_size:  # it grew meanwhile, or came in pieces, or does not tell its size
        while len(data) <= MOST_FILE_BYTES and (more := os.read(handle, MOST_FILE_BYTES)):
            data += more
    if len(data) > MOST_FILE_BYTES:
        message = f"a hand-in must be at most {MOST_FILE_BYTES:,} bytes, and this file is larger"
        raise HandInError(message)
    return data


def _json_of(data):
    """Return what JSON holds; the standard reader takes some texts that the quick one refuses."""
    try:
        return msgspec.json.decode(data)
    except (msgspec.MsgspecError, ValueError):
        return json.loads(data)


def _read_manifest(data):
    """Return the checked fields of the manifest, and what it says was packed."""
    try:
        content = _json_of(data)
    except (ValueError, RecursionError) as error:
        message = f"this is not a hand-in: {MANIFEST} cannot be read"
        raise HandInError(message) from error
    if not isinstance(content, dict) or content.get("format") != _FORMAT:
        message = f"this is not a hand-in: {MANIFEST} does not say that it is one"
        raise HandInError(message)
    if content.get("version") != _VERSION:
        got = str(content.get("version"))[:20]
        message = f"this hand-in has version {got}, and this copy reads version {_VERSION}"
        raise HandInError(message)
    fields = {name: content.get(name) for name in ("learner", "display_name", "course", "bank", "made_at")}
    for name, value in fields.items():
        if not isinstance(value, str) or len(value) > 200:
            message = f"this is not a hand-in: {MANIFEST} names no usable {name}"
            raise HandInError(message)
    fields["learner"] = normalise_learner(fields["learner"])
    if fields["learner"] == PRACTICE:
        message = "this hand-in names no learner: it was made without signing in"
        raise HandInError(message)
    return fields, content.get("journals")
