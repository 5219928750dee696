"""What late hand-ins lose, by the class file's rule, in the gradebook's own field for it.

Taken off are shares of what the page's exercises earned. A practical is judged at the bench and handed in by
nobody, so nothing is taken off it. An extension granted in the gradebook moves the due time.
"""

from dataclasses import dataclass
from datetime import datetime, timedelta

import sqlalchemy as sql

from grading.gradebook_file import opened
from grading.gradebook_scores import NO_TIME, granted_of, score_of
from grading.round_marks import POINT_DIGITS
from grading.times import utc


@dataclass(frozen=True, kw_only=True)
class LatePage:
    """A page that came late: when it was due, how much later it came, and what of its points is taken off.

    ``due`` is in UTC and has the time granted by an extension in it.
    """

    page: str
    due: datetime
    granted: timedelta
    late_by: timedelta
    earned: float
    share: float
    points: float


def late_pages(earned, handed_in, settings, *, granted):
    """Return the pages that came after they were due, from the points that the exercises of each earned.

    ``granted`` is ``{page id: time}`` for the pages with an extension.
    """
    if not handed_in or not settings.due:
        return ()
    due = utc(settings.due)
    found = [
        _late_page(
            page, settings, due=due, granted=granted.get(page, NO_TIME), handed_in=handed_in, earned=points
        )
        for page, points in earned.items()
    ]
    return tuple(late for late in found if late)


def _late_page(page, settings, *, due, granted, handed_in, earned):
    """Return the ``LatePage`` of a page that came after it was due, or None."""
    late_by = handed_in - due - granted
    if late_by <= NO_TIME:
        return None
    share = settings.late_share_off(late_by)
    return LatePage(
        page=page,
        due=due + granted,
        granted=granted,
        late_by=late_by,
        earned=earned,
        share=share,
        points=round(earned * share, POINT_DIGITS),
    )


def extensions_in(gradebook, *, pages):
    """Return ``{learner's id: {page id: time}}`` for every extension that a gradebook grants."""
    of_assignment = {page.assignment: page.id for page in pages.values()}
    found = {}
    with opened(gradebook, reading=True) as (connection, tables):
        submitted, assignment = tables["submitted_assignment"], tables["assignment"]
        query = (
            sql.select(submitted.c.student_id, assignment.c.name, submitted.c.extension)
            .join(assignment, assignment.c.id == submitted.c.assignment_id)
            .where(submitted.c.extension.is_not(None))
            .order_by(submitted.c.student_id, assignment.c.name)
        )
        for student_id, name, extension in connection.execute(query):
            granted = granted_of(extension)
            if granted and name in of_assignment:
                found.setdefault(student_id, {})[of_assignment[name]] = granted
    return found


def write_late_penalties(gradebook, settings, *, pages):
    """Bring the points taken off every late hand-in up to date; return ``{(learner, page id): points}``."""
    of_assignment = {page.assignment: page.id for page in pages.values()}
    off, changes = {}, []
    with opened(gradebook) as (connection, tables):
        for row in connection.execute(_late_query(tables)):
            page, late = of_assignment.get(row.name, row.name), None
            if row.timestamp and row.duedate:
                late = _late_page(
                    page,
                    settings,
                    due=row.duedate,
                    granted=granted_of(row.extension),
                    handed_in=row.timestamp,
                    earned=row.earned or 0.0,
                )
            points = (late and late.points) or None
            if points:
                off[row.student_id, page] = points
            if points != row.late_submission_penalty:
                changes.append({"row": row.id, "points": points})
        if changes:
            notebook = tables["submitted_notebook"]
            connection.execute(
                sql.update(notebook)
                .where(notebook.c.id == sql.bindparam("row"))
                .values(late_submission_penalty=sql.bindparam("points")),
                changes,
            )
    return off


def _late_query(tables):
    """Select the notebooks that came late or have something taken off, and what their exercises earned."""
    names = ("assignment", "submitted_assignment", "submitted_notebook", "grade", "grade_cells")
    assignment, submitted, notebook, grade, graded = (tables[name] for name in names)
    # By cell first, as the index of the grades is: else all grades are read for each late notebook.
    automatic = sql.select(graded.c.id).where(graded.c.cell_type == "code")
    earned = (
        sql.select(sql.func.sum(score_of(grade)))
        .where(grade.c.notebook_id == notebook.c.id, grade.c.cell_id.in_(automatic))
        .scalar_subquery()
    )
    return (
        sql.select(
            submitted.c.student_id,
            submitted.c.timestamp,
            submitted.c.extension,
            assignment.c.duedate,
            assignment.c.name,
            notebook.c.id,
            notebook.c.late_submission_penalty,
            earned.label("earned"),
        )
        .join(submitted, submitted.c.id == notebook.c.assignment_id)
        .join(assignment, assignment.c.id == submitted.c.assignment_id)
        .where(
            sql.or_(
                submitted.c.timestamp > assignment.c.duedate, notebook.c.late_submission_penalty.is_not(None)
            )
        )
    )
