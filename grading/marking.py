"""Many hand-ins to marks: read as data, solved a whole class at a time, on several processes where it pays.

No learner's code is run and no notebook of a learner's is executed. What happens to the marks afterwards
(gradebook, tables, feedback pages) is for other modules.
"""

import gc
import math
import os
import signal
import sys
from collections import Counter, defaultdict, deque
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass
from datetime import datetime
from functools import partial
from multiprocessing import parent_process
from pathlib import Path
from threading import Thread
from typing import NamedTuple

from grading.bench_scores import judge_ahead
from grading.class_marks import earned_by_class, earned_of
from grading.collector import collector_paused
from grading.exercise import Bench
from grading.exercises import BANK_VERSION, EXERCISES
from grading.export import printable
from grading.hand_in import learner_slug, read_hand_in
from grading.hand_ins import (
    ClassProblem,
    hand_in_pages,
    made_at,
    merge_hand_ins,
    read_by_learner,
)
from grading.odd_times import odd_times
from grading.scoring import keys_for, mark_answered, wanted, with_unanswered
from grading.unit_spellings import load_all_units

CHUNK = 500  # hand-ins at most that one process reads and solves together; their keys stay in memory
AHEAD = 3  # chunks for each process that are given out before the results of the first are taken
LONGEST_NAME = 128  # what nbgrader's tables give to each part of a name
_BENCH_PARTS = {
    exercise_id: parts
    for exercise_id, exercise in EXERCISES.items()
    if (parts := [part for part in exercise.parts if isinstance(part, Bench)])
}
WORTH_PROCESSES = 300  # hand-ins; below this, starting processes takes longer than the marking


# Named tuples: a class has a hundred thousand of both, and all of them come out of other processes.


class LearnerMarks(NamedTuple):
    """What the gradebook takes from one learner's hand-in.

    ``points`` holds the mark of each counting exercise that was answered, None where the fault is ours and a
    person has to look; what is not named was not answered and earned nothing. ``handed_in`` is in UTC,
    without time zone, as nbgrader keeps it.
    """

    student_id: str
    first_name: str
    last_name: str
    handed_in: datetime | None
    pages: tuple[str, ...]
    points: dict[str, float | None]


class MarkedLearner(NamedTuple):
    """One learner's marks: all that leaves the process that computed them.

    ``slips`` holds ``<exercise id>.<part id>.<slip id>`` for every slip whose answer stands, ``kept`` what
    ``each_learner`` returned.
    """

    marks: LearnerMarks
    display_name: str
    paths: tuple[str, ...]
    slips: tuple[str, ...]
    points: float
    problems: tuple[ClassProblem, ...]
    kept: object = None


@dataclass(frozen=True, kw_only=True)
class ClassResult:
    """The marks of a class, sorted by student id, and everything that could not be read."""

    learners: tuple[MarkedLearner, ...]
    problems: tuple[ClassProblem, ...]
    files: int = 0

    @property
    def slip_counts(self):
        """Return how many learners made each slip, most frequent first."""
        counts = Counter(slip for each in self.learners for slip in set(each.slips))
        return sorted(counts.items(), key=lambda item: (-item[1], item[0]))


