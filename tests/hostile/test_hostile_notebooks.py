"""Ten hand-ins whose notebooks defeat a marker that runs them: each gets exactly the marks of its answers.

Every attack is put on top of the same honest answers, of which some are right and some are not.
"""

import json
import random
from pathlib import Path

import pytest

from grading.demo_class import invent_records
from grading.marking import mark_class
from tests.grading.made_hand_ins import MADE_AT, SETTINGS, journals, raw_hand_in

PAGE = "stud_welding"
NAME = "Honest Answers"


def _cell(source, *, outputs=(), **nbgrader):
    """Return a code cell."""
    metadata = {"nbgrader": nbgrader} if nbgrader else {}
    return {
        "cell_type": "code",
        "id": f"cell{abs(hash(source)) % 10**8}",
        "metadata": metadata,
        "source": source,
        "outputs": list(outputs),
        "execution_count": None,
    }


def _grade_cell(slug, *, points=2, source=None):
    """Return a cell that carries a mark."""
    source = source or f'mark("{PAGE}.{slug}")'
    return _cell(source, grade=True, grade_id=f"{PAGE}-{slug}", points=points, locked=True, solution=False)


def _notebook(*cells):
    """Return a notebook as bytes."""
    return json.dumps({"cells": list(cells), "metadata": {}, "nbformat": 4, "nbformat_minor": 5}).encode()


def _output(text):
    """Return a printed output."""
    return {"output_type": "stream", "name": "stdout", "text": text}


USUAL = (
    _cell("from exercise_forms import exercise, mark"),
    _grade_cell("arc_energy"),
    _grade_cell("gas_need", points=3),
)


def _attacks(marker):
    """Return the ten notebooks by name; ``marker`` is a file that only running code could make."""
    touch = f"open({str(marker)!r}, 'w').write('ran')\n"
    return {
        "replaced mark": _notebook(_cell(touch + "mark = lambda name: 100.0"), *USUAL[1:]),
        "replaced module": _notebook(
            _cell(touch + "import exercise_forms.marks as m\nm.mark_learner = None\nm.mark = lambda *a: 9.0"),
            *USUAL,
        ),
        "written answers": _notebook(_cell(touch + "open('answers.jsonl', 'w').write('{}')"), *USUAL),
        "ended process": _notebook(_cell(touch + "import os\nos._exit(3)"), *USUAL),
        "endless loop": _notebook(_cell(touch + "while True: pass"), *USUAL),
        "20 MB of output": _notebook(_cell("print('x')", outputs=[_output("x" * 20_000_000)]), *USUAL),
        "deleted cells": _notebook(USUAL[0]),
        "changed metadata": _notebook(
            USUAL[0],
            _grade_cell("arc_energy", points=1000),
            _grade_cell("arc_energy", points=-5, source="100.0"),
        ),
        "replaced comparison": _notebook(
            _cell(touch + "import numpy, math\nnumpy.allclose = math.isclose = lambda *a, **k: True"), *USUAL
        ),
        "opened gradebook": _notebook(
            _cell(
                touch + "import sqlite3\nbook = sqlite3.connect('../../../gradebook.db')\n"
                "book.execute('update grade set auto_score = 9')"
            ),
            *USUAL,
        ),
    }


ATTACKS = sorted(_attacks(Path("marker")))


@pytest.fixture(scope="module")
def honest():
    """Give the journals of mixed answers."""
    records = invent_records(NAME, SETTINGS, random.Random(7), skill=0.6, until=MADE_AT)
    return journals(records)


@pytest.fixture(scope="module")
def honest_marks(honest, tmp_path_factory):
    """Give the marks of the honest answers alone."""
    path = raw_hand_in(tmp_path_factory.mktemp("honest"), NAME, honest)
    (learner,) = mark_class([path], SETTINGS).learners
    assert 0 < learner.points < sum(each for each in learner.marks.points.values()) + 1
    assert learner.points > 10, "an honest learner with something to steal"
    return learner.marks.points


def test_there_are_ten():
    """The ten attacks that were measured against a notebook-running marker are all here."""
    assert len(ATTACKS) == 10


@pytest.mark.parametrize("attack", ATTACKS)
def test_an_attack_changes_no_mark(attack, honest, honest_marks, tmp_path):
    """With the attack in its notebook a hand-in gets the marks of its answers, and no code of it ran."""
    marker = tmp_path / "ran"
    notebook = _attacks(marker)[attack]
    path = raw_hand_in(tmp_path, NAME, honest, notebooks={PAGE: notebook})
    (learner,) = mark_class([path], SETTINGS).learners
    assert learner.marks.points == honest_marks
    assert not marker.exists()
