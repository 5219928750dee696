"""Scores that a person gave: nbgrader's own manual scores, and a log of every change to them.

Marking never touches a manual score. The log, ``changes.csv`` beside the gradebook, only grows: who, when,
why, from what to what. What somebody entered in the formgrader is found at the next marking and logged then.
"""

import csv
import io
import os
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from difflib import get_close_matches
from pathlib import Path
from typing import NamedTuple

import sqlalchemy as sql
from filelock import FileLock

from grading.export import harmless, printable
from grading.gradebook import cell_name
from grading.gradebook_file import opened
from grading.gradebook_places import GradebookDatabase
from grading.learner_names import LearnerNames
from grading.whole_files import add_to

CHANGES_FILE = "changes.csv"
COLUMNS = ("learner", "item", "from", "to", "by", "at_utc", "why")
LONGEST_TEXT = 200
FOUND_BY = "not known"
FOUND_WHY = "entered in the gradebook by hand, found there at marking"
LOCK_WAIT_S = 30.0
_MOST_NAMED = 4


class ChangeError(ValueError):
    """A change that cannot be made; the message is one sentence for the instructor."""


class Change(NamedTuple):
    """One line of the log; ``before`` and ``after`` are scores, None for the automatic one."""

    learner: str
    item: str
    before: float | None
    after: float | None
    by: str
    at_utc: str
    why: str


@dataclass(frozen=True, kw_only=True)
class Score:
    """One cell of one learner in the gradebook: its row there, and its scores."""

    row: str
    automatic: float | None
    manual: float | None
    maximum: float


def log_beside(gradebook):
    """Return the path of the log that belongs to a gradebook: beside the file, or in a database's folder."""
    if isinstance(gradebook, GradebookDatabase):
        return gradebook.folder / CHANGES_FILE
    return Path(gradebook).with_name(CHANGES_FILE)


def _one_of(names, like):
    """Say which items there are: all of a few, or those that are written most like the one asked for."""
    if not names:
        return "one of nothing, as no page is handed in"
    if len(names) <= _MOST_NAMED:
        return f"one of {', '.join(names)}"
    near = get_close_matches(like, names, n=_MOST_NAMED, cutoff=0.0)
    return f"a column of results.csv, such as {', '.join(near)}"


def change_score(gradebook, *, learner, item, points, by, why, now=None):
    """Give one score by hand, or take it back with ``points`` None; return the logged ``Change``."""
    by, why = _text("by", by), _text("why", why)
    with change_log(gradebook) as log, opened(gradebook) as (connection, tables):
        student = LearnerNames(student_names(connection, tables)).find(learner)
        scores = read_cells(connection, tables, students=[student])
        wanted = (student, cell_name(item))
        if wanted not in scores:
            message = f"item must be {_one_of(sorted(name for _, name in scores), wanted[1])}, got {item!r}"
            raise ChangeError(message)
        before = scores[wanted]
        if points is not None and not 0 <= points <= before.maximum:
            message = f"points must be from 0 to {before.maximum:g} for {wanted[1]}, got {points:g}"
            raise ChangeError(message)
        write_manual(connection, tables, {before.row: (points, points is None and before.automatic is None)})
        change = Change(*wanted, before.manual, points, by, stamp(now), why)
        log.append([change])
    return change


def keep_changes(gradebook, *, now=None):
    """Log what a person entered in the gradebook since last time; return ``{(learner, item): Score}`` of all.

    Called after each marking: what is returned are the scores that marking left alone.
    """
    with change_log(gradebook) as log, opened(gradebook) as (connection, tables):
        kept = read_cells(connection, tables, only_manual=True)
        known = {(each.learner, each.item): each.after for each in log.read()}
        found = [
            (key, known.get(key), score.manual)
            for key, score in kept.items()
            if known.get(key) != score.manual
        ]
        found += [(key, after, None) for key, after in known.items() if after is not None and key not in kept]
        at_utc = stamp(now)
        log.append([Change(*key, before, after, FOUND_BY, at_utc, FOUND_WHY) for key, before, after in found])
    return kept


def read_cells(connection, tables, *, students=None, items=None, only_manual=False):
    """Return ``{(learner, item): Score}`` of graded cells, of all learners and cells or of those named."""
    submitted, notebook, grade, cell, graded = (
        tables[name]
        for name in ("submitted_assignment", "submitted_notebook", "grade", "base_cell", "grade_cells")
    )
    query = (
        sql.select(
            submitted.c.student_id,
            cell.c.name,
            grade.c.id,
            grade.c.auto_score,
            grade.c.manual_score,
            graded.c.max_score,
        )
        .join(notebook, notebook.c.assignment_id == submitted.c.id)
        .join(grade, grade.c.notebook_id == notebook.c.id)
        .join(cell, cell.c.id == grade.c.cell_id)
        .join(graded, graded.c.id == cell.c.id)
    )
    if students is not None:
        query = query.where(submitted.c.student_id.in_(students))
    if items is not None:
        query = query.where(cell.c.name.in_(items))
    if only_manual:
        query = query.where(grade.c.manual_score.is_not(None))
    return {
        (student, name): Score(row=row, automatic=automatic, manual=manual, maximum=maximum)
        for student, name, row, automatic, manual, maximum in connection.execute(query)
    }