def mark_class(
    files,
    settings,
    *,
    each_learner=None,
    processes=None,
    progress=None,
    taken=None,
    state=None,
    run_chunks=None,
):
    """Return the ``ClassResult`` of many hand-in files.

    ``each_learner(hand_in, result, keys, problems)`` is called, in the process that marked the learner, with
    everything a feedback page needs; it must be importable by name where several processes are used, and
    what it returns is kept with the learner's marks.
    ``progress(done, total)`` is told how many files are done. Two hand-ins of one learner are put together.
    ``taken(marks)`` is given the ``LearnerMarks`` of some learners at a time, as soon as they are known; of a
    learner whose hand-ins turn out to lie far apart it is given them again, put together.
    ``state`` keeps what is done, a ``MarkingState``; what it knows already is not marked again.
    ``run_chunks(work, chunks)`` gives what work makes of each chunk of files, in order, in place of the
    processes of this computer; it may cut a chunk into several.
    """
    files = list(map(str, files))
    learners, problems, todo = state.split(files) if state else ([], [], files)
    processes, done = _count(processes, todo), len(files) - len(todo)
    work = partial(
        _mark_chunk, settings=settings, each_learner=each_learner, line_of=state.line_of if state else None
    )
    run_chunks = run_chunks or partial(_worked, processes=processes)
    taken, known = taken or _leave, list(learners)
    for marked, unread, line, count in run_chunks(work, _chunks(todo, processes)):
        if state:
            state.add(line)
        taken([each.marks for each in marked])
        learners += marked
        problems += unread
        done += count
        if progress:
            progress(done, len(files))
    taken([each.marks for each in known])  # not before the processes begin: they would share its files
    learners, twice = _met_twice(learners)
    together = _put_together(twice, settings, each_learner)
    taken([each.marks for each in together])
    learners += together
    problems += [problem for each in learners for problem in each.problems]
    return ClassResult(
        learners=tuple(sorted(learners, key=lambda each: each.marks.student_id)),
        problems=tuple(sorted(problems, key=lambda each: (each.file, each.page, each.line))),
        files=len(files),
    )


def _chunks(files, processes):
    """Return files in chunks, no larger than lets every process have one."""
    size = max(1, min(CHUNK, math.ceil(len(files) / processes)))
    return [files[start : start + size] for start in range(0, len(files), size)]


def _count(processes, files):
    """Return how many processes to use: one for a small class, else one for each processor."""
    if len(files) < WORTH_PROCESSES:
        return 1
    return processes or os.cpu_count() or 1


def _worked(work, chunks, processes) -> Iterator:
    """Give what work makes of each chunk, in order, with no search for cycles until all is taken."""
    with collector_paused():
        yield from map(work, chunks) if processes == 1 else _shared_out(work, chunks, processes)


def _shared_out(work, chunks, processes):
    """Give what work makes of each chunk in processes of this computer, in order."""
    load_all_units()  # processes that are forked share what is loaded
    with ProcessPoolExecutor(processes, initializer=_begin_process) as pool:
        given = deque()
        for chunk in chunks:
            given.append(pool.submit(work, chunk))
            if len(given) > AHEAD * processes:
                yield given.popleft().result()
        while given:
            yield given.popleft().result()


