"""The form of one exercise: what the browser sends is saved first, then marked, then answered."""

from exercise_forms.exercise_state import exercise_state, state_key
from exercise_forms.form import Form, script, sentence
from grading.answers import NotSavedError
from grading.variants import scenario_digest

OTHER_NUMBERS = (
    "Nothing was saved: these numbers belonged to somebody else who was signed in before. "
    "The form now shows the numbers of the one who is signed in."
)


class ExerciseForm(Form):
    """One exercise for the learner who is signed in, in the round that is open."""

    _esm = script("part_editors.js", "exercise.js")

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

    def _state(self):
        self._number += 1
        return exercise_state(self.exercise, self.desk, self.learner, self.round_number, self._result()) | {
            "number": self._number
        }
