"""The Python side of the form of an exercise: message in, journal on disk, reply out."""

import json
from dataclasses import replace
from types import SimpleNamespace

import pytest

from exercise_forms.desk import Desk
from exercise_forms.exercise_form import ExerciseForm
from exercise_forms.form import FAILED
from grading.exercises import EXERCISES
from grading.hand_in import save_learner
from grading.journal import NotSavedError

NUMBER = "start_here.practice_number"
ORDERS = [
    exercise
    for exercise in EXERCISES.values()
    if any(type(part).__name__ == "Order" for part in exercise.parts)
]


def test_a_reply_says_saved_only_when_the_answer_is_on_disk(sit, desk):
    """The record in the journal is what was typed, and the reply carries the ticket of the message."""
    sat = sit(NUMBER)
    reply = sat.submit({"length": "2,5 in"})
    (record,) = desk.journal.read().records
    assert record.answers == {"length": "2,5 in"}
    assert (record.learner, record.round_number, record.page) == ("ana 17", 1, "start_here")
    assert (reply["kind"], reply["ticket"]) == ("saved", "ticket 7")
    assert reply["state"]["parts"][0]["saved"] == "2,5 in"


@pytest.mark.parametrize("exercise_id", EXERCISES)
def test_right_answers_finish_the_exercise_with_full_marks(sit, right, exercise_id):
    """Every exercise of the bank can be answered through its form, and shows its reasons only then."""
    sat = sit(exercise_id)
    assert sat.form.state["reasons"] == []
    sat.submit(right(sat))
    state = json.loads(json.dumps(sat.form.state))
    assert state["finished"]
    assert state["reasons"]
    assert {part["feedback"]["outcome"] for part in state["parts"]} == {"correct"}
    if EXERCISES[exercise_id].counts:
        points = EXERCISES[exercise_id].points
        assert state["mark_text"] == f"Mark so far: {points:g} of {points:g} (provisional)."


@pytest.mark.parametrize("exercise", ORDERS, ids=lambda exercise: exercise.id)
def test_things_to_put_in_order_never_lie_in_the_right_order(sit, right, desk, exercise):
    """Somebody who moves nothing has not been given the answer."""
    for number in range(60):
        save_learner(desk.folder, f"learner {number}")
        sat = sit(exercise.id)
        answers = right(sat)
        for part in sat.form.state["parts"]:
            if part["kind"] == "order":
                assert [option["id"] for option in part["options"]] != answers[part["id"]]


def test_what_cannot_be_read_is_kept_and_costs_no_try(sit):
    """The words stay in the form and in the journal, and a sentence says what to write instead."""
    sat = sit(NUMBER)
    sat.submit({"length": "six"})
    part = sat.part("length")
    assert part["saved"] == "six"
    assert part["feedback"]["outcome"] == "invalid"
    assert "No try was used." in part["feedback"]["sentences"]


def test_a_form_comes_back_filled_in_after_a_restart(sit, folder):
    """A new kernel has nothing but the journal, and that is enough."""
    sit(NUMBER).submit({"length": "1 mm"})
    again = sit(NUMBER, at=Desk(folder))
    assert again.part("length")["saved"] == "1 mm"
    assert again.part("length")["feedback"]["outcome"] in {"incorrect", "slip"}


def test_two_kernels_on_one_page_lose_nothing(sit, folder):
    """Both save to the same journal, and each sees the other's answer with its next one."""
    one, other = sit(NUMBER), sit(NUMBER, at=Desk(folder))
    one.submit({"length": "1 mm"})
    other.submit({"length": "2 mm"})
    one.submit({"length": "3 mm"})
    records = Desk(folder).journal.read()
    assert [record.answers["length"] for record in records.records] == ["1 mm", "2 mm", "3 mm"]
    assert records.problems == ()
    assert one.part("length")["finished"]


def test_answers_to_somebody_elses_numbers_are_refused(sit, desk):
    """Where another page signed somebody else in, the form says so and shows the new numbers."""
    sat = sit(NUMBER)
    old = sat.form.state["key"]
    save_learner(desk.folder, "Ben")
    reply = sat.submit({"length": "1 mm"})
    assert reply["kind"] == "problem"
    assert "Nothing was saved" in reply["sentence"]
    assert reply["state"]["key"] != old
    assert desk.journal.read().records == ()


def test_a_journal_that_cannot_be_written_is_said(sit, desk, monkeypatch):
    """No form says saved where the disk did not take the answer."""

    def full(**record):
        message = "this answer is not saved: the disk is full"
        raise NotSavedError(message)

    monkeypatch.setattr(desk.journal, "append", full)
    reply = sit(NUMBER).submit({"length": "1 mm"})
    assert (reply["kind"], reply["sentence"]) == ("problem", "This answer is not saved: the disk is full.")
    assert reply["state"]["parts"][0]["saved"] is None


def test_fresh_numbers_only_after_the_round_is_finished(sit, right):
    """A new round has other numbers, empty fields and keeps the mark of the first."""
    sat = sit(NUMBER)
    first = sat.form.state["key"]
    sat.submit({"length": "1 mm"})
    sat.say(kind="fresh")
    assert sat.form.state["key"] == first
    sat.submit(right(sat))
    sat.say(kind="fresh")
    assert sat.form.state["round"] == 2
    assert sat.part("length")["saved"] is None
    sat.submit(right(sat))
    assert sat.form.state["finished"]


def test_a_message_that_fails_is_answered_with_a_sentence(sit):
    """The browser never waits for a reply that does not come."""
    sat = sit(NUMBER)
    with pytest.raises(KeyError, match="nonsense"):
        sat.say(kind="nonsense")
    assert sat.replies == [{"kind": "problem", "sentence": FAILED, "ticket": "ticket 7"}]


def test_a_form_that_cannot_be_drawn_says_what_to_press(sit):
    """The plain text that stands where no widget is drawn fits the length that is kept of it."""
    text = repr(sit(NUMBER).form)
    assert 'press "Run", then "Run All Cells"' in text
    assert len(text) <= 110


def test_running_a_cell_again_leaves_one_form_on_the_desk(sit, desk):
    """The form of the earlier run is closed: two forms of one exercise would tell different things."""
    earlier = sit(NUMBER).form
    later = sit(NUMBER).form
    assert earlier.comm is None
    assert desk._forms[NUMBER] is later


def test_an_exercise_that_cannot_be_solved_still_saves(folder, wrap):
    """A fault of ours loses no answer: it is kept, and the page says that it could not be marked."""
    name = ORDERS[0].id

    def broken(table):
        message = "a table is missing"
        raise ValueError(message)

    exercise = replace(EXERCISES[name], solve=broken)
    bank = SimpleNamespace(EXERCISES={name: exercise}, PAGES={}, BANK_VERSION="test")
    sat = wrap(ExerciseForm(Desk(folder, bank=bank), exercise))
    typed = {
        part["id"]: [option["id"] for option in part["options"]]
        for part in sat.form.state["parts"]
        if part["kind"] == "order"
    }
    assert sat.submit(typed)["kind"] == "saved"
    outcomes = {part["feedback"]["outcome"] for part in sat.form.state["parts"] if part["id"] in typed}
    assert outcomes == {"error"}
    assert not sat.form.state["finished"]
