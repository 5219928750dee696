"""Scores out of the gradebook, what a person entered there included."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from operator import attrgetter

import sqlalchemy as sql

from grading.gradebook_file import opened

EPOCH = datetime(1970, 1, 1)  # nbgrader keeps an extension in a file as this date plus the time granted
NO_TIME = timedelta()


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


def read_scores(path):
    """Return the ``StudentScores`` of everyone in the gradebook, sorted by student id."""
    with opened(path, reading=True) as (connection, tables):
        students = {
            row.id: StudentScores(
                student_id=row.id, name=" ".join(filter(None, (row.first_name, row.last_name)))
            )
            for row in connection.execute(sql.select(tables["student"]))
        }
        for row in connection.execute(_submissions_query(tables)):
            _add_submission(students[row.student_id], row)
        for student_id, off in connection.execute(_points_off_query(tables)):
            students[student_id].late_points_off = off
        _add_scores(connection, tables, students)
    return sorted(students.values(), key=attrgetter("student_id"))  # databases sort letters in unlike ways


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


def _add_scores(connection, tables, students):
    """Add every score: names are looked up here, because a join of a million grades takes longer."""
    submitted, notebook, grade, cell = (
        tables[name] for name in ("submitted_assignment", "submitted_notebook", "grade", "base_cell")
    )
    names = dict(connection.execute(sql.select(cell.c.id, cell.c.name)).all())
    owners = sql.select(notebook.c.id, submitted.c.student_id).join(
        submitted, submitted.c.id == notebook.c.assignment_id
    )
    owner = {row: students[student_id] for row, student_id in connection.execute(owners)}
    waits = sql.cast(grade.c.needs_manual_grade, sql.Integer)
    query = sql.select(grade.c.notebook_id, grade.c.cell_id, score_of(grade), waits)
    # The driver's own rows: they need no translation, which would take as long again.
    for row, cell_id, score, waiting in connection.execute(query).cursor:
        student = owner[row]
        student.scores[names[cell_id]] = score
        if waiting:
            student.waiting.add(names[cell_id])


def _add_submission(student, row):
    """Note the latest hand-in of a learner and whether any came after its due date and extension."""
    if row.timestamp is None:
        return
    student.handed_in = max(filter(None, (student.handed_in, row.timestamp)))
    if row.duedate is not None:
        granted = granted_of(row.extension)
        student.late = student.late or row.timestamp > row.duedate + granted
