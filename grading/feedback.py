"""Sentences for a learner about an answer: how it was read, what came of it, and where to read again.

Plain text throughout; whoever puts it into HTML escapes it. Nothing here tells a right value or a right
option before the round is finished.
"""

from dataclasses import dataclass

from grading.bench_answers import right_log
from grading.bench_logs import log_lines
from grading.exercise import Bench, Choice, Choices, Number, Order, Range, Reading, RowRun, Verdicts
from grading.part_scores import read_distance
from grading.quantities import read_quantity, show_quantity
from grading.row_plans import plan_lines, right_plan
from grading.scoring import Outcome
from grading.variants import fill, words

_HEADLINES = {
    Outcome.CORRECT: "Right.",
    Outcome.PARTLY: "Partly right.",
    Outcome.SLIP: "Not right yet.",
    Outcome.INCORRECT: "Not right yet.",
    Outcome.UNANSWERED: "Not answered yet.",
    Outcome.INVALID: "Could not be read.",
    Outcome.ERROR: "Could not be marked.",
}
_DIRECTIONS = {"high": "The value is too high.", "low": "The value is too low."}


@dataclass(frozen=True, kw_only=True)
class PartFeedback:
    """What a learner is told about one part: the outcome in two or three words, then sentences."""

    part_id: str
    outcome: Outcome
    headline: str
    sentences: tuple[str, ...]
    tries_left: int


@dataclass(frozen=True, kw_only=True)
class ExerciseFeedback:
    """What a learner is told about the current round; ``reasons`` is empty before the round is finished."""

    exercise_id: str
    parts: tuple[PartFeedback, ...]
    points: float
    maximum: float
    finished: bool
    reasons: tuple[str, ...]
    read_again: str


def part_feedback(part, mark, *, settings, round_number=1):
    """Return the feedback on one part, from its mark."""
    result = mark.latest
    left = 0 if mark.finished else settings.tries_per_round - mark.tries_used
    sentences = [
        *_read_as(part, mark.typed, result),
        *_what_came(part, result),
        *_what_next(result, left, settings, round_number),
    ]
    headline = _HEADLINES[result.outcome]
    if not left and headline.endswith(" yet."):
        headline = headline.removesuffix(" yet.") + "."
    return PartFeedback(
        part_id=part.id,
        outcome=result.outcome,
        headline=headline,
        sentences=tuple(sentences),
        tries_left=left,
    )


def _sentence(text):
    """Write a piece of text as a sentence."""
    text = text.strip()
    return text[:1].upper() + text[1:] + ("" if text.endswith((".", "!", "?")) else ".")


def _read_as(part, typed, result):
    """Say how typed numbers were read, so that a misreading is seen at once."""
    if result.outcome in (Outcome.INVALID, Outcome.UNANSWERED, Outcome.ERROR):
        return []
    if isinstance(part, Number):
        return _reading(typed, part.unit, "Read as")
    if isinstance(part, Reading):
        distance, _ = read_distance(part, typed)
        return [f"The lines are {show_quantity(distance, part.unit)} apart."]
    if isinstance(part, Range):
        return [
            sentence
            for end in ("low", "high")
            for sentence in _reading(typed[end], part.unit, f"{end.capitalize()} read as")
        ]
    return []


def _reading(text, unit, start):
    """Say how one text was read."""
    reading = read_quantity(text, unit)
    said = [f"{start} {show_quantity(reading.value, unit, digits=6)}."]
    return [*said, _sentence(reading.note)] if reading.note else said


def _what_came(part, result):
    """Say what the answer came to."""
    said = []
    if result.sentence:
        said.append(_sentence(result.sentence))
    elif result.outcome is Outcome.PARTLY and isinstance(part, Verdicts):
        said.append(f"{round(result.fraction * len(part.rows))} of {len(part.rows)} rows are right.")
    elif result.outcome is Outcome.PARTLY and isinstance(part, Order):
        said.append("A part of the order is right.")
    elif result.outcome is Outcome.PARTLY and isinstance(part, Choices):
        said.append("Something is missing, or something is ticked that does not belong.")
    if result.direction and result.outcome is Outcome.INCORRECT:
        said.append(_DIRECTIONS[result.direction])
    return said


def _what_next(result, left, settings, round_number):
    """Say what can be done now and what it would earn."""
    if result.outcome is Outcome.CORRECT:
        return []
    if result.outcome is Outcome.ERROR:
        return ["The answer is saved; please tell your instructor."]
    if not left:
        return ["No tries are left in this round."]
    said = ["No try was used."] if result.outcome is Outcome.INVALID else []
    share = settings.credits(round_number)[settings.tries_per_round - left]
    tries = "1 try is left" if left == 1 else f"{left} tries are left"
    return [*said, f"{tries}; a right answer now earns {share:.0%}."]


def exercise_feedback(exercise, result, *, settings, scenario, keys, filled=None):
    """Return the feedback on the current round of an exercise; ``keys`` are those of that round.

    ``filled`` may hold the words of the scenario where they are at hand.
    """
    current = result.current
    filled = words(exercise, scenario) if filled is None else filled
    marks = current.parts if current else result.parts
    number = current.round_number if current else 1
    parts = tuple(
        part_feedback(part, marks[part.id], settings=settings, round_number=number) for part in exercise.parts
    )
    finished = bool(current and current.finished)
    return ExerciseFeedback(
        exercise_id=exercise.id,
        parts=parts,
        points=result.points,
        maximum=result.maximum,
        finished=finished,
        reasons=_reasons(exercise, keys, filled) if finished else (),
        read_again=exercise.read_again,
    )


def _reasons(exercise, keys, filled):
    """Return the worked way, then the right answer to each part."""
    answers = (f"{part.ask}: {right_answer(part, keys[part.id], filled)}" for part in exercise.parts)
    return (fill(exercise.reasons, filled), *answers)


def right_answer(part, key, filled=None):
    """Write the right answer to a part; only for after the last try, and for the solutions."""
    return _RIGHT[type(part)](part, key, filled or {})


def _texts(options):
    """Return the texts of options by id."""
    return {option.id: option.text for option in options}


def _good_log(part, key, _):
    """Write one log that keeps every rule; others do too."""
    log = right_log(part, key)
    return f"for instance: {' '.join(log_lines(part, log))}" if log else "no log keeps every rule on this day"


def _good_plan(part, key, _):
    """Write the plan that costs least on the average; others cost hardly more."""
    return f"for instance: {in_a_row(plan_lines(right_plan(part, key)))}"


def in_a_row(texts):
    """Write several texts behind each other; a sentence within the row gives up its full stop."""
    texts = list(texts)
    return "; ".join([*(text.removesuffix(".") for text in texts[:-1]), *texts[-1:]])


_RIGHT = {
    Bench: _good_log,
    RowRun: _good_plan,
    Number: lambda part, key, _: show_quantity(key.value, part.unit),
    Reading: lambda part, key, _: show_quantity(key.value, part.unit),
    Range: lambda part, key, _: (
        f"{show_quantity(key.low, part.unit)} to {show_quantity(key.high, part.unit)}"
    ),
    Choice: lambda part, key, _: _texts(part.options)[key.right],
    Choices: lambda part, key, _: in_a_row(_texts(part.options)[right] for right in key.right),
    Order: lambda part, key, _: in_a_row(
        f"{place}. {_texts(part.options)[right]}" for place, right in enumerate(key.right, start=1)
    ),
    Verdicts: lambda part, key, filled: in_a_row(
        f"{fill(row.text, filled)}: {_texts(part.verdicts)[key.right[row.id]]}" for row in part.rows
    ),
}
