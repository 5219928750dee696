"""Marks of a learner: tries, rounds, and everything that is set aside without being lost."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec import structs

from grading.class_settings import ClassSettings
from grading.keys import keys_for
from grading.scoring import Outcome, RoundKey, mark_learner, wanted
from grading.variants import scenario


@pytest.fixture(scope="module")
def energy_of(small_bank, class_settings):
    """Return a function that gives a learner's right energy in a round, in joules."""

    def energy(learner="ann", round_number=1):
        numbers = scenario(
            small_bank["arcs.energy"],
            course_key=class_settings.course_key,
            learner=learner,
            round_number=round_number,
        )
        return numbers["voltage_v"] * numbers["current_a"] * numbers["time_ms"] / 1000.0

    return energy


@pytest.fixture(scope="module")
def mark(small_bank, class_settings):
    """Return a function that marks records with the small bank."""

    def marked(*records, **how):
        how = {"exercises": small_bank, "bank_version": "test", **how}
        return mark_learner(records, class_settings, **how)

    return marked


@pytest.fixture
def answer(make_record, energy_of):
    """Return a maker of energy records, the value given as a multiple of the right one."""

    def make(times, *, unit=" J", **how):
        value = energy_of(how.get("learner", "ann"), how.get("round_number", 1)) * times
        return make_record("arcs.energy", {"energy": f"{value!r}{unit}"}, **how)

    return make


def _energy(result):
    """Return the mark of the energy part."""
    return result.exercises["arcs.energy"].parts["energy"]


@pytest.mark.parametrize(
    ("tries", "points", "used"),
    [
        ([1.0], 2.0, 1),
        ([3.0, 1.0], 1.6, 2),
        ([3.0, 4.0, 1.0], 1.2, 3),
        ([3.0, 4.0, 5.0, 1.0], 0.0, 3),
        ([0.5], 0.5, 1),  # a slip with a quarter credit
        ([0.5, 3.0, 3.1], 0.5, 3),  # the best try counts, later ones take nothing away
        ([3.0, 0.5, 1.0], 1.2, 3),
        ([1.0, 3.0], 2.0, 1),  # after a right answer nothing can be lost
        ([3.0, 3.0, 3.0, 1.0], 1.6, 2),  # the same answer sent again uses no try
        ([3.0, 4.0, 3.0, 1.0], 0.0, 3),  # going back to an earlier answer does
    ],
)
def test_credit_by_try(mark, answer, tries, points, used):
    """Two points times the credit of the try that earns most."""
    part = _energy(mark(*[answer(times) for times in tries]))
    assert part.points == pytest.approx(points, abs=1e-12)  # abs: products of tenths
    assert part.tries_used == used


def test_unread_and_unanswered_use_no_try(mark, answer, make_record):
    """Invalid and empty answers leave every try as it was."""
    blanks = [
        make_record("arcs.energy", {"energy": typed}) for typed in ("six", "480", "", None, 5, [], "1,200 J")
    ]
    part = _energy(mark(*blanks, answer(1.0)))
    assert (part.points, part.tries_used) == (2.0, 1)
    assert _energy(mark(*blanks)).latest.outcome is Outcome.INVALID
    assert _energy(mark(*blanks)).tries_used == 0


def test_tries_are_counted_for_each_part(mark, make_record, energy_of):
    """A part answered wrongly uses no try of the part beside it."""
    right = energy_of()
    band = {"low": f"{0.9 * right} J", "high": f"{1.1 * right} J"}
    result = mark(
        make_record("arcs.energy", {"energy": "1 J"}),
        make_record("arcs.energy", {"energy": "2 J"}),
        make_record("arcs.energy", {"energy": f"{right} J", "band": band}),
    )
    parts = result.exercises["arcs.energy"].parts
    assert parts["energy"].points == pytest.approx(1.2, abs=1e-12)  # abs: products of tenths
    assert parts["band"].points == 1.0
    assert result.exercises["arcs.energy"].points == pytest.approx(2.2, abs=1e-12)


def test_best_round_counts_and_later_rounds_earn_less(mark, answer):
    """Fresh numbers earn 0.8; the better of the rounds is the mark."""
    lost, better = answer(3.0), answer(1.0, round_number=2)
    result = mark(lost, better).exercises["arcs.energy"]
    assert result.best_round == 2
    assert result.points == pytest.approx(1.6, abs=1e-12)
    assert result.current.round_number == 2
    kept = mark(answer(1.0), answer(3.0, round_number=2)).exercises["arcs.energy"]
    assert (kept.best_round, kept.points) == (1, 2.0)


def test_a_round_that_was_skipped_is_set_aside(mark, answer):
    """A learner cannot jump to a round whose numbers happen to be easy."""
    result = mark(
        answer(3.0),
        answer(1.0, round_number=3),
        answer(1.0, round_number=0),
        answer(1.0, round_number=10**30),
    )
    assert result.points == 0.0
    assert [problem.kind for problem in result.problems] == ["skipped round"]
    assert "set aside 3 answers to arcs.energy: round 3 was never begun" in result.problems[0].sentence


