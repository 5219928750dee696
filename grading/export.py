"""Tables for a spreadsheet: the scores of a class, and everything that could not be read.

No text of a learner's can act as a formula there, and a file is either whole or not written.
"""

import csv
import io
from itertools import islice

import numpy as np

from grading.gradebook import graded_cells
from grading.whole_files import write_whole_from

_ACTS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")
ROWS_AT_ONCE = 4000  # rows that are held in memory; each number in them is put into words once
DIGITS = 4  # of a score that is written
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
    """Write one row for each learner: who, when, the marks of every exercise, of the practicals, the sums.

    ``students`` are ``ClassScores``.
    """
    cells = {name: cell for page in pages.values() for name, cell in graded_cells(page).items()}
    maximum = sum(points for points, _ in cells.values())
    header = ["learner", "name", "handed_in_utc", "late", *cells, "waiting_for_a_person"]
    header += ["late_points_off", "points", "maximum"]
    write_whole_from(path, _results(header, students, list(cells), maximum))


def _results(header, students, cells, maximum):
    """Give the bytes of the table of results, some rows at a time; no mark needs quoting."""
    yield f"\ufeff{_quoted(header)}\r\n".encode()
    for start in range(0, len(students), ROWS_AT_ONCE):
        some = slice(start, start + ROWS_AT_ONCE)
        marks = marks_in_words(*students.table(cells, some)).tolist()
        rows = zip(students.students[some], marks, *students.sums(some), strict=True)
        yield "".join(f"{_row(*each)},{maximum}\r\n" for each in rows).encode("utf-8", "replace")


def _row(student, marks, total, waiting):
    """Return the row of one learner as text, but for the maximum."""
    when = student.handed_in.isoformat(sep=" ") if student.handed_in else ""
    who = [harmless(student.student_id), harmless(student.name), when, "late" if student.late else ""]
    off = round(student.late_points_off, DIGITS)
    return ",".join([_quoted(who), *marks, str(waiting), str(off or ""), str(round(total - off, DIGITS))])


def _quoted(fields):
    """Return fields as a spreadsheet reads them, without the end of the line."""
    text = io.StringIO()
    csv.writer(text, lineterminator="").writerow(fields)
    return text.getvalue()


def marks_in_words(values, waits):
    """Return scores as texts rounded for reading; empty where there is none, or a person has to mark it.

    Each number that occurs is written once. The few that lie so near the middle of two that a product in
    floating point could fall on the other side, and the huge ones, are rounded one by one.
    """
    with np.errstate(over="ignore", invalid="ignore"):  # what comes of huge numbers is not used
        scaled = values * 10**DIGITS
        whole = np.rint(scaled)
        plain = (np.abs(np.abs(scaled - whole) - 0.5) > 1e-6) & (np.abs(whole) < 1e9)
    numbers, places = np.unique(np.where(plain, whole, 0.0), return_inverse=True)
    texts = np.array([str(each / 10**DIGITS) for each in numbers.tolist()], dtype=object)[places]
    texts = texts.reshape(values.shape)
    for place in zip(*np.nonzero(~plain & ~np.isnan(values)), strict=True):
        texts[place] = str(round(values[place].item(), DIGITS))
    texts[np.isnan(values) | (waits & (values == 0))] = ""
    return texts


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
        writer.writerows([harmless(value) for value in row] for row in some)
        yield text.getvalue().encode("utf-8", "replace")
        text.seek(0)
        text.truncate()
    yield text.getvalue().encode("utf-8", "replace")
