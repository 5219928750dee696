"""Marks into nbgrader's gradebook in bulk.

Only automatic scores and hand-in times are written; what a person entered there (manual scores, extra
credit, comments, names, extensions) stays as it is.
"""

import re
from contextlib import closing

import sqlalchemy as sql

from grading.gradebook_bulk import RowIds, insert_many
from grading.gradebook_file import GradebookFile
from grading.gradebook_rows import Assignment, overruled_students, write_page, write_students
from grading.hand_in import practical_id
from grading.times import utc

AT_ONCE = 2000  # learners in one transaction, so that the formgrader need not wait for a whole school


def course_id(settings):
    """Return the course key as nbgrader takes it for a course: letters, digits and hyphens."""
    return re.sub(r"[^A-Za-z0-9_]+", "-", settings.course_key).strip("-")[:128] or "course"


def cell_name(exercise_id):
    """Return the name that an exercise's mark has in the gradebook and in its notebook cell."""
    return exercise_id.replace(".", "-")


def notebook_name(page):
    """Return the name of the page's notebook in a course and its gradebook, without suffix."""
    return page.id


def graded_cells(page):
    """Return ``{name: (points, kind of cell)}`` for everything on the page that carries marks."""
    cells = {cell_name(each.id): (each.points, "code") for each in page.exercises if each.counts}
    if page.practical_points:
        cells[practical_id(page.id)] = (page.practical_points, "markdown")
    return cells


def write_marks(path, learners, *, pages, settings):
    """Write the marks of many learners into the gradebook file at ``path``, which is there afterwards."""
    with closing(MarksWriter(path, pages=pages, settings=settings)) as writer:
        writer.take(learners)
        writer.finish()


class MarksWriter:
    """Writes the marks of a class into the gradebook file at ``path`` while they are still being made.

    Marks of a learner may come again, put together from more hand-ins. Where a person has overruled a mark,
    all are kept back to the end: a mark that changes on the way would put that person's score up for review.
    """

    def __init__(self, path, *, pages, settings):
        self._pages, self._settings = pages, settings
        self._file = GradebookFile(path)
        self._ids = RowIds()
        self._assignments = None
        self._overruled = frozenset()
        self._waiting, self._kept_back = [], {}

    def take(self, learners):
        """Take marks, and write those that make a transaction full."""
        self._waiting += learners
        while len(self._waiting) >= AT_ONCE:
            some, self._waiting = self._waiting[:AT_ONCE], self._waiting[AT_ONCE:]
            self._write(some)

    def finish(self):
        """Write everything that is left; the gradebook is there even if that is nothing."""
        self._write(self._waiting)
        kept_back = list(self._kept_back.values())
        self._waiting, self._kept_back, self._overruled = [], {}, frozenset()
        for start in range(0, len(kept_back), AT_ONCE):
            self._write(kept_back[start : start + AT_ONCE])

    def _write(self, learners):
        """Write the marks of these learners in one transaction, but for those that are kept back."""
        with self._file.transaction() as (connection, tables):
            assignments = self._assignments or self._begin(connection, tables)
            self._kept_back |= {
                each.student_id: each for each in learners if each.student_id in self._overruled
            }
            learners = [each for each in learners if each.student_id not in self._overruled]
            write_students(connection, tables, learners)
            for page in self._pages.values():
                marks = {each.student_id: each for each in learners if page.id in each.pages}
                write_page(connection, tables, assignments[page.id], marks, self._ids)
        self._assignments = assignments

    def close(self):
        """Let go of the gradebook."""
        self._file.close()

    def _begin(self, connection, tables):
        """Bring course, assignments, notebooks and cells into the gradebook; return assignments by page."""
        self._overruled = overruled_students(connection, tables)
        _ensure_course(connection, tables, self._settings)
        return {
            page.id: _ensure_assignment(connection, tables, page, self._settings, self._ids)
            for page in self._pages.values()
        }


