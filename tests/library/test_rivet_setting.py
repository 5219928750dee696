"""Stages of setting, shape of the force, and trends that refuse what they were not made from."""

import numpy as np
import pytest

from secondplate.rivet import Die, Rivet
from secondplate.rivet_setting import (
    SETTING_STAGES,
    TREND_QUANTITIES,
    head_pressure_mpa,
    polymer_trends,
    setting_force_share,
    setting_stage,
)

RIVET, DIE = Rivet(rivet_length_mm=4.5), Die(die_diameter_mm=8.5, die_depth_mm=0.9)


def test_stages_join_without_a_hole():
    """Four stages cover the stroke from 0 to 1, one after the other."""
    assert SETTING_STAGES[0].stroke_from == 0
    assert SETTING_STAGES[-1].stroke_to == 1
    for before, after in zip(SETTING_STAGES[:-1], SETTING_STAGES[1:], strict=True):
        assert before.stroke_to == after.stroke_from


def test_force_never_falls_and_ends_at_its_peak():
    """The shape rises from nothing to the peak, its band in order everywhere, steepest at the end."""
    strokes = np.linspace(0, 1, 501)
    shape = setting_force_share(strokes)
    for curve in (shape.low, shape.best, shape.high):
        assert np.all(np.diff(curve) >= 0)
        assert curve[0] == 0
        assert curve[-1] == pytest.approx(1, abs=1e-12)  # rounding
    assert np.argmax(np.gradient(shape.best, strokes)) > 0.85 * 500


def test_each_stroke_has_its_stage():
    """The stage of a stroke is the one between whose ends it lies."""
    assert [setting_stage(stroke).name for stroke in (0, 0.18, 0.19, 0.7, 1)] == [
        "clamp",
        "clamp",
        "pierce",
        "flare",
        "seat",
    ]


@pytest.mark.parametrize("quantity", TREND_QUANTITIES)
def test_signs_are_those_of_the_values(quantity):
    """What is said to rise with a size rises when only that size is changed."""

    def value(place, **change):
        rivet = {"rivet_length_mm": 4.5} | {k: v for k, v in change.items() if not k.startswith("die")}
        die = {"die_diameter_mm": 8.5, "die_depth_mm": 0.9} | {
            k: v for k, v in change.items() if k.startswith("die")
        }
        return polymer_trends(quantity, Rivet(**rivet), Die(**die))[place].band.best

    for place, trend in enumerate(polymer_trends(quantity, RIVET, DIE)):
        assert "does not" in trend.caution
        assert trend.band.basis == trend.caution
        for size, goes in trend.signs:
            if size == "volume ratio":
                continue
            name = size.replace(" ", "_") + "_mm"
            start = {
                "rivet_length_mm": 4.5,
                "bore_diameter_mm": 3.3,
                "die_diameter_mm": 8.5,
                "die_depth_mm": 0.9,
            }
            more = value(place, **{name: start[name] * 1.01})
            assert (more > trend.band.best) == (goes == "rises")


def test_longer_rivet_trades_bottom_for_interlock():
    """All regressions agree on the one sign that is taught: longer, more interlock and less bottom."""
    for trend in polymer_trends("interlock", RIVET, DIE):
        assert dict(trend.signs)["rivet length"] == "rises"
    for trend in polymer_trends("remaining bottom thickness", RIVET, DIE):
        assert dict(trend.signs)["rivet length"] == "falls"


def test_two_force_trends_meet():
    """The two regressions of the force lie within the sum of their errors of each other."""
    first, second = polymer_trends("setting force", RIVET, DIE)
    assert first.band.overlap(second.band)
    assert first.unit == second.unit == "N"


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: polymer_trends("interlock", Rivet(rivet_length_mm=6.0), DIE),
            "rivet length for this trend must be between 4 mm and 5 mm, got 6 mm",
        ),
        (
            lambda: polymer_trends("interlock", RIVET, Die(die_diameter_mm=11, die_depth_mm=0.9)),
            "die diameter for this trend must be between 7.56 mm and 9.98 mm, got 11 mm",
        ),
        (
            lambda: polymer_trends(
                "interlock", RIVET, Die(die_diameter_mm=8.5, die_depth_mm=0.9, die_tip_mm=0.5)
            ),
            "die tip for this trend must be between 0 mm and 0 mm, got 0.5 mm",
        ),
        (
            lambda: polymer_trends(
                "interlock", Rivet(rivet_length_mm=5.0), Die(die_diameter_mm=7.6, die_depth_mm=0.7)
            ),
            "volume ratio for this trend must be between 0.53 and 1.37, got 0.41.*",
        ),
        (
            lambda: polymer_trends("weight", RIVET, DIE),
            "quantity must be one of setting force, .*, got 'weight'",
        ),
        (lambda: setting_force_share(1.1), "share of the stroke must be between 0 and 1, got 1.1"),
        (lambda: setting_stage(-0.1), "share of the stroke must be between 0 and 1, got -0.1"),
        (
            lambda: head_pressure_mpa(force_n=44, head_diameter_mm=7.75),
            "setting force must be between 1000 N and 200000 N, got 44 N",
        ),
    ],
)
def test_outside_the_range_is_refused(call, sentence):
    """A trend never leaves the rows it was made from."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        call()
