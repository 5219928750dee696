"""What must hold of every spoilt hand-in, and of the whole folder of results, once a class is marked."""

import csv
import os
import re
import shutil
import sys
from collections import Counter, defaultdict
from contextlib import contextmanager
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path

from grading.answers import Record
from grading.exercises import BANK_VERSION, EXERCISES, PAGES
from grading.export import harmless, write_problems
from grading.gradebook import cell_name, graded_cells
from grading.hand_in import learner_slug
from grading.hand_ins import hand_in_files
from grading.marking import mark_class
from grading.results import mark_folder
from grading.scoring import mark_answered
from tests.grading.made_hand_ins import SETTINGS
from tests.hostile.mutations import spoilt_class
from tests.hostile.mutations_records import NOT_RIGHT

WHOLE = 16  # every sixteenth class is marked by the whole command, with gradebook and tables
WITH_PAGES = 32  # of those every second with feedback pages, the others twice
WITH_REPORT = 208  # pictures take seconds
_LINE_KINDS = (
    "unreadable", "bad check", "torn",
}  # fmt: skip
_OURS = (
    "numpy", "matplotlib",
}  # fmt: skip


def _hook(event, arguments):
    """Note what the interpreter is about to do, while a class is marked."""
    if _WATCH["allowed"] is None:
        return
    if event in _RUNS and not str(arguments[0]).startswith(_OURS):
        _WATCH["acted"].append(f"ran {event} {arguments!r:.80}")
    elif event == "open":
        path, mode, flags = arguments
        writes = (mode and set(mode) & set("wax+")) or (flags or 0) & (os.O_WRONLY | os.O_RDWR | os.O_CREAT)
        if writes and isinstance(path, (str, bytes, os.PathLike)):
            _note(path, "opened")
    elif event in _WRITES:
        _note(arguments[0], event)
    elif event == "compile" and _is_theirs(arguments[0]):
        _WATCH["acted"].append("compiled their text")


def _is_theirs(source):
    """Tell whether text that is about to be compiled came out of a hand-in."""
    source = source if isinstance(source, bytes) else str(source or "").encode("utf-8", "replace")
    return b"__import__('os')" in source or b"ran_by" in source


def _note(path, what):
    """Note a file that is written outside the results."""
    if isinstance(path, int):
        return
    whole = os.path.abspath(os.fsdecode(path))
    if (
        not whole.startswith(_WATCH["allowed"])
        and not whole.endswith((".pyc", "/dev/null"))
        and "__pycache__" not in whole
    ):
        _WATCH["acted"].append(f"{what} {whole}")


_HOOKED = []


@contextmanager
def watched(folder, out):
    """Give a list that fills with what was done outside ``out`` or run, while the block runs."""
    if not _HOOKED:
        sys.addaudithook(_hook)  # it cannot be taken out again, so it sleeps between classes
        _HOOKED.append(True)
    acted, here, before = [], Path.cwd(), _seen(folder, out)
    os.chdir(folder)
    _WATCH.update(allowed=str(out), acted=acted)
    try:
        yield acted
    finally:
        _WATCH.update(allowed=None, acted=None)
        os.chdir(here)
    after = _seen(folder, out)
    acted += [f"made, changed or took away {each}" for each in sorted({*before.items()} ^ {*after.items()})]


def _seen(folder, out):
    """Return size, time and number of everything below a folder but the results."""
    found = {}
    for place, folders, names in os.walk(folder):
        folders[:] = [each for each in folders if Path(place, each) != out]
        for name in (*folders, *names):
            path = os.path.join(place, name)
            state = os.lstat(path)
            if path != str(out):
                found[path] = (state.st_size, state.st_mtime_ns, state.st_ino, state.st_mode)
    return found
