"""What a page's cells call: each puts one form where the cell stands."""

from exercise_forms.bench_panel_form import BenchPanelForm
from exercise_forms.desk import here
from exercise_forms.exercise_form import ExerciseForm
from exercise_forms.hand_in_form import HandInForm
from exercise_forms.panel_form import PanelForm
from exercise_forms.panels import PANELS
from exercise_forms.practical_form import PracticalForm
from exercise_forms.sign_in_form import SignInForm
from exercise_forms.summary_form import SummaryForm
from grading.rubric import read_rubrics
from secondplate.checks import require_choice

BENCH = "bench"


def exercise(exercise_id):
    """Return the form of one exercise of the bank, filled in with what was saved."""
    desk = here()
    name = require_choice("exercise", exercise_id, desk.bank.EXERCISES)
    return desk.put(f"exercise {name}", ExerciseForm(desk, desk.bank.EXERCISES[name]))


def panel(name):
    """Return an explorer: settings to change, a picture and computed values to watch; or the open bench."""
    desk = here()
    require_choice("panel", name, (*PANELS, BENCH))
    return desk.put(f"panel {name}", BenchPanelForm(desk) if name == BENCH else PanelForm(PANELS[name]))


def sign_in():
    """Return the form that asks who is at work."""
    desk = here()
    return desk.put("sign in", SignInForm(desk))


def summary(page_id):
    """Return the progress of one page by objective; it follows every answer."""
    desk = here()
    name = require_choice("page", page_id, desk.bank.PAGES)
    return desk.put(f"summary {name}", SummaryForm(desk, desk.bank.PAGES[name]))


def hand_in():
    """Return the button that makes the hand-in file."""
    desk = here()
    return desk.put("hand in", HandInForm(desk))


def practical(page_id, table="practical.csv"):
    """Return the instructor's form for a page's practical; it adds rows to a table of practical marks."""
    desk = here()
    rubrics = read_rubrics(desk.bank.PAGES)
    name = require_choice("page", page_id, rubrics)
    return desk.put(f"practical {name}", PracticalForm(rubrics[name], desk.folder / table))
