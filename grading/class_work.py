"""How a class worked: tries, rounds, time and slips of each learner, kept beside the results for the report.

Marks are not kept here: they stand in the gradebook, where a person may change them.
"""

import json
from array import array
from dataclasses import asdict, dataclass
from datetime import datetime
from itertools import pairwise
from pathlib import Path
from typing import NamedTuple

from grading.exercises import EXERCISES
from grading.part_results import Outcome
from grading.whole_files import write_whole

WORK_FILE = "class_work.json"
LONGEST_PAUSE_S = 20 * 60  # between two saves; more than that was not spent at the exercise
_FORMAT = "second plate class work"
_VERSION = 1
_MOST_S = 65_535  # what two bytes hold


class ClassWorkError(ValueError):
    """There is no usable record of a marking; the message is one sentence for the instructor."""


class Work(NamedTuple):
    """One learner's work, in the order of the bank: small enough to keep for thousands.

    ``tries`` are those of the first round, 0 where nothing was answered; ``at_once`` is 1 where every part
    was right at the first of them. ``seconds`` is the time between saves, 0 where it is not known.
    """

    tries: bytes
    rounds: bytes
    at_once: bytes
    seconds: array


def work_of(hand_in, result, _keys, _problems):
    """Return the ``Work`` of one marked learner."""
    exercises = [result.exercises[each] for each in EXERCISES]
    seconds = seconds_between_saves(hand_in.records)
    return Work(
        tries=bytes(_tries(each) for each in exercises),
        rounds=bytes(min(len(each.rounds), 255) for each in exercises),
        at_once=bytes(_at_once(each) for each in exercises),
        seconds=array("H", (min(seconds.get(each, 0), _MOST_S) for each in EXERCISES)),
    )


def _tries(exercise):
    """Return how many tries the first round took: those of the part that took most."""
    return (
        max((mark.tries_used for mark in exercise.rounds[0].parts.values()), default=0)
        if exercise.rounds
        else 0
    )


def _at_once(exercise):
    """Tell whether every part was right at the first try of the first round."""
    parts = exercise.rounds[0].parts.values() if exercise.rounds else ()
    return bool(parts) and all(
        mark.tries_used == 1 and mark.latest.outcome is Outcome.CORRECT for mark in parts
    )


def seconds_between_saves(records):
    """Return the seconds spent on each exercise: from the save before, on any page, to its own.

    The first save of a sitting has none before it, so its time is not known and counts for nothing.
    """
    moments = []
    for record in records:
        try:
            moments.append((datetime.fromisoformat(record.at).timestamp(), record.exercise))
        except (ValueError, OverflowError, OSError):
            continue  # a clock that tells nonsense tells no time
    spent = {}
    for (earlier, _), (later, exercise) in pairwise(sorted(moments)):
        if later - earlier <= LONGEST_PAUSE_S:
            spent[exercise] = spent.get(exercise, 0) + round(later - earlier)
    return spent


@dataclass(frozen=True, kw_only=True)
class LearnerWork:
    """One learner of a marking: whose work, with the slips that stand."""

    student_id: str
    tries: tuple[int, ...]
    rounds: tuple[int, ...]
    at_once: tuple[int, ...]
    seconds: tuple[int, ...]
    slips: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class ClassWork:
    """The work of a class: its title, the tries that a round allows, the exercises in order, the learners."""

    title: str
    tries_per_round: int
    exercises: tuple[str, ...]
    learners: tuple[LearnerWork, ...]


def class_work(learners, settings):
    """Return the ``ClassWork`` of marked learners whose ``Work`` was kept."""
    return ClassWork(
        title=settings.title,
        tries_per_round=settings.tries_per_round,
        exercises=tuple(EXERCISES),
        learners=tuple(
            LearnerWork(
                student_id=each.marks.student_id,
                **{name: tuple(values) for name, values in each.kept._asdict().items()},
                slips=tuple(dict.fromkeys(each.slips)),
            )
            for each in learners
        ),
    )


def save_class_work(folder, work):
    """Write the work of a class into the folder of its results."""
    content = {"format": _FORMAT, "version": _VERSION, **asdict(work)}
    write_whole(Path(folder) / WORK_FILE, json.dumps(content, separators=(",", ":")).encode())


def read_class_work(folder):
    """Return the ``ClassWork`` that a marking left in a folder, or raise ``ClassWorkError``."""
    path = Path(folder) / WORK_FILE
    try:
        content = json.loads(path.read_bytes())
    except OSError as error:
        message = f"{folder} must hold {WORK_FILE}, which `mark` writes with its report: {error.strerror}"
        raise ClassWorkError(message) from error
    except ValueError as error:
        message = f"{path} cannot be read, mark the class again: {error}"
        raise ClassWorkError(message) from error
    if not isinstance(content, dict) or (content.pop("format", None), content.pop("version", None)) != (
        _FORMAT,
        _VERSION,
    ):
        message = f"{path} must be a {_FORMAT} of version {_VERSION}, mark the class again"
        raise ClassWorkError(message)
    return _class_work_from(content, path)


def _class_work_from(content, path):
    """Turn the parsed file into records."""
    try:
        learners = [
            LearnerWork(
                **{name: tuple(value) if isinstance(value, list) else value for name, value in each.items()}
            )
            for each in content.pop("learners")
        ]
        exercises = tuple(content.pop("exercises"))
        uneven = any(
            len(values) != len(exercises)
            for each in learners
            for values in (each.tries, each.rounds, each.at_once, each.seconds)
        )
        work = ClassWork(**content, exercises=exercises, learners=tuple(learners))
    except (TypeError, KeyError, AttributeError) as error:
        message = f"{path} does not hold the work of a class, mark the class again: {error}"
        raise ClassWorkError(message) from error
    if uneven:
        message = f"{path} must hold one number for each exercise and learner, mark the class again"
        raise ClassWorkError(message)
    return work
