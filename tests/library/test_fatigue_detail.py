"""Endurance curves and damage sums against another program on random cases, and refusals."""

import fatpack
import numpy as np
import pytest

from secondplate import fatigue_detail as fatigue
from secondplate.fatigue_detail import EnduranceCurve

_RANDOM = np.random.default_rng(9)
CURVE = EnduranceCurve(category_mpa=56, slope=4)
RANGES = _RANDOM.uniform(20, 160, (100, 6))
CYCLES = 10 ** _RANDOM.uniform(2, 7, (100, 6))


def others_curve(curve):
    """Return the same curve of the other program."""
    other = fatpack.TriLinearEnduranceCurve(curve.category_mpa)
    other.m1, other.m2 = curve.slope, curve.slope_below_knee
    return other


def test_same_as_another_program_on_random_collectives():
    """Cycles and damage of 100 random collectives are those of fatpack."""
    other = others_curve(CURVE)
    assert CURVE.cycles_to_failure(RANGES) == pytest.approx(
        other.get_endurance(RANGES.ravel()).reshape(RANGES.shape),
        rel=1e-9,  # powers
    )
    damage = [other.find_miner_sum(np.column_stack(pair)) for pair in zip(RANGES, CYCLES, strict=True)]
    assert CURVE.damage(stress_ranges_mpa=RANGES, cycles=CYCLES) == pytest.approx(damage, rel=1e-9)  # powers


def test_curve_is_whole_at_knee_and_cut_off():
    """At the category, the knee and the cut-off the curve has its cycles; below it is endless."""
    ranges = np.array([CURVE.category_mpa, CURVE.knee_mpa, CURVE.cut_off_mpa, 0.999 * CURVE.cut_off_mpa, 0])
    assert CURVE.cycles_to_failure(ranges) == pytest.approx([2e6, 5e6, 1e8, np.inf, np.inf], rel=1e-9)


def test_more_stress_is_never_milder():
    """Damage rises with the stress, and with the factor on it."""
    ranges = np.linspace(20, 200, 100)[:, None]
    assert np.all(np.diff(CURVE.damage(stress_ranges_mpa=ranges, cycles=1e5)) >= 0)
    checks = [
        fatigue.fatigue_check(CURVE, stress_ranges_mpa=80, cycles=3e5, partial_factor=factor).damage
        for factor in (1.0, 1.1, 1.35)
    ]
    assert checks == sorted(checks)


def test_lives_are_the_inverse():
    """A collective repeated as often as it has lives uses just what is allowed."""
    check = fatigue.fatigue_check(CURVE, stress_ranges_mpa=[80, 50], cycles=[1e4, 1e5], allowed_damage=0.5)
    assert check.lives * check.damage == pytest.approx(0.5, rel=1e-12)  # arithmetic only
    still = fatigue.fatigue_check(CURVE, stress_ranges_mpa=20, cycles=1e9)
    assert (still.damage, still.lives, still.verdict) == (0.0, np.inf, "lasts")


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: EnduranceCurve(category_mpa=0, slope=4),
            "fatigue category must be above 0 MPa, got 0 MPa",
        ),
        (
            lambda: EnduranceCurve(category_mpa=56, slope=4, second_slope=3),
            "second slope must be at least 4, got 3",
        ),
        (lambda: CURVE.cycles_to_failure(-1), "stress range must be at least 0 MPa, got -1 MPa"),
        (
            lambda: CURVE.cycles_to_failure([80, 400]),
            r"stress range must be at most 374.5 MPa \(the curve begins at 1000 cycles\), got 400 MPa",
        ),
        (
            lambda: CURVE.damage(stress_ranges_mpa=80, cycles=-1),
            "cycles must be at least 0, got -1",
        ),
        (lambda: fatigue.listed_curve("self-piercing rivet"), "detail must be one of bolted joint"),
        (
            lambda: fatigue.fatigue_check(56, stress_ranges_mpa=80, cycles=1),
            "curve must be an EnduranceCurve, got 56",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What is no curve or collective is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
