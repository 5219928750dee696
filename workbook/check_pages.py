"""Runs every page from top to bottom without a browser, in a copy, and says in one sentence what failed.

Runs inside the environment: `python3 workbook/open.py --check`.
"""

import json
import shutil
import sys
import tempfile
import time
from pathlib import Path

import nbformat
from jupyter_client.kernelspec import NoSuchKernel
from nbclient import NotebookClient
from nbclient.exceptions import CellExecutionError, CellTimeoutError, DeadKernelError

from environment import WORKBOOK

CELL_LIMIT_S = 120
QUIET = ["--IPKernelApp.log_level=ERROR"]  # its warnings about the loopback address are no news to a learner
NOT_COPIED = ("__pycache__", ".ipynb_checkpoints", "answers.jsonl*", "learner.json", "*.lock", "*.zip")


def pages(workbook):
    """Return the pages of a workbook in their order."""
    found = sorted(workbook.rglob("*.ipynb"))
    return [page for page in found if ".ipynb_checkpoints" not in page.parts]


class WatchedPage(NotebookClient):
    """Runs a page and remembers which cell it came to."""

    reached = 0

    async def async_execute_cell(self, cell, cell_index, *rest, **options):
        """Run one cell, noting its place."""
        self.reached = cell_index + 1
        return await super().async_execute_cell(cell, cell_index, *rest, **options)


def what_fails(page):
    """Run a page and return a sentence on the cell that fails, or an empty text."""
    try:
        notebook = read_page(page)
    except (ValueError, nbformat.ValidationError) as error:
        return f"cannot be read as a notebook: {first_line(error)}"
    place = {"metadata": {"path": str(page.parent)}}
    client = WatchedPage(
        notebook, timeout=CELL_LIMIT_S, kernel_name="python3", resources=place, extra_arguments=QUIET
    )
    try:
        client.execute()
    except CellExecutionError as error:
        return f"cell {client.reached} failed: {error.ename}: {first_line(error.evalue)}"
    except CellTimeoutError:
        return f"cell {client.reached} did not end within {CELL_LIMIT_S} s"
    except DeadKernelError:
        return f"cell {client.reached} ended the kernel"
    except (NoSuchKernel, RuntimeError) as error:  # the second where a kernel does not answer
        return f"could not be started: {first_line(error)}"
    return ""


def read_page(page):
    """Return a notebook, or raise where the file is none."""
    text = page.read_text(encoding="utf-8")
    content = json.loads(text)
    cells = content.get("cells") if isinstance(content, dict) else None
    if not isinstance(cells, list) or not cells or not all(isinstance(cell, dict) for cell in cells):
        message = "it has no cells"
        raise ValueError(message)
    return nbformat.reads(text, as_version=nbformat.current_nbformat)


def first_line(error):
    """Return the first line of an error's text."""
    return (str(error).strip().splitlines() or ["no text"])[0].rstrip(".")


def check(workbook=WORKBOOK):
    """Run every page of a workbook in a copy of it, print a line for each, and return how many failed."""
    with tempfile.TemporaryDirectory(prefix="workbook_check_") as folder:
        copy = Path(folder) / "workbook"
        shutil.copytree(workbook, copy, ignore=shutil.ignore_patterns(*NOT_COPIED))
        failed = [sentence for page in pages(copy) if (sentence := report(page, copy))]
        count = len(pages(copy))
    for sentence in failed:
        print(sentence, file=sys.stderr)
    if not count:
        print(f"There is no page in {workbook}.", file=sys.stderr)
    return len(failed) if count else 1


def report(page, copy):
    """Run one page, print how it went, and return the sentence on its failure, if any."""
    name, start = page.relative_to(copy).as_posix(), time.monotonic()
    trouble = what_fails(page)
    print(f"{name}: {'failed' if trouble else f'runs ({time.monotonic() - start:.1f} s)'}", flush=True)
    return f"Page {name}, {trouble}." if trouble else ""


if __name__ == "__main__":
    sys.exit(1 if check() else 0)
