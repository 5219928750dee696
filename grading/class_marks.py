"""Marks of many learners at once, exercise by exercise: the points and slips, and nothing else.

They are what ``mark_answered`` comes to for each learner alone. Rounds, tries and faults go through the same
functions; only here all learners' answers to one part are compared with their keys together.
"""

from collections import defaultdict
from dataclasses import dataclass, field
from operator import attrgetter

from grading.bench_scores import judge_ahead
from grading.exercise import Bench
from grading.keys import solve_rounds
from grading.part_columns import score_column
from grading.round_marks import POINT_DIGITS, after_tries, honoured_rounds, round_points, sound_answers
from grading.scoring import own_records, report_banks


@dataclass(kw_only=True, slots=True)
class Earned:
    """What one learner earned.

    ``points`` holds those of each counting exercise that was answered, None where the exercise is broken and
    a person has to look; ``total`` is their sum. ``slips`` are full ids, ``<exercise>.<part>.<slip>``, of
    those that a best or latest answer shows.
    """

    points: dict[str, float | None] = field(default_factory=dict)
    slips: list[str] = field(default_factory=list)
    problems: list = field(default_factory=list)
    total: float = 0.0


def earned_of(result, exercises):
    """Return the same of one learner's ``LearnerResult``, in which everything else stands too."""
    broken = {each.exercise_id for each in result.problems if each.kind == "broken exercise"}
    earned = Earned(problems=list(result.problems), total=result.points)
    for exercise_id, marked in result.exercises.items():
        exercise = exercises[exercise_id]
        if exercise.counts:
            earned.points[exercise_id] = None if exercise_id in broken else marked.points
        for part in exercise.parts:
            mark = marked.parts[part.id]
            earned.slips += _full_ids(exercise, part, (*mark.best.slip_ids, *mark.latest.slip_ids))
    return earned


_SHARE = attrgetter("share")


class _Round:
    """One learner's round of one exercise while its parts are marked."""

    __slots__ = ("answers", "credits", "earned", "key", "number", "records", "share", "slips")

    def __init__(self, earned, number, records):
        self.earned, self.number, self.records = earned, number, records
        self.share, self.slips = 0.0, []


def earned_by_class(hand_ins, settings, *, exercises, bank_version=None):
    """Return what each learner ``Earned`` from ``hand_ins``, one a learner, in their order."""
    earned, by_exercise = [], defaultdict(list)
    for hand_in in hand_ins:
        one = Earned()
        own, counted = own_records(hand_in.records, hand_in.learner, settings, exercises, one.problems)
        report_banks(counted, bank_version, one.problems)
        for exercise_id, records in own.items():
            by_exercise[exercise_id].append((one, hand_in.learner, records))
        earned.append(one)
    for exercise_id in filter(by_exercise.__contains__, exercises):
        _mark_exercise(exercises[exercise_id], by_exercise[exercise_id], settings)
    for one in earned:
        one.total = round(one.total, POINT_DIGITS)
    return earned


def _mark_exercise(exercise, answered, settings):
    """Add what an exercise earned to everybody who answered it."""
    rounds, wanted, by_learner = [], [], []
    for earned, learner, records in answered:
        honoured = honoured_rounds(exercise, records, earned.problems)
        own = [_Round(earned, number, of_round) for number, of_round in honoured.items()]
        by_learner.append((earned, own))
        rounds += own
        wanted += [(learner, number) for number in honoured]
    keys = solve_rounds(exercise, wanted, settings.course_key)
    _mark_all_rounds(exercise, rounds, keys, settings)
    for earned, own in by_learner:
        _add_best(exercise, earned, own)


def _mark_all_rounds(exercise, rounds, keys, settings):
    """Mark the rounds in which anything can be marked."""
    once, others = [], []
    for each, key in zip(rounds, keys, strict=True):
        each.key = key
        each.answers = sound_answers(exercise, each.records, key, each.earned.problems)
        if each.answers:
            each.credits = settings.credits(each.number)
            whole = len(each.answers) == 1 and len(each.answers[0]) == len(exercise.parts)
            (once if whole else others).append(each)
    _mark_answered_once(exercise, once)
    for part in exercise.parts:
        _mark_answered_again(exercise, part, others)


def _mark_answered_once(exercise, rounds):
    """Mark rounds in which every part was answered, and once: most are."""
    answers, keys = [each.answers[0] for each in rounds], [each.key.keys for each in rounds]
    credits, shares = [each.credits[0] for each in rounds], [0.0] * len(rounds)
    for part in exercise.parts:
        name, points = part.id, part.points
        results = _score(part, [key[name] for key in keys], [one[name] for one in answers])
        shares = [
            share + points * (credit * result.fraction)
            for share, credit, result in zip(shares, credits, results, strict=True)
        ]
        for each, result in zip(rounds, results, strict=True):
            if result.slip_id:
                each.slips += _full_ids(exercise, part, result.slip_ids)
    for each, share in zip(rounds, shares, strict=True):
        each.share = share


def _mark_answered_again(exercise, part, rounds):
    """Add what a part earned to rounds of any number of tries, and slips of the best and latest answer."""
    name = part.id
    typed = [[one[name] for one in each.answers if name in one] for each in rounds]
    keys = [each.key.keys[name] for each, given in zip(rounds, typed, strict=True) for _ in given]
    results = iter(_score(part, keys, [one for given in typed for one in given]))
    for each, given in zip(rounds, typed, strict=True):
        tried = after_tries(list(zip(given, results)), each.credits)  # noqa: B905, results go on to the next
        each.share += part.points * tried.share
        each.slips += _full_ids(exercise, part, (*tried.best.slip_ids, *tried.latest.slip_ids))


def _score(part, keys, typed):
    """Return the results of many answers to one part; logs of the bench are judged together before that."""
    if isinstance(part, Bench):
        judge_ahead([(part, key, one) for key, one in zip(keys, typed, strict=True)])
    return score_column(part, keys, typed)


def _full_ids(exercise, part, slips):
    """Return the full ids of slips, each once."""
    return [f"{exercise.id}.{part.id}.{slip}" for slip in sorted({*slips})] if slips else ()


def _add_best(exercise, earned, rounds):
    """Add the round of a learner that came to most; of equal ones the first."""
    best = rounds[0] if len(rounds) == 1 else max(rounds, key=_SHARE, default=None)
    points = round_points(exercise, best.share) if best else 0.0
    earned.total += points
    if exercise.counts:
        earned.points[exercise.id] = None if any(each.key.problem for each in rounds) else points
    if best:
        earned.slips += best.slips
