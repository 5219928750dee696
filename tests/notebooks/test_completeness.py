"""Exercise, cell, solution and note belong together; none may be missing."""

import re

import nbformat
import pytest

from grading.exercise import Part
from grading.exercises import EXERCISES
from grading.typed_answers import slip_ids
from tests.notebooks.places import note_path, solution_path


@pytest.mark.parametrize("exercise", EXERCISES.values(), ids=EXERCISES)
def test_known_kinds(exercise):
    """Every part is of a kind that forms and scoring know."""
    assert all(isinstance(part, Part) for part in exercise.parts)


def test_solution_for_each_exercise(page):
    """The worked solution answers each exercise of its page."""
    notebook = nbformat.read(solution_path(page), as_version=4)
    source = "\n".join(cell.source for cell in notebook.cells)
    missing = [exercise.id for exercise in page.exercises if f'"{exercise.id}"' not in source]
    assert missing == []


def test_note_for_each_slip(page):
    """The instructor's note speaks of each slip by its full id."""
    note = note_path(page).read_text(encoding="utf-8")
    mentioned = set(re.findall(r"`([a-z_0-9.]+)`", note))
    wanted = {
        f"{exercise.id}.{part.id}.{slip_id}"
        for exercise in page.exercises
        for part in exercise.parts
        for slip_id in slip_ids(part)
    }
    assert wanted - mentioned == set()
    known = {found for found in mentioned if found.count(".") == 3}
    assert known - wanted == set(), "the note speaks of slips that are gone"


def test_objectives_are_all_tested(page):
    """Each objective has at least one exercise, and each exercise an objective of its page."""
    used = {exercise.objective for exercise in page.exercises}
    assert used == set(page.objectives)


def test_note_and_page_give_the_same_rubric(page):
    """The practical is worth the same in the note as in the gradebook."""
    note = note_path(page).read_text(encoding="utf-8")
    assert f"{page.practical_points:.0f} points" in note
