"""Duty cycle, cables and fields: limits, round trips, arrays."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate import electrics

CURRENTS = st.floats(10, 3000)
SHARES = st.floats(1, 100)


@given(CURRENTS, SHARES, SHARES)
def test_duty_cycle_there_and_back(rated, rated_share, share):
    """The current at a duty cycle has that duty cycle."""
    current = electrics.current_at_duty_cycle_a(
        rated_current_a=rated, rated_duty_cycle_percent=rated_share, duty_cycle_percent=share
    )
    back = electrics.duty_cycle_percent(
        rated_current_a=rated, rated_duty_cycle_percent=rated_share, current_a=current
    )
    assert back == pytest.approx(share, rel=1e-12)  # exact inverse below 100 %


@pytest.mark.parametrize(("current_a", "share"), [(1000, 6.40), (800, 10.0), (600, 17.78), (100, 100)])
def test_duty_cycle_of_an_800_a_source(current_a, share):
    """A source of 800 A at 10 %, worked out separately; at small currents it never passes 100 %."""
    found = electrics.duty_cycle_percent(
        rated_current_a=800, rated_duty_cycle_percent=10, current_a=current_a
    )
    assert found == pytest.approx(share, abs=0.005)  # two decimals


@pytest.mark.parametrize(("time_ms", "rate"), [(20, 300), (100, 60)])
def test_studs_per_minute(time_ms, rate):
    """At 10 % the heat allows 300 studs a minute of 20 ms and 60 of 100 ms."""
    found = electrics.studs_per_minute(duty_cycle_percent=10, weld_time_ms=time_ms)
    assert found == pytest.approx(rate, rel=1e-14)


@pytest.mark.parametrize(("area_mm2", "drop_v"), [(25, 5.517), (35, 3.941), (50, 2.759), (70, 1.970)])
def test_voltage_drop_of_a_loop_of_10_m(area_mm2, drop_v):
    """800 A through a loop of 10 m at 20 C, worked out separately for four cables."""
    found = electrics.voltage_drop_v(current_a=800, loop_length_m=10, area_mm2=area_mm2)
    assert found == pytest.approx(drop_v, abs=5e-4)  # three decimals


@given(st.floats(1, 100), st.floats(10, 120), st.floats(-30, 119))
def test_warm_copper_resists_more(length, area, temperature):
    """Resistance rises with temperature and goes with the length."""
    cold = electrics.cable_resistance_milliohm(loop_length_m=length, area_mm2=area, temperature_c=temperature)
    warm = electrics.cable_resistance_milliohm(
        loop_length_m=length, area_mm2=area, temperature_c=temperature + 1
    )
    double = electrics.cable_resistance_milliohm(
        loop_length_m=2 * length, area_mm2=area, temperature_c=temperature
    )
    assert warm > cold
    assert double == pytest.approx(2 * cold, rel=1e-12)  # proportional


@given(CURRENTS, st.floats(0.02, 5))
def test_distance_there_and_back(current, distance):
    """The distance for the field at a distance is that distance."""
    field = electrics.magnetic_field_ut(current_a=current, distance_m=distance)
    assert electrics.distance_for_field_m(current_a=current, field_ut=field) == pytest.approx(
        distance, rel=1e-12
    )


@given(CURRENTS, st.floats(0.01, 0.2), st.floats(2, 20))
def test_pair_lies_between_its_exact_extremes(current, spacing, times):
    """The pair formula lies between the exact field across and along the plane of the cables."""
    distance = times * spacing * (1 + 1e-9)
    pair = electrics.pair_field_ut(current_a=current, distance_m=distance, spacing_m=spacing)
    near = electrics.magnetic_field_ut(current_a=current, distance_m=distance - spacing / 2)
    far = electrics.magnetic_field_ut(current_a=current, distance_m=distance + spacing / 2)
    along = near - far
    across = pair / (1 + (spacing / 2 / distance) ** 2)
    assert across < pair < along
    assert along / pair < 1.067  # 1 / (1 - 1/16) at twice the spacing
    single = electrics.magnetic_field_ut(current_a=current, distance_m=distance)
    assert pair <= single / 2


def test_arrays_equal_single_numbers():
    """A class of learners is computed as one learner is."""
    current = np.array([500.0, 800.0, 1000.0])
    for together, one in (
        (
            electrics.duty_cycle_percent(rated_current_a=800, rated_duty_cycle_percent=10, current_a=current),
            lambda a: electrics.duty_cycle_percent(
                rated_current_a=800, rated_duty_cycle_percent=10, current_a=a
            ),
        ),
        (
            electrics.voltage_drop_v(current_a=current, loop_length_m=12, area_mm2=50),
            lambda a: electrics.voltage_drop_v(current_a=a, loop_length_m=12, area_mm2=50),
        ),
        (
            electrics.magnetic_field_ut(current_a=current, distance_m=0.3),
            lambda a: electrics.magnetic_field_ut(current_a=a, distance_m=0.3),
        ),
    ):
        np.testing.assert_allclose(together, [one(a) for a in current], rtol=1e-15)  # same arithmetic


@pytest.mark.parametrize(
    ("call", "complaint"),
    [
        (
            lambda: electrics.duty_cycle_percent(
                rated_current_a=800, rated_duty_cycle_percent=120, current_a=600
            ),
            "rated duty cycle must be between 0 % and 100 %, got 120 %",
        ),
        (
            lambda: electrics.studs_per_minute(duty_cycle_percent=0, weld_time_ms=20),
            "duty cycle must be above 0 %, got 0 %",
        ),
        (
            lambda: electrics.cable_resistance_milliohm(loop_length_m=10, area_mm2=50, temperature_c=200),
            "temperature must be between -30 C and 120 C, got 200 C",
        ),
        (
            lambda: electrics.voltage_drop_v(current_a=-1, loop_length_m=10, area_mm2=50),
            "current must be at least 0 A, got -1 A",
        ),
        (
            lambda: electrics.magnetic_field_ut(current_a=800, distance_m=0),
            "distance must be at least 0.01 m, got 0 m",
        ),
        (
            lambda: electrics.pair_field_ut(current_a=800, distance_m=0.1, spacing_m=0.08),
            "distance over spacing must be at least 2, got 1.25",
        ),
        (
            lambda: electrics.distance_for_field_m(current_a=800, field_ut=0),
            "field must be above 0 uT, got 0 uT",
        ),
    ],
)
def test_out_of_range_is_refused(call, complaint):
    """Each limit is stated with name, limit and what was got."""
    with pytest.raises(ValueError, match=f"^{complaint}$"):
        call()
