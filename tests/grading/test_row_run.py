"""Plans for a row: read from anybody, judged by what they cost on the average, marked and told."""

import json
import random
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from grading import row_plans
from grading.answers import Record
from grading.check import check_exercise
from grading.class_settings import default_settings
from grading.demo_class import _answer
from grading.exercise import Exercise, RowRun, RowRunKey, Slip
from grading.feedback import part_feedback, right_answer
from grading.keys import RoundKey, row_keys
from grading.part_scores import Outcome, score_part
from grading.report import shown_answer
from grading.row_days import DAYS, FAULTS, row_day, row_run_key
from grading.row_plans import FIELDS, SLIP_IDS, plan_lines, read_plan, typed_plan
from grading.scoring import mark_rounds
from grading.typed_answers import right_typed, slip_ids, slip_typed
from secondplate.bench import HABITS, PLAN_LIMITS, RowPlan, best_plan, expected_row

PART = RowRun(
    id="plan",
    ask="Plan the row.",
    slips=tuple(Slip(id=slip_id, sentence=f"Shows {slip_id}.") for slip_id in SLIP_IDS),
    full_within=0.05,
    nothing_beyond=0.25,
    tolerance_reason="Who plans by head is right within a twentieth.",
    points=3.0,
)
EXERCISE = Exercise(
    id="arcs.row",
    objective="kinds",
    title="A row",
    prompt="Plan it.",
    parts=(PART,),
    draw=lambda draw: {"day": draw.whole("day", 1, DAYS)},
    solve=lambda table: {"plan": row_run_key(table["day"])},
    reasons="Test two. Then the row.",
    read_again="Which kinds?",
)
SETTINGS = default_settings()
GOOD = {"test_first": "2", "test_after_reset": "1", "weld_at_once": "0", "reset_at": "1", "most_resets": "1"}


def _record(answers):
    return Record(
        at="2026-11-25T10:00:00+00:00",
        learner="ana",
        course="x",
        page="arcs",
        exercise="arcs.row",
        round_number=1,
        bank="test",
        scenario="d",
        answers=answers,
        previous="",
        check="",
        line=1,
    )


def _key(number=8):
    seed, day, _ = row_day(number)
    return RowRunKey(seed=seed, day=day)


def _typed(*numbers):
    return typed_plan(RowPlan(**dict(zip(PLAN_LIMITS, numbers, strict=True))))


# Reading


def test_the_form_asks_for_every_number_of_a_plan():
    """Each number of the library's plan has its field, and its limit is the library's."""
    assert {field.name: field.most for field in FIELDS} == PLAN_LIMITS
    assert tuple(slip_id.replace("_", " ") for slip_id in SLIP_IDS) == HABITS
    assert slip_ids(PART) == list(SLIP_IDS)


@pytest.mark.parametrize("text", ["2", " 2 ", "2 studs", "2.0", "\uff12"])
def test_numbers_are_read_as_in_any_field(text):
    """A word that only counts may stand behind a number, and digits of other keyboards are digits."""
    plan, problem = read_plan({**GOOD, "test_first": text})
    assert (plan.test_first, problem) == (2, "")


HOSTILE = [
    "two",
    7,
    True,
    [],
    [GOOD],
    {"test_first": "2"},
    {**GOOD, "minutes": "90"},
    {**GOOD, "test_first": 2},
    {**GOOD, "test_first": None},
    {**GOOD, "test_first": ["2"]},
    {**GOOD, "test_first": {}},
    {**GOOD, "test_first": ""},
    {**GOOD, "test_first": "-1"},
    {**GOOD, "test_first": "21"},
    {**GOOD, "test_first": "1.5"},
    {**GOOD, "test_first": "1e999"},
    {**GOOD, "test_first": "NaN"},
    {**GOOD, "test_first": "2 mm"},
    {**GOOD, "test_first": "9" * 100_000},
    {**GOOD, "weld_at_once": "201"},
    {**GOOD, "most_resets": "6"},
    {7: "2"},
]


