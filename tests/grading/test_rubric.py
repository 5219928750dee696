"""Rubrics of the practicals: they say what the pages and the notes say, and add up."""

import json
from dataclasses import replace
from pathlib import Path

import pytest

from grading.exercises import PAGES
from grading.rubric import RubricError, read_rubric, read_rubrics
from tests.grading.made_gradebook import PAGE, RUBRIC

ROOT = Path(__file__).resolve().parents[2]
SHIPPED = read_rubrics(PAGES)
GOOD = (
    'page = "bench"\ntitle = "x"\n[[criteria]]\nid = "a"\nshown = "a"\nlevels.6 = "all"\nlevels.0 = "none"\n'
)


def _page_lines(page):
    """Return what the page's table tells learners: ``(what is shown, points)`` of each line."""
    path = ROOT / "workbook" / page.folder / page.notebook
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    table = next(text for cell in cells if "| what is shown |" in (text := "".join(cell["source"])))
    rows = [line.strip("| ").split(" | ") for line in table.splitlines() if line.startswith("|")]
    return [(shown, int(points)) for shown, points in rows[2:]]


def test_every_practical_has_its_rubric():
    """Each page that gives points for a practical ships a rubric that comes to those points."""
    assert set(SHIPPED) == {page.id for page in PAGES.values() if page.practical_points}


@pytest.mark.parametrize("page", SHIPPED)
def test_rubric_says_what_the_page_says(page):
    """Learners read on the page what the rubric looks at, line for line and point for point."""
    assert [(line.shown, line.points) for line in SHIPPED[page].lines] == _page_lines(PAGES[page])


@pytest.mark.parametrize("page", SHIPPED)
def test_rubric_says_what_the_notes_say(page):
    """The words of every level stand in the note of the page."""
    (note,) = (ROOT / "instructor_notes").glob(f"*_{page}.md")
    text = note.read_text(encoding="utf-8")
    for line in SHIPPED[page].lines:
        for words in line.levels.values():
            assert f"| {words} |" in text


def test_a_sum_needs_every_line():
    """All lines judged give a sum; with one missing there is none yet."""
    assert RUBRIC.score({"safe": 2, "weld": 3}) == 5.0
    assert RUBRIC.score({"weld": 3}) is None
    assert RUBRIC.score({}) is None


def test_an_unsafe_act_ends_the_try():
    """After an unsafe act what was not judged earns nothing, and what was judged stays."""
    assert RUBRIC.score({"safe": 0}) == 0.0
    assert RUBRIC.score({"safe": 0, "weld": 1}) == 1.0


def _read(folder, text, page=PAGE):
    """Write a rubric and read it."""
    path = folder / "bench.toml"
    path.write_text(text, encoding="utf-8")
    return read_rubric(path, page)


def test_a_rubric_is_read(tmp_path):
    """A good file comes back as its lines, levels as numbers."""
    (line,) = _read(tmp_path, GOOD).lines
    assert (line.id, line.points, line.levels) == ("a", 6, {6: "all", 0: "none"})


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("page = ", "cannot be read"),
        ('page = "bench"\n', "must hold page, title and criteria"),
        (GOOD.replace("bench", "other"), "must be for page bench and 6 points, got page other"),
        (GOOD.replace("levels.6", "levels.4"), "got page bench and 4 points"),
        (GOOD.replace("levels.6", "levels.all"), "must hold page, title and criteria"),
        (GOOD.replace('levels.0 = "none"\n', ""), "must describe 0 and a higher one"),
        (GOOD + "colour = 3\n", "must hold page, title and criteria"),
        (GOOD.replace(".6", ".3") + GOOD.partition('x"\n')[2].replace(".6", ".3"), "got one twice"),
    ],
)
def test_a_faulty_rubric_is_refused(tmp_path, text, sentence):
    """A rubric that cannot be read, lacks something or does not add up is refused in one sentence."""
    with pytest.raises(RubricError, match=sentence):
        _read(tmp_path, text)


def test_a_page_with_other_points_refuses_its_rubric(tmp_path):
    """Where the page's points change, the rubric has to follow."""
    with pytest.raises(RubricError, match="20 points"):
        _read(tmp_path, GOOD, replace(PAGE, practical_points=20.0))
