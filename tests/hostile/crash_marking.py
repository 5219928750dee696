"""Marking that is killed, gone on with, and compared with a marking that nobody disturbed."""

import json
import os
import random
import shutil
import sqlite3
import tempfile
import time
from collections import Counter
from contextlib import closing
from dataclasses import dataclass, replace
from functools import partial
from itertools import pairwise
from pathlib import Path

import sqlalchemy as sql
from sqlalchemy.dialects.sqlite.pysqlite import SQLiteDialect_pysqlite

from grading import marking, marking_state, report, results, whole_files
from grading.changes import change_score
from grading.class_settings import read_class_file
from grading.gradebook import MarksWriter
from grading.results import mark_folder
from tests.hostile.crash_class import CHOSEN, left_behind, mark, small_steps, write_class_file, write_hand_ins
from tests.hostile.crash_forks import Child, Steps, done, kill_myself

LEARNERS, EARLIER = 30, 18
STEPS = {
    "starting": (),
    "marking": ((results, "mark_class"),),
    "reading hand-ins": ((marking, "read_by_learner"),),
    "state file": ((marking_state.MarkingState, "split"), (marking_state.MarkingState, "add")),
    "feedback pages": ((report, "write_feedback_page"),),
    "gradebook": ((MarksWriter, "take"), (MarksWriter, "finish")),
    "gradebook, end of a transaction": ((SQLiteDialect_pysqlite, "do_commit"),),
    "log and late points": ((results, "keep_changes"), (results, "write_late_penalties")),
    "tables": ((results, "read_scores"), (results, "write_results"), (results, "write_problems")),
}
STATEMENT = "before a statement of the database,"
IN_WORKERS = ("reading hand-ins", "feedback pages")  # several at a time would overwrite each other's step


@dataclass(frozen=True, kw_only=True)
class Marking:
    """One way to mark the class: from nothing or on top of earlier results, with pages, on processes."""

    name: str
    hand_ins: Path
    class_file: Path
    start: Path
    feedback: bool = False
    processes: int = 1
    expected: dict | None = None
    durations: tuple = ()

    def run(self, out, *, steps=None, prepare=None, more=()):
        """Mark into ``out`` in this process, with more words for the command line."""
        small_steps()
        if self.processes > 1:
            marking.WORTH_PROCESSES, marking.os.cpu_count = 1, lambda: self.processes
        if prepare:
            prepare()
        if steps:
            _name_steps(steps, leave_out=IN_WORKERS if self.processes > 1 else ())
        mark(self.hand_ins, out, self.class_file, "--feedback" if self.feedback else "--no-feedback", *more)


def _name_steps(steps, *, leave_out=()):
    """Make each function of marking name the step it is in; only for a process that will end."""
    steps.begin("starting")
    for name, functions in STEPS.items():
        for owner, function in functions if name not in leave_out else ():
            setattr(owner, function, steps.during(name, getattr(owner, function)))


def four_markings(folder):
    """Return the markings to be killed, with what an undisturbed one comes to and how long its steps take."""
    class_file = write_class_file(folder)
    settings = read_class_file(class_file)
    write_hand_ins(folder / "all", range(LEARNERS), settings)
    write_hand_ins(folder / "some", range(EARLIER), settings)
    write_hand_ins(folder / "few", range(12), settings)
    (folder / "nothing").mkdir()
    load_all(folder / "few", settings)
    earlier = folder / "earlier"
    first = Marking(name="", hand_ins=folder / "some", class_file=class_file, start=folder / "nothing")
    assert done(partial(first.run, earlier)) == 0
    mark_by_hand(earlier / "gradebook.db")
    common = {"class_file": class_file, "hand_ins": folder / "all"}
    return [
        undisturbed(each, folder)
        for each in (
            Marking(name="first marking", start=folder / "nothing", **common),
            Marking(name="on top of earlier results", start=earlier, **common),
            Marking(name="on two processes", start=earlier, processes=2, **common),
            Marking(
                name="with feedback pages",
                class_file=class_file,
                hand_ins=folder / "few",
                start=folder / "nothing",
                feedback=True,
            ),
        )
    ]


def load_all(hand_ins, settings):
    """Mark in this process once, so that those split off from it need load nothing."""
    with tempfile.TemporaryDirectory() as out:
        mark_folder(hand_ins, out, settings, report=False)


def mark_by_hand(gradebook):
    """Give two scores by hand, one by the command and one as the formgrader does, and an extension."""
    with closing(sqlite3.connect(gradebook)) as connection, connection:
        learners = [row[0] for row in connection.execute("SELECT id FROM student ORDER BY id")]
        connection.execute(
            "UPDATE grade SET manual_score = 0.25, extra_credit = 0.5 WHERE id = (SELECT min(id) FROM grade)"
        )
        connection.execute("UPDATE comment SET manual_comment = 'seen at the bench'")
    change_score(
        gradebook, learner=learners[3], item=CHOSEN[0], points=0.125, by="A. Bench", why="shown twice"
    )


def undisturbed(one, folder):
    """Return the marking with what it comes to undisturbed, and when it was in which step."""
    out, steps = folder / f"undisturbed {one.name}", Steps(STEPS)
    shutil.copytree(one.start, out)
    told = folder / "steps.json"

    def run():
        steps.log = []
        try:
            one.run(out, steps=steps)
        finally:
            told.write_text(json.dumps([*steps.log, (time.perf_counter(), "")]), encoding="utf-8")

    assert done(run, output=folder / "output.txt") == 0, (folder / "output.txt").read_text(encoding="utf-8")
    log = json.loads(told.read_text(encoding="utf-8"))
    durations = tuple((name, until - at) for (at, name), (until, _) in pairwise(log))
    return replace(one, expected=left_behind(out), durations=durations)


