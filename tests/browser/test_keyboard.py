"""Everything can be done without a mouse, and no key that is meant for a form reaches JupyterLab.

All tests are done on one opening of a page, each at exercises of its own.
"""

import pytest

pytestmark = pytest.mark.browser


@pytest.fixture(scope="module")
def learner(shared_learner):
    """Return a learner at the first page."""
    return shared_learner.open("0_start_here.ipynb")


def focus_is_inside(learner, selector):
    """Tell whether the element that has the focus matches a selector."""
    return learner.window.evaluate("(selector) => document.activeElement.matches(selector)", selector)


def test_every_kind_is_answered_with_the_keyboard(learner):
    """Tab, arrows, Space and Enter are enough; what is saved is what the keys chose."""
    keys = learner.window.keyboard

    number = learner.exercise("Practice: a number with its unit")
    number.part("length").locator("input").focus()
    keys.type("20,5 mm")
    keys.press("Enter")
    number.wait_for("saved")

    between = learner.exercise("Practice: a low and a high value")
    between.part("flow").get_by_label("Lowest").focus()
    keys.type("6 L/min")
    keys.press("Tab")
    keys.type("9 L/min")
    keys.press("Tab")
    keys.press("Space")
    between.wait_for("saved")

    choice = learner.exercise("Practice: one choice")
    choice.part("reading").get_by_role("radio").first.focus()
    keys.press("Space")
    keys.press("ArrowDown")
    keys.press("Tab")
    keys.press("Enter")
    choice.wait_for("saved")

    choices = learner.exercise("Practice: several choices")
    choices.part("readable").get_by_role("checkbox").first.focus()
    keys.press("Space")
    keys.press("Tab")
    keys.press("Space")
    choices.save()

    verdicts = learner.exercise("Practice: a table of verdicts")
    for row in verdicts.part("machines").locator(".row").all():
        row.get_by_role("radio").first.focus()
        keys.press("Space")
        keys.press("ArrowRight")
    verdicts.save()

    answers = {record["exercise"].partition(".")[2]: record["answers"] for record in learner.journal}
    assert answers == {
        "practice_number": {"length": "20,5 mm"},
        "practice_range": {"flow": {"low": "6 L/min", "high": "9 L/min"}},
        "practice_choice": {"reading": "decimal"},
        "practice_choices": {"readable": ["in_words", "in_mm"]},
        "practice_verdicts": {"machines": {"first": "inside", "second": "inside"}},
    }


def test_things_are_moved_with_the_keyboard_and_said(learner):
    """The focus stays on the thing that moves, and a screen reader hears where it is now."""
    order = learner.exercise("Practice: put in order")
    before = [item.get_attribute("data-option") for item in order.form.locator("li").all()]
    order.form.get_by_role("button", name="Move down").first.focus()
    learner.window.keyboard.press("Enter")
    learner.window.keyboard.press("Space")
    assert focus_is_inside(learner, 'li:nth-child(3) button[aria-label^="Move down"]')
    assert (
        order.form.locator('.unseen[role="status"]').inner_text().endswith(f"now number 3 of {len(before)}.")
    )
    order.save()
    (saved,) = learner.journal[-1]["answers"].values()
    assert saved == [before[1], before[2], before[0], *before[3:]]


def test_no_key_of_jupyterlab_works_inside_a_form(learner):
    """In a notebook `d d` deletes a cell, `x` cuts it and an arrow leaves it: never from inside a form."""
    cells = learner.window.locator(".second-plate-page .jp-Cell")
    count = cells.count()
    learner.window.locator(".exercise button.main:enabled").first.focus()
    for key in ("d", "d", "x", "a", "b", "m", "y", "ArrowDown", "ArrowUp", "0", "0"):
        learner.window.keyboard.press(key)
    assert cells.count() == count
    assert focus_is_inside(learner, ".exercise button.main")


def test_progress_leads_to_an_exercise(learner):
    """The name of an exercise in the progress takes the reader and the cursor there."""
    title = "What comes first?"
    learner.window.locator(".summary").get_by_role("button", name=title).focus()
    learner.window.keyboard.press("Enter")
    learner.window.keyboard.press("Space")
    exercise = learner.exercise(title)
    assert exercise.part("who_decides").get_by_role("radio").first.is_checked()
    assert exercise.form.locator(".status").first.is_visible()
