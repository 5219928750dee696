"""Checks before something is used: the bank drawn and solved many times, a class file, a hand-in."""

import json
from pathlib import Path

from grading.class_settings import class_file_problems, read_class_file
from grading.exercise import Bench, RowRun
from grading.exercises import BANK_VERSION, EXERCISES, PAGES
from grading.export import printable
from grading.hand_in import read_hand_in
from grading.keys import row_keys
from grading.scoring import Outcome, score_part
from grading.typed_answers import right_typed, slip_ids, slip_typed
from grading.variants import fill, scenario, words

DAYS = 25  # days at the bench, each of which is worked on from several sides
DRAWS = 200  # scenarios for each exercise; a fault that strikes one learner in fifty is found almost surely


def check_anything(what):
    """Return ``(lines, problems)`` about the bank, a class file or a hand-in, told apart by the name."""
    if what == "bank":
        return check_bank()
    if Path(what).suffix == ".toml":
        return check_class_file(what)
    return check_hand_in(what)


def check_class_file(path):
    """Return what a class file sets, in words, or everything that is wrong with it, line by line."""
    problems = class_file_problems(path)
    if problems:
        return [], problems
    settings = read_class_file(path)
    credit = ", ".join(f"{share:.0%}" for share in settings.credit_by_try)
    due = settings.due or "never"
    rounds = f"of the first {settings.most_rounds} rounds" if settings.most_rounds else "of every round"
    return [
        f"{settings.title}: due {due}, tries earn {credit}, later rounds {settings.later_round_credit:.0%}, "
        f"the best {rounds} counts",
        f"late: {_late_in_words(settings)}",
    ], []


def _late_in_words(settings):
    """Say what becomes of late work."""
    if not settings.late_share_by_day:
        return "nothing is taken off"
    grace = f"after {settings.late_grace_minutes} minutes of grace " if settings.late_grace_minutes else ""
    return (
        f"{grace}{settings.late_share_by_day:.0%} of the points is taken off for each day begun, "
        f"at least {settings.late_floor:.0%} is left"
    )


def check_hand_in(path):
    """Read a hand-in; raises ``HandInError`` where it is none."""
    hand_in = read_hand_in(path)
    count = len(hand_in.records)
    lines = [f"{printable(hand_in.display_name)}, made {printable(hand_in.made_at)}: {count} answers"]
    lines += [f"  {page}: {len(journal.records)} answers" for page, journal in hand_in.journals.items()]
    lines += [f"  {printable(page)}: a written answer" for page in hand_in.written]
    return lines, [printable(problem.sentence) for problem in hand_in.problems]


def check_bank(exercises=None, pages=None, *, draws=DRAWS):
    """Draw and solve every exercise many times; a fault is one sentence naming the exercise."""
    exercises = EXERCISES if exercises is None else exercises
    pages = PAGES if pages is None else pages
    problems = [problem for exercise in exercises.values() for problem in check_exercise(exercise, draws)]
    problems += [problem for page in pages.values() for problem in _check_page(page)]
    counting = [each for each in exercises.values() if each.counts]
    parts = sum(len(each.parts) for each in counting)
    points = sum(each.points for each in counting)
    return [
        f"bank {BANK_VERSION}: {len(pages)} pages, {len(exercises)} exercises, "
        f"{len(counting)} of them count, with {parts} parts and {points:g} points, each drawn {draws} times"
    ], problems


def _check_page(page):
    """Give what does not fit on one page."""
    for exercise in page.exercises:
        if exercise.page != page.id:
            yield f"{exercise.id} stands on page {page.id}"
        if exercise.objective not in page.objectives:
            yield f"{exercise.id} has objective {exercise.objective}, which page {page.id} does not name"
    ids = [exercise.id for exercise in page.exercises]
    yield from (
        f"{each} stands twice on page {page.id}" for each in sorted({x for x in ids if ids.count(x) > 1})
    )


def check_exercise(exercise, draws):
    """Give every fault of one exercise: in its texts, its solution, or its slips."""
    try:
        scenarios = [
            scenario(exercise, course_key="check", learner=f"learner {each}", round_number=1)
            for each in range(draws)
        ]
        for numbers in scenarios:
            json.dumps(numbers, allow_nan=False)
            _fill_texts(exercise, words(exercise, numbers))
            _require_plain_figure(exercise, numbers)
        keys = row_keys(exercise, scenarios)
    except (ValueError, TypeError, KeyError, IndexError, AttributeError, ArithmeticError) as error:
        yield f"{exercise.id} cannot be drawn and solved: {type(error).__name__}: {error}"
        return
    for part in exercise.parts:
        yield from _check_part(exercise, part, [key[part.id] for key in keys])


def _fill_texts(exercise, filled):
    """Fill every text that has places for numbers."""
    for text in (exercise.prompt, exercise.reasons):
        fill(text, filled)
    for part in exercise.parts:
        fill(part.ask, filled)
        for row in getattr(part, "rows", ()):
            fill(row.text, filled)


def _require_plain_figure(exercise, numbers):
    """Raise where a figure is not a name with plain values, which is all that may leave the bank."""
    if exercise.figure:
        figure = exercise.figure(numbers)
        json.dumps([figure.name, dict(figure.arguments)], allow_nan=False)


def _check_part(exercise, part, keys):
    """Give what is wrong with the marks of one part: right answers must earn all, slips must not be right."""
    name = f"{exercise.id}.{part.id}"
    if isinstance(part, (Bench, RowRun)):
        keys = list({id(key): key for key in keys}.values())[:DAYS]
    refused = [
        key for key in keys if score_part(part, key, right_typed(part, key)).outcome is not Outcome.CORRECT
    ]
    if refused:
        yield f"{name} does not take its own right answer in {len(refused)} of {len(keys)} draws"
    for slip in slip_ids(part):
        answers = [(key, slip_typed(part, key, slip)) for key in keys]
        right = [
            1 for key, typed in answers if typed and score_part(part, key, typed).outcome is Outcome.CORRECT
        ]
        if right:
            yield f"{name}.{slip} leads to a right answer in {len(right)} of {len(keys)} draws"
