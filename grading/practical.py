"""Marks of the practicals: what was seen at the bench, line by line of a rubric, in one table.

The table, ``practical.csv``, has one row for each line of a rubric and each learner: who, page, criterion,
level, by whom, when, and a note if there is something to say. A later row takes the place of an earlier one,
which stays in the table. A sum goes into the gradebook as a manual score, so that the formgrader shows it.
"""

import csv
import io
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import NamedTuple

from filelock import FileLock

from grading.changes import Change, change_log, keep_note, read_cells, stamp, student_names, write_manual
from grading.export import harmless, printable
from grading.gradebook import write_marks
from grading.gradebook_file import opened
from grading.hand_in import practical_id
from grading.learner_names import LearnerNames, UnknownLearnerError
from grading.marking import LearnerMarks
from grading.times import utc

PRACTICAL_FILE = "practical.csv"
NEEDED = ("learner", "page", "criterion", "level", "by", "when")
COLUMNS = (*NEEDED, "note")
WHY = "practical by its rubric"
MOST_BYTES = 20_000_000
LOCK_WAIT_S = 30.0


class PracticalError(ValueError):
    """A table of practical marks that cannot be used; the message is one sentence for the instructor."""


class Judged(NamedTuple):
    """One row of the table: one line of a rubric, judged for one learner."""

    learner: str
    page: str
    criterion: str
    level: int
    by: str
    when: datetime
    line: int


@dataclass(frozen=True, kw_only=True)
class Entered:
    """What came of a table: what was entered, what still waits for lines, what a person's score kept out."""

    entered: dict[tuple[str, str], float]
    same: int
    waiting: tuple[str, ...]
    kept: tuple[str, ...]


def read_practical(path, rubrics):
    """Return ``(rows, problems)`` of a table; a problem is one sentence that names its line."""
    path = Path(path)
    if path.stat().st_size > MOST_BYTES:
        message = f"{path.name} must be at most {MOST_BYTES // 1_000_000} MB, got more"
        raise PracticalError(message)
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except UnicodeDecodeError as error:
        message = f"{path.name} must be UTF-8 text, got byte {error.object[error.start]:#x} at {error.start}"
        raise PracticalError(message) from error
    first = text.partition("\n")[0]
    delimiter = ";" if first.count(";") > first.count(",") else ","  # as spreadsheets of some countries write
    reader = csv.DictReader(io.StringIO(text, newline=""), delimiter=delimiter)
    lacking = [name for name in NEEDED if name not in (reader.fieldnames or ())]
    if lacking:
        message = f"{path.name} line 1: the columns must be {', '.join(COLUMNS)}, found no {lacking[0]}"
        raise PracticalError(message)
    rows, problems = [], []
    try:
        for row in reader:
            if any(map(_plain, row.values())):
                _take(row, reader.line_num, rubrics, rows, problems)
    except csv.Error as error:
        problems.append(f"line {reader.line_num}: {error}")
    return rows, [f"{path.name} {problem}" for problem in problems]


def _take(row, line, rubrics, rows, problems):
    """Turn one row into what was judged, or say what is wrong with it."""
    try:
        rows.append(judged_from({name: _plain(row.get(name)) for name in NEEDED}, line, rubrics))
    except PracticalError as error:
        problems.append(f"line {line}: {error}")


def _plain(value):
    """Return a cell's text without what our own tables put in front of it."""
    return printable(value).strip().removeprefix("'") if isinstance(value, str) else ""


def judged_from(row, line, rubrics):
    """Check one row against its rubric."""
    for name in ("learner", "by"):
        if not 1 <= len(row[name]) <= 200:
            _refuse(name, "a name of 1 to 200 characters", row[name])
    rubric = rubrics.get(row["page"])
    if rubric is None:
        _refuse("page", f"one of {', '.join(rubrics)}", row["page"])
    criterion = rubric.line(row["criterion"])
    if criterion is None:
        _refuse("criterion", f"one of {', '.join(each.id for each in rubric.lines)}", row["criterion"])
    if not (row["level"].isascii() and row["level"].isdigit() and int(row["level"]) <= criterion.points):
        _refuse("level", f"a whole number from 0 to {criterion.points}", row["level"])
    try:
        when = utc(row["when"])
    except (ValueError, OverflowError):
        _refuse("when", "a date such as 2026-11-20, or a date and time", row["when"])
    return Judged(row["learner"], rubric.page, criterion.id, int(row["level"]), row["by"], when, line)


def _refuse(name, must, got):
    """Raise the one sentence that every refusal has."""
    message = f"{name} must be {must}, got {got[:60]!r}"
    raise PracticalError(message)


