"""The check of a bank finds the faults that would spoil somebody's marks, and names where they are."""

from dataclasses import replace

import pytest

from grading.check import check_bank, check_exercise
from grading.exercise import ChoiceKey, NumberKey
from grading.exercises import EXERCISES


def _faults(exercise, draws=20):
    """Return the faults of one exercise."""
    return list(check_exercise(exercise, draws))


def _with_part(exercise, place, **changes):
    """Return an exercise with one part changed."""
    parts = list(exercise.parts)
    parts[place] = replace(parts[place], **changes)
    return replace(exercise, parts=tuple(parts))


@pytest.fixture
def energy(small_bank):
    """Give an exercise of a number and a band."""
    return small_bank["arcs.energy"]


def test_sound_exercises_have_no_faults(small_bank):
    """Every kind of part passes when it is sound."""
    assert [fault for exercise in small_bank.values() for fault in _faults(exercise)] == []


def test_a_slip_that_is_right(energy):
    """A slip whose answer is inside the tolerance of the right one is a fault."""
    (fault,) = _faults(_with_part(energy, 0, relative_tolerance=0.6))
    assert fault == "arcs.energy.energy.halved leads to a right answer in 20 of 20 draws"


def test_a_right_answer_that_is_not_taken(energy):
    """A tolerance that refuses the rounded right answer is a fault."""

    def solve(table):
        keys = energy.solve(table)
        value = keys["energy"].value + 1.23456789e-4
        return {**keys, "energy": NumberKey(value=value, slips=keys["energy"].slips)}

    faults = _faults(replace(_with_part(energy, 0, relative_tolerance=0.0), solve=solve))
    assert any("energy.energy does not take its own right answer" in each for each in faults)


def test_a_text_with_a_place_that_nothing_fills(energy):
    """A prompt that asks for a number which the draw does not make is a fault."""
    (fault,) = _faults(replace(energy, prompt="At {shop} an arc burns."))
    assert "cannot be drawn and solved: KeyError: 'shop'" in fault


def test_a_key_that_names_no_option(small_bank):
    """A right option that does not exist is a fault."""
    guess = small_bank["arcs.guess"]
    (fault,) = _faults(
        replace(guess, solve=lambda table: {"guess": ChoiceKey(right=["z"] * len(table["wait"]))})
    )
    assert "arcs.guess cannot be drawn and solved" in fault


def test_a_page_with_strays(small_page, small_bank):
    """An exercise twice on a page, on a foreign page or with an unknown objective is a fault."""
    odd = replace(small_bank["arcs.guess"], objective="nothing")
    stray = replace(small_bank["arcs.guess"], id="other.guess")
    page = replace(small_page, exercises=(*small_page.exercises, odd, stray))
    _, problems = check_bank(small_bank, {"arcs": page}, draws=2)
    assert problems == [
        "arcs.guess has objective nothing, which page arcs does not name",
        "other.guess stands on page arcs",
        "arcs.guess stands twice on page arcs",
    ]


def test_the_shipped_bank_is_told_in_one_line():
    """The line counts pages, exercises, parts and points."""
    (line,), problems = check_bank(draws=5)
    assert problems == []
    assert f"{len(EXERCISES)} exercises" in line
