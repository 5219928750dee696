"""Deletes what is kept of one learner: hand-ins, gradebook rows, pages, rows of tables, exports.

Every step is told in one sentence, and is only told where nothing is to be done yet. At the end all files
are searched again; where the learner is still named, the file is listed for a person to look at.
"""

import csv
import io
import json
import shutil
import zipfile
from contextlib import ExitStack, closing
from dataclasses import dataclass
from pathlib import Path

import sqlalchemy as sql

from grading.answers import content_of, journal_bytes, parse_journal
from grading.changes import student_names
from grading.counts import count_answers, how_many
from grading.forget_person import FOLDERS_BY_LEARNER, MADE_LIST, Person
from grading.gradebook_file import GradebookFile, opened
from grading.gradebook_places import GRADEBOOK_FILE, overwrite_deleted
from grading.hand_in import HandInError, read_hand_in
from grading.hand_in_members import MANIFEST
from grading.held_folders import held
from grading.learner_names import LearnerNames, UnknownLearnerError
from grading.learners import learner_slug
from grading.packed_counts import packed_counts
from grading.variants import normalise_learner
from grading.whole_files import write_whole

LEARNER_COLUMNS = ("learner", "name", "student_id")
# Children before parents: a row of the gradebook goes only after all that hang on it.
_DELETIONS = (
    "DELETE FROM grade WHERE notebook_id IN (SELECT n.id FROM submitted_notebook n "
    "JOIN submitted_assignment a ON a.id = n.assignment_id WHERE a.student_id = :id)",
    "DELETE FROM comment WHERE notebook_id IN (SELECT n.id FROM submitted_notebook n "
    "JOIN submitted_assignment a ON a.id = n.assignment_id WHERE a.student_id = :id)",
    "DELETE FROM submitted_notebook WHERE assignment_id IN "
    "(SELECT id FROM submitted_assignment WHERE student_id = :id)",
    "DELETE FROM submitted_assignment WHERE student_id = :id",
    "DELETE FROM student WHERE id = :id",
)


class ForgetError(ValueError):
    """Somebody cannot be forgotten; the message is one sentence for the instructor."""


@dataclass(frozen=True, kw_only=True)
class Forgotten:
    """What was done, or would be, step by step, and the files that still name the learner."""

    learner: str
    steps: tuple[str, ...]
    left: tuple[str, ...]


def forget_learner(typed, *, results, hand_ins, do, gradebook=None):
    """Delete what the folders keep of a learner, or with ``do`` False only say what that would be.

    ``gradebook`` is one more gradebook, a file or a ``GradebookDatabase``.
    """
    results, hand_ins = [Path(each) for each in results], [Path(each) for each in hand_ins]
    for folder in (*results, *hand_ins):
        if not folder.is_dir():
            message = f"folder must be there, found none at {folder}"
            raise ForgetError(message)
    books = [folder / GRADEBOOK_FILE for folder in results if (folder / GRADEBOOK_FILE).is_file()]
    books += [gradebook] if gradebook and gradebook not in books else []
    person = _who(typed, books, hand_ins)
    with ExitStack() as stack:
        for folder in {each.resolve() for each in results} if do else ():
            stack.enter_context(held(folder))  # a marking would write the learner anew
        steps = [step for folder in hand_ins for step in _hand_ins(person, folder, do)]
        for book in books:
            steps += _gradebook(person, book, do)
        for folder in results:
            steps += _files(person, folder, do)
    if not steps:
        message = f"learner must be one of whom something is kept, found nothing of {typed!r}"
        raise ForgetError(message)
    left = (
        [str(path) for folder in (*hand_ins, *results) for path in _still_named(person, folder)] if do else []
    )
    return Forgotten(learner=person.id, steps=tuple(steps), left=tuple(left))


def _files_in(folder):
    """Return every file in a folder and the folders in it, sorted."""
    return sorted(path for path in Path(folder).rglob("*") if path.is_file())


def _who(typed, books, hand_ins):
    """Find out who is meant, and collect every spelling of the name."""
    known = {}
    for book in books:
        with opened(book, reading=True) as (connection, tables):
            known |= student_names(connection, tables)
    try:
        learner_id = LearnerNames(known).find(typed)
    except UnknownLearnerError as error:
        if "by id" in str(error):
            raise
        learner_id = learner_slug(normalise_learner(typed))
    person = Person(learner_id, [known.get(learner_id, ""), "" if typed == learner_id else typed])
    for folder in hand_ins:
        for path in _files_in(folder):
            hand_in = _read(path)
            if hand_in is not None and learner_slug(hand_in.learner) == learner_id:
                person.add(hand_in.display_name)
                person.add(hand_in.learner)
    return person


def _read(path):
    """Return a hand-in, or None where the file is none."""
    try:
        return read_hand_in(path)
    except HandInError:
        return None


def _hand_ins(person, folder, do):
    """Delete the learner's hand-ins, and cut their answers out of hand-ins made on a shared computer."""
    for path in _files_in(folder):
        hand_in = _read(path)
        own = learner_slug(hand_in.learner) == person.id if hand_in else person.owns(path)
        if own:
            yield f"deleted the hand-in {path}"
            if do:
                path.unlink()
        elif hand_in and (count := sum(_is_of(person, record) for record in hand_in.records)):
            answers = count_answers(count)
            yield f"cut {answers} out of {path}, the hand-in of somebody at the same computer"
            if do:
                _cut_out(person, path)
        elif path.suffix == ".csv":
            yield from _table(person, path, do)
        elif path.name == MADE_LIST:
            yield from _made_list(person, path, do)


