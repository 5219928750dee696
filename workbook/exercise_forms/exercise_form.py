"""The form of one exercise: what the browser sends is saved first, then marked, then answered."""

import traitlets

from exercise_forms.exercise_state import exercise_state, state_key
from exercise_forms.figures import figure_state
from exercise_forms.form import Form, script, sentence
from grading.answers import NotSavedError
from grading.part_results import FAULTS
from grading.variants import scenario_digest

NO_FIGURE = "The figure of this exercise could not be drawn: please tell your instructor."
OTHER_NUMBERS = (
    "Nothing was saved: these numbers belonged to somebody else who was signed in before. "
    "The form now shows the numbers of the one who is signed in."
)


class ExerciseForm(Form):
    """One exercise for the learner who is signed in, in the round that is open."""

    _esm = script("controls.js", "part_editors.js", "reading_editor.js", "exercise.js")
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
        """Save a submission or start a fresh round."""
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
        self.desk.tell("answered")
        return {"kind": "saved", "at": at, "sentence": ""}

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
