"""The written answer of a page: the one cell of a learner's notebook that a person marks.

Notebooks are read as data; no other cell is looked at and none is run.
"""

import json


def practical_id(page):
    """Return the gradebook's id of the cell with a page's written practical answer."""
    return f"{page}-practical"


def notebook_of(page, text):
    """Return a notebook that holds only the written answer; the learner's other cells stay at home."""
    cell = {
        "cell_type": "markdown",
        "id": "practical",
        "metadata": {"nbgrader": {"grade_id": practical_id(page)}},
        "source": text,
    }
    return json.dumps({"cells": [cell], "metadata": {}, "nbformat": 4, "nbformat_minor": 5}).encode()


def written_answer(notebook, page):
    """Return the text of a page's practical cell in the bytes of a notebook, or None where there is none."""
    try:
        content = json.loads(notebook)
    except (ValueError, RecursionError):
        return None
    cells = content.get("cells") if isinstance(content, dict) else None
    for cell in cells if isinstance(cells, list) else ():
        if _grade_id(cell) == practical_id(page):
            source = cell.get("source")
            pieces = source if isinstance(source, list) else [source]
            return "".join(pieces) if all(isinstance(piece, str) for piece in pieces) else None
    return None


def is_untouched(text, page):
    """Tell whether the text of a practical's cell is still what stood there before anybody wrote."""
    return text.split() == page.practical_cue.split()


def _grade_id(cell):
    """Return the gradebook's id of a cell, or None."""
    for name in ("metadata", "nbgrader", "grade_id"):
        cell = cell.get(name) if isinstance(cell, dict) else None
    return cell