def random_moment(one, dice):
    """Return a moment of a marking, as ``Child.killed`` takes it.

    Two of five are any moment of the whole; the others any moment of a step drawn by name, so that short
    steps are hit as well.
    """
    numbers = range(len(one.durations))
    if dice.random() < 0.4:
        (number,) = dice.choices(numbers, [seconds for _, seconds in one.durations])
    else:
        name = dice.choice(sorted({name for name, _ in one.durations}))
        number = dice.choice([each for each in numbers if one.durations[each][0] == name])
    return number, dice.uniform(0, one.durations[number][1])


def killed_at_moments(markings, count, folder, *, seed):
    """Kill markings at so many random moments; return how many kills hit each step."""
    dice, hits = random.Random(f"moments {seed}"), Counter()
    while hits.total() < count:
        one = markings[hits.total() % len(markings)]
        out, steps = folder / "out", Steps(STEPS)
        shutil.copytree(one.start, out)
        child = Child(partial(one.run, out, steps=steps))
        code = child.killed(steps, random_moment(one, dice))
        step = steps.now
        assert code in (0, -9), "marking failed by itself"
        if code:
            hits[step] += 1
        goes_on(one, out, f"after a kill in step {step!r}")
        shutil.rmtree(out)
    return hits


def goes_on(one, out, when):
    """Check what a marking left as it was cut short, mark again, and compare with the undisturbed one."""
    _nothing_torn(one, out, when)
    output = out.with_name("output.txt")
    code = done(partial(one.run, out), output=output)
    assert code == 0, f"{when}: {output.read_text(encoding='utf-8')}"
    found = left_behind(out)
    assert found.keys() == one.expected.keys(), when
    for name, value in one.expected.items():
        assert found[name] == value, f"{name} differs {when}"
    sound(out / "gradebook.db", when)


def _nothing_torn(one, out, when):
    """Check that tables are the old or the new ones, pages have their end, and the gradebook is sound.

    A page may be neither old nor new: of whoever handed in twice it may be made from the first file.
    """
    for name in ("results.csv", "problems.csv"):
        whole = [(one.start / name).read_bytes()] if (one.start / name).exists() else [None]
        data = (out / name).read_bytes() if (out / name).exists() else None
        assert data in (*whole, one.expected[name]), f"{name} is torn {when}"
    for page in out.glob("feedback/*.html"):
        assert page.read_bytes().rstrip().endswith(b"</html>"), f"{page.name} is torn {when}"
    if (out / "gradebook.db").exists():
        sound(out / "gradebook.db", when)


def sound(gradebook, when):
    """Check that the database finds nothing wrong with itself."""
    with closing(sqlite3.connect(gradebook)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)], when


class Places:
    """Counts the places where a marking could be cut, and cuts it at one of them."""

    def __init__(self, cut_at=None):
        """Cut at the place of this number, nowhere where it is None."""
        self.seen, self._cut_at = [], cut_at

    def pass_by(self, name, half=None):
        """Come to a place; ``half`` does half of what is done there before it is cut."""
        self.seen.append(name)
        if len(self.seen) - 1 == self._cut_at:
            if half:
                half()
            kill_myself()

    def watch(self):
        """Put places into marking; only for a process that will end."""
        put_in_place, add, commit = os.replace, whole_files.add_whole, SQLiteDialect_pysqlite.do_commit

        def replaced(source, target):
            self.pass_by(f"before {Path(target).name} is put in place")
            put_in_place(source, target)
            self.pass_by(f"after {Path(target).name} is put in place")

        def added(file, data, **more):
            self.pass_by("half a line of a file that grows", half=lambda: file.write(data[: len(data) // 2]))
            add(file, data, **more)

        def committed(dialect, connection):
            self.pass_by("before the end of a transaction")
            commit(dialect, connection)
            self.pass_by("after the end of a transaction")

        os.replace, whole_files.add_whole, SQLiteDialect_pysqlite.do_commit = replaced, added, committed
        sql.event.listen(sql.engine.Engine, "before_cursor_execute", self._statement)

    def _statement(self, connection, cursor, statement, *_):
        """Come to a statement of the database."""
        self.pass_by(f"{STATEMENT} {' '.join(statement.split()[:2]).lower().rstrip(',')}")


def places_of(one, folder):
    """Return the names of all places in a marking, in order."""
    out, told = folder / "places", folder / "places.json"
    shutil.copytree(one.start, out)
    places = Places()

    def run():
        try:
            one.run(out, prepare=places.watch)
        finally:
            told.write_text(json.dumps(places.seen), encoding="utf-8")

    assert done(run) == 0
    shutil.rmtree(out)
    return json.loads(told.read_text(encoding="utf-8"))


def killed_at_places(one, folder, *, only=""):
    """Kill a marking at places whose name holds ``only``; return how many kills at each.

    Taken are the first place of each name, and the last one too unless it is a statement of the database;
    of places chosen by ``only``, whose names all differ, the first and the last.
    """
    names, hits = places_of(one, folder), Counter()
    first, last = {}, {}
    for number, name in enumerate(names):
        if only in name:
            first.setdefault(only or name, number)
            if not name.startswith(STATEMENT):
                last[only or name] = number
    for number in sorted({*first.values(), *last.values()}):
        out = folder / "out"
        shutil.copytree(one.start, out)
        code = done(partial(one.run, out, prepare=Places(number).watch))
        assert code == -9, f"place {number}, {names[number]}, was not reached"
        goes_on(one, out, names[number])
        hits[STATEMENT if names[number].startswith(STATEMENT) else names[number]] += 1
        shutil.rmtree(out)
    return hits