def test_a_round_counts_where_the_one_before_it_is_lost(mark, answer):
    """Whose first round went with a damaged line loses that round, and no other; it is told."""
    first, second, third = answer(3.0, round_number=2), answer(1.0, round_number=3), answer(1.0)
    result = mark(structs.replace(first, after_loss=True), structs.replace(second, after_loss=True))
    assert result.exercises["arcs.energy"].points == pytest.approx(1.6, abs=1e-12), "a later round's share"
    assert [each.round_number for each in result.exercises["arcs.energy"].rounds] == [2, 3]
    assert [(each.kind, each.sentence) for each in result.problems] == [
        ("lost round", "round 2 of arcs.energy counts, and round 1 is lost with a damaged line")
    ]
    result = mark(structs.replace(first, after_loss=True), third)
    assert [each.round_number for each in result.exercises["arcs.energy"].rounds] == [1, 2], "as it turned up"
    assert (result.exercises["arcs.energy"].points, result.problems) == (2.0, ())
    result = mark(structs.replace(first, after_loss=True, round_number=0), second)
    assert [each.kind for each in result.problems] == ["skipped round"], "no damage before the second"


def test_round_three_after_round_two_is_honoured(mark, answer):
    """Rounds without a gap count, also where an earlier round is taken up again."""
    result = mark(answer(3.0), answer(3.0, round_number=2), answer(1.0), answer(1.0, round_number=3))
    assert result.problems == ()
    assert result.exercises["arcs.energy"].points == pytest.approx(1.6, abs=1e-12)
    assert len(result.exercises["arcs.energy"].rounds) == 3


def test_other_numbers_are_an_error_never_a_silent_zero(mark, answer):
    """Answers whose digest is not that of the learner's numbers earn nothing, and are reported."""
    result = mark(answer(1.0, scenario="0" * 16))
    exercise = result.exercises["arcs.energy"]
    assert exercise.points == 0.0
    assert exercise.outcome is Outcome.ERROR
    assert all(mark.best.outcome is Outcome.ERROR for mark in exercise.parts.values())
    assert [problem.kind for problem in result.problems] == ["other numbers"]
    assert result.problems[0].exercise_id == "arcs.energy"


def test_sound_answers_count_beside_odd_ones(mark, answer):
    """One answer with other numbers does not spoil the sound ones of the round."""
    result = mark(answer(1.0, scenario="f" * 16), answer(1.0))
    assert result.points == 2.0
    assert [problem.kind for problem in result.problems] == ["other numbers"]


def test_another_learners_answers_do_not_count(mark, answer):
    """Copied records carry their owner's name, and renamed ones their owner's numbers."""
    copied = mark(answer(1.0, learner="ben"), answer(3.0), learner="ann")
    assert copied.points == 0.0
    assert "set aside 1 answer of another learner (ben)" in copied.problems[0].sentence
    renamed = structs.replace(answer(1.0, learner="ben"), learner="ann")
    assert mark(renamed).exercises["arcs.energy"].outcome is Outcome.ERROR


def test_practice_and_other_classes_are_set_aside(mark, answer):
    """What was answered before signing in, or for another class, is reported and not marked."""
    result = mark(
        answer(1.0, learner=""),
        answer(1.0, course="elsewhere"),
        answer(1.0, exercise="arcs.old"),
        answer(3.0),
    )
    assert result.points == 0.0
    assert sorted(problem.kind for problem in result.problems) == [
        "other course",
        "practice",
        "unknown exercise",
    ]


def test_learner_is_that_of_the_last_record_that_is_not_practice(mark, answer):
    """Without a name given, the last one who signed in is marked."""
    result = mark(answer(1.0, learner="ben"), answer(1.0, learner="Ann"), answer(1.0, learner=""))
    assert (result.learner, result.points) == ("ann", 2.0)


def test_practice_alone_earns_nothing_unless_it_is_asked_for(mark, answer):
    """The gradebook gives nothing for practice; the page of somebody not signed in shows what it would be."""
    practice = answer(1.0, learner="")
    assert mark(practice).points == 0.0
    assert [problem.kind for problem in mark(practice).problems] == ["practice"]
    assert mark(practice, learner="").points == 2.0
    assert mark().points == 0.0
    assert mark().problems == ()


def test_spellings_of_a_name_are_one_learner(mark, answer):
    """A learner who types the name in capitals keeps the marks."""
    result = mark(answer(3.0, learner="ann"), answer(1.0, learner=" ANN "))
    assert result.points == pytest.approx(1.6, abs=1e-12)


def test_other_bank_version_is_reported_and_marked(mark, answer):
    """Answers from another version count as long as the numbers agree."""
    result = mark(answer(1.0, bank="older"))
    assert result.points == 2.0
    assert result.problems[0].kind == "other bank"
    assert (
        "found 1 answer saved with exercises of version older, this copy has test"
        in result.problems[0].sentence
    )


def test_unknown_parts_are_reported(mark, make_record):
    """An answer to a part that is not there earns nothing and is reported."""
    result = mark(make_record("arcs.energy", {"bonus": "480 J"}))
    assert result.points == 0.0
    assert result.problems[0].kind == "other bank"


