"""A page in a JupyterLab without the plug-in, and in one that was stopped: a sentence says what to do."""

import pytest

from tests.browser.conftest import READY_MS

pytestmark = pytest.mark.browser

START = "0_start_here.ipynb"


def test_the_button_on_the_page_starts_it(at_a_new_lab):
    """JupyterLab asks once whether the page may run; then an answer is saved as it is with the plug-in."""
    learner = at_a_new_lab(plug_in=False)
    window = learner.window
    learner.path = START
    window.goto(learner.lab.page_url(START))
    window.get_by_text("Python 3 (ipykernel) | Idle").wait_for(timeout=READY_MS)  # else nothing is run
    window.get_by_role("button", name="Start this page").click()
    window.get_by_role("button", name="Run Once").click()
    exercise = learner.exercise("Practice: a number with its unit")
    exercise.part("length").locator("input").fill("1 mm")
    exercise.save()
    (record,) = learner.journal
    assert record["answers"] == {"length": "1 mm"}


def test_a_workbook_that_was_stopped_is_said(at_a_new_lab):
    """Nothing is called saved any more, and the page says what to do."""
    learner = at_a_new_lab(plug_in=True)
    learner.open(START)
    exercise = learner.exercise("Practice: a number with its unit")
    exercise.part("length").locator("input").fill("1 mm")
    learner.lab.stop()
    exercise.form.locator("form").evaluate("(form) => form.requestSubmit()")
    assert "not saved yet" in exercise.wait_for("problem")
    strip = learner.window.locator('.second-plate-strip[data-state="lost"]')
    assert "start it again with open.py" in strip.inner_text(timeout=30_000)