def _ensure_course(connection, tables, settings):
    """Make the course row where there is none yet."""
    course, wanted = tables["course"], course_id(settings)
    if not connection.scalar(sql.select(course.c.id).where(course.c.id == wanted)):
        connection.execute(course.insert(), {"id": wanted})


def _ensure_row(connection, table, ids, **values):
    """Return the id of the row with these values, made where there is none yet."""
    wanted = sql.and_(*(table.c[name] == value for name, value in values.items()))
    found = connection.scalar(sql.select(table.c.id).where(wanted))
    if found is None:
        found = next(ids)
        connection.execute(table.insert(), {"id": found, **values})
    return found


def _ensure_assignment(connection, tables, page, settings, ids):
    """Bring the page's assignment, notebook and cells into the gradebook and return their row ids."""
    assignment = tables["assignment"]
    row = connection.scalar(sql.select(assignment.c.id).where(assignment.c.name == page.assignment))
    if row is None:
        row = next(ids)
        values = {"id": row, "name": page.assignment, "course_id": course_id(settings)}
        connection.execute(assignment.insert(), values)
    if settings.due:
        due = sql.update(assignment).where(assignment.c.id == row).values(duedate=utc(settings.due))
        connection.execute(due)
    notebook_row = _ensure_row(
        connection, tables["notebook"], ids, name=notebook_name(page), assignment_id=row
    )
    _ensure_cells(connection, tables, page, notebook_row, ids)
    return _assignment(connection, tables, page, row, notebook_row)


def _ensure_cells(connection, tables, page, notebook_row, ids):
    """Make the page's missing cells and bring the points of the others up to date."""
    graded, wanted = tables["grade_cells"], graded_cells(page)
    cells = _cell_rows(connection, tables, notebook_row, "GradeCell", wanted, ids)
    held = {
        row.id: (row.max_score, row.cell_type)
        for row in connection.execute(sql.select(graded).where(graded.c.id.in_(cells.values())))
    }
    new = [(cells[name], *points) for name, points in wanted.items() if cells[name] not in held]
    insert_many(connection, graded, ("id", "max_score", "cell_type"), new)
    for name, (points, kind) in wanted.items():
        if held.get(cells[name], (points, kind)) != (points, kind):
            change = sql.update(graded).where(graded.c.id == cells[name])
            connection.execute(change.values(max_score=points, cell_type=kind))
    if page.practical_points:
        names = [practical_id(page.id)]
        cell = _cell_rows(connection, tables, notebook_row, "SolutionCell", names, ids)[names[0]]
        _ensure_row(connection, tables["solution_cells"], iter([cell]), id=cell)


def _cell_rows(connection, tables, notebook_row, kind, names, ids):
    """Return the row ids of a notebook's cells of one kind by name; those that are missing are made."""
    cell = tables["base_cell"]
    query = sql.select(cell.c.name, cell.c.id).where(cell.c.notebook_id == notebook_row, cell.c.type == kind)
    known = dict(connection.execute(query).all())
    new = [(next(ids), name, notebook_row, kind) for name in names if name not in known]
    insert_many(connection, cell, ("id", "name", "notebook_id", "type"), new)
    return known | {name: row for row, name, _, _ in new}


def _assignment(connection, tables, page, row, notebook_row):
    """Read the row ids of everything in the notebook that takes a grade or a comment."""
    cell = tables["base_cell"]
    rows = connection.execute(sql.select(cell).where(cell.c.notebook_id == notebook_row)).all()
    automatic = {cell_name(each.id): each.id for each in page.exercises if each.counts}
    return Assignment(
        row=row,
        notebook_row=notebook_row,
        graded={each.id: automatic.get(each.name) for each in rows if each.type in ("GradeCell", "TaskCell")},
        commented=tuple(each.id for each in rows if each.type in ("SolutionCell", "TaskCell")),
    )
