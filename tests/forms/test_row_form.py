"""The Python side of a plan for a row: run on request, shown in words and pictures, saved as typed."""

import json

import pytest

from exercise_forms.desk import Desk
from exercise_forms.exercise_form import ExerciseForm
from grading.hand_in import save_learner
from grading.row_plans import FIELDS
from tests.forms.new_kinds import BANK, ROW

GOOD = {"test_first": "2", "test_after_reset": "1", "weld_at_once": "0", "reset_at": "1", "most_resets": "1"}


@pytest.fixture
def sit_down(folder, wrap):
    """Return a function that opens the exercise, each time with a new kernel."""

    def open_form():
        desk = Desk(folder, bank=BANK)
        return wrap(desk.put(ROW.id, ExerciseForm(desk, ROW)))

    return open_form


def _run(sat, plan):
    return sat.say(kind="row", key=sat.form.state["key"], part="plan", plan=plan)


def test_the_form_asks_for_the_numbers_of_a_plan(sit_down):
    """Each number has its own field with a label and a hint, in the order of the work."""
    part = sit_down().part("plan")
    assert part["kind"] == "row_run"
    assert [field["name"] for field in part["fields"]] == [field.name for field in FIELDS]
    assert all(field["label"] and field["hint"] for field in part["fields"])


def test_a_run_is_told_drawn_and_listed(sit_down):
    """One sentence of sums, two pictures with words, one line for each rivet; plain data all through."""
    reply = json.loads(json.dumps(_run(sit_down(), GOOD)))
    view = reply["view"]
    assert (reply["kind"], reply["sentence"]) == ("row", "")
    assert view["sentence"].startswith(f"Of {len(view['rows'])} rivets ")
    assert "your marks go by what the plan costs over all such days" in view["sentence"]
    strip, trace = view["pictures"]
    assert strip["alt"].startswith(f"Row of {len(view['rows'])} rivets")
    assert trace["alt"].startswith("Force of the puller over its stroke")
    assert all(picture["html"].startswith("<img alt=") for picture in view["pictures"])
    assert [row["number"] for row in view["rows"]] == list(range(1, len(view["rows"]) + 1))
    assert [row["how"] for row in view["rows"][:2]] == ["tested", "machine set again, then tested"]


def test_the_same_plan_has_the_same_run_in_every_kernel(sit_down):
    """The run belongs to the day and the plan; another plan meets the same day."""
    first, again = (_run(sit_down(), GOOD)["view"] for _ in range(2))
    assert first == again
    assert _run(sit_down(), GOOD | {"test_first": "0"})["view"]["rows"] != first["rows"]


def test_a_run_uses_no_try_and_saves_nothing(sit_down):
    """Somebody may run as many plans as wanted before one is saved."""
    sat = sit_down()
    for number in ("0", "1", "3"):
        assert _run(sat, GOOD | {"test_first": number})["kind"] == "row"
    assert sat.form.desk.journal.read().records == ()
    assert sat.part("plan")["feedback"] is None


@pytest.mark.parametrize(
    ("plan", "words"),
    [
        (GOOD | {"test_first": "many"}, "Studs to test at first: many holds no digits"),
        (GOOD | {"test_first": ""}, "Studs to test at first: nothing was typed."),
        (GOOD | {"most_resets": "9"}, "Re-sets at most must be a whole number from 0 to 5, got 9."),
        ("nonsense", "This answer is not a plan for a row."),
        (None, "This answer is not a plan for a row."),
    ],
)
def test_a_plan_that_cannot_be_run_is_said(sit_down, plan, words):
    """One sentence names the field and what it must be."""
    reply = _run(sit_down(), plan)
    assert reply["kind"] == "problem"
    assert reply["sentence"].startswith(words)


@pytest.mark.parametrize(("most_resets", "drilled"), [("0", True), ("1", False)])
def test_a_row_that_goes_to_the_drill_is_told(sit_down, most_resets, drilled):
    """This day begins wrong: without a re-set the rivets left are drilled out, with one they are pulled."""
    view = _run(sit_down(), GOOD | {"most_resets": most_resets})["view"]
    other = sum(row["came"].startswith("other method") for row in view["rows"])
    assert bool(other) == drilled
    assert (f"{other} were drilled out" in view["sentence"]) == drilled
    assert ("set again once" in view["sentence"]) != drilled


def test_saving_marks_the_plan_by_its_mean_cost(sit_down, right):
    """The best plan earns all through the form; a poor one is told what it costs."""
    sat = sit_down()
    sat.submit({"plan": GOOD | {"test_first": "0", "reset_at": "0"}})
    feedback = sat.part("plan")["feedback"]
    assert feedback["outcome"] in ("partly", "slip")
    assert "Shows never_tests." in feedback["sentences"][0]
    sat.submit(right(sat))
    assert sat.part("plan")["feedback"]["outcome"] == "correct"
    assert "for instance: Studs to test at first" in " ".join(sat.form.state["reasons"])


def test_a_saved_plan_comes_back_as_it_was_typed(sit_down):
    """Words and spaces stay as they were."""
    typed = GOOD | {"test_first": " 2 studs"}
    sit_down().submit({"plan": typed})
    assert sit_down().part("plan")["saved"] == typed


def test_a_run_for_somebody_elses_row_is_refused(sit_down, folder):
    """Where somebody else has signed in, their row is shown and nothing is run."""
    sat = sit_down()
    save_learner(folder, "Ben")
    reply = _run(sat, GOOD)
    assert reply["kind"] == "problem"
    assert "state" in reply
