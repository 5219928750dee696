"""Marks into nbgrader's gradebook in bulk.

Only automatic scores and hand-in times are written; what a person entered there (manual scores, extra
credit, comments, names, extensions) stays as it is.
"""

import re
from dataclasses import dataclass

import sqlalchemy as sql

from grading.gradebook_file import opened, row_ids
from grading.hand_in import practical_id
from grading.times import utc


@dataclass(frozen=True, kw_only=True)
class _Assignment:
    """Row ids of one page in the gradebook: its graded cells by name, and its cells that take comments."""

    row: str
    notebook_row: str
    graded: dict[str, str]
    commented: tuple[str, ...]


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
    """Write the marks of many learners, in one transaction, into the gradebook file at ``path``."""
    learners = list(learners)
    with opened(path) as (connection, tables):
        ids = row_ids()
        _ensure_course(connection, tables, settings)
        _write_students(connection, tables, learners)
        for page in pages.values():
            assignment = _ensure_assignment(connection, tables, page, settings, ids)
            marks = {each.student_id: each for each in learners if page.id in each.pages}
            _write_page(connection, tables, page, assignment, marks, ids)


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
    return _assignment(connection, tables, row, notebook_row)


def _ensure_cells(connection, tables, page, notebook_row, ids):
    """Make the page's missing cells and bring the points of the others up to date."""
    for name, (points, kind) in graded_cells(page).items():
        cell = _ensure_row(
            connection, tables["base_cell"], ids, name=name, notebook_id=notebook_row, type="GradeCell"
        )
        graded = tables["grade_cells"]
        changed = connection.execute(
            sql.update(graded).where(graded.c.id == cell).values(max_score=points, cell_type=kind)
        )
        if not changed.rowcount:
            connection.execute(graded.insert(), {"id": cell, "max_score": points, "cell_type": kind})
    if page.practical_points:
        cell = _ensure_row(
            connection,
            tables["base_cell"],
            ids,
            name=practical_id(page.id),
            notebook_id=notebook_row,
            type="SolutionCell",
        )
        _ensure_row(connection, tables["solution_cells"], iter([cell]), id=cell)


def _assignment(connection, tables, row, notebook_row):
    """Read the row ids of everything in the notebook that takes a grade or a comment."""
    cell = tables["base_cell"]
    rows = connection.execute(sql.select(cell).where(cell.c.notebook_id == notebook_row)).all()
    return _Assignment(
        row=row,
        notebook_row=notebook_row,
        graded={each.name: each.id for each in rows if each.type in ("GradeCell", "TaskCell")},
        commented=tuple(each.id for each in rows if each.type in ("SolutionCell", "TaskCell")),
    )


def _insert(connection, table, rows):
    """Insert many rows at once."""
    if rows:
        connection.execute(table.insert(), rows)


def _write_students(connection, tables, learners):
    """Add the learners that the gradebook does not know; names already there stay."""
    student = tables["student"]
    known = set(connection.scalars(sql.select(student.c.id)))
    new = {each.student_id: each for each in learners if each.student_id not in known}
    _insert(
        connection,
        student,
        [
            {"id": key, "first_name": each.first_name, "last_name": each.last_name}
            for key, each in new.items()
        ],
    )


def _write_page(connection, tables, page, assignment, marks, ids):
    """Write one page's submissions: new ones whole, known ones by their automatic scores only."""
    submitted = tables["submitted_assignment"]
    query = sql.select(submitted.c.id, submitted.c.student_id).where(
        submitted.c.assignment_id == assignment.row
    )
    known = {student: row for row, student in connection.execute(query) if student in marks}
    automatic = {cell_name(each.id): each.id for each in page.exercises if each.counts}
    new = [each for student, each in marks.items() if student not in known]
    _insert_submissions(connection, tables, assignment, automatic, new, ids)
    if known:
        _update_submissions(connection, tables, assignment, automatic, marks, known)


def _insert_submissions(connection, tables, assignment, automatic, new, ids):
    """Insert whole submissions, every cell of the notebook mirrored as nbgrader does it."""
    submissions, notebooks, grades, comments = [], [], [], []
    for each in new:
        submission, notebook = next(ids), next(ids)
        submissions.append(
            {
                "id": submission,
                "assignment_id": assignment.row,
                "student_id": each.student_id,
                "timestamp": each.handed_in,
            }
        )
        notebooks.append(
            {
                "id": notebook,
                "assignment_id": submission,
                "notebook_id": assignment.notebook_row,
                "flagged": False,
            }
        )
        for name, cell in assignment.graded.items():
            score = each.points.get(automatic[name], 0.0) if name in automatic else None
            grades.append(
                {
                    "id": next(ids),
                    "notebook_id": notebook,
                    "cell_id": cell,
                    "auto_score": score,
                    "needs_manual_grade": score is None,
                }
            )
        comments += [
            {"id": next(ids), "notebook_id": notebook, "cell_id": cell} for cell in assignment.commented
        ]
    _insert(connection, tables["submitted_assignment"], submissions)
    _insert(connection, tables["submitted_notebook"], notebooks)
    _insert(connection, tables["grade"], grades)
    _insert(connection, tables["comment"], comments)


def _update_submissions(connection, tables, assignment, automatic, marks, known):
    """Bring hand-in time and automatic scores of known submissions up to date, and nothing else.

    Where a person has overruled an automatic score that now comes out differently, the cell is put up
    for review again, the way nbgrader does it.
    """
    submitted, grade = tables["submitted_assignment"], tables["grade"]
    connection.execute(
        sql.update(submitted)
        .where(submitted.c.id == sql.bindparam("row"))
        .values(timestamp=sql.bindparam("time")),
        [{"row": row, "time": marks[student].handed_in} for student, row in known.items()],
    )
    cells = {assignment.graded[name]: exercise for name, exercise in automatic.items()}
    changes = []
    for row in connection.execute(_grades_query(tables, assignment)):
        if row.student_id not in known or row.cell_id not in cells:
            continue
        score = marks[row.student_id].points.get(cells[row.cell_id], 0.0)
        if score != row.auto_score:
            review = score is None or row.manual_score is not None
            changes.append({"row": row.id, "score": score, "review": review})
    if changes:
        connection.execute(
            sql.update(grade)
            .where(grade.c.id == sql.bindparam("row"))
            .values(auto_score=sql.bindparam("score"), needs_manual_grade=sql.bindparam("review")),
            changes,
        )


def _grades_query(tables, assignment):
    """Select every grade of one assignment with its learner."""
    submitted, notebook, grade = (
        tables[name] for name in ("submitted_assignment", "submitted_notebook", "grade")
    )
    return (
        sql.select(
            grade.c.id, grade.c.cell_id, grade.c.auto_score, grade.c.manual_score, submitted.c.student_id
        )
        .join(notebook, notebook.c.id == grade.c.notebook_id)
        .join(submitted, submitted.c.id == notebook.c.assignment_id)
        .where(submitted.c.assignment_id == assignment.row)
    )
