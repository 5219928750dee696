"""Two instructors who mark at once: into one gradebook, one course, or one folder of results."""

import json
import os
import random
import shutil
import sqlite3
import time
from collections import Counter
from contextlib import closing
from functools import partial
from itertools import count

import pytest

from grading.class_settings import read_class_file
from grading.course import notebook_file
from grading.demo_class import learner_name
from grading.exercises import PAGES
from grading.forget import forget_learner
from grading.gradebook_scores import read_scores
from grading.hand_in import practical_id
from tests.grading.gradebook_contents import contents
from tests.hostile.crash_class import CHOSEN_PAGES, write_class_file, write_hand_ins
from tests.hostile.crash_forks import Child, Steps, done
from tests.hostile.crash_marking import (
    STEPS,
    Marking,
    load_all,
    mark_by_hand,
    random_moment,
    sound,
    undisturbed,
)

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="this system splits no process off")

INTO_GRADEBOOK, INTO_COURSE, ONE_KILLED, INTO_RESULTS = 12, 4, 6, 6


@pytest.fixture(scope="module")
def two(tmp_path_factory):
    """Give two markings of folders that overlap, and a gradebook in which some are marked already by hand."""
    folder = tmp_path_factory.mktemp("together")
    class_file = write_class_file(folder)
    settings = read_class_file(class_file)
    for name, numbers in (("ann", range(16)), ("bo", range(8, 24)), ("before", range(4, 12))):
        write_hand_ins(folder / name, numbers, settings)
    load_all(folder / "before", settings)
    (folder / "nothing").mkdir()
    one, other, before = (
        Marking(name=name, hand_ins=folder / name, class_file=class_file, start=folder / "nothing")
        for name in ("ann", "bo", "before")
    )
    assert done(partial(before.run, folder / "shared")) == 0
    mark_by_hand(folder / "shared" / "gradebook.db")
    return folder / "shared", undisturbed(one, folder), undisturbed(other, folder)


def _give_out(folder):
    """Put released pages into a course, with nothing but the practical's cell."""
    for page in map(PAGES.get, CHOSEN_PAGES):
        cell = {
            "cell_type": "markdown",
            "metadata": {"nbgrader": {"grade_id": practical_id(page.id)}},
            "source": "",
        }
        place = folder / "release" / page.assignment
        place.mkdir(parents=True, exist_ok=True)
        (place / notebook_file(page)).write_text(json.dumps({"cells": [cell]}), encoding="utf-8")


def _into(place, base, *, course):
    """Copy the gradebook that is there already; return what to give each marking."""
    shutil.copytree(base, place)
    if course:
        _give_out(place)
        return ("--course", str(place))
    return ("--gradebook", str(place / "gradebook.db"))


def _what_is_in(place):
    """Return the gradebook row for row, its log without times, and every page that was handed in."""
    sound(place / "gradebook.db", "after two markings")
    pages = {
        path.relative_to(place): path.read_bytes()
        for step in ("submitted", "autograded")
        for path in (place / step).rglob("*")
        if path.is_file()
    }
    return contents(place / "gradebook.db"), pages


def _one_after_the_other(two, folder, *, course):
    """Return what two markings one after the other come to, and the last table of results."""
    base, one, other = two
    more = _into(folder / "in turn", base, course=course)
    for each in (one, other):
        assert done(partial(each.run, folder / f"in turn {each.name}", more=more)) == 0
    return _what_is_in(folder / "in turn"), (folder / "in turn bo" / "results.csv").read_bytes()


