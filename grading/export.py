"""Tables for a spreadsheet: the scores of a class, and everything that could not be read.

No text of a learner's can act as a formula there, and a file is either whole or not written.
"""

import csv
import io
import math
from itertools import islice

from grading.gradebook import graded_cells
from grading.whole_files import write_whole_from

_ACTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
ROWS_AT_ONCE = 1000  # rows that are held in memory
PROBLEM_COLUMNS = ("file", "learner", "page", "line", "kind", "problem")


def printable(text):
    """Return a stranger's text with all that is no visible letter made a space: no terminal obeys it."""
    return text if text.isprintable() else "".join(each if each.isprintable() else " " for each in text)


def harmless(value):
    """Return a cell's text so that no spreadsheet takes it for a formula: an apostrophe goes in front.

    Control characters, which a spreadsheet may drop before it looks, become spaces.
    """
    if not isinstance(value, str):
        return value
    text = printable(value)
    return f"'{text}" if text.lstrip().startswith(_ACTS) or value.startswith(_ACTS) else text


def write_results(path, students, *, pages):
    """Write one row for each learner: who, when, the marks of every exercise, of the practicals, the sums."""
    cells = _columns(pages)
    maximum = sum(points for points, _ in cells.values())
    header = ["learner", "name", "handed_in_utc", "late", *cells, "waiting_for_a_person"]
    header += ["late_points_off", "points", "maximum"]
    write_table(path, header, (_row(student, cells, maximum) for student in students))


def _row(student, cells, maximum):
    """Return the row of one learner."""
    handed_in = student.handed_in.isoformat(sep=" ") if student.handed_in else ""
    off = round(student.late_points_off, 4)
    total = round(math.fsum(student.scores.values()) - off, 4)  # the same in any order of rows
    return [
        student.student_id,
        student.name,
        handed_in,
        "late" if student.late else "",
        *_scores(student, cells),
        len(student.waiting),
        off or "",
        total,
        maximum,
    ]


def _columns(pages):
    """Return the graded cells of all pages in reading order."""
    return {name: cell for page in pages.values() for name, cell in graded_cells(page).items()}


def _scores(student, cells):
    """Return scores rounded for reading, empty where nothing was handed in or a person has to mark it."""
    scores, waiting = student.scores, student.waiting
    found = [round(scores[cell], 4) if cell in scores else "" for cell in cells]
    if waiting:
        found = [
            "" if cell in waiting and not score else score for cell, score in zip(cells, found, strict=True)
        ]
    return found


def write_problems(path, problems):
    """Write one row for everything that could not be read: which file, whose, where, what is wrong."""
    rows = [
        [each.file, each.learner, each.page, each.line or "", each.kind, each.sentence] for each in problems
    ]
    write_table(path, PROBLEM_COLUMNS, rows)


def write_table(path, header, rows):
    """Write a table with quoting, marked as Unicode so that a spreadsheet shows names as they are."""
    write_whole_from(path, _written(header, rows))


def _written(header, rows):
    """Give the bytes of a table, some rows at a time."""
    text = io.StringIO("\ufeff", newline="")
    text.seek(0, io.SEEK_END)
    writer = csv.writer(text)
    writer.writerow(header)
    rows = iter(rows)
    while some := list(islice(rows, ROWS_AT_ONCE)):
        writer.writerows(
            [[harmless(value) if isinstance(value, str) else value for value in row] for row in some]
        )
        yield text.getvalue().encode("utf-8", "replace")
        text.seek(0)
        text.truncate()
    yield text.getvalue().encode("utf-8", "replace")
