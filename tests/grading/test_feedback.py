"""Feedback: what is said after each answer, and that nothing is given away before the round is finished."""

import re

import pytest

from grading.exercise import ChoiceKey, ChoicesKey, NumberKey, OrderKey, RangeKey, VerdictsKey
from grading.feedback import exercise_feedback, in_a_row, part_feedback, right_answer
from grading.keys import keys_for
from grading.scoring import Outcome, mark_learner
from grading.variants import scenario


@pytest.fixture(scope="module")
def numbers(small_bank, class_settings):
    """Return ann's numbers in the first round of the energy exercise."""
    return scenario(
        small_bank["arcs.energy"], course_key=class_settings.course_key, learner="ann", round_number=1
    )


@pytest.fixture(scope="module")
def right(numbers):
    """Return ann's right energy in joules."""
    return numbers["voltage_v"] * numbers["current_a"] * numbers["time_ms"] / 1000.0


@pytest.fixture(scope="module")
def told(small_bank, class_settings, make_record):
    """Return a function that gives the feedback after some answers to one exercise."""

    def tell(exercise_id, *answers, round_number=1):
        rounds = [make_record(exercise_id, {"energy": "1 J"})] if round_number > 1 else []
        records = [
            *rounds,
            *(make_record(exercise_id, typed, round_number=round_number) for typed in answers),
        ]
        result = mark_learner(records, class_settings, learner="ann", exercises=small_bank).exercises[
            exercise_id
        ]
        wanted = (exercise_id, "ann", round_number)
        keys = keys_for([wanted], course_key=class_settings.course_key, exercises=small_bank)[wanted].keys
        drawn = scenario(
            small_bank[exercise_id],
            course_key=class_settings.course_key,
            learner="ann",
            round_number=round_number,
        )
        return exercise_feedback(
            small_bank[exercise_id], result, settings=class_settings, scenario=drawn, keys=keys
        )

    return tell


def _energy(feedback):
    """Return the feedback on the energy part."""
    return feedback.parts[0]


def test_right_answer(told, right):
    """A right answer is called right, and how it was read is shown."""
    part = _energy(told("arcs.energy", {"energy": f"{right / 1000!r} kJ"}))
    assert (part.outcome, part.headline, part.tries_left) == (Outcome.CORRECT, "Right.", 0)
    assert part.sentences == (f"Read as {right:g} J.",)


def test_wrong_answer_tells_direction_and_what_is_left(told):
    """A wrong number is too high or too low; the tries left and their worth are said."""
    low = _energy(told("arcs.energy", {"energy": "1 J"}))
    assert low.headline == "Not right yet."
    assert low.sentences == (
        "Read as 1 J.",
        "The value is too low.",
        "2 tries are left; a right answer now earns 80%.",
    )
    high = _energy(told("arcs.energy", {"energy": "1 J"}, {"energy": "9 MJ"}))
    assert high.sentences[1:] == ("The value is too high.", "1 try is left; a right answer now earns 60%.")


def test_later_rounds_earn_less_and_say_so(told):
    """In the second round the share is that of the try times that of the round."""
    part = _energy(told("arcs.energy", {"energy": "1 J"}, round_number=2))
    assert part.sentences[-1] == "2 tries are left; a right answer now earns 64%."


def test_slip_is_named(told, right):
    """A recognised wrong path gets its own sentence and no direction."""
    part = _energy(told("arcs.energy", {"energy": f"{right / 2!r} J"}))
    assert part.outcome is Outcome.SLIP
    assert "Half of it was taken." in part.sentences
    assert not any("too" in sentence for sentence in part.sentences)


def test_decimal_comma_is_shown_as_read(told):
    """The note of a reading reaches the learner as a sentence."""
    part = _energy(told("arcs.energy", {"energy": "20,5 J"}))
    assert part.sentences[:2] == ("Read as 20.5 J.", "20,5 was read as 20.5.")


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("480", 'The unit is missing: write it after the number, as in "12.5 J".'),
        ("480 A", "A does not measure the same thing as J: write the answer in J."),
        ("1,200 J", "1,200 can mean 1200 or 1.200: write it without the comma or with a point."),
        ("six", "Six holds no digits: write the number in digits, such as 6 and not six."),
        ("inf", "Inf is not a finite number: write a number in digits."),
        (
            "9" * 10_000,
            "The answer must be at most 60 characters long, got 10000: write one number with its unit.",
        ),
    ],
)
def test_unread_answers_say_what_to_write(told, typed, sentence):
    """What cannot be read gets the sentence of the reading, and the word that no try was used."""
    part = _energy(told("arcs.energy", {"energy": typed}))
    assert part.headline == "Could not be read."
    assert part.sentences[0] == sentence
    assert part.sentences[1] == "No try was used."
    assert part.tries_left == 3


def test_unanswered_parts(told):
    """A part left empty is not answered yet, and all tries are there."""
    feedback = told("arcs.energy")
    assert [part.headline for part in feedback.parts] == ["Not answered yet.", "Not answered yet."]
    assert feedback.parts[0].tries_left == 3
    assert feedback.reasons == ()