def _begin_process():
    """Leave an interruption to the process that all results come to, and make no search for cycles."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    gc.disable()
    Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent():
    """End where the process that all results come to was killed: who waits for work would wait for ever."""
    parent_process().join()
    os._exit(1)


def _mark_chunk(files, settings, each_learner, line_of):
    """Return learners, what cannot be read, the line that a state keeps of both, and the count of files."""
    digests = {} if line_of else None
    groups, problems = read_by_learner(files, digests)
    learners = mark_hand_ins(groups, settings, each_learner)
    return learners, problems, line_of and line_of(digests, learners, problems), len(files)


def mark_hand_ins(groups, settings, each_learner=None):
    """Return a ``MarkedLearner`` for each group of ``(file, hand-in)`` pairs, one group a learner."""
    merged = [merge_hand_ins(group) for group in groups]
    if each_learner:
        return _marked_one_by_one(merged, settings, each_learner)
    earned = earned_by_class(
        [hand_in for hand_in, _ in merged], settings, exercises=EXERCISES, bank_version=BANK_VERSION
    )
    return [
        _marked(hand_in, paths, one, tuple(_problems(hand_in, paths, one.problems)))
        for (hand_in, paths), one in zip(merged, earned, strict=True)
    ]


def _marked_one_by_one(merged, settings, each_learner):
    """Mark learners one by one, with everything that a feedback page shows; the keys are solved together."""
    needed = {
        (exercise, each.learner, round_number)
        for each, _ in merged
        for exercise, round_number in wanted(each.records, each.learner, settings.course_key)
        if exercise in EXERCISES
    }
    keys = keys_for(needed, course_key=settings.course_key, exercises=EXERCISES)
    judge_ahead(_bench_logs(merged, keys))
    return [_mark_one(hand_in, paths, settings, keys, each_learner) for hand_in, paths in merged]


def _bench_logs(merged, keys):
    """Give ``(part, key, typed)`` of every log of the bench that these learners saved."""
    for hand_in, _ in merged:
        for record in hand_in.records:
            for part in _BENCH_PARTS.get(record.exercise, ()):
                key = keys.get((record.exercise, hand_in.learner, record.round_number))
                if key and key.keys and part.id in record.answers:
                    yield part, key.keys[part.id], record.answers[part.id]


def _mark_one(hand_in, paths, settings, keys, each_learner):
    """Mark one learner and hand everything to ``each_learner`` before all but the marks is let go."""
    result = mark_answered(
        hand_in.records,
        settings,
        learner=hand_in.learner,
        exercises=EXERCISES,
        bank_version=BANK_VERSION,
        keys=keys,
    )
    problems = tuple(_problems(hand_in, paths, result.problems))
    kept = each_learner(hand_in, with_unanswered(result, EXERCISES), keys, problems)
    return _marked(hand_in, paths, earned_of(result, EXERCISES), problems, kept)


def _marked(hand_in, paths, earned, problems, kept=None):
    """Put together what leaves the process that marked a learner."""
    name = printable(hand_in.display_name)[:LONGEST_NAME]
    first, _, last = name.rpartition(" ")
    return MarkedLearner(
        marks=LearnerMarks(
            student_id=learner_slug(hand_in.learner),
            first_name=first,
            last_name=last,
            handed_in=made_at(hand_in),
            pages=hand_in_pages(hand_in),
            points=earned.points,
        ),
        display_name=name,
        paths=tuple(map(str, paths)),
        slips=tuple(map(sys.intern, earned.slips)),
        points=earned.total,
        problems=problems,
        kept=kept,
    )


def _problems(hand_in, paths, of_marking):
    """Give all that was found wrong with one learner's hand-ins: in reading, in marking, by their times."""
    for problem in (*hand_in.problems, *of_marking):
        yield ClassProblem(
            file=", ".join(map(str, paths)),
            learner=printable(hand_in.display_name),
            page=problem.exercise_id.partition(".")[0] or Path(problem.place).stem,
            line=problem.line,
            kind=problem.kind,
            sentence=printable(problem.sentence),
        )
    for page, line, sentence in odd_times(hand_in):
        yield ClassProblem(
            file=", ".join(map(str, paths)),
            learner=printable(hand_in.display_name),
            page=page,
            line=line,
            kind="odd time",
            sentence=sentence,
        )
    if made_at(hand_in) is None:
        sentence = f"the hand-in names no usable time, got {printable(hand_in.made_at)[:40]!r}"
        yield ClassProblem(file=str(paths[-1]), learner=printable(hand_in.display_name), sentence=sentence)


def _leave(marks):
    """Do nothing with marks: they are wanted at the end only."""


def _met_twice(learners):
    """Return the learners who were met once, and groups of the others, whose hand-ins lay far apart."""
    by_id = defaultdict(list)
    for each in learners:
        by_id[each.marks.student_id].append(each)
    once = [group[0] for group in by_id.values() if len(group) == 1]
    return once, [group for group in by_id.values() if len(group) > 1]


def _put_together(twice, settings, each_learner):
    """Mark those again, as one, whose hand-ins were read in different chunks."""
    return mark_hand_ins(
        [[(path, read_hand_in(path)) for each in group for path in each.paths] for group in twice],
        settings,
        each_learner,
    )
