"""A small class for crash tests, marked by the command line, and everything that a marking left behind."""

import csv
import random
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

from grading import gradebook, marking, results
from grading.class_settings import SHIPPED_CLASS_FILE
from grading.cli import main
from grading.demo_class import invent_records, learner_name
from grading.exercises import EXERCISES, PAGES
from grading.keys import keys_for
from grading.variants import normalise_learner
from tests.grading.gradebook_contents import contents
from tests.grading.made_hand_ins import MADE_AT, journals, raw_hand_in

CHOSEN_PAGES = ("rivet_anatomy", "start_here")  # quickly solved
EXERCISES_OF_PAGE = 3
CHOSEN = tuple(
    each.id
    for page in CHOSEN_PAGES
    for each in [each for each in PAGES[page].exercises if each.counts][:EXERCISES_OF_PAGE]
)
CHUNK, AT_ONCE = 5, 8  # small, so that a small class goes through many steps
_WRITTEN_WHEN = {"changes.csv"}  # tables that name the time of writing, in a column of its own


def write_class_file(folder):
    """Write the class file of the crash tests: due in the middle of the class, late work loses points."""
    due = (MADE_AT + timedelta(hours=6)).isoformat()
    text = SHIPPED_CLASS_FILE.read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if not line.startswith(("due", "late_share_by_day"))]
    path = Path(folder) / "class.toml"
    path.write_text("\n".join([*lines, f'due = "{due}"', "late_share_by_day = 0.1"]) + "\n", encoding="utf-8")
    return path


def write_hand_ins(folder, numbers, settings):
    """Write one hand-in for each number: some late, some in two files, one torn, one that is none."""
    folder.mkdir(parents=True, exist_ok=True)
    names = {number: learner_name(number) for number in numbers}
    wanted = [
        (each, normalise_learner(name), turn) for name in names.values() for each in CHOSEN for turn in (1, 2)
    ]
    keys = keys_for(wanted, course_key=settings.course_key, exercises=EXERCISES)
    for number, name in names.items():
        dice, until = random.Random(f"crash {number}"), MADE_AT + timedelta(minutes=9 * number)
        records = invent_records(
            name, settings, dice, skill=0.7, until=until, diligence=0.9, exercises=CHOSEN, keys=keys
        )
        if number % 9 == 4:
            early = until - timedelta(hours=1)
            raw_hand_in(
                folder, name, journals(records[:3]), made_at=early, file_name=f"{number:03}_early.zip"
            )
        path = raw_hand_in(folder, name, journals(records), made_at=until, file_name=f"{number:03}.zip")
        if number % 19 == 7:
            path.write_bytes(path.read_bytes()[:-40])
    (folder / "note.txt").write_text("Back on Monday.", encoding="utf-8")


def small_steps():
    """Make marking go on in small chunks, small transactions and small pages; for a process that will end."""
    marking.CHUNK, gradebook.AT_ONCE = CHUNK, AT_ONCE
    results.PAGES = {
        page: replace(
            PAGES[page], exercises=tuple(EXERCISES[each] for each in CHOSEN if each.startswith(page))
        )
        for page in CHOSEN_PAGES
    }


def mark(hand_ins, out, class_file, *more):
    """Mark with the command line and end the process by its exit code, as a call of the program does."""
    main(["mark", str(hand_ins), "--out", str(out), "--class", str(class_file), "--no-report", *more])


def left_behind(out, *, book=None):
    """Return everything that a marking left: gradebook row for row, tables, and every other file's bytes.

    Left out are row ids, the time at which a line was logged, and what is kept only for going on.
    """
    out, found = Path(out), {}
    for path in sorted(each for each in out.rglob("*") if each.is_file()):
        name = path.relative_to(out).as_posix()
        if name in _WRITTEN_WHEN:
            with path.open(encoding="utf-8-sig", newline="") as file:
                found[name] = [{**row, "at_utc": None} for row in csv.DictReader(file)]
        elif not name.endswith((".lock", ".db", ".jsonl", ".torn")):
            found[name] = path.read_bytes()
    return {**found, "gradebook": contents(book or out / "gradebook.db")}