@pytest.mark.parametrize("typed", HOSTILE, ids=lambda typed: repr(typed)[:60])
def test_what_is_no_plan_is_said_in_a_sentence(typed):
    """Wrong shapes, parts of a stud and results smuggled in earn nothing and raise nothing."""
    result = score_part(PART, _key(), typed)
    assert (result.outcome, result.fraction) == (Outcome.INVALID, 0.0)
    assert 10 < len(result.sentence) < 400


@pytest.mark.parametrize("typed", [None, "", {}, dict.fromkeys(PLAN_LIMITS, "")])
def test_an_empty_form_is_no_answer(typed):
    """Nobody who only looked has used a try."""
    assert score_part(PART, _key(), typed).outcome is Outcome.UNANSWERED


_JSON = st.recursive(
    st.none() | st.booleans() | st.floats() | st.text(max_size=8) | st.sampled_from(["2", "0"]),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.sampled_from([*PLAN_LIMITS, "x"]), inner),
    max_leaves=8,
)


@settings(max_examples=100, deadline=None)
@given(typed=_JSON)
def test_anything_that_json_can_hold_is_survived(typed):
    """No saved answer whatever becomes an error of ours, in the mark or in the report."""
    assert score_part(PART, _key(), typed).outcome is not Outcome.ERROR
    shown_answer(PART, typed, {})


# Marking


@pytest.mark.parametrize("number", [1, 8, 20])
def test_the_best_plan_earns_everything(number):
    """What the library finds best is right, and costs no more than itself."""
    key = _key(number)
    result = score_part(PART, key, right_typed(PART, key))
    assert (result.outcome, result.fraction, result.slip_ids) == (Outcome.CORRECT, 1.0, ())
    assert result.sentence.endswith("costs no more than the best one.")


@pytest.mark.parametrize("numbers", [(1, 1, 0, 1, 1), (2, 0, 0, 1, 1), (2, 1, 8, 2, 2), (5, 0, 0, 2, 1)])
@pytest.mark.parametrize("number", [3, 8])
def test_marks_follow_the_mean_cost(numbers, number):
    """All points near the best plan's mean cost, none far above it, a straight line between."""
    key = _key(number)
    plan = RowPlan(**dict(zip(PLAN_LIMITS, numbers, strict=True)))
    own, best = expected_row(plan, key.day).cost_min, expected_row(best_plan(key.day), key.day).cost_min
    lost = max(own / best - 1, 0)
    wanted = min(1.0, max(0.0, 1 - (lost - 0.05) / 0.2))
    result = score_part(PART, key, _typed(*numbers))
    assert result.fraction == pytest.approx(wanted, abs=1e-9)  # the same sums in another order
    assert (result.outcome is Outcome.CORRECT) == (wanted == 1.0)


def test_the_luck_of_the_run_does_not_enter():
    """The same plan on the same day earns the same whatever seed its run has."""
    key = _key()
    other = RowRunKey(seed=b"another run", day=key.day)
    typed = _typed(1, 1, 0, 1, 1)
    assert score_part(PART, key, typed) == score_part(PART, other, typed)


def test_a_plan_better_than_the_table_of_plans_is_right(monkeypatch):
    """Who finds something cheaper than the best of the table earns all."""
    key = _key()
    dear = RowPlan(test_first=5, test_after_reset=2, weld_at_once=0, reset_at=1, most_resets=1)
    calm = replace(key.day)  # the same day, of which nothing is known yet
    monkeypatch.setattr(row_plans, "best_plan", lambda day: dear)
    assert expected_row(read_plan(GOOD)[0], calm).cost_min < expected_row(dear, calm).cost_min
    result = score_part(PART, RowRunKey(seed=key.seed, day=calm), GOOD)
    assert (result.outcome, result.fraction) == (Outcome.CORRECT, 1.0)


@pytest.mark.parametrize("slip_id", SLIP_IDS)
@pytest.mark.parametrize("number", [1, 8, 25])
def test_each_habit_is_named_and_costs(slip_id, number):
    """A plan with a bad habit is told so, and never is the right answer."""
    key = _key(number)
    typed = slip_typed(PART, key, slip_id)
    result = score_part(PART, key, typed)
    assert slip_id in result.slip_ids
    assert result.outcome in (Outcome.SLIP, Outcome.PARTLY)
    assert f"Shows {slip_id}." in result.sentence