def test_a_broken_exercise_is_an_error_and_reported(mark, make_record, small_bank):
    """Where the library cannot solve an exercise, its parts are errors and the others are marked."""

    def broken(table):
        message = "no such row"
        raise LookupError(message)

    bank = {**small_bank, "arcs.energy": replace(small_bank["arcs.energy"], solve=broken)}
    result = mark(make_record("arcs.energy", {"energy": "480 J"}), exercises=bank)
    assert result.exercises["arcs.energy"].outcome is Outcome.ERROR
    assert result.problems[0].kind == "broken exercise"
    assert "no such row" in result.problems[0].sentence


def test_every_exercise_has_a_result(mark, small_bank):
    """Exercises without an answer are there, unanswered, with their maximum."""
    result = mark()
    assert list(result.exercises) == list(small_bank)
    assert result.maximum == sum(exercise.points for exercise in small_bank.values())
    assert {one.outcome for one in result.exercises.values()} == {Outcome.UNANSWERED}
    assert result.exercises["arcs.energy"].current is None


def test_guesses_are_answered_but_carry_no_marks(mark, make_record):
    """An exercise that does not count is scored for the learner and adds nothing."""
    result = mark(*[make_record("arcs.guess", {"guess": letter}) for letter in "ab"])
    exercise = result.exercises["arcs.guess"]
    assert exercise.outcome is Outcome.CORRECT
    assert (exercise.points, exercise.maximum, result.points) == (0.0, 0.0, 0.0)
    assert (exercise.parts["guess"].points, exercise.parts["guess"].maximum) == (0.0, 0.0)
    assert exercise.current.share > 0.0


def test_round_is_finished_when_every_part_is(mark, make_record, energy_of):
    """A round ends with the last part that is right or out of tries; its answers are merged for the form."""
    right = energy_of()
    band = {"low": f"{0.9 * right} J", "high": f"{1.1 * right} J"}
    first = make_record("arcs.energy", {"energy": f"{right} J"})
    open_round = mark(first).exercises["arcs.energy"].current
    assert not open_round.finished
    assert open_round.parts["energy"].finished
    done = mark(first, make_record("arcs.energy", {"band": band})).exercises["arcs.energy"].current
    assert done.finished
    assert done.answers == {"energy": f"{right} J", "band": band}


def test_keys_of_a_class_give_the_same_marks(mark, answer, small_bank, class_settings):
    """Keys solved together change nothing against keys solved for one learner; lacking ones are solved."""
    records = [answer(3.0), answer(1.0, round_number=2)]
    want = {(name, "ann", number) for name, number in wanted(records, "ann", class_settings.course_key)}
    keys = keys_for(want, course_key=class_settings.course_key, exercises=small_bank)
    assert mark(*records, learner="ann", keys=keys) == mark(*records) == mark(*records, keys={})
    given = {("arcs.energy", "ann", 1): RoundKey(digest="", keys={}, problem="this very key was used")}
    assert mark(answer(1.0), keys=given).problems[0].sentence == "this very key was used"
    keys.pop(("arcs.energy", "ann", 2))
    assert mark(*records, learner="ann", keys=keys) == mark(*records)


def test_points_never_pass_the_maximum(mark, make_record, small_bank, class_settings):
    """A gradebook refuses a mark above the maximum by a rounding error, so there is none."""
    thirds = replace(
        small_bank["arcs.energy"],
        parts=tuple(replace(part, points=0.1) for part in small_bank["arcs.energy"].parts),
    )
    bank = {"arcs.energy": thirds}
    assert mark(exercises=bank).maximum == thirds.points
    generous = ClassSettings(course_key=class_settings.course_key, title="x", later_round_credit=1.0)
    assert mark_learner((), generous, exercises=bank).points <= thirds.points


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
    max_leaves=6,
)


@given(
    st.lists(
        st.tuples(
            st.sampled_from(["arcs.energy", "arcs.kinds", "arcs.guess"]),
            st.dictionaries(
                st.sampled_from(["energy", "band", "one", "many", "sequence", "table", "count", "?"]),
                JSON,
                max_size=4,
            ),
            st.integers(-1, 4),
            st.sampled_from(["ann", "", "ben"]),
            st.sampled_from(["sound", "0" * 16, ""]),
        ),
        max_size=8,
    )
)
@settings(max_examples=150, deadline=None)
def test_no_records_crash_the_marking(mark, make_record, entries):
    """Whatever the answers, rounds, names and digests: a whole result comes back within its bounds."""
    records = []
    for exercise_id, answers, number, learner, digest in entries:
        changes = {} if digest == "sound" else {"scenario": digest}
        records.append(make_record(exercise_id, answers, round_number=number, learner=learner, **changes))
    result = mark(*records, learner="ann")
    assert 0.0 <= result.points <= result.maximum
    for one in result.exercises.values():
        assert 0.0 <= one.points <= one.maximum
        assert sum(part.points for part in one.parts.values()) == pytest.approx(
            one.points, abs=1e-3
        )  # abs: 4 decimals
