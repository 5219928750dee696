"""Rubrics of the practicals: what is looked at on coupons, and what each level earns.

A rubric is one TOML file in ``instructor_notes/rubrics``, named after its page; learners' bundles have none.
"""

import tomllib
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

RUBRICS = Path(__file__).resolve().parent.parent / "instructor_notes" / "rubrics"


class RubricError(ValueError):
    """A rubric that cannot be used; the message is one sentence for the instructor."""


@dataclass(frozen=True, kw_only=True)
class RubricLine:
    """One line of a rubric: what is shown, and in words what earns some of its levels.

    A level is the points that it earns, a whole number from 0 to the highest one described. With
    ``ends_the_try_at_0`` a level of 0 is an unsafe act: what was not judged by then earns nothing.
    """

    id: str
    shown: str
    levels: dict[int, str]
    ends_the_try_at_0: bool = False

    @cached_property
    def points(self):
        """Points of the highest level."""
        return max(self.levels)


@dataclass(frozen=True, kw_only=True)
class Rubric:
    """The rubric of one page's practical."""

    page: str
    title: str
    lines: tuple[RubricLine, ...]

    @cached_property
    def points(self):
        """Points of everything at its highest level."""
        return sum(line.points for line in self.lines)

    def line(self, line_id):
        """Return one line by id, or None."""
        return next((line for line in self.lines if line.id == line_id), None)

    def score(self, levels):
        """Return the points of ``{line id: level}``, or None where lines are not judged yet."""
        stopped = any(line.ends_the_try_at_0 and levels.get(line.id) == 0 for line in self.lines)
        if len(levels) < len(self.lines) and not stopped:
            return None
        return float(sum(levels.values()))


def read_rubrics(pages, folder=RUBRICS):
    """Return the rubric of each page that has a practical and a rubric, by page id."""
    found = {page: Path(folder) / f"{page}.toml" for page in pages}
    return {page: read_rubric(path, pages[page]) for page, path in found.items() if path.is_file()}


def read_rubric(path, page):
    """Read one rubric and hold it against the points of its page."""
    path = Path(path)
    try:
        content = tomllib.loads(path.read_text(encoding="utf-8-sig"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        message = f"rubric {path} cannot be read: {error}"
        raise RubricError(message) from error
    try:
        rubric = Rubric(
            page=content["page"],
            title=content["title"],
            lines=tuple(_line(each) for each in content["criteria"]),
        )
    except (KeyError, TypeError, ValueError) as error:
        message = f"rubric {path} must hold page, title and criteria with id, shown and levels, got {error!r}"
        raise RubricError(message) from error
    if rubric.page != page.id or rubric.points != page.practical_points:
        message = (
            f"rubric {path} must be for page {page.id} and {page.practical_points:g} points, "
            f"got page {rubric.page} and {rubric.points:g} points"
        )
        raise RubricError(message)
    if len({line.id for line in rubric.lines}) != len(rubric.lines):
        message = f"rubric {path} must name each of its criteria once, got one twice"
        raise RubricError(message)
    return rubric


def _line(table):
    """Turn one table of the file into a line; unknown names are refused by the record itself."""
    levels = {int(level): str(words) for level, words in table["levels"].items()}
    if min(levels) != 0 or max(levels) < 1:
        message = f"levels of {table['id']} must describe 0 and a higher one"
        raise ValueError(message)
    return RubricLine(**{**table, "levels": levels})
