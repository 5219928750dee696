"""Own numbers: stable for ever, different between learners, and evenly drawn."""

import hashlib
import json
import os
import subprocess
import sys
from collections import Counter
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from grading.variants import (
    PRACTICE,
    Draw,
    canonical,
    fill,
    normalise_learner,
    scenario,
    scenario_digest,
    seed,
    table,
    words,
)

WHO = {"course_key": "key", "learner": "Ann Lee", "exercise_id": "page.one", "round_number": 1}


def test_seed_is_the_documented_hash():
    """The seed is BLAKE2b as documented, computed here again from its parts."""
    key = hashlib.blake2b(b"key", digest_size=64).digest()
    message = b"7:ann lee;8:page.one;1:1;"
    expected = hashlib.blake2b(message, key=key, person=b"plate scenario 1", digest_size=32)
    assert seed(**WHO) == expected.digest()


def test_numbers_stay_the_same_for_ever():
    """These values were drawn on 2026-11-25; a change here would give every learner other numbers."""
    draw = Draw(seed(**WHO))
    drawn = (
        draw.pick("material", ("steel", "stainless", "aluminium")),
        draw.whole("current", 400, 800, 10),
        draw.decimal("thickness", 0.8, 2.4, 0.1, 1),
        draw.shuffle("steps", "abcde"),
    )
    assert drawn == ("aluminium", 430, 1.7, ["a", "e", "b", "d", "c"])


def test_an_exercise_can_take_up_the_numbers_of_another():
    """A draw hands on what the same learner gets elsewhere in the same round, and what that hands on."""
    first = SimpleNamespace(id="page.one", draw=lambda draw: {"thickness": draw.whole("thickness", 1, 10**9)})
    second = SimpleNamespace(id="other.two", draw=lambda draw: draw.of(first) | {"length": 3})
    third = SimpleNamespace(id="other.three", draw=lambda draw: draw.of(second))
    for learner, round_number in (("ann", 1), ("ann", 2), ("bo", 1)):
        who = {"course_key": "key", "learner": learner, "round_number": round_number}
        assert scenario(third, **who) == scenario(first, **who) | {"length": 3}


def test_a_draw_of_nobody_knows_no_other_numbers():
    """A draw that was made from a seed alone says so."""
    exercise = SimpleNamespace(id="page.one", draw=lambda draw: {})
    with pytest.raises(ValueError, match="draw must be that of a learner to know the numbers of page.one"):
        Draw(b"seed").of(exercise)


def test_another_process_draws_the_same():
    """Numbers do not hang on the hash seed of a Python process."""
    code = f"from grading.variants import Draw, seed\nprint(Draw(seed(**{WHO!r})).shuffle('s', range(9)))"
    runs = {
        subprocess.run(
            [sys.executable, "-c", code],
            env={"PYTHONHASHSEED": hash_seed, "PYTHONPATH": os.pathsep.join(sys.path)},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for hash_seed in ("1", "2")
    }
    assert runs == {f"{Draw(seed(**WHO)).shuffle('s', range(9))}\n"}


@pytest.mark.parametrize(
    "change",
    [{"course_key": "key2"}, {"learner": "Ann Leo"}, {"exercise_id": "page.two"}, {"round_number": 2}],
)
def test_each_part_of_the_seed_matters(change):
    """Another class, learner, exercise or round has another seed."""
    assert seed(**{**WHO, **change}) != seed(**WHO)


def test_seed_fields_cannot_run_into_each_other():
    """Moving a letter from one field to the next gives another seed."""
    first = seed(course_key="k", learner="a", exercise_id="bc", round_number=1)
    assert first != seed(course_key="k", learner="ab", exercise_id="c", round_number=1)


def test_a_further_draw_changes_no_other():
    """Draws hang on their names, not on their order."""
    draw = Draw(seed(**WHO))
    alone = draw.whole("current", 0, 10**9)
    draw.pick("new", range(100))
    assert draw.whole("current", 0, 10**9) == alone


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Ann Lee", "  ann \t LEE "),
        ("Ann Lee", "Ann\u00a0Lee"),
        ("\uff21nn", "ann"),
        ("Stra\u00dfe", "STRASSE"),
        ("Jos\u00e9", "Jose\u0301"),
        ("ann\u200b lee\x00", "ann lee"),
        ("O\u02bcNeil", "O\u02bcNeil"),
    ],
)
def test_spellings_of_one_name_are_one_learner(one, other):
    """Capitals, spaces, composed letters and invisible characters make no other learner."""
    assert normalise_learner(one) == normalise_learner(other) != PRACTICE


@given(st.text(max_size=60))
@example("\u00df\u0301")  # folds to two letters, the second of which then joins its accent
def test_normalising_twice_changes_nothing(text):
    """A normalised name is its own normalised form, and can be printed."""
    once = normalise_learner(text)
    assert normalise_learner(once) == once
    assert once == once.strip()
    assert once.encode("utf-8").decode() == once


def test_endless_names_are_cut():
    """A name of a megabyte is as good as its first 200 letters."""
    assert normalise_learner("A" * 1_000_000) == "a" * 200


def test_nothing_typed_is_practice():
    """A name of spaces and invisible characters is nobody."""
    assert normalise_learner(" \u200b\t") == PRACTICE


