"""Many hand-ins to marks: read as data, solved a whole class at a time, on several processes where it pays.

No learner's code is run and no notebook of a learner's is executed. What happens to the marks afterwards
(gradebook, tables, feedback pages) is for other modules.
"""

import heapq
import os
from collections import Counter, defaultdict
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor, as_completed
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from grading.answers import JournalContents, Problem
from grading.exercises import BANK_VERSION, EXERCISES, PAGES
from grading.export import printable
from grading.gradebook import LearnerMarks, utc
from grading.hand_in import HandIn, HandInError, learner_slug, read_hand_in
from grading.scoring import keys_for, mark_learner, wanted

CHUNK = 100  # hand-ins that one process reads and solves together; the keys of a chunk stay in memory
LONGEST_NAME = 128  # what nbgrader's tables give to each part of a name
WORTH_PROCESSES = 300  # hand-ins; below this, starting processes takes longer than the marking


class NoHandInsError(ValueError):
    """There is nothing to mark; the message is one sentence for the instructor."""


@dataclass(frozen=True, kw_only=True, slots=True)
class ClassProblem:
    """Something that the instructor should know about one file: whose it is, where in it, and what."""

    file: str
    learner: str = ""
    page: str = ""
    line: int = 0
    kind: str = "hand-in"
    sentence: str

    def seen_from(self, folder):
        """Return the problem with its file named from the folder of the hand-ins on."""
        return replace(self, file=self.file.replace(f"{folder}{os.sep}", ""))

    @property
    def in_words(self):
        """Return the problem in one line."""
        whose = f" ({self.learner})" if self.learner else ""
        return f"{self.file}{whose}: {self.sentence}"


@dataclass(frozen=True, kw_only=True, slots=True)
class MarkedLearner:
    """One learner's marks: all that leaves the process that computed them.

    ``slips`` holds ``<exercise id>.<part id>.<slip id>`` for every slip whose answer stands.
    """

    marks: LearnerMarks
    display_name: str
    paths: tuple[Path, ...]
    slips: tuple[str, ...]
    points: float
    problems: tuple[ClassProblem, ...]


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


def hand_in_files(path):
    """Return the files to mark, sorted: the one file, or every file in the folder and the folders in it.

    Files whose name begins with a point belong to the system that made the folder and are left out.
    """
    path = Path(path)
    if path.is_file():
        return [path]
    if not path.is_dir():
        message = f"hand-ins must be a folder or a file, found nothing at {path}"
        raise NoHandInsError(message)
    files = [
        Path(folder, name)
        for folder, _, names in os.walk(path)
        for name in names
        if not name.startswith(".") and "__MACOSX" not in folder
    ]
    if not files:
        message = f"folder {path} must hold at least one hand-in, found none"
        raise NoHandInsError(message)
    return sorted(files)


def mark_class(files, settings, *, each_learner=None, processes=None, progress=None):
    """Return the ``ClassResult`` of many hand-in files.

    ``each_learner(hand_in, result, keys, problems)`` is called, in the process that marked the learner, with
    everything a feedback page needs; it must be importable by name where several processes are used.
    ``progress(done, total)`` is told how many files are done. Two hand-ins of one learner are put together.
    """
    files = [Path(each) for each in files]
    chunks = [files[start : start + CHUNK] for start in range(0, len(files), CHUNK)]
    learners, problems, done = [], [], 0
    for marked, unread, count in _marked_chunks(chunks, settings, each_learner, _count(processes, files)):
        learners += marked
        problems += unread
        done += count
        if progress:
            progress(done, len(files))
    learners = _put_together(learners, settings, each_learner)
    problems += [problem for each in learners for problem in each.problems]
    return ClassResult(
        learners=tuple(sorted(learners, key=lambda each: each.marks.student_id)),
        problems=tuple(sorted(problems, key=lambda each: (each.file, each.page, each.line))),
        files=len(files),
    )


def _count(processes, files):
    """Return how many processes to use: one for a small class, else one for each processor."""
    if len(files) < WORTH_PROCESSES:
        return 1
    return processes or os.cpu_count() or 1


def _marked_chunks(chunks, settings, each_learner, processes) -> Iterator:
    """Give ``(learners, problems, number of files)`` for each chunk, in the order they are done."""
    work = partial(_mark_chunk, settings=settings, each_learner=each_learner)
    if processes == 1:
        yield from map(work, chunks)
        return
    with ProcessPoolExecutor(processes) as pool:
        for done in as_completed([pool.submit(work, chunk) for chunk in chunks]):
            yield done.result()


def _mark_chunk(files, settings, each_learner):
    """Read and mark one chunk of files; what cannot be read becomes a problem."""
    groups, problems = read_by_learner(files)
    return mark_hand_ins(groups, settings, each_learner), problems, len(files)


def read_by_learner(files):
    """Read hand-in files; return groups of ``(path, hand-in)``, one group a learner, and what cannot be read."""
    found, problems = defaultdict(list), []
    for file in files:
        try:
            hand_in = read_hand_in(file)
        except HandInError as error:
            problems.append(ClassProblem(file=str(file), sentence=printable(str(error))))
        else:
            found[hand_in.learner].append((file, hand_in))
    return list(found.values()), problems


