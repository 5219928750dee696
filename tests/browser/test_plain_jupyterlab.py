"""An ordinary JupyterLab, without the plug-in: one visible button makes a page live."""

import pytest

pytestmark = pytest.mark.browser

START = "0_start_here.ipynb"


def test_the_button_on_the_page_starts_it(plain_learner):
    """JupyterLab asks once whether the page may run; then an answer is saved as it is with the plug-in."""
    window = plain_learner.window
    plain_learner.path = START
    window.goto(plain_learner.lab.page_url(START))
    window.get_by_role("button", name="Start this page").click(timeout=60_000)
    window.get_by_role("button", name="Run Once").click()
    exercise = plain_learner.exercise("Practice: a number with its unit")
    exercise.part("length").locator("input").fill("1 mm")
    exercise.save()
    (record,) = plain_learner.journal
    assert record["answers"] == {"length": "1 mm"}
