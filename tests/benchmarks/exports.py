"""How long the exports of a class take: the table of results, xAPI statements, and nbgrader's own export.

Invents marks for every exercise of every page, writes them into a gradebook, and times each export of it.
nbgrader's export grows with the square of the class, so it is timed on a smaller one and said so.

Run it as `python tests/benchmarks/exports.py [--learners 5000] [--theirs 300]`; it takes about a minute.
"""

import argparse
import contextlib
import io
import random
import sys
import tempfile
import time
from datetime import datetime, timedelta
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]

from grading.class_settings import SHIPPED_CLASS_FILE, read_class_file  # noqa: E402, after the path is set
from grading.exercises import EXERCISES, PAGES  # noqa: E402
from grading.export import write_results  # noqa: E402
from grading.gradebook import course_id, write_marks  # noqa: E402
from grading.gradebook_scores import read_scores  # noqa: E402
from grading.marking import LearnerMarks  # noqa: E402
from grading.statements import write_statements  # noqa: E402

SETTINGS = read_class_file(SHIPPED_CLASS_FILE)
TARGET_S = 1.0


def invented_marks(count):
    """Give marks of so many learners, with something for every exercise."""
    dice = random.Random("exports")
    for number in range(count):
        yield LearnerMarks(
            student_id=f"learner_{number:06d}",
            first_name="Learner",
            last_name=f"{number}",
            handed_in=datetime(2026, 12, 1) + timedelta(minutes=number),
            pages=tuple(PAGES),
            points={each.id: dice.random() * each.points for each in EXERCISES.values() if each.counts},
        )


def timed(work):
    """Return how long work took in seconds, and what it returned."""
    start = time.perf_counter()
    result = work()
    return time.perf_counter() - start, result


def timed_table(gradebook, path, pages):
    """Return the scores read from a gradebook, and how long reading and writing the table took."""
    read_s, students = timed(lambda: read_scores(gradebook))
    write_s, _ = timed(lambda: write_results(path, students, pages=pages))
    return students, read_s + write_s


def nbgrader_export(gradebook, out):
    """Let nbgrader write its own table of a gradebook."""
    from nbgrader.api import Gradebook
    from nbgrader.plugins import CsvExportPlugin

    with Gradebook(f"sqlite:///{gradebook}", course_id(SETTINGS)) as book:
        CsvExportPlugin(to=str(out)).export(book)


def main():
    """Time the exports and print what they took."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--learners", type=int, default=5000)
    parser.add_argument("--theirs", type=int, default=300, help="learners for nbgrader's own export")
    options = parser.parse_args()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        one_page = {"stud_welding": PAGES["stud_welding"]}
        for name, pages in (("one page", one_page), ("all pages", PAGES)):
            gradebook = folder / f"{name}.db"
            write_marks(gradebook, invented_marks(options.learners), pages=pages, settings=SETTINGS)
            students, took_s = timed_table(gradebook, folder / "results.csv", pages)
            cells = sum(len(each.scores) for each in students)
            verdict = "met" if took_s <= TARGET_S else "NOT met"
            print(f"{options.learners} learners, {name}: {cells} scores")
            print(f"table of results   {took_s:6.2f} s  (target {TARGET_S:.0f} s: {verdict})")
        path = folder / "statements.json"
        statements_s, count = timed(lambda: write_statements(path, students, pages=PAGES, settings=SETTINGS))
        size = path.stat().st_size / 1e6
        print(f"xAPI statements    {statements_s:6.2f} s  ({count} statements, {size:.0f} MB)")
        small = folder / "small.db"
        write_marks(small, invented_marks(options.theirs), pages=PAGES, settings=SETTINGS)
        with contextlib.redirect_stderr(io.StringIO()):
            theirs_s, _ = timed(lambda: nbgrader_export(small, folder / "theirs.csv"))
        _, ours_s = timed_table(small, folder / "ours.csv", PAGES)
        print(f"nbgrader's export  {theirs_s:6.2f} s  for {options.theirs} learners")
        print(f"our table of them  {ours_s:6.2f} s")
        print(f"ratio of the two   {theirs_s / ours_s:6.1f}")


if __name__ == "__main__":
    main()
