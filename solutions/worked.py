"""Carries a worked solution from one learner's numbers to the marks; the notebooks beside it use it.

For instructors. It takes nothing from the bank but the numbers, and types answers as a learner does.
"""

from textwrap import fill as fill_lines
from types import SimpleNamespace

from grading.bench_logs import log_lines
from grading.bench_settings import SETTINGS
from grading.exercise import Bench, RowRun
from grading.exercises import EXERCISES, PAGES
from grading.keys import row_keys
from grading.part_scores import Outcome, score_part
from grading.variants import fill, scenario, words


class Sheet:
    """One learner's exercises of one page, answered one after the other."""

    def __init__(self, page, *, learner, course_key, round_number):
        self.page = PAGES[page]
        self._who = {"course_key": course_key, "learner": learner, "round_number": round_number}
        self.typed = {}
        self._results = {}

    def task(self, exercise_id):
        """Print an exercise as this learner sees it, then the worked way; return the learner's numbers."""
        exercise = EXERCISES[exercise_id]
        numbers = words(exercise, scenario(exercise, **self._who))
        print(_wrapped(fill(exercise.prompt, numbers)))
        print(_wrapped("\nThe way: " + fill(exercise.reasons, numbers)) + "\n")
        for part in exercise.parts:
            print(f"{part.id}: {part.ask}")
            for row in getattr(part, "rows", ()):
                print("   ", fill(row.text, numbers))
        return SimpleNamespace(**numbers)

    def day(self, exercise_id):
        """Return this learner's day at the bench: its ``seed``, its ``job``, and ``start``, how it is set."""
        key = self._only_key(exercise_id, Bench)
        return SimpleNamespace(seed=key.seed, job=key.job, start=dict(key.start))

    def row_day(self, exercise_id):
        """Return this learner's row and what its day may bring, as ``secondplate.bench.RowDay``."""
        return self._only_key(exercise_id, RowRun).day

    def picture(self, exercise_id):
        """Return what the picture of this learner's exercise shows, as plain values by name."""
        exercise = EXERCISES[exercise_id]
        return exercise.figure(scenario(exercise, **self._who)).arguments

    def _only_key(self, exercise_id, kind):
        """Return the key of the only part of a kind."""
        exercise = EXERCISES[exercise_id]
        (keys,) = row_keys(exercise, [scenario(exercise, **self._who)])
        (part,) = (part for part in exercise.parts if isinstance(part, kind))
        return keys[part.id]

    def answer(self, exercise_id, **typed):
        """Mark answers to some parts of an exercise, typed as a learner types them, and print the outcome."""
        exercise = EXERCISES[exercise_id]
        (keys,) = row_keys(exercise, [scenario(exercise, **self._who)])
        parts = {part.id: part for part in exercise.parts}
        for part_id, answer in typed.items():
            result = score_part(parts[part_id], keys[part_id], answer)
            self.typed.setdefault(exercise_id, {})[part_id] = answer
            self._results[exercise_id, part_id] = result
            print(f"{part_id}: {_shown(parts[part_id], answer)}: {result.outcome}")

    def points(self):
        """Return the points earned so far, and the points that the page can give."""
        earned = sum(
            part.points * self._fraction(exercise, part)
            for exercise in self.page.exercises
            for part in exercise.parts
            if exercise.counts
        )
        return earned, sum(exercise.points for exercise in self.page.exercises)

    def open_parts(self):
        """Return the parts of the page, predictions included, that are not answered or not right."""
        return [
            f"{exercise.id}.{part.id}"
            for exercise in self.page.exercises
            for part in exercise.parts
            if self._outcome(exercise, part) != Outcome.CORRECT
        ]

    def _outcome(self, exercise, part):
        """Return the outcome of one part; unanswered where nothing was typed."""
        result = self._results.get((exercise.id, part.id))
        return result.outcome if result else Outcome.UNANSWERED

    def _fraction(self, exercise, part):
        """Return the share of its points that one part earned."""
        result = self._results.get((exercise.id, part.id))
        return result.fraction if result else 0.0


def _wrapped(text):
    """Break a text into lines that fit beside each other on a screen."""
    return fill_lines(text, width=100, replace_whitespace=False)


def quantity(value, unit):
    """Write a number with its unit to four figures, as a learner would type it."""
    text = f"{value:.4g}"
    return f"{float(text):.0f} {unit}" if "e" in text else f"{text} {unit}"


def band(low, high, unit):
    """Write the two ends of a band, as a learner would type them."""
    return {"low": quantity(low, unit), "high": quantity(high, unit)}


def set_to(**settings):
    """Write settings of the bench as a learner types or picks them."""
    return {name: SETTINGS[name].typed(value) for name, value in settings.items()}


def bench_log(first, *changes, end="row"):
    """Write a log of the bench: each stud with what is changed for it, pulled at once, and how it ends.

    ``end`` is ``row``, or the reason to stop.
    """
    steps, settings = [], {}
    for change in (first, *changes):
        settings = {**settings, **change}
        steps += [{"do": "weld", "settings": settings}, {"do": "pull"}]
    return [*steps, {"do": "row"} if end == "row" else {"do": "stop", "why": end}]


def _shown(part, answer):
    """Write a typed answer in the words that stand on the page."""
    if isinstance(part, Bench):
        return " ".join(log_lines(part, answer))
    texts = {item.id: item.text for name in ("options", "verdicts") for item in getattr(part, name, ())}
    if isinstance(answer, dict):
        return "; ".join(f"{name} {texts.get(value, value)}" for name, value in answer.items())
    if isinstance(answer, (list, tuple)):
        return "; ".join(texts[name] for name in answer)
    return texts.get(answer, answer)
