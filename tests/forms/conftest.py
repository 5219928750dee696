"""A desk in an empty folder, a learner who is signed in, and forms whose replies are kept."""

import pytest

from exercise_forms.desk import Desk
from exercise_forms.exercise_form import ExerciseForm
from grading.exercises import EXERCISES
from grading.hand_in import save_learner
from grading.typed_answers import right_typed


class Sat:
    """A form with somebody at it: what it replies is kept in ``replies``."""

    def __init__(self, form):
        """Listen to what the form sends."""
        self.form = form
        self.replies = []
        form.send = self.replies.append

    def say(self, **message):
        """Send a message as the browser does and return the reply."""
        self.form._hear(self.form, {"ticket": "ticket 7"} | message, [])
        return self.replies[-1]

    def submit(self, answers, **more):
        """Press the button under the fields."""
        state = self.form.state
        return self.say(kind="submit", key=state["key"], round=state["round"], answers=answers, **more)

    def part(self, part_id):
        """Return what the form shows of one part."""
        return next(part for part in self.form.state["parts"] if part["id"] == part_id)


@pytest.fixture
def folder(tmp_path):
    """Return a page's folder in which Ana is signed in."""
    place = tmp_path / "signed in"
    place.mkdir()
    (place / "0_start_here.ipynb").write_text("{}", encoding="utf-8")
    save_learner(place, "Ana 17")
    return place


@pytest.fixture
def desk(folder):
    """Return the desk of that folder."""
    return Desk(folder)


@pytest.fixture
def sit(desk):
    """Return a function that sits Ana down at an exercise, at her own desk or at one that is handed in."""
    return lambda exercise_id, at=desk: Sat(at.put(exercise_id, ExerciseForm(at, EXERCISES[exercise_id])))


@pytest.fixture
def wrap():
    """Return a function that sits somebody down at any form."""
    return Sat


@pytest.fixture
def right():
    """Return a function that types the right answers to an exercise's current round."""
    return _right


def _right(sat):
    form = sat.form
    triple = (form.exercise.id, form.learner, form.round_number)
    keys = form.desk.keys([triple])[triple].keys
    return {part.id: right_typed(part, keys[part.id]) for part in form.exercise.parts}
