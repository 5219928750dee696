"""Keys: one solve for a class gives what one solve each gives, and a bad solution never becomes a mark."""

from dataclasses import replace

import numpy as np
import pytest

from grading.exercise import ChoiceKey, ChoicesKey, NumberKey, OrderKey, RangeKey, VerdictsKey
from grading.keys import keys_for, row_keys
from grading.variants import scenario

NAMES = [f"learner {number}" for number in range(40)]


def _drawn(exercise, names=NAMES):
    """Return a scenario for each name."""
    return [scenario(exercise, course_key="k", learner=name, round_number=1) for name in names]


@pytest.mark.parametrize("exercise_id", ["arcs.energy", "arcs.kinds", "arcs.guess"])
def test_a_class_solved_at_once_equals_each_solved_alone(small_bank, exercise_id):
    """The vectorised keys are, row by row, the keys of single scenarios."""
    exercise = small_bank[exercise_id]
    drawn = _drawn(exercise)
    together = row_keys(exercise, drawn)
    alone = [row_keys(exercise, [numbers])[0] for numbers in drawn]
    assert together == alone
    assert len({str(row) for row in together}) > 1
    assert row_keys(exercise, []) == []


def test_keys_hold_plain_python_values(small_bank):
    """No array type reaches the marks, where it would be written to a database or to JSON."""
    row = row_keys(small_bank["arcs.energy"], _drawn(small_bank["arcs.energy"]))[0]
    assert type(row["energy"].value) is type(row["energy"].slips["halved"]) is type(row["band"].low) is float
    kinds = row_keys(small_bank["arcs.kinds"], _drawn(small_bank["arcs.kinds"]))[0]
    assert type(kinds["one"].right) is type(kinds["table"].right["r1"]) is type(kinds["many"].right[0]) is str
    assert type(kinds["sequence"].right) is tuple


def test_keys_for_are_by_exercise_learner_and_round(small_bank):
    """Each wanted key comes with the digest of its own numbers; asking twice changes nothing."""
    wanted = [
        ("arcs.energy", "ann", 1),
        ("arcs.energy", "ben", 2),
        ("arcs.kinds", "ann", 1),
        ("arcs.energy", "ann", 1),
    ]
    keys = keys_for(wanted, course_key="k", exercises=small_bank)
    assert set(keys) == set(wanted)
    assert len({key.digest for key in keys.values()}) == 3
    assert all(key.problem == "" for key in keys.values())
    assert keys == keys_for(reversed(wanted), course_key="k", exercises=small_bank)


def _solving(exercise, part_id, key):
    """Return the exercise with another key for one part."""
    return replace(
        exercise, solve=lambda table: {**exercise.solve(table), part_id: key(len(next(iter(table.values()))))}
    )


