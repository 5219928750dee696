"""Scores out of the gradebook, what a person entered there included."""

import math
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta
from itertools import chain
from operator import attrgetter
from types import MappingProxyType

import numpy as np
import sqlalchemy as sql

from grading.collector import collector_paused
from grading.gradebook_file import opened

EPOCH = datetime(1970, 1, 1)  # nbgrader keeps an extension in a file as this date plus the time granted
NO_TIME = timedelta()
AT_ONCE = 5000  # pages of learners whose grades lie near each other in the database, read together
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

    def table(self, cells, rows):
        """Return scores and what waits, an array each, for these cells and a slice of students."""
        columns = [self._cells.index(cell) if cell in self._cells else len(self._cells) for cell in cells]
        values, waits = (
            np.pad(array[rows], ((0, 0), (0, 1)), constant_values=nothing)[:, columns]
            for array, nothing in ((self._values, np.nan), (self._waits, False))
        )
        return values, waits

    def sums(self, rows):
        """Return the sums of all scores, and how many wait for a person, for a slice of students."""
        scores = np.nan_to_num(self._values[rows], nan=0.0, posinf=np.inf, neginf=-np.inf).tolist()
        # Exact sums, so that they are the same in any order of the cells.
        return [math.fsum(each) for each in scores], self._waits[rows].sum(axis=1).tolist()


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
        for student_id, latest in connection.execute(_latest_query(tables)):
            students[student_id].handed_in = latest
        for row in connection.execute(_late_query(tables)):
            if row.timestamp > row.duedate + granted_of(row.extension):
                students[row.student_id].late = True
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


def _latest_query(tables):
    """Select when each learner handed in last."""
    submitted = tables["submitted_assignment"]
    return (
        sql.select(submitted.c.student_id, sql.func.max(submitted.c.timestamp))
        .where(submitted.c.timestamp.is_not(None))
        .group_by(submitted.c.student_id)
    )


def _late_query(tables):
    """Select every submission that came after the date it was due, but for its extension."""
    submitted, assignment = tables["submitted_assignment"], tables["assignment"]
    return (
        sql.select(submitted.c.student_id, submitted.c.timestamp, submitted.c.extension, assignment.c.duedate)
        .join(assignment, assignment.c.id == submitted.c.assignment_id)
        .where(submitted.c.timestamp > assignment.c.duedate)
    )


def _read_cells(connection, tables, students):
    """Return names of cells, and scores and what waits for a person, by student and cell."""
    grade, cell = tables["grade"], tables["base_cell"]
    row_of, handed_in = _handed_in(connection, tables, students)
    found = connection.execute(
        sql.select(cell.c.id, cell.c.name, cell.c.notebook_id).order_by(cell.c.id)
    ).all()
    cells = tuple(dict.fromkeys(each.name for each in found))
    column_of = {each.id: cells.index(each.name) for each in found}
    values = np.full((len(students), len(cells)), np.nan, order="F")  # it is filled by cells
    waits = np.zeros((len(students), len(cells)), dtype=bool)
    for notebook, pages in handed_in.items():
        of_page = [each.id for each in found if each.notebook_id == notebook]
        for start in range(0, len(pages), AT_ONCE):
            for cell_id, rows, scores in _scores(
                connection, grade, of_page, pages[start : start + AT_ONCE], row_of
            ):
                values[rows, column_of[cell_id]] = scores
    to_judge = sql.select(grade.c.notebook_id, grade.c.cell_id).where(grade.c.needs_manual_grade)
    for page, cell_id in connection.execute(to_judge).cursor:
        waits[row_of[page], column_of[cell_id]] = True
    return cells, values, waits


def _scores(connection, grade, cells, pages, row_of):
    """Give each cell with the rows of those who have it and their scores, for some learners' pages.

    The index of the grades has the cell first, then the page of a learner. Read in that order a million
    grades need no names; the pages are in the database's order, and those of a few thousand lie together.
    """
    among = grade.c.notebook_id.between(pages[0], pages[-1])
    wanted = sql.and_(grade.c.cell_id == sql.bindparam("cell"), among)
    ids, scores = (
        sql.select(each).where(wanted).order_by(grade.c.notebook_id)
        for each in (grade.c.notebook_id, score_of(grade))
    )
    everybody = np.array([row_of[each] for each in pages])
    for cell in cells:
        read = np.fromiter(_plain(connection, scores, cell), float)
        alike = len(read) == len(pages)  # else not everyone has this cell
        yield cell, everybody if alike else [row_of[each] for each in _plain(connection, ids, cell)], read


def _plain(connection, query, cell):
    """Give the values of a query's one column as the driver has them, which needs no translation."""
    return chain.from_iterable(connection.execute(query, {"cell": cell}).cursor)


def _handed_in(connection, tables, students):
    """Return ``{page of a learner: row of the learner}``, and the pages of learners by notebook, in order."""
    submitted, notebook = tables["submitted_assignment"], tables["submitted_notebook"]
    of_student = {student.student_id: row for row, student in enumerate(students)}
    query = (
        sql.select(notebook.c.id, notebook.c.notebook_id, submitted.c.student_id)
        .join(submitted, submitted.c.id == notebook.c.assignment_id)
        .order_by(notebook.c.id)
    )
    row_of, pages = {}, defaultdict(list)
    for page, of_notebook, student_id in connection.execute(query).cursor:
        row_of[page] = of_student[student_id]
        pages[of_notebook].append(page)
    return row_of, pages
