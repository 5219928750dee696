"""The written answer of a page is found in a notebook of any shape, or not at all."""

import pytest

from grading.written_answers import written_answer
from tests.grading.made_notebooks import practical_notebook


@pytest.mark.parametrize(
    ("notebook", "text"),
    [
        (practical_notebook("plain"), "plain"),
        (practical_notebook(["two\n", "lines"]), "two\nlines"),
        (practical_notebook(""), ""),
        (practical_notebook("x", page="other"), None),
        (practical_notebook([1, 2]), None),
        ("{}", None),
        ("[]", None),
        ('{"cells": 5}', None),
        ('{"cells": [5, null, {}, {"metadata": 5}, {"metadata": {"nbgrader": []}}]}', None),
        ("[" * 50_000, None),
        ("not json", None),
    ],
)
def test_written_answers_are_read_as_text(notebook, text):
    """The practical cell is found by its id; a notebook of any other shape gives nothing and no crash."""
    assert written_answer(notebook.encode(), "arcs") == text
