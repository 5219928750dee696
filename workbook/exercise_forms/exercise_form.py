"""The form of one exercise: what the browser sends is saved first, then marked, then answered."""

from contextlib import suppress

import traitlets

from exercise_forms import row_view
from exercise_forms.bench_work import work_at_bench
from exercise_forms.drafts import NotKeptError
from exercise_forms.exercise_state import draft_name, exercise_state, state_key
from exercise_forms.figures import figure_state
from exercise_forms.form import Form, script, sentence
from grading.exercise import Bench, RowRun
from grading.journal import NotSavedError
from grading.part_results import FAULTS
from grading.variants import scenario_digest

NO_FIGURE = "The figure of this exercise could not be drawn: please tell your instructor."
OTHER_NUMBERS = (
    "Nothing was saved: these numbers belonged to somebody else who was signed in before. "
    "The form now shows the numbers of the one who is signed in."
)


class ExerciseForm(Form):
    """One exercise for the learner who is signed in, in the round that is open."""

    _esm = script(
        "controls.js",
        "part_editors.js",
        "reading_editor.js",
        "bench.js",
        "bench_editor.js",
        "row_editor.js",
        "exercise.js",
    )
    figure = traitlets.Dict().tag(sync=True)

    def __init__(self, desk, exercise):
        """Show the exercise with what the journal holds."""
        self.desk = desk
        self.exercise = exercise
        self.title = exercise.title
        self._number = 0
        self._sit_down()
        super().__init__(state=self._state())

    def answer(self, message):
        """Save a submission, start a fresh round, work on at the bench, or run a plan for a row."""
        if message["kind"] in ("bench", "row"):
            return self._work(message)
        reply = {"submit": self._submit, "fresh": self._fresh}[message["kind"]](message)
        self.state = self._state()
        return reply | {"state": self.state}

    def told(self, news):
        """Show the numbers of whoever has signed in."""
        if news == "signed in":
            self._sit_down()
            self.state = self._state()

    def _result(self):
        return self.desk.result(self.learner, [self.exercise]).exercises[self.exercise.id]

    def _sit_down(self):
        """Take the learner who is signed in and the round of the last answer."""
        self.learner = self.desk.learner.learner
        current = self._result().current
        self.round_number = current.round_number if current else 1

    def _submit(self, message):
        scenario = self.desk.scenario(self.exercise, self.learner, message["round"])
        digest = scenario_digest(scenario)
        key = state_key(self.exercise, self.desk.learner.learner, message["round"], digest)
        if message["key"] != key:
            self._sit_down()
            return {"kind": "problem", "sentence": OTHER_NUMBERS}
        try:
            at = self.desk.save(
                self.exercise,
                learner=self.learner,
                round_number=message["round"],
                digest=digest,
                answers=message["answers"],
            )
        except NotSavedError as problem:
            return {"kind": "problem", "sentence": sentence(problem)}
        for part in self.exercise.parts:
            self._forget_draft(part, key)
        self.desk.tell("answered")
        return {"kind": "saved", "at": at, "sentence": ""}

    def _forget_draft(self, part, key):
        """Take away the log in progress of a part that was just saved."""
        if isinstance(part, Bench):
            with suppress(NotKeptError):  # the answer is saved, and a draft that stays says the same
                self.desk.drafts.drop(draft_name(key, part))

    def _work(self, message):
        """Do the last step of a log at the bench, kept until it is saved as an answer; or run a row."""
        if message["key"] != self.state["key"] or self.desk.learner.learner != self.learner:
            self._sit_down()
            self.state = self._state()
            return {"kind": "problem", "sentence": OTHER_NUMBERS, "state": self.state}
        part = next(part for part in self.exercise.parts if part.id == message["part"])
        triple = (self.exercise.id, self.learner, self.round_number)
        key = self.desk.keys([triple])[triple].keys[part.id]
        if isinstance(part, RowRun):
            return row_view.run(key, message["plan"])
        name = draft_name(message["key"], part)
        return work_at_bench(part, key, message["steps"], lambda steps: self.desk.drafts.keep(name, steps))

    def _fresh(self, message):
        """Open the next round, once the current one is finished."""
        current = self._result().current
        if current and current.finished and current.round_number == self.round_number:
            self.round_number += 1
        return {"kind": "fresh", "sentence": ""}

    def _figure(self):
        """Return the figure of the open round, empty where there is none."""
        if not self.exercise.figure:
            return {}
        scenario = self.desk.scenario(self.exercise, self.learner, self.round_number)
        try:
            return figure_state(self.exercise.figure(scenario))
        except FAULTS as fault:
            return {"problem": f"{NO_FIGURE} ({type(fault).__name__}: {fault})"}

    def _state(self):
        """Return what the form shows; its figure is told first, and only where it is another one."""
        self.figure = self._figure()
        self._number += 1
        return exercise_state(self.exercise, self.desk, self.learner, self.round_number, self._result()) | {
            "number": self._number
        }
