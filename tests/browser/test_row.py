"""A plan for a row in the browser: typed, run and saved by keyboard alone, told in words.

The tests are done one after the other on one opening of the page.
"""

import pytest

from grading.row_plans import FIELDS
from tests.browser.one_form import put_page
from tests.browser.test_accessibility import OUT_OF_SIGHT, violations

pytestmark = pytest.mark.browser

TITLE = "A row by a plan"
REPLY_MS = 30_000
PLAN = {"test_first": "2", "test_after_reset": "1", "weld_at_once": "0", "reset_at": "1", "most_resets": "1"}


@pytest.fixture(scope="module")
def learner(shared_learner):
    """Return a learner at the page with the exercise."""
    return shared_learner.open(put_page(shared_learner, "bench_tests.row"))


@pytest.fixture(scope="module")
def exercise(learner):
    """Return the exercise."""
    return learner.exercise(TITLE)


@pytest.fixture(scope="module")
def said(learner, exercise):
    """Type a plan by going from field to field with the tabulator, run it, and return what is said."""
    exercise.form.get_by_label(FIELDS[0].label).focus()
    for field in FIELDS:
        learner.window.keyboard.type(PLAN[field.name])
        learner.window.keyboard.press("Tab")
    learner.window.keyboard.press("Enter")  # the button after the last field
    status = exercise.form.locator(".work .status").filter(has_text="rivets")
    status.wait_for(timeout=REPLY_MS)
    table = exercise.form.get_by_text("The row as a table")
    table.focus()
    learner.window.keyboard.press("Enter")
    return status.inner_text()


def test_axe_finds_nothing_before_a_run(learner, exercise):
    """Fields pass the checks for accessible pages."""
    assert violations(learner.window) == []


def test_a_plan_that_cannot_be_run_says_why(exercise):
    """An empty field is named, and nothing is drawn."""
    exercise.form.get_by_role("button", name="Run this plan").press("Enter")
    problem = exercise.form.locator('.work .status[data-kind="problem"]')
    problem.wait_for(timeout=REPLY_MS)
    assert problem.inner_text() == "Studs to test at first: nothing was typed."
    assert exercise.form.locator(".work .picture img").count() == 0


def test_a_run_by_keyboard_alone_is_told_drawn_and_listed(learner, exercise, said):
    """The run is told where a screen reader hears it, drawn and listed; nothing is saved."""
    assert "your marks go by what the plan costs over all such days" in said
    pictures = exercise.form.locator(".work .picture img").all()
    assert [picture.get_attribute("alt")[:6] for picture in pictures] == ["Row of", "Force "]
    assert exercise.form.locator("table.log tbody tr").first.is_visible()
    assert learner.journal == []


@pytest.mark.usefixtures("said")
def test_a_run_stays_in_sight_at_twice_the_size(learner):
    """At 200 % zoom fields, strip and table scroll one way only."""
    usual = learner.window.viewport_size
    learner.window.set_viewport_size({"width": 683, "height": 384})
    assert learner.window.evaluate(OUT_OF_SIGHT) == []
    learner.window.set_viewport_size(usual)


@pytest.mark.usefixtures("said")
def test_axe_finds_nothing_after_a_run(learner):
    """Pictures and table pass the checks for accessible pages."""
    assert violations(learner.window) == []


@pytest.mark.usefixtures("said")
def test_only_the_plan_is_saved(learner, exercise):
    """What is saved is the plan, it is said so, and there is feedback on it."""
    exercise.save()
    (record,) = learner.journal
    assert record["answers"] == {"plan": PLAN}
    assert exercise.saved("plan").startswith(
        "Saved: Studs to test at first: 2; Then weld before you pull: 0;"
    )
    assert exercise.feedback("plan")
    assert learner.complaints == []
