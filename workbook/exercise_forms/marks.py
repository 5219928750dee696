"""The mark of one exercise as the gradebook's cell needs it: a plain float, whatever the journal holds."""

from pathlib import Path

import grading.exercises
from grading.class_settings import settings_of
from grading.journal import Journal
from grading.scoring import mark_learner
from secondplate.checks import require_choice


def mark(exercise_id, *, folder=None, bank=grading.exercises):
    """Return the mark of one exercise from the journal in the page's folder, 0.0 where there is none.

    nbgrader gives full marks for anything that is not a plain number, so this is always a Python float.
    """
    name = require_choice("exercise", exercise_id, bank.EXERCISES)
    place = Path.cwd() if folder is None else Path(folder)
    records = Journal(place / "answers.jsonl").read().records
    result = mark_learner(
        records, settings_of(place), exercises=bank.EXERCISES, bank_version=bank.BANK_VERSION
    )
    exercise = result.exercises[name]
    return float(min(max(exercise.points, 0.0), exercise.maximum))
