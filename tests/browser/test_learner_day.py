"""A learner's day: open, sign in, answer every kind of part, hand in; then the instructor marks that file."""

import pytest

from grading.class_settings import settings_of
from grading.exercises import PAGES
from grading.hand_in import read_hand_in
from grading.keys import keys_for
from grading.typed_answers import right_typed, slip_ids, slip_typed
from grading.variants import normalise_learner

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
    hand_in = learner.hand_in()
    assert read_hand_in(hand_in).display_name == "Ana 17"

    row = instructors_marks(hand_in, learner.lab.folder.parent / "results")
    points = float(row["start_here-cautions"])
    assert shown == f"Mark so far: {points:.4g} of 4 (provisional)."
    assert summary == f"{points:.4g} of 4 points so far."
    assert learner.complaints == []


def typed_answers(exercise, keys, *, wrong):
    """Return what somebody types who is right, or who makes the first slip of every part that knows one."""
    typed = {part.id: right_typed(part, keys[part.id]) for part in exercise.parts}
    for part in exercise.parts if wrong else ():
        slipped = slip_typed(part, keys[part.id], slip_ids(part)[0]) if slip_ids(part) else None
        typed[part.id] = slipped or typed[part.id]
    return typed


@pytest.mark.slow
def test_a_whole_page_is_answered_and_every_mark_is_the_instructors(learner, instructors_marks):
    """Every marked exercise of the page, two of three right, the third with slips."""
    page, name = PAGES["stud_welding"], "Bo Ek 4"
    learner.open("0_start_here.ipynb")
    learner.sign_in(name)
    learner.open(f"{page.folder}/{page.notebook}")
    marked = [exercise for exercise in page.exercises if exercise.counts]
    triples = [(exercise.id, normalise_learner(name), 1) for exercise in marked]
    course_key = settings_of(learner.lab.folder).course_key
    keys = keys_for(triples, course_key=course_key, exercises={each.id: each for each in marked})
    shown = {}
    for number, (exercise, triple) in enumerate(zip(marked, triples, strict=True)):
        form = learner.exercise(exercise.title)
        for part_id, typed in typed_answers(exercise, keys[triple].keys, wrong=number % 3 == 2).items():
            form.fill(part_id, typed)
        form.save()
        shown[exercise.id] = form.form.locator(".mark").inner_text()
    hand_in = learner.hand_in()

    row = instructors_marks(hand_in, learner.lab.folder.parent / "results of a page")
    points = {exercise.id: float(row[exercise.id.replace(".", "-")]) for exercise in marked}
    assert shown == {
        exercise.id: f"Mark so far: {points[exercise.id]:.4g} of {exercise.points:g} (provisional)."
        for exercise in marked
    }
    total = learner.window.locator(".summary .status").inner_text()
    assert total == f"{sum(points.values()):.4g} of {sum(each.points for each in marked):g} points so far."
    assert 0 < sum(points.values()) < sum(each.points for each in marked)