@pytest.mark.parametrize(("course", "times"), [(False, INTO_GRADEBOOK), (True, INTO_COURSE)])
def test_into_one_gradebook(two, tmp_path, record_property, course, times):
    """Two markings at once come to what they come to one after the other, and both end well."""
    base, one, other = two
    expected, last_table = _one_after_the_other(two, tmp_path, course=course)
    dice, where = random.Random("together"), "course" if course else "gradebook"
    for number in range(times):
        place = tmp_path / f"place {number}"
        more = _into(place, base, course=course)
        outs = {each.name: tmp_path / f"{each.name} {number}" for each in (one, other)}
        children = []
        for each in dice.sample((one, other), 2):
            output = outs[each.name].with_suffix(".txt")
            children.append((Child(partial(each.run, outs[each.name], more=more), output=output), output))
            time.sleep(dice.uniform(0, 0.2))
        for child, output in children:
            assert child.ended() == 0, output.read_text(encoding="utf-8")
        assert _what_is_in(place) == expected
        tables = [(out / "results.csv").read_bytes() for out in outs.values()]
        assert last_table in tables, "whoever is last has everybody in the table"
    record_property("table", ["two markings at once", {f"into one {where}": times}])


def test_one_of_two_is_killed(two, tmp_path, record_property):
    """One marking is killed while the other goes on: that one ends well, and the first can be repeated."""
    base, one, other = two
    expected, _ = _one_after_the_other(two, tmp_path, course=False)
    dice, hits, numbers = random.Random("one killed"), Counter(), count()
    while hits.total() < ONE_KILLED:
        number = next(numbers)
        place = tmp_path / f"place {number}"
        more = _into(place, base, course=False)
        outs, steps = [tmp_path / f"{each.name} {number}" for each in (one, other)], Steps(STEPS)
        output = outs[1].with_suffix(".txt")
        killed = Child(partial(one.run, outs[0], steps=steps, more=more))
        unhurt = Child(partial(other.run, outs[1], more=more), output=output)
        code = killed.killed(steps, random_moment(one, dice))
        assert unhurt.ended() == 0, output.read_text(encoding="utf-8")
        assert done(partial(one.run, outs[0], more=more)) == 0
        assert _what_is_in(place) == expected
        if code:
            hits[steps.now] += 1
    record_property("table", ["two markings at once", {"one of them killed": hits.total()}])


def test_into_one_folder_of_results(two, tmp_path, record_property):
    """The second marking into a folder says that another one is writing there; the first is not disturbed."""
    _, one, other = two
    dice = random.Random("one folder")
    for number in range(INTO_RESULTS):
        out, steps, output = tmp_path / f"out {number}", Steps(STEPS), tmp_path / "second.txt"
        out.mkdir()
        first = Child(partial(one.run, out, steps=steps))
        while steps.begun < 2 + dice.randrange(4):
            time.sleep(0.001)
        code = done(partial(other.run, out), output=output)
        assert first.ended() == 0
        text = output.read_text(encoding="utf-8")
        assert code == 1, text
        assert text == f"Error: {out}: another marking is writing there, wait until it has ended\n"
        for name in ("results.csv", "problems.csv"):
            assert (out / name).read_bytes() == one.expected[name]
        assert contents(out / "gradebook.db") == one.expected["gradebook"]
    record_property("table", ["two markings at once", {"into one folder, the second refused": INTO_RESULTS}])


def test_nobody_is_forgotten_in_the_middle_of_a_marking(two, tmp_path):
    """A marking would write a learner anew who is being forgotten, so forgetting is refused meanwhile."""
    _, one, _ = two
    out, steps = tmp_path / "out", Steps(STEPS)
    out.mkdir()
    marking = Child(partial(one.run, out, steps=steps))
    while steps.begun < 2:
        time.sleep(0.001)
    with pytest.raises(OSError, match="another marking is writing there"):
        forget_learner(learner_name(1), results=[out], hand_ins=[one.hand_ins], do=True)
    assert marking.ended() == 0
    assert contents(out / "gradebook.db") == one.expected["gradebook"]


def test_scores_are_read_while_another_writes(two):
    """Who only reads the gradebook waits for no writer and reads what was there before."""
    book = two[0] / "gradebook.db"
    before = len(read_scores(book))
    with closing(sqlite3.connect(book, isolation_level=None)) as writer:
        writer.execute("BEGIN IMMEDIATE")
        writer.execute("DELETE FROM grade")
        assert len(read_scores(book)) == before
        writer.execute("ROLLBACK")
