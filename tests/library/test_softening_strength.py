"""Strength left after heat: the worse of two models, monotone, and the weld's own histories."""

from dataclasses import replace

import numpy as np
import pytest

from secondplate import softening_strength as strength
from secondplate.heat.joint import default_joint
from secondplate.heat.weld import weld_heat
from secondplate.heat.weld_settings import charted_settings

TIMES = np.array([0.0, 0.1, 1.0, 10.0])
HISTORIES = np.outer(np.linspace(0.2, 1, 40), [300, 620, 500, 200])


def test_worse_of_both_at_each_end():
    """At each end of the band the strength left is the lower of the two models."""
    found = strength.softening(TIMES, HISTORIES, softening_kind="6xxx-T6")
    for end in ("low", "best", "high"):
        least = np.minimum(*(getattr(band, end) for band in found.by_model.values()))
        assert np.array_equal(getattr(found.strength_left, end), least)


def test_hotter_is_never_milder():
    """Hotter histories leave no more strength, between that of annealed metal and all of it."""
    left = strength.softening(TIMES, HISTORIES, softening_kind="6xxx-T6").strength_left
    for end in (left.low, left.best, left.high):
        assert np.all(np.diff(end) <= 0)
        assert np.all((end > 0) & (end <= 1))


def test_columns_are_single_histories():
    """A column of histories gives what each gives alone."""
    column = strength.softening(TIMES, HISTORIES, softening_kind="6xxx-T6")
    for number in (0, 20, 39):
        alone = strength.softening(TIMES, HISTORIES[number], softening_kind="6xxx-T6")
        # A column shares the number of pieces of its steepest history.
        assert alone.strength_left.best == pytest.approx(column.strength_left.best[number], rel=1e-7)
        assert alone.governing == column.governing[number]


def test_annealed_sheet_keeps_its_strength():
    """O sheet keeps all, T4 sheet all below 150 C and at worst the factor of an arc weld above."""
    annealed = strength.softening(TIMES, HISTORIES, softening_kind="5xxx-O").strength_left
    assert np.all(annealed.low == 1)
    aged = strength.softening([0, 1], [[20, 140], [20, 300]], softening_kind="6xxx-T4").strength_left
    assert aged.low == pytest.approx([1, 0.86], abs=0.01)  # two decimals of the standard


def test_a_usual_weld_leaves_the_plate_strong_and_a_hot_one_weaker():
    """A usual stud weld costs the second plate less than 5 %; more arc time never leaves it stronger."""
    usual = charted_settings(default_joint())
    left = [
        strength.softening_of_weld(
            weld_heat(default_joint(), replace(usual, time_ms=factor * usual.time_ms)),
            softening_kind="6xxx-T6",
        )["second plate under the rivet"].strength_left.best
        for factor in (1, 4)
    ]
    assert left[1] < left[0] <= 1
    assert left[0] > 0.95


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: strength.over_ageing_share(-1), "exposure index must be at least 0, got -1"),
        (
            lambda: strength.softening([0, 1], [20, 20], softening_kind="7xxx"),
            "kind of sheet must be one of 6xxx-T6, 6xxx-T4, 5xxx-O, got '7xxx'",
        ),
        (
            lambda: strength.softening([0, 1], [20, -274], softening_kind="6xxx-T6"),
            "temperature of a history must be between -100 C and 660 C, got -274 C",
        ),
        (
            lambda: strength.softening_of_weld(
                replace(weld_heat(default_joint(), charted_settings(default_joint())), traces_c={}),
                softening_kind="6xxx-T6",
            ),
            "weld must hold a trace of the second plate, got none",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What is no history is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
