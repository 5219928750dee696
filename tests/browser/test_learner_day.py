"""A learner's day: open, sign in, answer every kind of part, hand in; then the instructor marks that file."""

import pytest

from grading.hand_in import read_hand_in

pytestmark = pytest.mark.browser


def test_every_kind_is_answered_with_the_mouse_and_marked_alike(learner, instructors_marks):
    """What the page shows as the mark is what the instructor's copy computes from the hand-in."""
    learner.open("0_start_here.ipynb")
    learner.sign_in("Ana 17")

    number = learner.exercise("Practice: a number with its unit")
    number.part("length").get_by_label("How long").fill("2,5 in")
    assert number.save().startswith("Saved at")
    assert number.saved("length") == "Saved: 2,5 in"
    assert "Read as 63.5 mm" in number.feedback("length")

    between = learner.exercise("Practice: a low and a high value")
    between.part("flow").get_by_label("Lowest").fill("6 L/min")
    between.part("flow").get_by_label("Highest").fill("9 L/min")
    between.save()
    assert between.saved("flow") == "Saved: lowest 6 L/min, highest 9 L/min"

    choice = learner.exercise("Practice: one choice")
    choice.part("reading").get_by_label("It reads the comma as a decimal point").check()
    choice.save()
    assert choice.feedback("reading").startswith("Right.")

    choices = learner.exercise("Practice: several choices")
    choices.part("readable").get_by_label("6.2 mm").check()
    choices.part("readable").get_by_label("six").check()
    choices.save()
    assert choices.saved("readable") == "Saved: six; 6.2 mm"

    order = learner.exercise("Practice: put in order")
    order.form.get_by_role("button", name="Move down").first.click()
    order.save()
    assert order.form.locator(".saved-text").inner_text().startswith("Saved: ")

    verdicts = learner.exercise("Practice: a table of verdicts")
    for row in verdicts.part("machines").locator(".row").all():
        row.get_by_role("radio").nth(1).check()
    verdicts.save()
    assert "inside the chart" in verdicts.saved("machines")

    marked = learner.exercise("What comes first?")
    marked.part("who_decides").get_by_label("The vehicle maker's current procedure.").check()
    marked.part("who_stays_out").get_by_label("Anybody with a pacemaker").check()
    marked.save()
    shown = marked.form.locator(".mark").inner_text()

    assert len(learner.journal) == 7
    summary = learner.window.locator(".summary .status").inner_text()
    form = learner.window.locator(".hand-in")
    form.get_by_role("button", name="Make the hand-in file").click()
    name = form.locator(".file").inner_text(timeout=20_000)
    hand_in = learner.lab.folder / name
    assert read_hand_in(hand_in).display_name == "Ana 17"

    row = instructors_marks(hand_in, learner.lab.folder.parent / "results")
    points = float(row["start_here-cautions"])
    assert shown == f"Mark so far: {points:.4g} of 4 (provisional)."
    assert summary == f"{points:.4g} of 4 points so far."
    assert learner.complaints == []
