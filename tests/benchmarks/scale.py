"""How marking grows with the class: 1,000, 10,000 and with --full 100,000 hand-ins of twenty parts each.

For each size: the first marking (gradebook, tables, no feedback pages), marking again where nothing changed,
marking again after a correction (every mark is computed anew), the gradebook alone, and the largest memory,
all processes together. Then nbgrader autogrades a sample of the same files, and the marks must be the same.

Processor time stands beside the time on the clock, which other programs lengthen.
Run it as `python tests/benchmarks/scale.py [--full] [--sample 4]`; hand-ins are invented first, which takes
longer than anything that is measured.
"""

import argparse
import contextlib
import multiprocessing
import os
import random
import sys
import tempfile
from concurrent.futures import ProcessPoolExecutor
from datetime import timedelta
from pathlib import Path
from threading import Event, Thread

import psutil

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]

from grading.course import write_course  # noqa: E402, after the path is set
from grading.demo_class import invent_records, learner_name  # noqa: E402
from grading.exercises import EXERCISES, PAGES  # noqa: E402
from grading.gradebook import write_marks  # noqa: E402
from grading.hand_ins import hand_in_files  # noqa: E402
from grading.keys import keys_for  # noqa: E402
from grading.marking import mark_class  # noqa: E402
from grading.marking_state import STATE_FILE  # noqa: E402
from grading.results import mark_folder  # noqa: E402
from grading.variants import normalise_learner  # noqa: E402
from tests.benchmarks.marking import SETTINGS, START, autograde, differing_cells, timed  # noqa: E402
from tests.grading.made_hand_ins import journals, raw_hand_in  # noqa: E402

PAGE = "rivet_anatomy"
PARTS = 20
TOGETHER = 500  # learners whose keys are solved together while hand-ins are invented
WATCH_S = 0.5  # between two looks at the memory
TARGET_S, TARGET_MB, TARGET_RATIO, TARGET_RATE = 30, 600, 5000, 5000


def chosen_exercises():
    """Return counting exercises of one page with twenty parts together, or as many as come nearest."""
    chosen, parts = [], 0
    for each in PAGES[PAGE].exercises:
        if each.counts and parts + len(each.parts) <= PARTS:
            chosen.append(each.id)
            parts += len(each.parts)
    return chosen, parts


def make_hand_ins(folder, count, exercises):
    """Invent so many hand-ins in which these exercises are answered, some of them more than once."""
    folder.mkdir()
    for start in range(0, count, TOGETHER):
        names = [learner_name(number) for number in range(start, min(start + TOGETHER, count))]
        wanted = [
            (each, normalise_learner(name), turn) for name in names for each in exercises for turn in (1, 2)
        ]
        keys = keys_for(wanted, course_key=SETTINGS.course_key, exercises=EXERCISES)
        for number, name in enumerate(names, start):
            until, dice = START + timedelta(minutes=number), random.Random(f"scale {number}")
            records = invent_records(
                name, SETTINGS, dice, skill=0.75, until=until, diligence=1.0, exercises=exercises, keys=keys
            )
            raw_hand_in(folder, name, journals(records), made_at=until, file_name=f"{number:06d}.zip")


def held_mb(process):
    """Return the memory of a process and its children in MB, what they share counted once."""
    held = 0
    for each in (process, *process.children()):
        with contextlib.suppress(psutil.Error):  # it ended meanwhile
            info = each.memory_full_info()
            held += getattr(info, "pss", info.rss)
    return held / 1e6


def marked(hand_ins, out):
    """Mark a folder; return time on the clock, processor time and the largest memory in MB."""
    process, ended, largest_mb = psutil.Process(), Event(), [0.0]

    def watch():
        while not ended.wait(WATCH_S):
            largest_mb.append(held_mb(process))

    watcher = Thread(target=watch)
    watcher.start()
    try:
        wall_s, cpu_s = timed(lambda: mark_folder(hand_ins, out, SETTINGS, feedback=False, report=False))
    finally:
        ended.set()
        watcher.join()
    return wall_s, cpu_s, max(largest_mb)


