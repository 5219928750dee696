"""`--check` runs pages in a copy and says in one sentence which page and cell failed."""

import nbformat
import pytest

import check_pages
from tests.environment.small_project import one_sentence

WRITES = "from pathlib import Path\nPath('answers.jsonl').write_text('x')\nprint('hello')"


@pytest.fixture
def workbook(tmp_path):
    """Return a function that writes a page of code cells and gives the workbook's folder."""
    folder = tmp_path / "work book"

    def write(name, *cells):
        notebook = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(cell) for cell in cells])
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        nbformat.write(notebook, folder / name)
        return folder

    return write


def test_page_that_runs(workbook, capsys):
    """A page that runs is told with its time, and nothing is written beside the page itself."""
    folder = workbook("1_one/one.ipynb", WRITES, "assert 1")
    before = (folder / "1_one" / "one.ipynb").read_bytes()
    assert check_pages.check(folder) == 0
    printed = capsys.readouterr()
    assert printed.out.startswith("1_one/one.ipynb: runs (")
    assert printed.err == ""
    assert [path.name for path in (folder / "1_one").iterdir()] == ["one.ipynb"]
    assert (folder / "1_one" / "one.ipynb").read_bytes() == before


FAILING = {
    "bad_1.ipynb": ("1 / 0", "cell 2 failed: ZeroDivisionError: division by zero."),
    "bad_2.ipynb": ("raise ValueError('first\\nsecond')", "cell 2 failed: ValueError: first."),
    "bad_3.ipynb": ("import os\nos._exit(3)", "cell 2 ended the kernel."),
}


def test_cells_that_fail(workbook, capsys):
    """The sentence names page, cell and error; the other pages are run all the same."""
    for name, (cell, _) in FAILING.items():
        workbook(name, "1", cell, "1")
    assert check_pages.check(workbook("good.ipynb", "1")) == len(FAILING)
    printed = capsys.readouterr()
    complaints = printed.err.strip().split("\n")
    assert complaints == [f"Page {name}, {expected}" for name, (_, expected) in FAILING.items()]
    assert all(map(one_sentence, complaints))
    assert "good.ipynb: runs" in printed.out


def test_cell_without_end(workbook, capsys, monkeypatch):
    """A cell that does not end is stopped and named."""
    monkeypatch.setattr(check_pages, "CELL_LIMIT_S", 1)
    assert check_pages.check(workbook("slow.ipynb", "import time\ntime.sleep(60)")) == 1
    assert capsys.readouterr().err.strip() == "Page slow.ipynb, cell 1 did not end within 1 s."


def test_files_that_are_no_pages(workbook, capsys):
    """Each file that is no notebook is named, and the pages are run all the same."""
    folder = workbook("good.ipynb", "1")
    contents = ["", "[]", "no notebook", '{"cells": 5}', '{"cells": [5]}', '{"cells": []}']
    for number, content in enumerate(contents):
        (folder / f"odd_{number}.ipynb").write_text(content)
    assert check_pages.check(folder) == len(contents)
    printed = capsys.readouterr()
    complaints = printed.err.strip().split("\n")
    assert len(complaints) == len(contents)
    for number, complaint in enumerate(complaints):
        assert complaint.startswith(f"Page odd_{number}.ipynb, cannot be read as a notebook: ")
        assert one_sentence(complaint)
    assert "good.ipynb: runs" in printed.out


def test_kernel_that_does_not_answer(workbook, capsys, monkeypatch):
    """A kernel that never comes up is a sentence, not a traceback."""

    def silent(self):
        message = "Kernel didn't respond in 60 seconds"
        raise RuntimeError(message)

    monkeypatch.setattr(check_pages.WatchedPage, "execute", silent)
    assert check_pages.check(workbook("one.ipynb", "1")) == 1
    expected = "Page one.ipynb, could not be started: Kernel didn't respond in 60 seconds."
    assert capsys.readouterr().err.strip() == expected


def test_workbook_without_pages(tmp_path, capsys):
    """A folder without pages is a failure, not a success."""
    assert check_pages.check(tmp_path) == 1
    assert "There is no page in" in capsys.readouterr().err