def write_manual(connection, tables, scores):
    """Write manual scores: ``{row: (score, whether the cell waits for a person)}``."""
    if scores:
        grade = tables["grade"]
        connection.execute(
            sql.update(grade)
            .where(grade.c.id == sql.bindparam("row"))
            .values(manual_score=sql.bindparam("score"), needs_manual_grade=sql.bindparam("waits")),
            [{"row": row, "score": score, "waits": waits} for row, (score, waits) in scores.items()],
        )


def student_names(connection, tables):
    """Return the name of each learner by id."""
    rows = connection.execute(sql.select(tables["student"]))
    return {row.id: " ".join(filter(None, (row.first_name, row.last_name))) for row in rows}


def _text(name, value):
    """Return a short text that can be seen, or refuse it."""
    text = " ".join(printable(str(value)).split())
    if not 1 <= len(text) <= LONGEST_TEXT:
        message = f"{name} must be a text of 1 to {LONGEST_TEXT} characters, got {len(text)}"
        raise ChangeError(message)
    return text


def keep_note(text):
    """Return a text as it fits into the log."""
    return " ".join(printable(text).split())[:LONGEST_TEXT]


def stamp(now):
    """Write a moment as the log does."""
    return (now or datetime.now(UTC)).astimezone(UTC).strftime("%Y-%m-%d %H:%M:%S")


@contextmanager
def change_log(gradebook):
    """Give the log of a gradebook, while nobody else changes either.

    Lines are written before the gradebook's transaction ends, so no change can be made without its line.
    """
    if not isinstance(gradebook, GradebookDatabase) and not Path(gradebook).is_file():
        message = f"gradebook must be there, found none at {gradebook}: mark the hand-ins first"
        raise ChangeError(message)
    path = log_beside(gradebook)
    with FileLock(f"{path}.lock", timeout=LOCK_WAIT_S):
        log = ChangeLog(path)
        log.mend_end()
        yield log


class ChangeLog:
    """The log as a file: lines are added, never changed."""

    def __init__(self, path):
        """Open nothing yet."""
        self.path = Path(path)

    def read(self):
        """Return every ``Change``, the oldest first."""
        if not self.path.exists():
            return []
        with open(self.path, encoding="utf-8-sig", newline="") as file:
            reader = csv.DictReader(file)
            if tuple(reader.fieldnames or ()) != COLUMNS:
                message = f"{self.path} must begin with the columns {', '.join(COLUMNS)}, got others"
                raise ChangeError(message)
            return [self._change(row, reader.line_num) for row in reader]

    def mend_end(self):
        """Set a line aside that a power cut tore: its change was never made, as the log is written first."""
        data = self.path.read_bytes() if self.path.exists() else b""
        end = data.rfind(b"\n") + 1
        torn = data[end:]
        if len(next(csv.reader([torn.decode("utf-8", "replace")]), ())) == len(COLUMNS):
            add_to(self.path, b"\r\n")  # a whole line, as an editor may leave it
        elif torn:
            add_to(self.path.with_name(f"{CHANGES_FILE}.torn"), torn + b"\r\n")
            os.truncate(self.path, end)

    def append(self, changes):
        """Add lines at the end and wait until the disk has them."""
        if not changes:
            return
        text = io.StringIO(newline="")
        writer = csv.writer(text)
        if not self.path.exists() or not self.path.stat().st_size:
            text.write("\ufeff")
            writer.writerow(COLUMNS)
        for each in changes:
            scores = ["" if score is None else repr(float(score)) for score in (each.before, each.after)]
            row = [each.learner, each.item, *scores, each.by, each.at_utc, each.why]
            writer.writerow([harmless(value) for value in row])
        add_to(self.path, text.getvalue().encode("utf-8", "replace"))

    def _change(self, row, line):
        """Read one line of the log."""
        try:
            before, after = (float(row[name]) if row[name] else None for name in ("from", "to"))
        except (TypeError, ValueError) as error:
            message = f"{self.path} line {line}: from and to must be numbers or empty"
            raise ChangeError(message) from error
        return Change(row["learner"], row["item"], before, after, row["by"], row["at_utc"], row["why"])
