"""The instructor's form at the bench: filled with mouse and keyboard, saved as rows, emptied for the next."""

import pytest

from grading.exercises import PAGES
from grading.practical import read_practical
from grading.rubric import read_rubrics
from tests.browser.one_form import PLACE, put_cell
from tests.browser.test_accessibility import OUT_OF_SIGHT, violations

pytestmark = pytest.mark.browser

CELL = """
from exercise_forms import practical
practical("stud_welding")
"""


def test_levels_are_saved_and_the_form_is_emptied(learner):
    """Names, day and levels reach the table, a missing name is said, and the next learner begins anew."""
    learner.open(put_cell(learner, CELL))
    form = learner.window.locator(".second-plate-form.practical")
    status = form.locator(".status")
    form.get_by_label("Judged by").fill("R. Voss")
    for text in ("all of it, unprompted", "finds and sets it"):
        form.get_by_text(text).check()
    form.get_by_role("button", name="Save these levels").click()
    status.filter(has_text="Not saved. Learner must be").wait_for()
    assert violations(learner.window) == []
    form.get_by_label("Learner: name or number").fill("Ünal Öz")
    learner.window.keyboard.press("Enter")
    status.filter(has_text="Saved for Ünal Öz: 2 of 5 lines.").wait_for()
    assert form.locator("input:checked").count() == 0
    assert form.get_by_label("Learner: name or number").input_value() == ""
    assert form.get_by_label("Judged by").input_value() == "R. Voss"
    rows, problems = read_practical(
        (learner.lab.folder / PLACE).with_name("practical.csv"), read_rubrics(PAGES)
    )
    assert [(row.learner, row.criterion, row.level, row.by) for row in rows] == [
        ("Ünal Öz", "safe", 4, "R. Voss"),
        ("Ünal Öz", "settings", 2, "R. Voss"),
    ]
    assert problems == []
    assert learner.window.evaluate(OUT_OF_SIGHT) == []