def enter_practical(gradebook, rows, *, rubrics, pages, settings, file_name=PRACTICAL_FILE, now=None):
    """Enter judged practicals into the gradebook and return what came of it.

    A score that a person has entered or changed otherwise is left alone and named.
    """
    learners = _named(gradebook, rows, file_name)
    latest = {}
    for row in sorted(rows, key=lambda each: (each.when, each.line)):
        latest.setdefault((learners[row.learner], row.page), {})[row.criterion] = row
    scores, waiting = {}, []
    for (learner, page), judged in sorted(latest.items()):
        points = rubrics[page].score({criterion: row.level for criterion, row in judged.items()})
        if points is None:
            waiting.append(f"{learner} {page}: {len(judged)} of {len(rubrics[page].lines)} lines are judged")
        else:
            scores[learner, practical_id(page)] = (points, judged)
    _make_submissions(gradebook, scores, pages, settings)
    return _enter(gradebook, scores, waiting, now)


def _named(gradebook, rows, file_name):
    """Return the id of every learner named, or refuse the table with the line of one who is not known."""
    with opened(gradebook) as (connection, tables):
        names = LearnerNames(student_names(connection, tables))
    learners = {}
    for row in rows:
        try:
            learners[row.learner] = learners.get(row.learner) or names.find(row.learner)
        except UnknownLearnerError as error:
            message = f"{file_name} line {row.line}: {error}"
            raise PracticalError(message) from error
    return learners


def _make_submissions(gradebook, scores, pages, settings):
    """Make room in the gradebook for those who were at the bench before they handed the page in."""
    with opened(gradebook) as (connection, tables):
        known = set(read_cells(connection, tables, items=sorted({item for _, item in scores})))
    for page in pages.values():
        exercises = {each.id: 0.0 for each in page.exercises if each.counts}
        missing = [
            LearnerMarks(
                student_id=learner,
                first_name="",
                last_name="",
                handed_in=None,
                pages=(page.id,),
                points=exercises,
            )
            for learner, item in scores
            if item == practical_id(page.id) and (learner, item) not in known
        ]
        if missing:
            write_marks(gradebook, missing, pages={page.id: page}, settings=settings)


def _enter(gradebook, scores, waiting, now):
    """Write the sums as manual scores, each with its line in the log."""
    entered, kept, same, changes, rows = {}, [], 0, [], {}
    with change_log(gradebook) as log, opened(gradebook) as (connection, tables):
        last = {(each.learner, each.item): each for each in log.read()}
        cells = read_cells(connection, tables, items=sorted({item for _, item in scores}))
        for key, (points, judged) in scores.items():
            cell, before = cells[key], last.get(key)
            ours = before is not None and before.after == cell.manual and before.why.startswith(WHY)
            if cell.manual == points:
                same += 1
            elif cell.manual is not None and not ours:
                kept.append(f"{key[0]} {key[1]}: {cell.manual:g} stays, the rubric comes to {points:g}")
            else:
                entered[key] = points
                rows[cell.row] = (points, False)
                by = ", ".join(dict.fromkeys(row.by for row in judged.values()))
                day = max(row.when for row in judged.values())
                changes.append(
                    Change(*key, cell.manual, points, keep_note(by), stamp(now), f"{WHY}, {day:%Y-%m-%d}")
                )
        write_manual(connection, tables, rows)
        log.append(changes)
    return Entered(entered=entered, same=same, waiting=tuple(waiting), kept=tuple(kept))


def append_judged(path, rows):
    """Add rows of ``COLUMNS`` at the end of a table, which is made where there is none."""
    path = Path(path)
    with FileLock(f"{path}.lock", timeout=LOCK_WAIT_S):
        new = not path.exists() or not path.stat().st_size
        text = io.StringIO(newline="")
        writer = csv.writer(text)
        if new:
            text.write("\ufeff")
            writer.writerow(COLUMNS)
        else:
            _require_own(path)
        writer.writerows([harmless(str(value)) for value in row] for row in rows)
        with open(path, "ab") as file:
            file.write(text.getvalue().encode("utf-8", "replace"))


def _require_own(path):
    """Refuse to write into a table with other columns, or one that does not end with a whole line."""
    data = path.read_bytes()
    first = data.decode("utf-8-sig", "replace").partition("\n")[0].strip()
    if first != ",".join(COLUMNS):
        message = f"{path.name} line 1: the columns must be {', '.join(COLUMNS)}, got {first[:80]!r}"
        raise PracticalError(message)
    if not data.endswith(b"\n"):
        message = f"{path.name} must end with a whole line, got one without its end"
        raise PracticalError(message)
