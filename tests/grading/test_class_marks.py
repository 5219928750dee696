"""Marks of a class at once: the same for each learner as marked alone, whoever else is in the class."""

from dataclasses import replace
from types import SimpleNamespace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from grading.class_marks import earned_by_class, earned_of
from grading.keys import row_keys
from grading.scoring import mark_answered
from grading.variants import scenario

RIGHT, SLIP = "the right answer", "the answer of the first slip"  # put in once the numbers are known
LETTERS = ["a", "b", "c", "d"]
FORMS = {
    "arcs.energy": {
        "energy": st.sampled_from([RIGHT, RIGHT, SLIP, "16 J", "six", "", None, 5]),
        "band": st.sampled_from([{"low": "1 J", "high": "2 J"}, {"low": "1 J"}, "x", None]),
    },
    "arcs.kinds": {
        "one": st.sampled_from([RIGHT, *LETTERS, "", "z", 1]),
        "many": st.lists(st.sampled_from(LETTERS), max_size=3) | st.just(RIGHT),
        "sequence": st.permutations(LETTERS) | st.just([]) | st.just(RIGHT),
        "table": st.fixed_dictionaries(
            {row: st.sampled_from(["good", "bad", "fine"]) for row in ("r1", "r2", "r3")}
        ),
        "count": st.sampled_from([RIGHT, "2 studs", "3 studs", "2", "x"]),
    },
    "arcs.guess": {"guess": st.sampled_from([RIGHT, *LETTERS])},
}
ODD = [
    {"course": "other"},
    {"scenario": "0" * 16},
    {"bank": "old"},
    {"learner": "Bo"},
    {"learner": ""},
    {"exercise": "arcs.gone"},
]


@st.composite
def submissions(draw):
    """Draw exercise, answers, round and oddity of one record."""
    exercise_id = draw(st.sampled_from(list(FORMS)))
    form = FORMS[exercise_id]
    asked = draw(st.just(list(form)) | st.lists(st.sampled_from(list(form)), unique=True))
    answers = {part: draw(form[part]) for part in asked}
    answers |= draw(st.sampled_from([{}] * 9 + [{"no such part": "x"}]))
    changes = draw(st.sampled_from([{}] * 12 + ODD))
    return exercise_id, answers, draw(st.sampled_from([1, 1, 1, 1, 2, 3])), changes


CLASSES = st.lists(st.lists(submissions(), max_size=8), min_size=1, max_size=4)


@pytest.fixture(scope="module")
def both_ways(make_record, small_bank, class_settings):
    """Return a function that marks a class of drawn submissions together and one by one."""

    def record(learner, line, exercise_id, answers, number, changes):
        exercise = small_bank[exercise_id]
        numbers = scenario(
            exercise, course_key=class_settings.course_key, learner=learner, round_number=number
        )
        (key,) = row_keys(exercise, [numbers])
        filled = {part: _filled(typed, key.get(part)) for part, typed in answers.items()}
        changes = {"learner": learner, **changes}
        return make_record(exercise_id, filled, line=line, round_number=number, **changes)

    def mark(drawn_class, bank=small_bank):
        hand_ins = [
            SimpleNamespace(
                learner=f"ann {place}",
                records=[record(f"Ann {place}", line, *each) for line, each in enumerate(drawn, start=1)],
            )
            for place, drawn in enumerate(drawn_class)
        ]
        known = {"exercises": bank, "bank_version": "test"}
        alone = [
            mark_answered(each.records, class_settings, learner=each.learner, **known) for each in hand_ins
        ]
        return earned_by_class(hand_ins, class_settings, **known), [earned_of(each, bank) for each in alone]

    return mark


def _filled(typed, key):
    """Return what was typed, with the answer in the place of its name."""
    if typed == SLIP:
        return f"{next(iter(key.slips.values()))} J"
    if typed != RIGHT:
        return typed
    if hasattr(key, "value"):
        return f"{key.value} {'J' if key.slips else 'studs'}"
    return key.right if isinstance(key.right, str) else list(key.right)


@settings(max_examples=120, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(drawn_class=CLASSES)
def test_marks_of_a_class_are_those_of_each_learner_alone(both_ways, drawn_class):
    """Points, slips, problems and the sum are the same, for several tries, rounds and every oddity."""
    together, alone = both_ways(drawn_class)
    assert together == alone


def test_a_broken_exercise_waits_for_a_person(both_ways, small_bank):
    """An exercise that cannot be solved gives no mark to anybody, and the others count."""

    def solve(table):
        raise ZeroDivisionError

    bank = {**small_bank, "arcs.energy": replace(small_bank["arcs.energy"], solve=solve)}
    answered = [
        ("arcs.energy", {"energy": RIGHT}, 1, {}),
        ("arcs.kinds", {"one": RIGHT, "count": RIGHT}, 1, {}),
    ]
    together, alone = both_ways([answered, answered[1:]], bank)
    assert together == alone
    assert together[0].points == {"arcs.energy": None, "arcs.kinds": 2.0}
    assert [each.kind for each in together[0].problems] == ["broken exercise"]
    assert together[1].total == 2.0
