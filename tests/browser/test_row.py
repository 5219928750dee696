"""A plan for a row in the browser: typed, run and saved by keyboard alone, told in words."""

import pytest

from grading.row_plans import FIELDS
from tests.browser.one_form import put_page
from tests.browser.test_accessibility import OUT_OF_SIGHT, violations

pytestmark = pytest.mark.browser

TITLE = "A row by a plan"
REPLY_MS = 30_000
PLAN = {"test_first": "2", "test_after_reset": "1", "weld_at_once": "0", "reset_at": "1", "most_resets": "1"}


@pytest.fixture
def exercise(learner):
    """Return the exercise on an open page."""
    learner.open(put_page(learner, "bench_tests.row"))
    return learner.exercise(TITLE)


def _type_plan(learner, exercise):
    """Go from field to field by the tabulator and type."""
    exercise.form.get_by_label(FIELDS[0].label).focus()
    for field in FIELDS:
        learner.window.keyboard.type(PLAN[field.name])
        learner.window.keyboard.press("Tab")


def test_a_plan_is_typed_run_and_saved_by_keyboard_alone(learner, exercise):
    """The run is told where a screen reader hears it, drawn and listed; only the plan is saved."""
    _type_plan(learner, exercise)
    learner.window.keyboard.press("Enter")  # the button after the last field
    said = exercise.form.locator(".work .status").filter(has_text="rivets")
    said.wait_for(timeout=REPLY_MS)
    assert "your marks go by what the plan costs over all such days" in said.inner_text()
    pictures = exercise.form.locator(".work .picture img").all()
    assert [picture.get_attribute("alt")[:6] for picture in pictures] == ["Row of", "Force "]
    table = exercise.form.get_by_text("The row as a table")
    table.focus()
    learner.window.keyboard.press("Enter")
    assert exercise.form.locator("table.log tbody tr").first.is_visible()
    assert learner.journal == []
    exercise.save()
    (record,) = learner.journal
    assert record["answers"] == {"plan": PLAN}
    assert exercise.saved("plan").startswith(
        "Saved: Studs to test at first: 2; Then weld before you pull: 0;"
    )
    assert exercise.feedback("plan")
    assert learner.complaints == []


def test_a_plan_that_cannot_be_run_says_why(learner, exercise):
    """An empty field is named, nothing is drawn, and the focus stays on the button."""
    exercise.form.get_by_role("button", name="Run this plan").press("Enter")
    said = exercise.form.locator('.work .status[data-kind="problem"]')
    said.wait_for(timeout=REPLY_MS)
    assert said.inner_text() == "Studs to test at first: nothing was typed."
    assert exercise.form.locator(".work .picture img").count() == 0


def test_axe_finds_nothing_before_and_after_a_run(learner, exercise):
    """Fields, pictures and table pass the checks for accessible pages."""
    assert violations(learner.window) == []
    _type_plan(learner, exercise)
    learner.window.keyboard.press("Enter")
    exercise.form.locator(".work .picture img").first.wait_for(timeout=REPLY_MS)
    assert violations(learner.window) == []


def test_a_run_stays_in_sight_at_twice_the_size(learner, exercise):
    """At 200 % zoom fields, strip and table scroll one way only."""
    learner.window.set_viewport_size({"width": 683, "height": 384})
    _type_plan(learner, exercise)
    learner.window.keyboard.press("Enter")
    exercise.form.locator(".work .picture img").first.wait_for(timeout=REPLY_MS)
    exercise.form.get_by_text("The row as a table").click()
    assert learner.window.evaluate(OUT_OF_SIGHT) == []
