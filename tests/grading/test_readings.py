"""Readings taken off a figure with two caliper lines: read, scored, and never a crash."""

import math
import random
from dataclasses import replace

import pytest

from grading.check import check_exercise
from grading.demo_class import _answer
from grading.exercise import Exercise, Figure, NumberKey, Reading, Slip
from grading.feedback import part_feedback, right_answer
from grading.keys import RoundKey, row_keys
from grading.part_scores import Outcome, score_part
from grading.report import shown_answer
from grading.scoring import mark_rounds
from grading.typed_answers import right_typed, slip_ids, slip_typed

GAP = Reading(
    id="interlock",
    ask="How far does the shank hook under the sheet?",
    unit="mm",
    slips=(
        Slip(id="both_sides", sentence="That is both sides together."),
        Slip(id="from_bore", sentence="That begins at the bore.", credit=0.25),
    ),
    tolerance_reason="A line can be set to a tenth of a millimetre on this figure.",
    absolute_tolerance=0.1,
    axis="horizontal",
    span=(-6.0, 6.0),
    points=2.0,
)
KEY = NumberKey(value=0.5, slips={"both_sides": 1.0, "from_bore": 1.6})
EXERCISE = Exercise(
    id="arcs.interlock",
    objective="kinds",
    title="Read it off",
    prompt="Set the lines.",
    parts=(GAP,),
    draw=lambda draw: {"interlock_mm": draw.decimal("interlock", 0.3, 0.6, 0.05, 2)},
    solve=lambda table: {
        "interlock": NumberKey(
            value=table["interlock_mm"],
            slips={"both_sides": 2 * table["interlock_mm"], "from_bore": table["interlock_mm"] + 1.1},
        )
    },
    reasons="It is what hooks under. Both lines stand on edges of it.",
    read_again="Which kinds?",
    figure=lambda scenario: Figure(name="section", arguments={"interlock_mm": scenario["interlock_mm"]}),
)


def _lines(first, second):
    return {"from": first, "to": second}


@pytest.mark.parametrize(
    ("typed", "outcome", "slip_id", "direction"),
    [
        (_lines("2.10", "2.60"), Outcome.CORRECT, "", ""),
        (_lines("2.60 mm", "2.10 mm"), Outcome.CORRECT, "", ""),
        (_lines("-0,25", "\u22120.85"), Outcome.CORRECT, "", ""),
        (_lines("0.21 cm", "2.6"), Outcome.CORRECT, "", ""),
        (_lines("0", "1.05"), Outcome.SLIP, "both_sides", ""),
        (_lines("0", "1.6"), Outcome.SLIP, "from_bore", ""),
        (_lines("-6", "6"), Outcome.INCORRECT, "", "high"),
        (_lines("2", "2"), Outcome.INCORRECT, "", "low"),
    ],
)
def test_the_distance_is_what_counts(typed, outcome, slip_id, direction):
    """Lines may stand anywhere, in any order, with or without the unit beside the field."""
    result = score_part(GAP, KEY, typed)
    assert (result.outcome, result.slip_id, result.direction) == (outcome, slip_id, direction)


@pytest.mark.parametrize("typed", [None, {}, _lines("", ""), _lines(" ", ""), {"from": ""}])
def test_lines_nobody_moved_are_no_answer(typed):
    """A figure that was only looked at uses no try."""
    assert score_part(GAP, KEY, typed).outcome is Outcome.UNANSWERED


@pytest.mark.parametrize(
    "typed",
    [
        "0.5 mm",
        ["0", "0.5"],
        0.5,
        True,
        _lines("1", ""),
        _lines("", "1"),
        _lines(1, 2),
        _lines(None, "1"),
        _lines(["1"], {"2": 3}),
        _lines("NaN", "1"),
        _lines("1e400", "1"),
        _lines("6.1", "1"),
        _lines("-6.1", "1"),
        _lines("1 kg", "1"),
        _lines("9" * 100_000, "1"),
        {"from": "1", "to": "1.5", "more": "x"},
        {"": "1"},
    ],
)
def test_what_is_no_pair_of_lines_is_said(typed):
    """Odd shapes, lines beyond the figure and unreadable texts give one sentence and cost no try."""
    result = score_part(GAP, KEY, typed)
    assert (result.outcome, result.fraction) == (Outcome.INVALID, 0.0)
    assert 10 < len(result.sentence) < 200


def test_the_right_reading_and_every_slip_can_be_typed():
    """The checks of the bank and the invented class know the kind."""
    assert score_part(GAP, KEY, right_typed(GAP, KEY)).outcome is Outcome.CORRECT
    for slip_id in slip_ids(GAP):
        assert score_part(GAP, KEY, slip_typed(GAP, KEY, slip_id)).slip_id == slip_id
    assert right_answer(GAP, KEY) == "0.5 mm"
    assert list(check_exercise(EXERCISE, 50)) == []


def test_a_figure_too_small_for_its_reading_is_found():
    """Where the right distance does not fit between the ends of the span, the bank's check says so."""
    narrow = replace(EXERCISE, parts=(replace(GAP, span=(0.0, 0.2)),))
    assert any("does not take its own right answer" in problem for problem in check_exercise(narrow, 50))
    assert slip_typed(GAP, KEY._replace(slips={**KEY.slips, "from_bore": math.nan}), "from_bore") is None


def test_a_learner_is_told_how_far_the_lines_are_apart(make_record, class_settings):
    """The distance that was scored is said, and the typed lines stand in the report."""
    result = score_part(GAP, KEY, _lines("1", "2"))
    round_key = RoundKey(digest="d", keys={"interlock": KEY}, numbers={"interlock_mm": 0.5})
    record = make_record(
        "arcs.energy", {"interlock": _lines("1", "2")}, exercise="arcs.interlock", scenario="d"
    )
    marked = mark_rounds(EXERCISE, [record], class_settings, lambda number: round_key)
    said = part_feedback(GAP, marked.parts["interlock"], settings=class_settings)
    assert result.outcome is Outcome.SLIP
    assert said.sentences[0] == "The lines are 1 mm apart."
    assert shown_answer(GAP, _lines("1", "2"), {}) == ("lines at 1 and 2",)


def test_an_invented_class_reads_figures_too():
    """Right ones, slips, others and unfinished ones all occur, and none is an error."""
    (keys,) = row_keys(EXERCISE, [{"interlock_mm": 0.5}])
    key = keys["interlock"]
    answers = [_answer(GAP, key, random.Random(number), 0.4) for number in range(300)]
    outcomes = {score_part(GAP, key, typed).outcome for typed in answers}
    assert outcomes >= {Outcome.CORRECT, Outcome.SLIP, Outcome.INCORRECT, Outcome.INVALID}
    assert Outcome.ERROR not in outcomes
