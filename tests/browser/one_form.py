"""A page with one form of the tests' own small bank, put into the learner's workbook."""

import nbformat

PLACE = "9_tests/bench_tests.ipynb"
PANEL = """
from exercise_forms import panel
panel("bench")
"""
CELL = """
from pathlib import Path
from exercise_forms.desk import Desk
from exercise_forms.exercise_form import ExerciseForm
from tests.forms.new_kinds import BANK
ExerciseForm(Desk(Path.cwd(), bank=BANK), BANK.EXERCISES["{exercise}"])
"""


def put_page(learner, exercise):
    """Write a page with the form of one exercise of the small bank, and return its path."""
    return put_cell(learner, CELL.format(exercise=exercise))


def put_cell(learner, source):
    """Write a page with one cell, and return its path."""
    cell = nbformat.v4.new_code_cell(source, metadata={"tags": ["exercise"]})
    kernel = {"name": "python3", "display_name": "Python 3"}  # without it JupyterLab asks for one
    about = {"second_plate": {"page": "bench_tests"}, "kernelspec": kernel}
    page = nbformat.v4.new_notebook(cells=[cell], metadata=about)
    path = learner.lab.folder / PLACE
    path.parent.mkdir(exist_ok=True)
    path.write_text(nbformat.writes(page), encoding="utf-8")
    return PLACE
