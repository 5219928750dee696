"""Safety numbers: each has a sentence and a source, and the worse of two always shows."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.cautions import (
    ARC_PROCESSES,
    CAUTIONS,
    HAZARDS,
    NOISE_RULES,
    cautions_about,
    minimum_shade,
    noise_time_h,
)


@pytest.mark.parametrize("caution", CAUTIONS, ids=lambda caution: caution.name)
def test_each_caution_is_one_sentence(caution):
    """Each caution is a sentence for tired readers: short, with a full stop."""
    assert caution.sentence[0].isupper()
    assert caution.sentence.endswith(".")
    assert len(caution.sentence) < 130


@pytest.mark.parametrize("hazard", HAZARDS)
def test_each_hazard_has_cautions(hazard):
    """Each hazard leads to its own cautions."""
    assert {caution.hazard for caution in cautions_about(hazard)} == {hazard}


def test_unknown_hazard_is_refused():
    """An unknown hazard is refused with the list."""
    with pytest.raises(ValueError, match="^hazard must be one of air, .*, got 'luck'$"):
        cautions_about("luck")


@given(st.floats(80, 130))
def test_recommended_limit_is_never_longer_than_the_legal_one_from_80_to_130(level):
    """From 82 dB(A) on the recommendation allows less time; below both allow more than a shift."""
    legal = noise_time_h(level, rule="legal limit")
    recommended = noise_time_h(level, rule="recommended limit")
    assert recommended < legal
    assert (legal >= 8) == (level <= 90)
    assert (recommended >= 8) == (level <= 85)


def test_noise_on_arrays():
    """Three decibels more halve the recommended time."""
    times = noise_time_h(np.array([85.0, 88.0, 91.0]), rule="recommended limit")
    np.testing.assert_allclose(times, [8, 4, 2], rtol=1e-14)


@pytest.mark.parametrize("rule", NOISE_RULES)
def test_noise_outside_the_table_is_refused(rule):
    """Above 130 dB(A) no time is given at all."""
    with pytest.raises(ValueError, match="must be between 80 dB.A. and 130 dB.A., got 140 dB.A.$"):
        noise_time_h(140, rule=rule)


@pytest.mark.parametrize("process", ARC_PROCESSES)
def test_shade_never_falls_with_current(process):
    """More current never allows a lighter filter."""
    top = {"shielded metal arc": 550, "plasma arc": 800, "air carbon arc": 1000}.get(process, 500)
    shades = [minimum_shade(process=process, current_a=current) for current in range(0, top + 1, 10)]
    assert shades == sorted(shades)


def test_shade_on_a_shared_limit_is_the_darker():
    """At 100 A of plasma arc welding, where two rows meet, the darker counts."""
    assert minimum_shade(process="plasma arc", current_a=100) == 10


def test_shade_beyond_the_table_is_refused():
    """Beyond the last row no shade is given: it is not listed, and not the last one."""
    with pytest.raises(
        ValueError, match="^current of gas metal arc welding must be between 0 A and 500 A, got 600 A$"
    ):
        minimum_shade(process="gas metal arc", current_a=600)
    with pytest.raises(
        ValueError, match="^process must be one of shielded metal arc, .*, got 'stud welding'$"
    ):
        minimum_shade(process="stud welding", current_a=600)
