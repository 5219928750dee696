"""How fast hand-ins are marked, and how many times faster than nbgrader autogrades the same ones.

Both sides mark the same invented hand-ins in one run on one machine: `grading mark` all of them (gradebook,
tables, with and without feedback pages), nbgrader a sample, on every page of the workbook, in one process.
The marks of the sample must be the same in every cell, or there is no ratio to speak of.

Run it as `python tests/benchmarks/marking.py [--hand-ins 4000] [--sample 6]`; it takes some minutes.
"""

import argparse
import os
import random
import shutil
import sys
import tempfile
import time
from datetime import UTC, datetime, timedelta
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]

from grading.class_settings import SHIPPED_CLASS_FILE, read_class_file  # noqa: E402, after the path is set
from grading.course import nbgrader_api, released_notebook, write_course, write_page  # noqa: E402
from grading.demo_class import invent_records, learner_name, write_hand_in  # noqa: E402
from grading.exercises import EXERCISES, PAGES  # noqa: E402
from grading.gradebook_scores import read_scores  # noqa: E402
from grading.hand_in import learner_slug, read_hand_in  # noqa: E402
from grading.results import mark_folder  # noqa: E402

TARGET = 2000
START = datetime(2026, 11, 2, 8, 0, tzinfo=UTC)
SETTINGS = read_class_file(SHIPPED_CLASS_FILE)


def make_hand_ins(folder, count):
    """Invent hand-ins in which every exercise of every page is answered."""
    for number in range(count):
        name, until = learner_name(number), START + timedelta(minutes=number)
        dice = random.Random(f"benchmark {number}")
        records = invent_records(name, SETTINGS, dice, skill=0.75, until=until, diligence=1.0)
        write_hand_in(folder, name, SETTINGS, records, until, practical="Welded one stud and pulled it.")


def timed(work):
    """Return in seconds how long work took and how much processor time it used, children included."""
    before, start = os.times(), time.perf_counter()
    work()
    used, wall_s = os.times(), time.perf_counter() - start
    return wall_s, sum(used[:4]) - sum(before[:4])


def autograde(course, sample, pages=PAGES):
    """Put the sample into a course and return how long nbgrader takes to autograde these pages."""
    for path in sample:
        hand_in = read_hand_in(path)
        for page in pages.values():
            folder = course / "submitted" / learner_slug(hand_in.learner) / page.assignment
            write_page(folder, page=page, released=released_notebook(course, page), hand_in=hand_in)
    api = nbgrader_api(course)

    def run():
        for page in pages.values():
            outcome = api.autograde(page.assignment, "*")
            if not outcome["success"]:
                sys.exit(outcome["error"])

    return timed(run)


def differing_cells(theirs, ours):
    """Return the cells in which a learner of the sample has another score."""
    mine = {each.student_id: each.scores for each in read_scores(ours)}
    return [
        (each.student_id, cell, score, mine[each.student_id].get(cell))
        for each in read_scores(theirs)
        for cell, score in each.scores.items()
        if score != mine[each.student_id].get(cell)
    ]


def main():
    """Measure both sides and print the ratios; end with 1 where marks differ."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--hand-ins", type=int, default=4000)
    parser.add_argument("--sample", type=int, default=6)
    parser.add_argument("--processes", type=int, default=os.cpu_count())
    options = parser.parse_args()
    os.environ["PYTHONPATH"] = os.pathsep.join(sys.path[:2])  # for the kernels that nbgrader starts
    with tempfile.TemporaryDirectory() as base:
        sys.exit(measure(Path(base), options))


def measure(base, options):
    """Run the comparison in a folder and return the exit code."""
    parts = sum(len(exercise.parts) for exercise in EXERCISES.values())
    print(
        f"{options.hand_ins} hand-ins, {len(EXERCISES)} exercises, {parts} parts, {os.cpu_count()} processors"
    )
    hand_ins = base / "hand_ins"
    hand_ins.mkdir()
    make_hand_ins(hand_ins, options.hand_ins)
    sample = sorted(hand_ins.iterdir())[:: max(1, options.hand_ins // options.sample)][: options.sample]

    course = base / "course"
    write_course(course, pages=PAGES, settings=SETTINGS, workbook=ROOT / "workbook")
    nbgrader_s, nbgrader_cpu_s = (each / len(sample) for each in autograde(course, sample))
    print(
        f"nbgrader autograde, all pages: {nbgrader_s:.2f} s a hand-in, {nbgrader_cpu_s:.2f} s processor time"
    )

    for feedback in (False, True):
        shutil.rmtree(base / "out", ignore_errors=True)
        wall_s, cpu_s = timed(
            lambda feedback=feedback: mark_folder(
                hand_ins, base / "out", SETTINGS, feedback=feedback, processes=options.processes
            )
        )
        wall_s, cpu_s = wall_s / options.hand_ins, cpu_s / options.hand_ins
        print(
            f"mark {'with' if feedback else 'without'} feedback pages: {1 / wall_s:.0f} hand-ins a second, "
            f"{1000 * cpu_s:.2f} ms of processor time each; {nbgrader_s / wall_s:.0f} times nbgrader "
            f"(target {TARGET}), by processor time {nbgrader_cpu_s / cpu_s:.0f} times on each processor"
        )
    differing = differing_cells(course / "gradebook.db", base / "out" / "gradebook.db")
    print(f"cells with another score in the sample: {len(differing)}")
    for each in differing[:10]:
        print("  ", *each)
    return 1 if differing else 0


if __name__ == "__main__":
    main()