def mark_hand_ins(groups, settings, each_learner=None):
    """Return a ``MarkedLearner`` for each group of ``(file, hand-in)`` pairs, one group a learner."""
    merged = [merge_hand_ins(group) for group in groups]
    needed = {
        (exercise, each.learner, round_number)
        for each, _ in merged
        for exercise, round_number in wanted(each.records, each.learner, settings.course_key)
        if exercise in EXERCISES
    }
    keys = keys_for(needed, course_key=settings.course_key, exercises=EXERCISES)
    return [_mark_one(hand_in, paths, settings, keys, each_learner) for hand_in, paths in merged]


def _mark_one(hand_in, paths, settings, keys, each_learner):
    """Mark one learner and hand everything to ``each_learner`` before all but the marks is let go."""
    result = mark_learner(
        hand_in.records,
        settings,
        learner=hand_in.learner,
        exercises=EXERCISES,
        bank_version=BANK_VERSION,
        keys=keys,
    )
    problems = tuple(_problems(hand_in, paths, result))
    if each_learner:
        each_learner(hand_in, result, keys, problems)
    broken = {each.exercise_id for each in result.problems if each.kind == "broken exercise"}
    pages = hand_in_pages(hand_in)
    points = {
        each.exercise_id: None if each.exercise_id in broken else each.points
        for each in result.exercises.values()
        if EXERCISES[each.exercise_id].counts
    }
    name = printable(hand_in.display_name)[:LONGEST_NAME]
    first, _, last = name.rpartition(" ")
    return MarkedLearner(
        marks=LearnerMarks(
            student_id=learner_slug(hand_in.learner),
            first_name=first,
            last_name=last,
            handed_in=made_at(hand_in),
            pages=pages,
            points=points,
        ),
        display_name=name,
        paths=paths,
        slips=tuple(_standing_slips(result)),
        points=result.points,
        problems=problems,
    )


def _standing_slips(result):
    """Give the full id of every slip that a learner's best or last answer shows."""
    for exercise in result.exercises.values():
        for part_id, mark in exercise.parts.items():
            for slip_id in {mark.best.slip_id, mark.latest.slip_id} - {""}:
                yield f"{exercise.exercise_id}.{part_id}.{slip_id}"


def _problems(hand_in, paths, result):
    """Give everything that was found wrong with one learner's hand-ins."""
    for problem in (*hand_in.problems, *result.problems):
        yield ClassProblem(
            file=", ".join(map(str, paths)),
            learner=printable(hand_in.display_name),
            page=problem.exercise_id.partition(".")[0] or Path(problem.place).stem,
            line=problem.line,
            kind=problem.kind,
            sentence=printable(problem.sentence),
        )
    if made_at(hand_in) is None:
        sentence = f"the hand-in names no usable time, got {printable(hand_in.made_at)[:40]!r}"
        yield ClassProblem(file=str(paths[-1]), learner=printable(hand_in.display_name), sentence=sentence)


def made_at(hand_in):
    """Return when a hand-in says it was made, in UTC without time zone, or None where it names no time."""
    try:
        return utc(hand_in.made_at)
    except (ValueError, OverflowError):
        return None


def merge_hand_ins(group):
    """Put the hand-ins of one learner together and return ``(hand-in, paths)``.

    Every record counts once. Each journal keeps its own order, whatever the clock of its computer said;
    between journals the time of the record decides.
    """
    group = sorted(group, key=lambda pair: (pair[1].made_at, str(pair[0])))
    paths = tuple(path for path, _ in group)
    latest = group[-1][1]
    if len(group) == 1:
        return latest, paths
    pages = dict.fromkeys(page for _, each in group for page in each.journals)
    journals = {page: _merge([each.journals.get(page) for _, each in group]) for page in pages}
    written = {page: text for _, each in group for page, text in each.written.items() if text}
    sentence = f"{len(group)} hand-ins of one learner were put together, every answer counted once"
    problems = dict.fromkeys(problem for _, each in group for problem in each.problems)
    problems[Problem(kind="several hand-ins", sentence=sentence)] = None
    return replace(latest, journals=journals, written=written, problems=tuple(problems)), paths


def _merge(journals):
    """Put the journals of one page together."""
    journals = [each for each in journals if each is not None]
    records = {each.check: each for each in heapq.merge(*(j.records for j in journals), key=lambda r: r.at)}
    problems = dict.fromkeys(problem for each in journals for problem in each.problems)
    return JournalContents(records=tuple(records.values()), problems=tuple(problems))


def _put_together(learners, settings, each_learner):
    """Mark those again, as one, whose hand-ins were read in different chunks."""
    by_id = defaultdict(list)
    for each in learners:
        by_id[each.marks.student_id].append(each)
    twice = [group for group in by_id.values() if len(group) > 1]
    return [group[0] for group in by_id.values() if len(group) == 1] + mark_hand_ins(
        [[(path, read_hand_in(path)) for each in group for path in each.paths] for group in twice],
        settings,
        each_learner,
    )


def hand_in_pages(hand_in):
    """Return the ids of the pages that a hand-in holds answers or a written part for, in reading order."""
    return tuple(page for page in PAGES if page in hand_in.journals or page in hand_in.written)
