"""The kinds of problem that marking tells: each is explained to the instructor."""

import re
from pathlib import Path

import grading
from grading.scoring import _ASIDE

FOLDER = Path(grading.__file__).parent
NAMED = re.compile(r'(?:Problem\(\s*kind=|problem_at\(\s*(?:record, place, )?)"([a-z -]+)"')


def test_every_kind_of_problem_is_explained():
    """Each kind stands in the table of the instructor's notes, and the table has no other."""
    code = "\n".join(path.read_text(encoding="utf-8") for path in sorted(FOLDER.glob("*.py")))
    named = {*NAMED.findall(code), *_ASIDE}
    notes = (FOLDER.parent / "instructor_notes" / "README.md").read_text(encoding="utf-8")
    table = notes.partition("### Reading problems.csv")[2].partition("###")[0]
    told = {
        kind for row in re.findall(r"^\| (`.*?) \|", table, re.MULTILINE) for kind in row.split("`")[1::2]
    }
    assert len(named) > 12
    assert named - told == set()
    assert {kind for kind in told if f'"{kind}"' not in code} == set()
