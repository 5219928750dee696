"""The pictures of a page that the README shows: taken here, stored only when PAGE_PICTURES names a folder."""

import os
from pathlib import Path

import pytest

from grading.learners import save_learner

pytestmark = pytest.mark.browser


def store(name, picture):
    """Write a picture where somebody asked for it."""
    assert picture.startswith(b"\x89PNG")
    folder = os.environ.get("PAGE_PICTURES")
    if folder:
        (Path(folder) / name).write_bytes(picture)


def test_an_explorer_and_an_answered_exercise_have_their_pictures_taken(learner):
    """Both as a learner sees them on a small laptop, with a name and an answer that needs a second try."""
    save_learner(learner.lab.folder, "Ana 17")
    learner.open("1_stud_welding/stud_welding.ipynb")
    window = learner.window
    panel = window.locator(".panel").filter(has_text="Current, time and energy")
    panel.evaluate("(node) => node.scrollIntoView({ block: 'end' })")
    panel.get_by_label("Weld time", exact=True).fill("60")
    panel.get_by_text("2.25 times the energy").wait_for(timeout=30_000)
    panel.get_by_label("Weld time", exact=True).blur()
    store("page.png", window.screenshot())

    exercise = learner.exercise("The machine is already set")
    for row in exercise.form.locator(".row").all():
        row.get_by_label("inside the band").check()
    exercise.save()
    exercise.form.evaluate("(node) => node.scrollIntoView({ block: 'end' })")
    store("exercise.png", window.screenshot())