def test_half_of_a_band(told, right):
    """A band with one right end names that end and shows both as read."""
    part = told("arcs.energy", {"band": {"low": f"{0.9 * right!r} J", "high": "9 MJ"}}).parts[1]
    assert part.headline == "Partly right."
    assert part.sentences[1:] == (
        "High read as 9000000 J.",
        "The low end is right, the high end is not.",
        "2 tries are left; a right answer now earns 80%.",
    )


def test_answers_after_the_last_try_change_nothing(told):
    """What is sent once the tries are used changes nothing in the feedback on what counted."""
    tries = [{"energy": f"{number} J"} for number in (1, 2, 3)]
    assert told("arcs.energy", *tries, {"energy": "six"}).parts[0] == told("arcs.energy", *tries).parts[0]


def test_partly_right_choices_order_and_tables(told, small_bank, class_settings):
    """Answers in part right say how far, not which."""
    drawn = scenario(
        small_bank["arcs.kinds"], course_key=class_settings.course_key, learner="ann", round_number=1
    )
    order = drawn["order"]
    right_table = (
        {"r1": "good", "r2": "bad", "r3": "good"}
        if drawn["right"] == "a"
        else {"r1": "bad", "r2": "good", "r3": "good"}
    )
    wrong_row = {**right_table, "r1": "bad" if right_table["r1"] == "good" else "good"}
    feedback = told(
        "arcs.kinds", {"many": ["c"], "sequence": [order[1], order[0], *order[2:]], "table": wrong_row}
    )
    said = {part.part_id: part.sentences[0] for part in feedback.parts if part.outcome is Outcome.PARTLY}
    assert said == {
        "many": "Something is missing, or something is ticked that does not belong.",
        "sequence": "A part of the order is right.",
        "table": "2 of 3 rows are right.",
    }


def test_nothing_is_given_away_before_the_end(told, right):
    """Before the last try neither the right value nor the reasons are in any sentence."""
    feedback = told("arcs.energy", {"energy": "1 J", "band": {"low": "1 J", "high": "2 J"}})
    text = " ".join(
        [*feedback.reasons, *(sentence for part in feedback.parts for sentence in part.sentences)]
    )
    assert feedback.reasons == ()
    for value in (right, 0.9 * right, 1.1 * right):
        assert not re.search(rf"(?<![0-9.]){value:.3g}", text)


def test_reasons_come_with_the_end(told, right, numbers):
    """After the last try of every part the worked way and the right answers are there."""
    tries = [{"energy": f"{n} J", "band": {"low": f"{n} J", "high": f"{n + 1} J"}} for n in (1, 2, 3)]
    feedback = told("arcs.energy", *tries)
    assert feedback.finished
    assert feedback.parts[0].headline == "Not right."
    assert feedback.parts[0].sentences[-1] == "No tries are left in this round."
    assert feedback.reasons[0] == (
        f"Energy is {numbers['voltage_v']} V times {numbers['current_a']} A times {numbers['time_ms']} ms."
    )
    assert feedback.reasons[1] == f"Energy: {right:.4g} J"
    assert feedback.read_again == "How much energy?"


def test_errors_blame_nobody(small_bank, class_settings, make_record):
    """An answer to other numbers is saved; the learner is asked to tell the instructor."""
    record = make_record("arcs.energy", {"energy": "1 J"}, scenario="0" * 16)
    result = mark_learner([record], class_settings, exercises=small_bank).exercises["arcs.energy"]
    part = part_feedback(small_bank["arcs.energy"].parts[0], result.parts["energy"], settings=class_settings)
    assert part.headline == "Could not be marked."
    assert part.sentences[-1] == "The answer is saved; please tell your instructor."


def test_sentences_in_a_row_end_once():
    """Several answers behind each other have one full stop, at the end; one or none stays as it is."""
    assert in_a_row(["Cold.", "M4", "Hot."]) == "Cold; M4; Hot."
    assert (in_a_row(["Cold."]), in_a_row([])) == ("Cold.", "")


def test_right_answers_of_every_kind(small_bank):
    """Each kind of part can be told in words."""
    parts = {part.id: part for exercise in small_bank.values() for part in exercise.parts}
    told = {
        "energy": right_answer(parts["energy"], NumberKey(value=480.0, slips={})),
        "band": right_answer(parts["band"], RangeKey(low=432.0, high=528.0, slips={})),
        "one": right_answer(parts["one"], ChoiceKey(right="a")),
        "many": right_answer(parts["many"], ChoicesKey(right=("a", "c"))),
        "sequence": right_answer(parts["sequence"], OrderKey(right=("b", "a"))),
        "table": right_answer(parts["table"], VerdictsKey(right={"r1": "good", "r2": "bad", "r3": "good"})),
    }
    assert told == {
        "energy": "480 J",
        "band": "432 J to 528 J",
        "one": "A",
        "many": "A; C",
        "sequence": "1. B; 2. A",
        "table": "one: Good; two: Bad; three: Good",
    }
