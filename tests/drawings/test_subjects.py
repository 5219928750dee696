"""The pictures agree with the library that they draw: collar signs, rules, places and numbers."""

import numpy as np
import pytest

from drawings import collar, energy_chart, field_by_distance
from drawings.collar_view import AROUND
from drawings.collars import LOOKS, SHAPES
from drawings.marks import number
from drawings.rule_fields import rule_fields
from drawings.scales import ROUND_CLOSE, round_up, steps
from secondplate.electrics import pair_field_ut
from secondplate.inspection import COLLAR_SIGNS
from secondplate.stud_weld import set_up

STAINLESS_ON_HEAD = {"stud_material": "austenitic stainless", "base": "steel rivet head"}
GAS_PROCESSES = ("drawn arc with gas", "short cycle")


def test_every_collar_sign_has_a_look():
    """The drawn looks are exactly the collar signs of the library, in its order."""
    assert list(SHAPES) == [sign.id for sign in COLLAR_SIGNS]
    assert list(LOOKS) == list(SHAPES)


@pytest.mark.parametrize("sign", COLLAR_SIGNS, ids=lambda sign: sign.id)
def test_a_look_to_judge_does_not_name_the_fault(sign):
    """Without its name, a picture's words give away neither cause nor correction nor the sign's sentence."""
    words = collar(sign.id, named=False).alt.lower()
    for told in (sign.sign, sign.cause, sign.correction):
        assert not told or told.lower() not in words
    assert "cold" not in words
    assert "hot" not in words


def test_looks_with_a_wrong_length_are_drawn_longer_or_shorter():
    """Signs that say too long or too short are drawn so, the good one ends at the mark."""
    for sign in COLLAR_SIGNS:
        longer = SHAPES[sign.id].longer_mm
        if "too long" in sign.sign:
            assert longer > 0
        if "too short" in sign.sign:
            assert longer < 0
    assert SHAPES["good"].longer_mm == 0


def test_the_hot_collar_is_low_and_wide_and_the_cold_one_small():
    """Against the good collar the hot one is wider and lower, the cold one narrower and lower."""
    good, hot, cold = (SHAPES[name] for name in ("good", "hot", "cold"))
    assert hot.width_mm(AROUND).min() > good.width_mm(AROUND).max()
    assert hot.height_mm(AROUND).max() < good.height_mm(AROUND).min()
    assert cold.width_mm(AROUND).max() < good.width_mm(AROUND).min()
    assert cold.height_mm(AROUND).max() < good.height_mm(AROUND).min()


@pytest.mark.parametrize("sign_id", ["one_sided", "partial"])
def test_one_sided_collars_are_missing_at_the_right(sign_id):
    """The one-sided and the partial collar have nothing at the right and their most at the left."""
    right, left = SHAPES[sign_id].width_mm(np.array([0.0, np.pi]))
    # Exactly nothing: the shape is cut off at zero.
    np.testing.assert_allclose(right, 0, atol=1e-12)
    assert left > 1


@pytest.mark.parametrize("stud_diameter_mm", [4, 5, 6, 8])
def test_every_rule_of_the_library_is_a_field(stud_diameter_mm):
    """Each current band and each time band of the library's advice appears in a field of the chart."""
    fields = rule_fields(stud_diameter_mm=stud_diameter_mm, processes=GAS_PROCESSES, **STAINLESS_ON_HEAD)
    for process in GAS_PROCESSES:
        advice = set_up(stud_diameter_mm=stud_diameter_mm, process=process, **STAINLESS_ON_HEAD)
        for rule in advice.current_a.rules:
            assert rule.band in [field.current_a for field in fields]
        for rule in advice.time_ms.rules:
            assert rule.band in [field.time_ms for field in fields]


def test_a_rule_without_a_time_reaches_over_the_process():
    """The short-cycle rule of at least 100 A a millimetre holds no time: its field spans 10 to 100 ms."""
    fields = rule_fields(stud_diameter_mm=6, processes=("short cycle",), **STAINLESS_ON_HEAD)
    [field] = [field for field in fields if field.any_time]
    assert "100 A" in field.name
    assert (field.time_ms.low, field.time_ms.high) == (10, 100)


def test_rules_from_different_places_are_never_mixed():
    """The shop's current is paired with the shop's time only."""
    fields = rule_fields(stud_diameter_mm=6, processes=GAS_PROCESSES, **STAINLESS_ON_HEAD)
    times = [field.time_ms.best for field in fields if field.current_a.best == 600]
    assert times == [30]


def test_a_setting_between_two_rules_is_inside_neither():
    """Current of one rule with time of another is told as outside every field."""
    words = energy_chart(stud_diameter_mm=6, current_a=800, time_ms=110).alt
    assert "setting inside" not in words
    assert words.count("setting outside") == words.count(" ms, setting")


def test_the_pairs_distance_gives_the_level_for_implants():
    """The library's pair field at the distance told in the words is the level of 0.5 mT."""
    words = field_by_distance(current_a=1000, spacing_m=0.05).alt
    told_m = float(words.rpartition("same level at ")[2].split()[0])
    # The words round to 0.01 m; the field goes with the inverse square, so twice that share.
    level_ut = pair_field_ut(current_a=1000, distance_m=told_m, spacing_m=0.05)
    np.testing.assert_allclose(level_ut, 500, rtol=2 * 0.005 / told_m)


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (2.0, 2, "2"),
        (0.375, 2, "0.38"),
        (-1, 2, "\N{MINUS SIGN}1"),
        (-0.001, 2, "0"),
        (540.4, 0, "540"),
        (600, 0, "600"),
    ],
)
def test_numbers_are_written_short(value, digits, text):
    """No trailing zeros, a real minus sign, never minus nought, and no nought lost from 600."""
    assert number(value, digits=digits) == text


@pytest.mark.parametrize(
    ("value", "end"), [(37.5, 50), (50, 50), (0.3, 0.3), (71, 100), (1.0, 1.0), (1.01, 1.5)]
)
def test_scales_end_on_a_round_number_not_below_the_value(value, end):
    """The end of a scale is the next round number."""
    # Exact but for binary fractions.
    np.testing.assert_allclose(round_up(value, among=ROUND_CLOSE), end, rtol=1e-12)


@pytest.mark.parametrize("end", [0.3, 1, 1.5, 7, 50, 700])
def test_steps_of_a_scale_are_even_and_few(end):
    """Steps start at 0, stay within the scale and are at most five after the 0."""
    marks = steps(end)
    assert marks[0] == 0
    assert marks[-1] <= end
    assert 2 <= len(marks) <= 6
    # Even spacing but for binary fractions.
    np.testing.assert_allclose(np.diff(marks), marks[1], rtol=1e-9)