@pytest.mark.parametrize(
    ("exercise_id", "part_id", "key", "sentence"),
    [
        (
            "arcs.energy",
            "energy",
            lambda n: ChoiceKey(right=["a"] * n),
            "arcs.energy.energy must be a NumberKey, got ChoiceKey",
        ),
        (
            "arcs.energy",
            "energy",
            lambda n: NumberKey(value=[1.0] * n, slips={"halved": [1.0] * n}),
            "must hold the slips halved, doubled, got halved",
        ),
        (
            "arcs.energy",
            "energy",
            lambda n: NumberKey(value=[float("nan")] * n, slips={"halved": 1.0, "doubled": 2.0}),
            "arcs.energy.energy must be finite, got nan",
        ),
        (
            "arcs.energy",
            "energy",
            lambda n: NumberKey(value=[1.0] * (n + 1), slips={"halved": 1.0, "doubled": 2.0}),
            r"must hold 40 values, got shape \(41,\)",
        ),
        (
            "arcs.energy",
            "band",
            lambda n: RangeKey(low=[2.0] * n, high=[1.0] * n, slips={"halved": (1.0, 2.0)}),
            "must have low ends that are not above the high ends",
        ),
        ("arcs.kinds", "one", lambda n: ChoiceKey(right=["z"] * n), "must be among a, b, c, d, got 'z'"),
        ("arcs.kinds", "one", lambda n: ChoiceKey(right=["a"] * 3), "must hold 40 entries, got 3"),
        (
            "arcs.kinds",
            "many",
            lambda n: ChoicesKey(right=[()] * n),
            "must hold at least one option and none twice",
        ),
        (
            "arcs.kinds",
            "many",
            lambda n: ChoicesKey(right=[("a", "z")] * n),
            "must be among a, b, c, d, got 'z'",
        ),
        (
            "arcs.kinds",
            "sequence",
            lambda n: OrderKey(right=[("a", "b", "c")] * n),
            "must place each of a, b, c, d",
        ),
        (
            "arcs.kinds",
            "table",
            lambda n: VerdictsKey(right={"r1": "good"}),
            "must hold the rows r1, r2, r3, got r1",
        ),
        (
            "arcs.kinds",
            "table",
            lambda n: VerdictsKey(right={"r1": "good", "r2": "bad", "r3": "fine"}),
            "arcs.kinds.table.r3 must be among bad, good, got 'fine'",
        ),
    ],
)
def test_solutions_that_do_not_fit_are_refused(small_bank, exercise_id, part_id, key, sentence):
    """A solution of the wrong kind, length, range or with unknown ids is refused by name."""
    exercise = _solving(small_bank[exercise_id], part_id, key)
    with pytest.raises(ValueError, match=sentence):
        row_keys(exercise, _drawn(exercise))


def test_solutions_must_answer_every_part(small_bank):
    """A part without a solution is refused."""
    exercise = replace(small_bank["arcs.energy"], solve=lambda table: {})
    with pytest.raises(ValueError, match="solution of arcs.energy must answer the parts energy, band"):
        row_keys(exercise, _drawn(exercise))


def test_a_single_value_counts_for_every_row(small_bank):
    """A choice that is the same for everybody may be given once, also as a bare text or tuple."""
    exercise = _solving(small_bank["arcs.kinds"], "one", lambda n: ChoiceKey(right="a"))
    exercise = _solving(exercise, "many", lambda n: ChoicesKey(right=("a", "b")))
    exercise = _solving(exercise, "count", lambda n: NumberKey(value=3, slips={}))
    rows = row_keys(exercise, _drawn(exercise))
    assert {row["one"].right for row in rows} == {"a"}
    assert {row["many"].right for row in rows} == {("a", "b")}
    assert {row["count"].value for row in rows} == {3.0}


def test_infinite_slips_become_no_number(small_bank):
    """An infinite slip value would be met by any answer through its relative tolerance; it is taken out."""
    infinite = lambda n: NumberKey(value=[1.0] * n, slips={"halved": [np.inf] * n, "doubled": [2.0] * n})  # noqa: E731
    rows = row_keys(
        _solving(small_bank["arcs.energy"], "energy", infinite), _drawn(small_bank["arcs.energy"])
    )
    assert all(np.isnan(row["energy"].slips["halved"]) for row in rows)


def test_one_learner_who_cannot_be_solved_spoils_no_other(small_bank):
    """Where the library refuses one learner's numbers, the others keep their keys."""
    exercise = small_bank["arcs.energy"]
    bad = _drawn(exercise)[3]

    def refusing(table):
        if (table["time_ms"] == bad["time_ms"]).any():
            message = "time_ms must be something else"
            raise ValueError(message)
        return exercise.solve(table)

    bank = {"arcs.energy": replace(exercise, solve=refusing)}
    keys = keys_for([("arcs.energy", name, 1) for name in NAMES], course_key="k", exercises=bank)
    problems = {name: keys["arcs.energy", name, 1].problem for name in NAMES}
    assert "arcs.energy cannot be solved: ValueError: time_ms must be something else" in problems[NAMES[3]]
    sound = [name for name in NAMES if not problems[name]]
    assert len(sound) > 30
    assert all(keys["arcs.energy", name, 1].keys for name in sound)
