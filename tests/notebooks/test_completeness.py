"""Exercise, cell, solution and note belong together; none may be missing."""

import re

import nbformat
import pytest

from grading.exercise import Choice, Choices, Number, Order, Range, Verdicts
from grading.exercises import EXERCISES
from tests.notebooks.places import note_path, solution_path


def _slips(part):
    """Return the ids of the slips of one part, whatever its kind."""
    if isinstance(part, Number | Range):
        return [slip.id for slip in part.slips]
    options = part.verdicts if isinstance(part, Verdicts) else part.options
    return [option.slip.id for option in options if option.slip]


@pytest.mark.parametrize("exercise", EXERCISES.values(), ids=EXERCISES)
def test_known_kinds(exercise):
    """Every part is of a kind that forms and scoring know."""
    kinds = Number | Range | Choice | Choices | Order | Verdicts
    assert all(isinstance(part, kinds) for part in exercise.parts)


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
        for slip_id in _slips(part)
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
