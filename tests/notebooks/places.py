"""Where pages, solutions and notes lie."""

from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
WORKBOOK = ROOT / "workbook"


def page_path(page):
    """Return the path of a page's notebook."""
    return WORKBOOK / page.folder / page.notebook


def solution_path(page):
    """Return the path of a page's worked solution."""
    return ROOT / "solutions" / f"{page.assignment}.ipynb"


def note_path(page):
    """Return the path of a page's instructor note."""
    return ROOT / "instructor_notes" / f"{page.assignment}.md"
