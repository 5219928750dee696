"""The form that asks who is at work."""

from exercise_forms.form import Form, script, sentence
from grading.hand_in import save_learner

NOBODY = "Nobody is signed in yet. All exercises work with practice numbers; sign in to get your own."


def _state(learner):
    """Return what the form says about a learner."""
    if learner.problem:
        return {"name": "", "sentence": learner.problem}
    if not learner.learner:
        return {"name": "", "sentence": NOBODY}
    return {
        "name": learner.display_name,
        "sentence": f"Signed in: {learner.display_name}. The numbers in the exercises are yours alone.",
    }


class SignInForm(Form):
    """Name or number of the learner, saved for the whole workbook."""

    _esm = script("sign_in.js")
    title = "Sign in"

    def __init__(self, desk):
        """Show who is signed in."""
        self.desk = desk
        super().__init__(state=_state(desk.learner))

    def answer(self, message):
        """Sign somebody in, or say why that name cannot be used."""
        try:
            learner = save_learner(self.desk.workbook_folder, message["name"])
        except ValueError as problem:
            return {"kind": "problem", "sentence": f"Not signed in. {sentence(problem)}"}
        self.desk.tell("signed in")
        return {"kind": "saved", "sentence": f"Saved. Welcome, {learner.display_name}."}

    def told(self, news):
        """Show who is signed in now."""
        if news == "signed in":
            self.state = _state(self.desk.learner)
