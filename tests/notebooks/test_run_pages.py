"""The pages run from top to bottom without a learner and without an error."""

import shutil
import time

import nbformat
import pytest
from nbclient import NotebookClient

from tests.notebooks.places import WORKBOOK, page_path


@pytest.fixture
def copied_page(page, tmp_path):
    """Return the path of the page in a copy of the workbook, so that nothing is left in ours."""
    leave_out = shutil.ignore_patterns("__pycache__", "answers.jsonl*", "learner.json")
    shutil.copytree(WORKBOOK, tmp_path / "workbook", ignore=leave_out)
    return tmp_path / "workbook" / page_path(page).relative_to(WORKBOOK)


def _execute(notebook, folder):
    """Run a notebook as if it lay in a folder."""
    NotebookClient(notebook, timeout=60, resources={"metadata": {"path": str(folder)}}).execute()


def test_page_runs(copied_page):
    """A page runs without an error or a word on standard error, and in the time a reader will wait."""
    notebook = nbformat.read(copied_page, as_version=4)
    started = time.perf_counter()
    _execute(notebook, copied_page.parent)
    took_s = time.perf_counter() - started
    outputs = [output for cell in notebook.cells if cell.cell_type == "code" for output in cell.outputs]
    assert [output for output in outputs if output.get("name") == "stderr"] == []
    print(f"{copied_page.name}: {took_s:.1f} s")
    assert took_s < 60, "three times the target of 20 s, so that a busy machine does not fail it"


def test_marks_without_answers_are_plain_zeros(copied_page):
    """Without any answer each mark cell gives the plain number 0.0, which means no points."""
    notebook = nbformat.read(copied_page, as_version=4)
    notebook.cells = [c for c in notebook.cells if {"setup", "mark"} & set(c.metadata.tags)]
    _execute(notebook, copied_page.parent)
    marks = [c for c in notebook.cells if c.cell_type == "code" and "mark" in c.metadata.tags]
    assert marks
    assert {c.outputs[0]["data"]["text/plain"] for c in marks} == {"0.0"}
