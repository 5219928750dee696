"""Gas for studs and what it does to the air: limits, round trips, arrays."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate import gas

FLOWS = st.floats(0.5, 60)
ROOMS = st.floats(0.5, 500)


def test_gas_per_stud_adds_the_three_times():
    """Pre-flow, weld and post-flow count alike: 12 L/min for 1.5 s are 0.3 L."""
    assert gas.gas_per_stud_l(flow_l_min=12, pre_flow_s=1, weld_time_ms=0, post_flow_s=0.5) == pytest.approx(
        0.3, rel=1e-14
    )
    only_weld = gas.gas_per_stud_l(flow_l_min=60, pre_flow_s=0, weld_time_ms=1000, post_flow_s=0)
    assert only_weld == pytest.approx(1, rel=1e-14)  # a litre a second


def test_arrays_equal_single_numbers():
    """A class of learners is computed as one learner is."""
    flow, weld = np.array([6.0, 9.0]), np.array([20.0, 100.0])
    together = gas.gas_per_stud_l(flow_l_min=flow, pre_flow_s=1, weld_time_ms=weld, post_flow_s=0.5)
    alone = [
        gas.gas_per_stud_l(flow_l_min=q, pre_flow_s=1, weld_time_ms=t, post_flow_s=0.5)
        for q, t in zip(flow, weld, strict=True)
    ]
    np.testing.assert_allclose(together, alone, rtol=1e-15)  # same arithmetic
    assert gas.studs_per_cylinder(gas_l=3000, gas_per_stud_l=together).tolist() == [
        gas.studs_per_cylinder(gas_l=3000, gas_per_stud_l=one) for one in alone
    ]


@given(st.integers(1, 5000), st.integers(1, 400))
def test_studs_per_cylinder_counts_whole_studs(studs, millilitres):
    """Gas for exactly n studs gives n, and a drop less gives one fewer."""
    per_stud = millilitres / 1000
    assert gas.studs_per_cylinder(gas_l=studs * per_stud, gas_per_stud_l=per_stud) == studs
    assert gas.studs_per_cylinder(gas_l=(studs - 0.001) * per_stud, gas_per_stud_l=per_stud) == studs - 1


def test_empty_cylinder_gives_nothing():
    """At the pressure of change a cylinder gives no gas."""
    assert gas.cylinder_gas_l(water_capacity_l=20, pressure_bar=10, remaining_pressure_bar=10) == 0
    assert gas.studs_per_cylinder(gas_l=0, gas_per_stud_l=0.2) == 0


@given(ROOMS, FLOWS, st.floats(5, 20.5))
def test_time_to_a_limit_and_oxygen_then(room_volume_m3, flow_l_min, limit_percent):
    """At the computed time the oxygen is at the limit."""
    time = gas.time_to_oxygen_limit_min(
        room_volume_m3=room_volume_m3, flow_l_min=flow_l_min, limit_percent=limit_percent
    )
    left = gas.oxygen_percent(room_volume_m3=room_volume_m3, flow_l_min=flow_l_min, time_min=time)
    assert left == pytest.approx(limit_percent, rel=1e-12)  # exact inverse


@given(ROOMS, FLOWS, st.floats(0, 1e4), st.floats(0, 1e4))
def test_oxygen_falls_from_that_of_air_to_its_final_value(room, flow, time, fresh):
    """Oxygen starts at that of air, falls, and never passes the value that fresh air holds in the end."""
    final = gas.OXYGEN_IN_AIR_PERCENT * fresh / (fresh + flow)
    left = gas.oxygen_percent(room_volume_m3=room, flow_l_min=flow, time_min=time, fresh_air_l_min=fresh)
    assert final - 1e-9 <= left <= gas.OXYGEN_IN_AIR_PERCENT + 1e-9  # last digits
    start = gas.oxygen_percent(room_volume_m3=room, flow_l_min=flow, time_min=0, fresh_air_l_min=fresh)
    assert start == pytest.approx(gas.OXYGEN_IN_AIR_PERCENT, rel=1e-12)


@given(ROOMS, FLOWS)
def test_fresh_air_holds_the_limit(room, flow):
    """With the needed fresh air a room ends at the limit, however long the gas flows."""
    fresh = gas.fresh_air_needed_l_min(flow_l_min=flow)
    left = gas.oxygen_percent(room_volume_m3=room, flow_l_min=flow, time_min=1e9, fresh_air_l_min=fresh)
    assert left == pytest.approx(gas.OXYGEN_LIMIT_PERCENT, rel=1e-12)  # steady state


@given(ROOMS, FLOWS, st.floats(0, 500))
def test_half_way_to_the_final_oxygen(room, flow, fresh):
    """After ln 2 changes of air by gas and fresh air together the oxygen is half way to its final value."""
    minutes = np.log(2) * 1000 * room / (flow + fresh)
    left = gas.oxygen_percent(room_volume_m3=room, flow_l_min=flow, time_min=minutes, fresh_air_l_min=fresh)
    final = gas.OXYGEN_IN_AIR_PERCENT * fresh / (fresh + flow)
    assert left == pytest.approx((gas.OXYGEN_IN_AIR_PERCENT + final) / 2, rel=1e-12)  # exponential decay


def test_half_the_room_takes_half_the_time():
    """Time goes with the volume and against the flow."""
    whole = gas.time_to_oxygen_limit_min(room_volume_m3=40, flow_l_min=8)
    assert gas.time_to_oxygen_limit_min(room_volume_m3=20, flow_l_min=8) == pytest.approx(
        whole / 2, rel=1e-14
    )
    assert gas.time_to_oxygen_limit_min(room_volume_m3=40, flow_l_min=16) == pytest.approx(
        whole / 2, rel=1e-14
    )


@pytest.mark.parametrize(
    ("call", "complaint"),
    [
        (
            lambda: gas.gas_per_stud_l(flow_l_min=0, pre_flow_s=1, weld_time_ms=20, post_flow_s=1),
            "flow must be above 0 L/min, got 0 L/min",
        ),
        (
            lambda: gas.gas_per_stud_l(flow_l_min=8, pre_flow_s=-1, weld_time_ms=20, post_flow_s=1),
            "pre-flow must be at least 0 s, got -1 s",
        ),
        (
            lambda: gas.cylinder_gas_l(water_capacity_l=20, pressure_bar=400),
            "pressure must be between 0 bar and 300 bar, got 400 bar",
        ),
        (
            lambda: gas.cylinder_gas_l(water_capacity_l=20, pressure_bar=100, remaining_pressure_bar=110),
            "pressure minus remaining pressure must be at least 0 bar, got -10 bar",
        ),
        (
            lambda: gas.studs_per_cylinder(gas_l=100, gas_per_stud_l=0),
            "gas per stud must be above 0 L, got 0 L",
        ),
        (
            lambda: gas.time_to_oxygen_limit_min(room_volume_m3=10, flow_l_min=5, limit_percent=21),
            "oxygen limit must be between 1 % and 20.9 %, got 21 %",
        ),
        (
            lambda: gas.oxygen_percent(room_volume_m3=0, flow_l_min=5, time_min=1),
            "room volume must be above 0 m3, got 0 m3",
        ),
    ],
)
def test_out_of_range_is_refused(call, complaint):
    """Each limit is stated with name, limit and what was got."""
    with pytest.raises(ValueError, match=f"^{complaint}$"):
        call()


def test_bands_of_the_settings():
    """The bands that pages show hold what shops use and are not beside themselves."""
    assert gas.FLOW_L_MIN.low < gas.FLOW_L_MIN.high
    assert gas.PRE_FLOW_S.contains(1)
    assert gas.POST_FLOW_S.contains(0.5)
