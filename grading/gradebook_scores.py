"""Scores out of the gradebook, what a person entered there included."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from operator import attrgetter
from types import MappingProxyType

import numpy as np
import sqlalchemy as sql

from grading.collector import collector_paused
from grading.gradebook_file import opened

EPOCH = datetime(1970, 1, 1)  # nbgrader keeps an extension in a file as this date plus the time granted
NO_TIME = timedelta()
AT_ONCE = 20_000  # grades that are taken from the database together
_NONE, _NOTHING = MappingProxyType({}), frozenset()  # of students whose scores stand in the arrays


@dataclass(kw_only=True, slots=True)
class StudentScores:
    """One learner's scores as the gradebook has them, what a person entered included."""

    student_id: str
    name: str
    handed_in: datetime | None = None
    late: bool = False
    late_points_off: float = 0.0
    scores: dict[str, float] = field(default_factory=dict)
    waiting: set[str] = field(default_factory=set)


class ClassScores(Sequence):
    """The ``StudentScores`` of a class, sorted by student id, held in arrays: a school has millions of them.

    ``students`` are records without scores, in order; ``values`` has a row for each of them and a column for
    each name of ``cells``, not a number where nothing was handed in, and ``waits`` is an array alike.
    """

    def __init__(self, students, cells, values, waits):
        self.students, self._cells = students, cells
        self._values, self._waits = values, waits
        self._waiting = waits.any(axis=1)

    def __len__(self):
        return len(self.students)

    def __getitem__(self, row):
        values = self._values[row].tolist()
        waiting = (
            {self._cells[each] for each in np.flatnonzero(self._waits[row])} if self._waiting[row] else set()
        )
        scores = {cell: value for cell, value in zip(self._cells, values, strict=True) if value == value}
        return replace(self.students[row], scores=scores, waiting=waiting)

    @property
    def waiting(self):
        """Tell for each student whether a person has something to mark."""
        return self._waiting.tolist()


def read_scores(path):
    """Return the ``ClassScores`` of everyone in the gradebook."""
    with collector_paused(), opened(path, reading=True) as (connection, tables):
        students = {
            row.id: StudentScores(
                student_id=row.id,
                name=" ".join(filter(None, (row.first_name, row.last_name))),
                scores=_NONE,
                waiting=_NOTHING,
            )
            for row in connection.execute(sql.select(tables["student"]))
        }
        for row in connection.execute(_submissions_query(tables)):
            _add_submission(students[row.student_id], row)
        for student_id, off in connection.execute(_points_off_query(tables)):
            students[student_id].late_points_off = off
        # Databases sort letters in unlike ways.
        students = sorted(students.values(), key=attrgetter("student_id"))
        return ClassScores(students, *_read_cells(connection, tables, students))


def granted_of(extension):
    """Return the time that an extension grants, however the database keeps it; none where there is none."""
    if extension is None or isinstance(extension, timedelta):
        return extension or NO_TIME
    return extension - EPOCH


def score_of(grade):
    """Return a grade's score as nbgrader takes it: manual before automatic, extra credit added."""
    extra = sql.func.coalesce(grade.c.extra_credit, 0.0)
    return sql.func.coalesce(grade.c.manual_score + extra, grade.c.auto_score + extra, 0.0)


def _points_off_query(tables):
    """Select what was taken off late hand-ins, for each learner who lost something."""
    submitted, notebook = tables["submitted_assignment"], tables["submitted_notebook"]
    return (
        sql.select(submitted.c.student_id, sql.func.sum(notebook.c.late_submission_penalty))
        .join(notebook, notebook.c.assignment_id == submitted.c.id)
        .where(notebook.c.late_submission_penalty.is_not(None))
        .group_by(submitted.c.student_id)
    )


def _submissions_query(tables):
    """Select every submission with the date it was due."""
    submitted, assignment = tables["submitted_assignment"], tables["assignment"]
    return sql.select(
        submitted.c.student_id, submitted.c.timestamp, submitted.c.extension, assignment.c.duedate
    ).join(assignment, assignment.c.id == submitted.c.assignment_id)


def _read_cells(connection, tables, students):
    """Return names of cells, and scores and what waits for a person, by student and cell.

    Names are looked up here, because a join of a million grades takes longer.
    """
    submitted, notebook, grade, cell = (
        tables[name] for name in ("submitted_assignment", "submitted_notebook", "grade", "base_cell")
    )
    row_of = {student.student_id: row for row, student in enumerate(students)}
    owners = sql.select(notebook.c.id, submitted.c.student_id).join(
        submitted, submitted.c.id == notebook.c.assignment_id
    )
    row_of = {row: row_of[student_id] for row, student_id in connection.execute(owners)}
    names = dict(connection.execute(sql.select(cell.c.id, cell.c.name).order_by(cell.c.id)).all())
    cells = tuple(dict.fromkeys(names.values()))
    column_of = {row: cells.index(name) for row, name in names.items()}
    values = np.full((len(students), len(cells)), np.nan)
    waits = np.zeros((len(students), len(cells)), dtype=bool)
    query = sql.select(grade.c.notebook_id, grade.c.cell_id, score_of(grade))
    # The driver's own rows: they need no translation, which would take as long again.
    cursor = connection.execute(query).cursor
    while found := cursor.fetchmany(AT_ONCE):
        notebooks, cell_ids, scores = zip(*found, strict=True)
        values[[row_of[each] for each in notebooks], [column_of[each] for each in cell_ids]] = scores
    to_judge = sql.select(grade.c.notebook_id, grade.c.cell_id).where(grade.c.needs_manual_grade)
    for row, cell_id in connection.execute(to_judge):
        waits[row_of[row], column_of[cell_id]] = True
    return cells, values, waits


def _add_submission(student, row):
    """Note the latest hand-in of a learner and whether any came after its due date and extension."""
    if row.timestamp is None:
        return
    student.handed_in = max(filter(None, (student.handed_in, row.timestamp)))
    if row.duedate is not None:
        granted = granted_of(row.extension)
        student.late = student.late or row.timestamp > row.duedate + granted
