"""A learner's journal whose program is killed: what was called saved is there, and saving goes on."""

import io
import os
import random
import shutil
import time
from collections import Counter
from functools import partial
from itertools import count

from grading import journal, whole_files
from grading.journal import Journal
from tests.hostile.crash_forks import Child, Steps

STEPS = (
    "between two answers",
    "waiting for its turn",
    "looking at the end of the file",
    "counting lines",
    "writing the line",
    "waiting for the disk",
)
LONGEST_S = 0.02  # after the first answers; each takes a few milliseconds
BEFORE = 3  # answers that are in the journal already


def entry(number):
    """Return one answer."""
    return {
        "learner": "one",
        "course": "c",
        "page": "arcs",
        "exercise": "arcs.energy",
        "round_number": 1,
        "bank": "b",
        "scenario": "0" * 16,
        "answers": {"energy": f"{number} J"},
    }


class SlowFile(io.FileIO):
    """A file on a disk that takes some bytes at a time, so that a kill can come within a line."""

    def write(self, data):
        """Write the beginning of it, as a disk may."""
        time.sleep(0.001)
        return super().write(data[:40])


def append_for_ever(path, told, steps, *, slowly):
    """Append one answer after the other and tell the number of each that was called saved."""
    append = Journal._append_locked
    Journal._append_locked = steps.during("waiting for its turn", append)
    Journal._repair_end = steps.during("looking at the end of the file", Journal._repair_end)
    journal._count_lines = steps.during("counting lines", journal._count_lines)
    journal.add_whole = steps.during("writing the line", whole_files.add_whole)
    os.fsync = steps.during("waiting for the disk", os.fsync)
    if slowly:
        journal.open = lambda name, mode, buffering: SlowFile(name, mode.replace("b", ""))
    steps.begin("between two answers")
    for number in count():
        Journal(path).append(**entry(number))
        os.write(told, f"{number}\n".encode())


def killed_while_appending(times, folder, *, seed):
    """Kill a program that appends at random moments; return how many kills hit each step, and lines torn."""
    dice, hits = random.Random(f"journal {seed}"), Counter()
    for number in range(times):
        slowly = bool(number % 2)
        path, steps = folder / "journal" / "answers.jsonl", Steps(STEPS)
        path.parent.mkdir()
        for earlier in range(BEFORE):
            Journal(path).append(**entry(f"earlier {earlier}"))
        reading, writing = os.pipe()
        child = Child(partial(append_for_ever, path, writing, steps, slowly=slowly))
        os.close(writing)
        moment = dice.randrange(1, 40), dice.uniform(0, LONGEST_S)
        assert child.killed(steps, moment) == -9
        with os.fdopen(reading, "rb") as pipe:
            saved = [int(line) for line in pipe.read().split(b"\n")[:-1]]
        hits[steps.now] += 1
        hits["of all these, within a line"] += _kept(path, saved, steps.now)
        shutil.rmtree(path.parent)
    return hits


def _kept(path, saved, step):
    """Check that every answer called saved is there once and in order; return how many lines are torn."""
    when = f"after a kill in step {step!r}"
    book = Journal(path)
    found = book.read()
    wanted = [*(f"earlier {each} J" for each in range(BEFORE)), *(f"{each} J" for each in saved)]
    typed = [record.answers["energy"] for record in found.records]
    assert typed[: len(wanted)] == wanted, when
    # One more may be whole on the disk before it could be called saved.
    assert typed[len(wanted) :] in ([], [f"{len(saved)} J"]), when
    torn = [problem.kind for problem in found.problems]
    assert torn in ([], ["torn"]), when
    book.append(**entry("after"))
    again = book.read()
    assert [record.answers["energy"] for record in again.records] == [*typed, "after J"], when
    assert [problem.kind for problem in again.problems] == torn, when
    assert book.torn_path.exists() == bool(torn), when
    return len(torn)