def test_whole_numbers_are_even_and_reach_both_ends():
    """Every value of a range comes up about equally often (chi-squared, 8 degrees of freedom)."""
    counts = Counter(Draw(f"{n}".encode()).whole("x", 10, 50, 5) for n in range(4000))
    assert sorted(counts) == list(range(10, 55, 5))
    chi_squared = sum((count - 4000 / 9) ** 2 / (4000 / 9) for count in counts.values())
    assert chi_squared < 26.12  # 0.1 % point of the chi-squared distribution with 8 degrees of freedom


def test_shuffles_are_even():
    """Every order of three comes up about equally often (chi-squared, 5 degrees of freedom)."""
    counts = Counter(tuple(Draw(f"{n}".encode()).shuffle("x", "abc")) for n in range(6000))
    assert len(counts) == 6
    assert sum((count - 1000) ** 2 / 1000 for count in counts.values()) < 20.52  # 0.1 % point, 5 degrees


@given(
    st.integers(0, 10**6), st.integers(0, 40), st.sampled_from([(0.1, 1), (0.05, 2), (0.25, 2), (0.001, 3)])
)
def test_decimals_lie_on_their_steps(number, steps, grid):
    """A decimal lies on its step, inside its ends, and prints with no more digits than asked."""
    step, digits = grid
    high = round(0.8 + steps * step, digits)
    value = Draw(str(number).encode()).decimal("x", 0.8, high, step, digits)
    assert 0.8 <= value <= high
    assert value == round(value, digits)
    assert abs((value - 0.8) / step - round((value - 0.8) / step)) < 1e-6


def test_decimals_reach_both_ends():
    """Both ends come up although 0.8 + 4 x 0.1 is not 1.2 in binary."""
    drawn = {Draw(str(number).encode()).decimal("x", 0.8, 1.2, 0.1, 1) for number in range(200)}
    assert drawn == {0.8, 0.9, 1.0, 1.1, 1.2}


@pytest.mark.parametrize(
    ("make", "sentence"),
    [
        (lambda draw: draw.pick("x", ()), "values of draw 'x' must hold at least one, got none"),
        (
            lambda draw: draw.whole("x", 5, 4),
            "draw 'x' must rise from low to high in steps above 0, got 5, 4",
        ),
        (lambda draw: draw.decimal("x", 0, 1, 0, 1), "draw 'x' must rise from low to high in steps above 0"),
        (lambda draw: draw.shuffle("x", range(65)), "values of draw 'x' must be at most 64, got 65"),
    ],
)
def test_draws_that_hold_nothing_are_refused(make, sentence):
    """A draw from nothing is a mistake in the bank and says so."""
    with pytest.raises(ValueError, match=sentence):
        make(Draw(b"seed"))


def test_scenario_and_digest_follow_the_learner(small_bank):
    """Two learners get other numbers and digests, one learner in two spellings the same."""
    exercise = small_bank["arcs.energy"]
    ann, same, ben = (
        scenario(exercise, course_key="k", learner=name, round_number=1) for name in ("Ann", "ANN ", "Ben")
    )
    assert ann == same != ben
    assert scenario_digest(ann) == scenario_digest(dict(reversed(ann.items())))
    assert len(scenario_digest(ann)) == 16
    assert scenario_digest(ann) != scenario_digest(ben)


_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False, allow_infinity=False) | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=3), inner, max_size=3),
    max_leaves=8,
)


@given(numbers=st.dictionaries(st.text(max_size=8), _VALUES, max_size=6))
@example(numbers={"a": 1e16, "b": 1e-7, "c": -0.0, "d": 2**70, "e": "\x7f\u2212\u00b0/\\", "f": "\ud800"})
@example(numbers={"b": [1, 2.5, (3,)], "a": {"z": None, "y": "null", "x": "1e5"}})
def test_canonical_writing_is_that_of_the_standard_library(numbers):
    """However a scenario is written, its bytes, and so the digests in old answers, stay the same."""
    try:
        expected = json.dumps(numbers, sort_keys=True, separators=(",", ":"), allow_nan=False).encode()
    except ValueError:
        assume(False)
    assert canonical(numbers) == expected


@pytest.mark.parametrize("bad", [float("nan"), float("inf"), {"a": [float("nan")]}])
def test_scenarios_that_are_no_json_are_refused(bad):
    """What is not a number has no canonical writing."""
    with pytest.raises(ValueError, match="not JSON compliant"):
        canonical({"x": bad})


def test_table_has_one_entry_per_scenario():
    """Numbers and texts become plain arrays; lists stay whole even where all have one length."""
    columns = table(
        [{"n": 1, "x": 0.5, "name": "a", "order": [1, 2]}, {"n": 2, "x": 1.5, "name": "bb", "order": [2, 1]}]
    )
    assert columns["n"].dtype.kind == "i"
    np.testing.assert_allclose(columns["x"], [0.5, 1.5], rtol=0)  # copied, not computed
    assert list(columns["name"] == "bb") == [False, True]
    assert columns["order"].shape == (2,)
    assert columns["order"][1] == [2, 1]
    assert table([]) == {}


def test_texts_are_filled_from_scenario_and_shown(small_bank):
    """A prompt is filled from the numbers and from what the exercise computes from them."""
    exercise = replace(
        small_bank["arcs.energy"], shown=lambda numbers: {"double": f"{2 * numbers['time_ms']}"}
    )
    filled = words(exercise, {"voltage_v": 30, "current_a": 600, "time_ms": 20})
    assert fill("{current_a:.0f} A, twice {double} ms", filled) == "600 A, twice 40 ms"
