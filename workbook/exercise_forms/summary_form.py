"""The progress of a page by objective, marked anew after every answer."""

from exercise_forms.exercise_state import PRACTICE_NUMBERS
from exercise_forms.form import Form, script, sentence

PROVISIONAL = "Marks are provisional: your instructor's copy of the workbook marks the hand-in again."


class SummaryForm(Form):
    """Objectives with their exercises, points so far and anything the journal reports."""

    _esm = script("summary.js")
    title = "Your progress"

    def __init__(self, desk, page):
        """Show the progress so far."""
        self.desk = desk
        self.page = page
        super().__init__(state=self._state())

    def told(self, news):
        """Follow every answer and every sign-in."""
        self.state = self._state()

    def _state(self):
        learner = self.desk.learner
        result = self.desk.result(learner.learner, self.page.exercises)
        marks = [result.exercises[exercise.id] for exercise in self.page.exercises]
        pairs = list(zip(self.page.exercises, marks, strict=True))
        points = sum(mark.points for mark in marks)
        maximum = sum(mark.maximum for mark in marks)
        who = f" of {learner.display_name}" if learner.learner else ""
        return {
            "heading": f"Progress{who}: {self.page.title}",
            "total": f"{points:.4g} of {maximum:g} points so far.",
            "objectives": [
                _objective(text, [pair for pair in pairs if pair[0].objective == name])
                for name, text in self.page.objectives.items()
            ],
            "notes": [*([] if learner.learner else [PRACTICE_NUMBERS]), PROVISIONAL, *self._problems(result)],
        }

    def _problems(self, result):
        """Return what the journal and the marking report, once each; practice is no problem to a learner."""
        problems = (*self.desk.journal.read().problems, *result.problems)
        return list(
            dict.fromkeys(sentence(problem.sentence) for problem in problems if problem.kind != "practice")
        )


def _objective(text, pairs):
    """Return one objective with its exercises."""
    points = sum(mark.points for _, mark in pairs)
    maximum = sum(mark.maximum for _, mark in pairs)
    return {
        "text": text,
        "points": points,
        "maximum": maximum,
        "words": f"{points:.4g} of {maximum:g} points" if maximum else "Carries no marks",
        "exercises": [{"title": exercise.title, "state": _words(exercise, mark)} for exercise, mark in pairs],
    }


def _words(exercise, mark):
    """Say how far one exercise is."""
    if not mark.rounds:
        return "not started yet"
    done = "finished" if mark.current.finished else "open"
    return f"{done}, {mark.points:.4g} of {mark.maximum:g} points" if exercise.counts else done
