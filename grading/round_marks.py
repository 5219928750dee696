"""Marks of one exercise: from its records to points, by tries and rounds."""

from operator import attrgetter
from typing import NamedTuple

from grading.answers import Problem
from grading.counts import count_answers
from grading.part_results import NO_TRY, UNANSWERED, Outcome, PartResult, error
from grading.part_scores import score_part

POINT_DIGITS = 4  # a ten-thousandth of a point is below what any mark list shows


# Parts, rounds and exercises are named tuples: one hand-in has more than a hundred of them.


class PartMark(NamedTuple):
    """One part in one round: the answer that earns the marks, the latest answer, and the tries used.

    ``best`` is the latest answer where none earns anything. ``finished`` holds once the part is right or no
    try is left; ``typed`` is what ``latest`` judges, which later answers to a finished part no longer change.
    """

    part_id: str
    best: PartResult
    points: float
    maximum: float
    tries_used: int
    latest: PartResult
    finished: bool
    typed: object = None


class RoundResult(NamedTuple):
    """One round of one exercise; ``answers`` holds what was typed last for each part.

    ``share`` is what the round would earn if the exercise counts; ``points`` is what it does earn.
    """

    round_number: int
    parts: dict[str, PartMark]
    points: float
    share: float
    finished: bool
    answers: dict


class ExerciseResult(NamedTuple):
    """One exercise over all rounds; points and ``parts`` are those of the best round (0: none was begun)."""

    exercise_id: str
    points: float
    maximum: float
    best_round: int
    rounds: tuple[RoundResult, ...]
    submissions: int
    parts: dict[str, PartMark]

    @property
    def current(self):
        """The round begun last, or None."""
        return self.rounds[-1] if self.rounds else None

    @property
    def outcome(self):
        """One outcome for the whole exercise: faults first, then what the parts came to together."""
        outcomes = {mark.best.outcome for mark in self.parts.values()}
        if Outcome.ERROR in outcomes or len(outcomes) == 1:
            return Outcome.ERROR if Outcome.ERROR in outcomes else next(iter(outcomes))
        if outcomes & {Outcome.CORRECT, Outcome.PARTLY}:
            return Outcome.PARTLY
        order = (Outcome.SLIP, Outcome.INCORRECT, Outcome.INVALID)
        return next((outcome for outcome in order if outcome in outcomes), Outcome.UNANSWERED)


_SHARE = attrgetter("share")
_CORRECT = Outcome.CORRECT  # a module's own name is found sooner than a member of an enumeration


def mark_rounds(exercise, records, settings, key_of_round, problems=None):
    """Return the result of one exercise from its records in the order in which they were saved.

    Rounds count from 1 without a gap; a record that jumps ahead is set aside. ``key_of_round`` gives the
    round key of a round number. What is set aside is added to the list ``problems``.
    """
    problems = [] if problems is None else problems
    by_round = honoured_rounds(exercise, records, problems)
    rounds = tuple(
        [
            _mark_round(exercise, number, of_round, settings, key_of_round(number), problems)
            for number, of_round in by_round.items()
        ]
    )
    best = rounds[0] if len(rounds) == 1 else max(rounds, key=_SHARE, default=None)
    if best is None:
        return ExerciseResult(exercise.id, 0.0, exercise.points, 0, (), len(records), _blank_parts(exercise))
    return ExerciseResult(
        exercise.id, best.points, exercise.points, best.round_number, rounds, len(records), best.parts
    )


def unanswered(exercise):
    """Return the result of an exercise without records."""
    return mark_rounds(exercise, (), None, None)


def honoured_rounds(exercise, records, problems):
    """Group records by round, in rising order; set aside those that jump ahead.

    Where a record before it may be lost with a damaged line, a round counts as what it says that it is.
    """
    if len(records) == 1 and records[0].round_number == 1:  # most are
        return {1: records}
    by_round, ahead, last = {}, [], 0
    for record in records:
        number = record.round_number
        if number in by_round:
            by_round[number].append(record)
        elif 0 < number <= last + 1 or (record.after_loss and number > last):
            by_round[number] = [record]
            last = max(last, number)
        else:
            ahead.append(record)
    if len(by_round) < last:
        problems.append(_lost_rounds(exercise, by_round))
    if ahead:
        number = ahead[0].round_number
        sentence = f"set aside {count_answers(len(ahead))} to {exercise.id}: round {number} was never begun"
        problems.append(problem_at("skipped round", sentence, ahead[0]))
    return dict(sorted(by_round.items())) if last > 1 else by_round


