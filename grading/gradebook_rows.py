"""Rows of submissions in nbgrader's tables: new ones in bulk, known ones by what marking changes and no more.

nbgrader's database does not check its references, so every row here is made together with those it names.
"""

from dataclasses import dataclass

import sqlalchemy as sql

from grading.gradebook_bulk import insert_grades, insert_many

MOST_NAMED = 500  # names in one query; every build of SQLite takes 999


@dataclass(frozen=True, kw_only=True)
class Assignment:
    """Row ids of one page in the gradebook.

    ``graded`` maps each cell that takes a score to the id of its exercise, None where a person gives the
    score; ``commented`` are the cells that take comments.
    """

    row: str
    notebook_row: str
    graded: dict[str, str | None]
    commented: tuple[str, ...]


def _some_at_a_time(names):
    """Give names in lists short enough for one query."""
    names = list(names)
    return (names[start : start + MOST_NAMED] for start in range(0, len(names), MOST_NAMED))


def write_students(connection, tables, learners):
    """Add the learners that the gradebook does not know; names already there stay."""
    student = tables["student"]
    new = {each.student_id: each for each in learners}
    for names in _some_at_a_time(new):
        for known in connection.scalars(sql.select(student.c.id).where(student.c.id.in_(names))):
            del new[known]
    rows = [(key, each.first_name, each.last_name) for key, each in new.items()]
    insert_many(connection, student, ("id", "first_name", "last_name"), rows)


def overruled_students(connection, tables):
    """Return the ids of the students of whom a person has overruled an automatic mark."""
    submitted, notebook, grade, graded = (
        tables[name] for name in ("submitted_assignment", "submitted_notebook", "grade", "grade_cells")
    )
    query = (
        sql.select(submitted.c.student_id)
        .distinct()
        .join(notebook, notebook.c.assignment_id == submitted.c.id)
        .join(grade, grade.c.notebook_id == notebook.c.id)
        .join(graded, graded.c.id == grade.c.cell_id)
        .where(grade.c.manual_score.is_not(None), graded.c.cell_type == "code")
    )
    return frozenset(connection.scalars(query))


def write_page(connection, tables, assignment, marks, ids):
    """Write one page's submissions: new ones whole, known ones by their automatic scores only.

    ``marks`` are the marks of the learners who handed this page in, by student id.
    """
    submitted, known = tables["submitted_assignment"], {}
    for names in _some_at_a_time(marks):
        query = sql.select(submitted.c.student_id, submitted.c.id, submitted.c.timestamp).where(
            submitted.c.assignment_id == assignment.row, submitted.c.student_id.in_(names)
        )
        known |= {student: (row, moment) for student, row, moment in connection.execute(query)}
    _insert_submissions(
        connection, tables, assignment, [each for student, each in marks.items() if student not in known], ids
    )
    if known:
        _update_times(connection, submitted, marks, known)
        _update_scores(connection, tables, assignment, marks, list(known))


def _insert_submissions(connection, tables, assignment, new, ids):
    """Insert whole submissions, every cell of the notebook mirrored as nbgrader does it."""
    submissions, notebooks = ([next(ids) for _ in new] for _ in range(2))
    insert_many(
        connection,
        tables["submitted_assignment"],
        ("id", "assignment_id", "student_id", "timestamp"),
        [
            (row, assignment.row, each.student_id, each.handed_in)
            for row, each in zip(submissions, new, strict=True)
        ],
    )
    insert_many(
        connection,
        tables["submitted_notebook"],
        ("id", "assignment_id", "notebook_id", "flagged"),
        [
            (row, submission, assignment.notebook_row, False)
            for row, submission in zip(notebooks, submissions, strict=True)
        ],
    )
    insert_grades(
        connection, tables["grade"], assignment.graded, notebooks, [each.points for each in new], ids
    )
    insert_many(
        connection,
        tables["comment"],
        ("id", "notebook_id", "cell_id"),
        [(next(ids), notebook, cell) for cell in assignment.commented for notebook in notebooks],
    )


def _update_times(connection, submitted, marks, known):
    """Bring the hand-in times of known submissions up to date."""
    changes = [
        {"row": row, "time": marks[student].handed_in}
        for student, (row, moment) in known.items()
        if moment != marks[student].handed_in
    ]
    if changes:
        connection.execute(
            sql.update(submitted)
            .where(submitted.c.id == sql.bindparam("row"))
            .values(timestamp=sql.bindparam("time")),
            changes,
        )


def _update_scores(connection, tables, assignment, marks, students):
    """Bring automatic scores of known submissions up to date, and nothing else.

    Where a person has overruled an automatic score that now comes out differently, the cell is put up
    for review again, the way nbgrader does it.
    """
    grade, exercise_of, changes = tables["grade"], assignment.graded, []
    for names in _some_at_a_time(students):
        for student, row, cell, automatic, manual in connection.execute(_grades(tables, assignment, names)):
            score = marks[student].points.get(exercise_of[cell], 0.0)
            if score != automatic:
                review = score is None or manual is not None
                changes.append({"row": row, "score": score, "review": review})
    if changes:
        connection.execute(
            sql.update(grade)
            .where(grade.c.id == sql.bindparam("row"))
            .values(auto_score=sql.bindparam("score"), needs_manual_grade=sql.bindparam("review")),
            changes,
        )


def _grades(tables, assignment, students):
    """Select the automatic grades of some learners in one assignment.

    The cells are named too: the index of the grades begins with them.
    """
    cells = [cell for cell, exercise in assignment.graded.items() if exercise]
    submitted, notebook, grade = (
        tables[name] for name in ("submitted_assignment", "submitted_notebook", "grade")
    )
    return (
        sql.select(
            submitted.c.student_id, grade.c.id, grade.c.cell_id, grade.c.auto_score, grade.c.manual_score
        )
        .join(notebook, notebook.c.id == grade.c.notebook_id)
        .join(submitted, submitted.c.id == notebook.c.assignment_id)
        .where(
            submitted.c.assignment_id == assignment.row,
            submitted.c.student_id.in_(students),
            notebook.c.notebook_id == assignment.notebook_row,
            grade.c.cell_id.in_(cells),
        )
    )