def test_a_habit_that_does_no_harm_costs_nothing():
    """Where a plan with a habit is as good as the best, no slip is shown."""
    key = _key()
    calm = replace(key.day, wrong_probability=0.0, drift_probability=0.0)
    result = score_part(PART, RowRunKey(seed=b"x", day=calm), _typed(0, 0, 0, 0, 0))
    assert (result.outcome, result.slip_ids) == (Outcome.CORRECT, ())


def test_who_never_tests_is_not_told_to_stop_as_well():
    """One habit that holds the other is enough to be told."""
    result = score_part(PART, _key(), _typed(0, 0, 0, 1, 1))
    assert result.slip_ids == ("never_tests",)


# Telling


def test_feedback_says_what_a_plan_costs_and_gives_nothing_away():
    """A learner is told how far above the best plan the own one lies, and the best only in the end."""
    key = _key()
    number_key = RoundKey(digest="d", keys={"plan": key})
    records = [_record({"plan": _typed(1, 1, 0, 1, 1)})]
    result = mark_rounds(EXERCISE, records, SETTINGS, lambda _: number_key)
    said = part_feedback(PART, result.current.parts["plan"], settings=SETTINGS)
    assert any("more than the best one." in sentence for sentence in said.sentences)
    assert said.tries_left == 2
    assert right_answer(PART, key).startswith("for instance: Studs to test at first: 2;")


def test_a_report_shows_the_plan_as_it_was_typed():
    """One line a number, in the order of the form."""
    assert shown_answer(PART, GOOD, {}) == tuple(plan_lines(GOOD))
    assert plan_lines(GOOD)[0] == "Studs to test at first: 2"


def test_an_invented_class_types_plans_of_every_kind():
    """Right, slips, others and trouble are all answers that can be saved and scored."""
    key, dice = _key(), random.Random(3)
    outcomes = set()
    for _ in range(60):
        typed = _answer(PART, key, dice, 0.3)
        json.dumps(typed)
        outcomes.add(score_part(PART, key, typed).outcome)
    assert {Outcome.CORRECT, Outcome.INVALID} < outcomes
    assert Outcome.ERROR not in outcomes


# Keys and days


def test_learners_with_one_day_share_its_key():
    """What was found out about a day is kept for all who have it."""
    rows = row_keys(EXERCISE, [{"day": 3}, {"day": 5}, {"day": 3}])
    assert rows[0]["plan"] is rows[2]["plan"]
    assert rows[0]["plan"].day is row_day(3)[1]
    assert len(repr(rows[0])) < 200


@pytest.mark.parametrize(
    "change",
    [
        {"slips": (Slip(id="other", sentence="Other."),)},
        {"full_within": 0.3},
        {"full_within": -0.1},
    ],
)
def test_a_part_that_cannot_be_marked_is_refused(change):
    """Unknown habits and limits that do not rise are faults of the bank, not of a learner."""
    broken = replace(EXERCISE, parts=(replace(PART, **change),))
    with pytest.raises(ValueError, match="solution of arcs.row.plan must have slips of"):
        row_keys(broken, [{"day": 1}])


def test_a_key_that_is_no_day_is_refused():
    """A key needs a day of a row for every scenario."""
    for key in (RowRunKey(seed=[b"a"], day=["x"]), RowRunKey(seed=[], day=[row_day(1)[1]])):
        broken = replace(EXERCISE, solve=lambda table, key=key: {"plan": key})
        with pytest.raises(ValueError, match="solution of arcs.row.plan must hold"):
            row_keys(broken, [{"day": 1}])


def test_days_differ_and_keep_their_numbers():
    """Each day is its own, the same at every call; every fault occurs and fails most pulls, not all."""
    days = [row_day(number) for number in range(1, DAYS + 1)]
    assert len({seed for seed, _, _ in days}) == DAYS
    assert {fault for _, _, fault in days} == set(FAULTS)
    assert row_day(7) is row_day(7)
    for _, day, _ in days:
        right, wrong = day.failure_probabilities
        assert right < 0.04
        assert 0.5 < wrong < 0.95


def test_the_exercise_passes_the_check_of_the_bank():
    """Right answers earn all and slips never do, on every day."""
    assert list(check_exercise(EXERCISE, 60)) == []
