"""The pages run from top to bottom without a learner and without an error."""

import shutil
import time

import nbformat
import pytest
from nbclient import NotebookClient

from tests.notebooks.places import WORKBOOK, page_path


@pytest.fixture(scope="module")
def workbook(tmp_path_factory):
    """Return the folder of a copy of the workbook, so that nothing is left in ours."""
    folder = tmp_path_factory.mktemp("pages") / "workbook"
    leave_out = shutil.ignore_patterns("__pycache__", "answers.jsonl*", "learner.json")
    return shutil.copytree(WORKBOOK, folder, ignore=leave_out)


def test_page_runs_and_its_marks_without_answers_are_plain_zeros(page, workbook):
    """A page runs without an error or a word on standard error, and in the time a reader will wait.

    Without any answer each mark cell gives the plain number 0.0, which means no points.
    """
    path = workbook / page_path(page).relative_to(WORKBOOK)
    notebook = nbformat.read(path, as_version=4)
    started = time.perf_counter()
    NotebookClient(notebook, timeout=60, resources={"metadata": {"path": str(path.parent)}}).execute()
    took_s = time.perf_counter() - started
    cells = [cell for cell in notebook.cells if cell.cell_type == "code"]
    assert [output for cell in cells for output in cell.outputs if output.get("name") == "stderr"] == []
    print(f"{path.name}: {took_s:.1f} s")
    assert took_s < 60, "three times the target of 20 s, so that a busy machine does not fail it"
    marks = [cell for cell in cells if "mark" in cell.metadata.tags]
    assert marks
    assert {cell.outputs[0]["data"]["text/plain"] for cell in marks} == {"0.0"}
