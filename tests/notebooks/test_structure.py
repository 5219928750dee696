"""The pages keep the pattern: short tagged cells, no outputs, a form and a mark for each exercise."""

import re

import nbformat

from grading.hand_in import is_untouched

TAGS = {
    "title",
    "caution",
    "objective",
    "setup",
    "explain",
    "compute",
    "observe",
    "exercise",
    "card",
    "practical",
    "summary",
    "sources",
    "mark",
}
LONGEST_CELL = 12


def _code_cells(notebook):
    return [cell for cell in notebook.cells if cell.cell_type == "code"]


def test_valid_notebook(notebook, page):
    """A page is a valid notebook that says which page it is."""
    nbformat.validate(notebook)
    assert notebook.metadata.second_plate.page == page.id


def test_no_outputs(notebook):
    """A learner's page is stored without outputs, execution counts and widget state."""
    assert all(not cell.outputs and cell.execution_count is None for cell in _code_cells(notebook))
    assert "widgets" not in notebook.metadata


def test_short_cells(notebook):
    """No code cell is longer than a tired reader can take in, and no line is too wide."""
    for cell in _code_cells(notebook):
        lines = cell.source.splitlines()
        assert len(lines) <= LONGEST_CELL, cell.id
        assert max(map(len, lines)) <= 110, cell.id


def test_tags(notebook):
    """Every cell says what part it plays."""
    for cell in notebook.cells:
        tags = set(cell.metadata.get("tags", []))
        assert tags, cell.id
        assert tags <= TAGS, cell.id


def test_code_is_folded(notebook):
    """Code is folded away so that forms come first."""
    assert all(cell.metadata.jupyter.source_hidden for cell in _code_cells(notebook))


def test_starts_with_button(notebook):
    """The first cell has one button that runs the page."""
    assert notebook.cells[0].source.count('data-commandlinker-command="notebook:run-all-cells"') == 1


def test_headings_are_questions(notebook):
    """Headings ask; only the card, what is shown to the instructor and two fixed phrases do not."""
    allowed = ("For the bench", "Shown to your instructor", "For the gradebook", "Weld one, pull it")
    for cell in notebook.cells:
        for heading in re.findall(r"^## (.+)$", cell.source, re.M) if cell.cell_type == "markdown" else []:
            assert heading.endswith("?") or heading.startswith(allowed), heading


def test_cautions_come_before_the_first_exercise(notebook):
    """A caution, and that the page is no repair procedure, stand before anything is asked."""
    kinds = [set(cell.metadata.tags) for cell in notebook.cells]
    first_exercise = next(place for place, tags in enumerate(kinds) if "exercise" in tags)
    before = notebook.cells[:first_exercise]
    assert any("caution" in cell.metadata.tags for cell in before)
    assert any("not a repair procedure" in cell.source.lower() for cell in before)


def test_one_form_for_each_exercise(notebook, page):
    """Each exercise of the bank has exactly one cell, in the order of its section, and nothing else in it."""
    shown = [cell.source for cell in notebook.cells if "exercise" in cell.metadata.tags]
    assert sorted(shown) == sorted(f'exercise("{exercise.id}")' for exercise in page.exercises)


def test_exercises_follow_their_heading(notebook, page):
    """Each form stands in the section that its feedback sends the learner back to."""
    heading_of = {exercise.id: exercise.read_again for exercise in page.exercises}
    heading = ""
    for cell in notebook.cells:
        if cell.cell_type == "markdown":
            heading = (re.findall(r"^## (.+)$", cell.source, re.M) or [heading])[-1]
        elif "exercise" in cell.metadata.tags:
            assert heading == heading_of[re.search(r'"(.+)"', cell.source)[1]]


def test_one_mark_for_each_counting_exercise(notebook, page):
    """Each exercise that counts has one locked grade cell worth its points."""
    marks = {
        cell.source: cell.metadata.nbgrader
        for cell in notebook.cells
        if "mark" in cell.metadata.tags and cell.cell_type == "code"
    }
    counting = {f'mark("{exercise.id}")': exercise for exercise in page.exercises if exercise.counts}
    assert set(marks) == set(counting)
    for source, data in marks.items():
        assert data.grade
        assert data.locked
        assert not data.solution
        assert data.points == counting[source].points
        assert data.grade_id == counting[source].id.replace(".", "-")


def test_one_practical(notebook, page):
    """One cell is marked by hand, with its rubric in the cell before it."""
    places = [
        place
        for place, cell in enumerate(notebook.cells)
        if cell.get("metadata", {}).get("nbgrader", {}).get("solution")
    ]
    assert len(places) == 1
    data = notebook.cells[places[0]].metadata.nbgrader
    assert (data.grade, data.grade_id, data.points) == (True, f"{page.id}-practical", page.practical_points)
    assert is_untouched(notebook.cells[places[0]].source, page)
    rubric = notebook.cells[places[0] - 1].source
    points = [int(found) for found in re.findall(r"\| (\d+) \|$", rubric, re.M)]
    assert sum(points) == page.practical_points