def _made_list(person, path, do):
    """Take a learner's files out of the list of an invented class."""
    names = _text(path).splitlines()
    kept = [name for name in names if not person.owns(Path(name))]
    if len(kept) < len(names):
        yield f"took {how_many(len(names) - len(kept), 'file name')} out of {path}"
        if do:
            write_whole(path, "\n".join(kept).encode())


def _is_of(person, record):
    """Tell whether a saved answer is the learner's."""
    return learner_slug(normalise_learner(record.learner)) == person.id


def _cut_out(person, path):
    """Write somebody else's hand-in again without the learner's answers, with checks and counts made anew."""
    with zipfile.ZipFile(path) as old:
        members = {name: old.read(name) for name in old.namelist()}
    for name, content in members.items():
        if name.startswith("answers/"):
            records = parse_journal(content, place=name).records
            members[name] = journal_bytes(content_of(each) for each in records if not _is_of(person, each))
    manifest = json.loads(members[MANIFEST])
    if "journals" in manifest:
        members[MANIFEST] = json.dumps({**manifest, "journals": packed_counts(members)}, indent=1).encode()
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as new:
        for name, content in members.items():
            new.writestr(name, content)
    write_whole(path, data.getvalue())


def _gradebook(person, path, do):
    """Delete the learner's rows, and write all others anew so that no page of the gradebook keeps them."""
    with closing(GradebookFile(path)) as file:
        with file.transaction() as (connection, _):
            if not connection.scalar(sql.text("SELECT 1 FROM student WHERE id = :id"), {"id": person.id}):
                return
            overwrite_deleted(connection)
            for statement in _DELETIONS if do else ():
                connection.execute(sql.text(statement), {"id": person.id})
        if do:
            file.forget_deleted()
    yield f"deleted the learner's scores and comments from {path}"


def _files(person, folder, do):
    """Delete or clean everything else in a folder of results or a course."""
    for path in sorted(Path(folder).rglob("*")):
        if not path.exists() or path.name == GRADEBOOK_FILE:
            continue  # went with the folder that it was in
        if person.owns(path):
            yield f"deleted {path}"
            if do:
                shutil.rmtree(path) if path.is_dir() else path.unlink()
        elif path.is_file():
            yield from _CLEANERS.get(path.suffix, _nothing)(person, path, do)


def _nothing(person, path, do):
    """Leave a file alone; the search at the end names it where it has to be looked at."""
    return ()


def _table(person, path, do):
    """Take a learner's rows out of a table, and the name out of what others' rows say."""
    text = _text(path)
    rows = list(csv.reader(io.StringIO(text, newline="")))
    if not rows:
        return
    columns = [place for place, name in enumerate(rows[0]) if name in LEARNER_COLUMNS]
    kept = [row for row in rows if not any(person.is_named(row[each]) for each in columns if each < len(row))]
    cut = [[person.cut_from(cell) for cell in row] for row in kept]
    if cut == rows:
        return
    yield f"took {how_many(len(rows) - len(kept), 'row')} out of {path}"
    if do:
        out = io.StringIO(newline="")
        csv.writer(out).writerows(cut)
        write_whole(
            path, (("\ufeff" if text.startswith("\ufeff") else "") + out.getvalue().lstrip("\ufeff")).encode()
        )


def _statements(person, path, do):
    """Take a learner's entries out of a list in JSON or its list of learners; other JSON goes whole."""
    text = _text(path)
    try:
        content = json.loads(text)
    except (ValueError, RecursionError):
        content = None
    entries = content.get("learners") if isinstance(content, dict) else content
    if isinstance(entries, list):
        kept = [each for each in entries if not _names(person, each)]
        if len(kept) < len(entries):
            yield f"took {how_many(len(entries) - len(kept), 'entry', 'entries')} out of {path}"
            if do:
                whole = {**content, "learners": kept} if isinstance(content, dict) else kept
                write_whole(path, (json.dumps(whole, ensure_ascii=False, indent=1) + "\n").encode())
    elif person.is_in(text):
        yield f"deleted {path}, which named the learner"
        if do:
            path.unlink()


def _names(person, value):
    """Tell whether a JSON value names the learner in any of its texts."""
    if isinstance(value, str):
        return person.is_named(value) or person.is_in(value)
    inner = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    return any(_names(person, each) for each in inner)


def _page(person, path, do):
    """Cut the name out of another learner's page; delete a page on many, to be made again without it."""
    text, of_one = _text(path), path.parent.name in FOLDERS_BY_LEARNER
    if of_one and person.is_in(text):
        yield f"cut the name out of {path}"
        if do:
            write_whole(path, person.cut_from(text).encode())
    elif not of_one and (person.pattern is None or person.is_in(text)):
        yield f"deleted {path}: make it again, it is without the learner then"
        if do:
            path.unlink()


_CLEANERS = {".csv": _table, ".json": _statements, ".jsonl": _statements, ".html": _page}


def _text(path):
    """Read a file as text, whatever it holds."""
    return path.read_bytes().decode("utf-8", "replace")


def _still_named(person, folder):
    """Give every file that still names the learner, in its name, its text or a file packed in it."""
    for path in _files_in(folder):
        if person.owns(path) or any(map(person.is_in, _texts(path))):
            yield path


def _texts(path):
    """Give the path's name and what the file says, unpacked where it is a zip."""
    yield path.name
    if zipfile.is_zipfile(path):
        try:
            with zipfile.ZipFile(path) as archive:
                for name in archive.namelist():
                    yield name
                    yield archive.read(name).decode("utf-8", "replace")
        except (zipfile.BadZipFile, OSError, RuntimeError, NotImplementedError):
            yield _text(path)
    else:
        yield _text(path)