def gradebook_alone(hand_ins, path):
    """Return the times that the bare writing of a new gradebook takes."""
    marks = [each.marks for each in mark_class(hand_in_files(hand_ins), SETTINGS).learners]

    return timed(lambda: write_marks(path, marks, pages=PAGES, settings=SETTINGS))


def alone(work, *arguments):
    """Run work in a fresh process, so that its memory is its own, and return what it returns."""
    with ProcessPoolExecutor(1, mp_context=multiprocessing.get_context("spawn")) as pool:
        return pool.submit(work, *arguments).result()


def told(what, count, wall_s, cpu_s, more=""):
    """Print one measurement."""
    print(
        f"  {what:<28} {wall_s:7.2f} s, {count / wall_s:7.0f} a second; "
        f"{1000 * cpu_s / count:.3f} ms of processor time each{more}",
        flush=True,
    )


def measure(base, count, exercises):
    """Print what one size of class takes; return folder, results, time and processor time each."""
    hand_ins, out = base / f"hand_ins_{count}", base / f"out_{count}"
    make_hand_ins(hand_ins, count, exercises)
    print(f"{count} hand-ins")
    wall_s, cpu_s, memory_mb = alone(marked, hand_ins, out)
    told("first marking", count, wall_s, cpu_s, f"; {memory_mb:.0f} MB")
    told("again, nothing changed", count, *alone(marked, hand_ins, out)[:2])
    (out / STATE_FILE).unlink()
    told("again, all marks computed", count, *alone(marked, hand_ins, out)[:2])
    told("gradebook alone", count, *alone(gradebook_alone, hand_ins, base / f"alone_{count}.db"))
    return hand_ins, out, wall_s / count, cpu_s / count


def main():
    """Measure every size, then the sample; end with 1 where a mark differs."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--full", action="store_true", help="100,000 hand-ins too")
    parser.add_argument("--sample", type=int, default=4, help="hand-ins that nbgrader autogrades; 0 for none")
    options = parser.parse_args()
    os.environ["PYTHONPATH"] = os.pathsep.join(sys.path[:2])  # for the kernels that nbgrader starts
    exercises, parts = chosen_exercises()
    cells = sum(each.counts for each in PAGES[PAGE].exercises) + 1
    print(
        f"{len(exercises)} exercises, {parts} parts, {cells} cells in the gradebook, {os.cpu_count()} cores"
    )
    with tempfile.TemporaryDirectory() as base:
        for count in (1_000, 10_000, *([100_000] if options.full else [])):
            last = measure(Path(base), count, exercises)
        print(f"targets: {TARGET_RATE} a second; 100,000 within {TARGET_S} s and {TARGET_MB} MB")
        sys.exit(compare(Path(base), options.sample, *last) if options.sample else 0)


def compare(base, size, hand_ins, out, wall_s, cpu_s):
    """Print how many times faster than nbgrader a sample is marked; return 1 where marks differ."""
    sample = hand_in_files(hand_ins)[:size]
    write_course(base / "course", pages=PAGES, settings=SETTINGS, workbook=ROOT / "workbook")
    theirs_s, theirs_cpu_s = (each / size for each in autograde(base / "course", sample, {PAGE: PAGES[PAGE]}))
    print(
        f"nbgrader autograde of that page: {theirs_s:.2f} s a hand-in, {theirs_cpu_s:.2f} s processor time; "
        f"{theirs_s / wall_s:.0f} times as long (target {TARGET_RATIO}), "
        f"by processor time {theirs_cpu_s / cpu_s:.0f} times on each processor"
    )
    differing = differing_cells(base / "course" / "gradebook.db", out / "gradebook.db")
    print(f"cells with another score in the sample: {len(differing)}")
    return 1 if differing else 0


if __name__ == "__main__":
    main()
