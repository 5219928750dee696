"""A class as tables of numbers: learners down, exercises across, gaps where nothing was handed in.

Points come from the gradebook, so what a person changed there counts; tries, time and slips come from the
marking. Only exercises that carry marks are in the tables.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from grading import class_statistics
from grading.exercises import EXERCISES, PAGES
from grading.gradebook import cell_name

COUNTING = tuple(each.id for each in EXERCISES.values() if each.counts)


@dataclass(frozen=True, kw_only=True)
class ClassTables:
    """One class: names, and tables with a row a learner and a column for each exercise of ``exercises``.

    ``points`` and ``at_once`` are not a number where the page was not handed in, or where a fault of ours
    waits for a person. ``tries`` is 0 and ``minutes`` not a number where nothing is known.
    """

    names: tuple[str, ...]
    late: tuple[bool, ...]
    slips: tuple[tuple[str, ...], ...]
    exercises: tuple[str, ...]
    points: np.ndarray
    at_once: np.ndarray
    tries: np.ndarray
    rounds: np.ndarray
    minutes: np.ndarray
    tries_per_round: int

    @cached_property
    def maxima(self):
        """Points of each exercise."""
        return np.array([EXERCISES[each].points for each in self.exercises])

    @cached_property
    def pages(self):
        """Ids of the pages that somebody handed in, in reading order."""
        there = {EXERCISES[each].page for each in self.exercises}
        return tuple(page for page in PAGES if page in there)

    @cached_property
    def objectives(self):
        """``(page id, objective id)`` of each objective that an exercise of the tables belongs to."""
        there = {(EXERCISES[each].page, EXERCISES[each].objective) for each in self.exercises}
        return tuple(
            (page, each) for page in self.pages for each in PAGES[page].objectives if (page, each) in there
        )

    @cached_property
    def shares(self):
        """Share of the points by learner and objective; not a number where nothing could be earned."""
        place = {each: number for number, each in enumerate(self.objectives)}
        groups = [place[EXERCISES[each].page, EXERCISES[each].objective] for each in self.exercises]
        return class_statistics.shares_by_group(self.points, self.maxima, groups, len(self.objectives))

    @cached_property
    def handed_in(self):
        """Table of learner by page: whether any exercise of the page has points."""
        page_of = np.array([EXERCISES[each].page for each in self.exercises])
        there = ~np.isnan(self.points)
        columns = [there[:, page_of == page].any(axis=1) for page in self.pages]
        return np.column_stack(columns) if columns else np.zeros((len(self.names), 0), dtype=bool)

    @cached_property
    def totals(self):
        """Points of each learner over all pages."""
        return np.nansum(self.points, axis=1)

    @cached_property
    def total_shares(self):
        """Share of the points of the pages handed in, by learner; not a number where that was nothing."""
        possible = (~np.isnan(self.points)) @ self.maxima
        return np.divide(self.totals, possible, out=np.full(len(self.names), np.nan), where=possible > 0)

    def set_of(self, pages):
        """Return ``(SetStatistics, ids left out)`` of some pages, over those who handed all of them in.

        An exercise that waits for a person with any of them is left out, so that the table has no gaps.
        """
        columns = np.array([EXERCISES[each].page in pages for each in self.exercises])
        rows = self.handed_in[:, [page in pages for page in self.pages]].all(axis=1)
        whole = columns & ~np.isnan(self.points[rows]).any(axis=0)
        names = [each for each, kept in zip(self.exercises, whole, strict=True) if kept]
        left_out = [each for each, kept in zip(self.exercises, columns & ~whole, strict=True) if kept]
        if not names or not rows.any():
            return None, left_out
        table = np.ix_(rows, whole)
        found = class_statistics.set_statistics(
            names, self.points[table], self.at_once[table], self.maxima[whole]
        )
        return found, left_out


def class_tables(students, work):
    """Return the ``ClassTables`` of a marking: scores from the gradebook, the rest from ``work``."""
    scores = {each.student_id: each for each in students}
    learners = [each for each in work.learners if each.student_id in scores]
    learners.sort(key=lambda each: (scores[each.student_id].name.casefold(), each.student_id))
    rows = [scores[each.student_id] for each in learners]
    points = np.array([[_points(row, each) for each in COUNTING] for row in rows]).reshape(
        len(rows), len(COUNTING)
    )
    column = {each: number for number, each in enumerate(work.exercises)}
    places = [column.get(each, -1) for each in COUNTING]
    there = ~np.isnan(points).all(axis=0)

    def table(name):
        values = np.array([[*getattr(each, name), 0] for each in learners], dtype=float)
        return values.reshape(len(rows), -1)[:, places][:, there] if rows else points[:, there]

    tries, seconds = table("tries"), table("seconds")
    return ClassTables(
        names=tuple(row.name or row.student_id for row in rows),
        late=tuple(row.late for row in rows),
        slips=tuple(each.slips for each in learners),
        exercises=tuple(each for each, kept in zip(COUNTING, there, strict=True) if kept),
        points=points[:, there],
        at_once=np.where(np.isnan(points[:, there]), np.nan, table("at_once")),
        tries=tries,
        rounds=table("rounds"),
        minutes=np.where((seconds > 0) & (tries > 0), seconds / 60, np.nan),
        tries_per_round=work.tries_per_round,
    )


def _points(student, exercise_id):
    """Return a learner's points for an exercise; not a number where there are none to speak of."""
    cell = cell_name(exercise_id)
    if cell not in student.scores or (cell in student.waiting and not student.scores[cell]):
        return np.nan
    return student.scores[cell]
