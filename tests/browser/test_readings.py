"""Distances are read off a figure with the keyboard, by typing and by dragging, and come back later."""

import pytest

from tests.browser.one_form import put_page

pytestmark = pytest.mark.browser

TITLE = "Read a step off its drawing"
# Where the lines stand over the picture, as shares of its height from the top.
SHARES = """
(form) => {
  const box = form.querySelector(".measured img").getBoundingClientRect();
  const tops = [...form.querySelectorAll(".caliper")].map((line) => line.getBoundingClientRect().top + 1);
  return tops.map((top) => (top - box.top) / box.height);
}
"""


@pytest.fixture
def at_the_step(learner):
    """Return a learner before a page with the step to be read, and that exercise."""
    learner.open(put_page(learner, "bench_tests.step"))
    return learner, learner.exercise(TITLE)


def test_lines_move_with_arrow_keys_and_stand_where_they_say(at_the_step):
    """A hundred steps of an arrow are a millimetre, and the line lies over that place of the picture."""
    learner, step = at_the_step
    slider = step.part("height").get_by_label("Line 1, slider")
    slider.focus()
    for _ in range(50):
        learner.window.keyboard.press("ArrowUp")
    step.part("height").get_by_label("Line 2", exact=True).fill("1,5")
    assert step.part("height").get_by_label("Line 1", exact=True).input_value() == "0"
    assert "1.50 mm apart" in step.part("height").locator(".distance").inner_text()
    first, second = step.form.evaluate(SHARES)
    # abs: a pixel of a picture 300 pixels high, and the line's own width
    assert first == pytest.approx(4.0 / 6.0, abs=0.01)
    assert second == pytest.approx(2.5 / 6.0, abs=0.01)
    step.save()
    (record,) = learner.journal
    assert record["answers"] == {"height": {"from": "0", "to": "1,5"}}


def test_lines_can_be_dragged(at_the_step):
    """The line nearest to the pointer follows it."""
    learner, step = at_the_step
    image = step.form.locator(".measured img")
    image.scroll_into_view_if_needed()
    box = image.bounding_box()
    mouse, middle = learner.window.mouse, box["x"] + box["width"] / 2
    mouse.move(middle, box["y"] + 0.3 * box["height"])
    mouse.down()
    mouse.move(middle, box["y"] + 0.5 * box["height"], steps=4)
    mouse.up()
    # abs: half a pixel of 300 is 0.01 mm
    assert float(step.part("height").get_by_label("Line 2", exact=True).input_value()) == pytest.approx(
        1.0, abs=0.05
    )


def test_lines_nobody_moved_are_not_sent_and_moved_ones_come_back(at_the_step):
    """Looking costs nothing; after a reload the lines stand where they were saved."""
    learner, step = at_the_step
    step.form.get_by_role("button", name="Save my answer").click()
    assert "Nothing is filled in" in step.wait_for("problem")
    step.part("height").get_by_label("Line 1", exact=True).fill("0")
    step.part("height").get_by_label("Line 2", exact=True).fill("3.9")
    step.save()
    learner.window.reload()
    learner.wait_until_ready()
    again = learner.exercise(TITLE)
    assert again.saved("height") == "Saved: lines at 0 and 3.9"
    assert again.part("height").get_by_label("Line 2", exact=True).input_value() == "3.9"
    assert learner.complaints == []
    (record,) = learner.journal
    assert record["answers"] == {"height": {"from": "0", "to": "3.9"}}
