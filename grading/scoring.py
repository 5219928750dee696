"""Marks of one learner: which records count, and what they earn together.

``mark_learner`` is the one way from records to marks for the page, the gradebook's cells and feedback. A
class of which nothing but marks is wanted goes by ``class_marks``, which a test holds to the same.
"""

from collections import Counter, defaultdict
from dataclasses import dataclass, replace

from grading.answers import Problem
from grading.counts import count_answers
from grading.keys import RoundKey, keys_for, row_keys
from grading.part_results import Outcome, PartResult
from grading.part_scores import score_part
from grading.round_marks import (
    POINT_DIGITS,
    ExerciseResult,
    PartMark,
    RoundResult,
    mark_rounds,
    problem_at,
    unanswered,
)
from grading.variants import PRACTICE, normalise_learner

__all__ = [
    "ExerciseResult",
    "LearnerResult",
    "Outcome",
    "PartMark",
    "PartResult",
    "RoundKey",
    "RoundResult",
    "keys_for",
    "mark_answered",
    "mark_learner",
    "mark_rounds",
    "row_keys",
    "score_part",
    "wanted",
    "with_unanswered",
]


@dataclass(frozen=True, kw_only=True)
class LearnerResult:
    """Everything one learner earned, by exercise in the order of the bank, and what was set aside."""

    learner: str
    exercises: dict[str, ExerciseResult]
    points: float
    maximum: float
    problems: tuple[Problem, ...]
    last_at: str


def wanted(records, learner, course_key):
    """Return the ``(exercise id, round number)`` pairs whose keys a learner's records can need."""
    own = _spellings(records, learner)
    return {
        (record.exercise, record.round_number)
        for record in records
        if record.course == course_key and record.learner in own
    }


def _spellings(records, learner):
    """Return the spellings of a learner's name that stand in the records."""
    return {name for name in {record.learner for record in records} if normalise_learner(name) == learner}


def mark_learner(records, settings, *, learner=None, exercises=None, bank_version=None, keys=None):
    """Return everything that one learner earned with the records of one or more journals.

    Without ``learner``, it is the learner of the last record that is not practice. ``keys`` may hold keys
    that were solved for a whole class; what it lacks is solved here.
    """
    if exercises is None:
        from grading.exercises import BANK_VERSION, EXERCISES

        exercises, bank_version = EXERCISES, BANK_VERSION
    practice = ()
    if learner is None:
        learner = _last_learner(records)
        if learner == PRACTICE and records:
            practice = (Problem(kind="practice", sentence="all answers are practice: nobody had signed in"),)
            records = ()
    answered = mark_answered(
        records, settings, learner=learner, exercises=exercises, bank_version=bank_version, keys=keys
    )
    return with_unanswered(replace(answered, problems=practice + answered.problems), exercises)


def mark_answered(records, settings, *, learner, exercises, bank_version=None, keys=None):
    """Return what a learner earned, with the exercises that were answered and no others.

    A learner of a large bank answers few of its exercises; the others cost nothing here.
    """
    problems = []
    own, counted = own_records(records, learner, settings, exercises, problems)
    report_banks(counted, bank_version, problems)
    key_of = _key_finder(learner, settings.course_key, exercises, keys or {})
    results = {
        each: mark_rounds(exercises[each], own[each], settings, key_of(each), problems)
        for each in filter(own.__contains__, exercises)
    }
    return LearnerResult(
        learner=learner,
        exercises=results,
        points=round(sum((result.points for result in results.values()), 0.0), POINT_DIGITS),
        maximum=sum((result.maximum for result in results.values()), 0.0),
        problems=tuple(problems),
        last_at=max([record.at for record in counted], default=""),
    )


def with_unanswered(result, exercises):
    """Return the result with every exercise of the bank in it, in the order of the bank."""
    whole = {each: result.exercises.get(each) or unanswered(exercise) for each, exercise in exercises.items()}
    return replace(result, exercises=whole, maximum=sum(one.maximum for one in whole.values()))


def _key_finder(learner, course_key, exercises, keys):
    """Return a function from exercise id to a function from round to key; what is lacking is solved."""

    def key_of(exercise_id):
        def of_round(round_number):
            one = (exercise_id, learner, round_number)
            return keys.get(one) or keys_for([one], course_key=course_key, exercises=exercises)[one]

        return of_round

    return key_of


def _last_learner(records):
    """Return the learner of the last record that is not practice, or practice where there is none."""
    names = (normalise_learner(record.learner) for record in reversed(records))
    return next((name for name in names if name != PRACTICE), PRACTICE)


def own_records(records, learner, settings, exercises, problems):
    """Return the learner's records, by exercise and in one list; what belongs to others is reported."""
    own, counted, aside, first = defaultdict(list), [], Counter(), {}
    spellings = _spellings(records, learner)
    for record in records:
        if record.learner not in spellings:
            whose = normalise_learner(record.learner)
            reason = ("practice", "") if whose == PRACTICE else ("other learner", whose)
        elif record.course != settings.course_key:
            reason = ("other course", record.course)
        elif record.exercise not in exercises:
            reason = ("unknown exercise", record.exercise)
        else:
            own[record.exercise].append(record)
            counted.append(record)
            continue
        aside[reason] += 1
        first.setdefault(reason, record)
    for (kind, name), count in aside.items():
        problems.append(
            problem_at(kind, _ASIDE[kind].format(answers=count_answers(count), name=name), first[kind, name])
        )
    return own, counted


_ASIDE = {
    "practice": "set aside {answers} of practice, saved before anybody signed in",
    "other learner": "set aside {answers} of another learner ({name})",
    "other course": "set aside {answers} from another class ({name})",
    "unknown exercise": "set aside {answers} to an exercise that this copy does not have ({name})",
}


def report_banks(records, bank_version, problems):
    """Report answers saved with another version of the exercises; they count where the numbers agree."""
    if bank_version is None:
        return
    others = Counter([record.bank for record in records if record.bank != bank_version])
    for bank, count in others.items():
        found = f"found {count_answers(count)} saved with exercises of version {bank}"
        sentence = f"{found}, this copy has {bank_version}"
        problems.append(Problem(kind="other bank", sentence=sentence))
