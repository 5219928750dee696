"""Where the instructor's notes speak of each slip: the note, its heading, what is behind it, what to show.

The notes are read as they stand: tables whose first column names slips by their full id.
"""

import re
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

NOTES = Path(__file__).resolve().parent.parent / "instructor_notes"
_ID = re.compile(r"`([a-z0-9_]+(?:\.[a-z0-9_]+){3})`")


class SlipNote(NamedTuple):
    """One row of a note: in which note, under which heading, and its two further columns."""

    note: str
    heading: str
    behind: str
    show: str


@lru_cache(maxsize=4)
def slip_notes(folder=NOTES):
    """Return the ``SlipNote`` of each slip by its full id; empty where there are no notes."""
    found = {}
    for path in sorted(Path(folder).glob("*.md")):
        heading = ""
        for line in path.read_text(encoding="utf-8").splitlines():
            if line.startswith("#"):
                heading = line.lstrip("# ")
            elif line.startswith("|"):
                first, *others = (cell.strip() for cell in line.strip().strip("|").split("|"))
                behind, show = (*others, "", "")[:2]
                for slip in _ID.findall(first):
                    found.setdefault(slip, SlipNote(path.name, heading, behind, show))
    return found