def _lost_rounds(exercise, by_round):
    """Return the problem that rounds count although what came before them is lost."""
    number = min(each for each in by_round if each - 1 not in by_round and each > 1)
    sentence = f"round {number} of {exercise.id} counts, and round {number - 1} is lost with a damaged line"
    return problem_at("lost round", sentence, by_round[number][0])


def problem_at(kind, sentence, record):
    """Return a problem that points at a record."""
    return Problem(kind=kind, sentence=sentence, line=record.line, exercise_id=record.exercise)


def _blank_parts(exercise):
    """Return the marks of an exercise that nobody answered."""
    return {part.id: _blank_part(exercise, part, UNANSWERED) for part in exercise.parts}


def _blank_part(exercise, part, result):
    """Return the mark of a part without an answer that counts."""
    maximum = part.points if exercise.counts else 0.0
    return PartMark(
        part_id=part.id,
        best=result,
        points=0.0,
        maximum=maximum,
        tries_used=0,
        latest=result,
        typed=None,
        finished=False,
    )


def _mark_round(exercise, number, records, settings, key, problems):
    """Return the result of one round."""
    submitted = sound_answers(exercise, records, key, problems)
    if not submitted:
        return _faulty_round(exercise, number, key)
    credits = settings.credits(number)
    parts, share = {}, 0.0
    for part in exercise.parts:
        typed = [one[part.id] for one in submitted if part.id in one]
        parts[part.id], earned = _mark_part(part, key.keys[part.id], typed, credits, exercise.counts)
        share += earned
    answers = dict(submitted[0])
    for one in submitted[1:]:
        answers.update(one)
    finished = all(mark.finished for mark in parts.values())
    return RoundResult(number, parts, round_points(exercise, share), share, finished, answers)


def round_points(exercise, share):
    """Return the points of a round from the sum of what its parts earn."""
    return min(round(share, POINT_DIGITS), exercise.points)


def _faulty_round(exercise, number, key):
    """Return the result of a round that cannot be marked: every part is an error and earns nothing."""
    fault = error(key.problem or "these answers belong to other numbers than the ones this learner was given")
    parts = {part.id: _blank_part(exercise, part, fault) for part in exercise.parts}
    return RoundResult(round_number=number, parts=parts, points=0.0, share=0.0, finished=False, answers={})


def sound_answers(exercise, records, key, problems):
    """Return the answers of the records made for these numbers; report the others and a broken exercise."""
    if key.problem:
        problems.append(problem_at("broken exercise", key.problem, records[0]))
        return []
    sound = [record.answers for record in records if record.scenario == key.digest]
    if len(sound) < len(records):
        odd = next(record for record in records if record.scenario != key.digest)
        sentence = (
            f"found {count_answers(len(records) - len(sound))} to round {odd.round_number} of {exercise.id} "
            "with other numbers than this learner was given"
        )
        problems.append(problem_at("other numbers", sentence, odd))
    if not all(map(exercise.part_ids.issuperset, sound)):
        odd = next(record for record in records if not exercise.part_ids.issuperset(record.answers))
        sentence = f"an answer to {exercise.id} names a part that this exercise does not have"
        problems.append(problem_at("other bank", sentence, odd))
    return sound


def _mark_part(part, key, answers, credits, counts):
    """Return the mark of one part and what it earns if the exercise counts."""
    tried = after_tries(((typed, score_part(part, key, typed)) for typed in answers), credits)
    earned = part.points * tried.share
    points, maximum = (earned, part.points) if counts else (0.0, 0.0)
    mark = PartMark(
        part_id=part.id,
        best=tried.best,
        points=points,
        maximum=maximum,
        tries_used=tried.tries,
        latest=tried.latest,
        finished=tried.finished,
        typed=tried.typed,
    )
    return mark, earned


class Tried(NamedTuple):
    """What the answers to one part came to, try by try: ``share`` is that of the best."""

    best: PartResult
    share: float
    latest: PartResult
    typed: object
    tries: int
    finished: bool


def after_tries(answers, credits):
    """Return what answers with their results came to, given as pairs in the order in which they were saved.

    They are taken until the part is right or the tries are used. The same answer sent again unchanged, as
    happens where another part of the form was corrected, uses no try.
    """
    best = latest = UNANSWERED
    tries, best_share, previous, judged, finished = 0, 0.0, None, None, False
    for typed, result in answers:
        if tries and typed == previous:
            continue
        latest, judged = result, typed
        if latest.outcome not in NO_TRY:
            share = credits[tries] * latest.fraction
            tries += 1
            previous = typed
            if share > best_share:
                best, best_share = latest, share
        finished = latest.outcome is _CORRECT or tries == len(credits)
        if finished:
            break
    return Tried(best if best_share else latest, best_share, latest, judged, tries, finished)
