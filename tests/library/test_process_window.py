"""Process window: cold, sound, hot and burnt through over current and time."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.process_window import (
    CURRENT_LIMITS_A,
    LIMITS,
    STATES,
    boundary_current_a,
    chart_points,
    process_window,
    state_of_melt,
)

SIZES_MM = (3, 4, 5, 6)
ends = st.sampled_from(("low", "best", "high"))


@pytest.mark.parametrize("size_mm", SIZES_MM)
def test_charts_of_short_cycle_lie_inside(size_mm):
    """The printed short-cycle settings and the shop's lie in the sound field of a usual head."""
    inside = [point for point in chart_points(size_mm) if point.process == "short cycle"]
    assert inside
    for point in inside:
        window = process_window(
            stud_diameter_mm=size_mm,
            web_mm=1.1,
            current_a=point.current_a,
            time_ms=point.time_ms,
        )
        assert str(window.state) == "sound"


@pytest.mark.parametrize("size_mm", SIZES_MM)
def test_drawn_arc_with_gas_is_too_much_for_a_rivet_head(size_mm):
    """The chart of the long arc, made for thick base, is hot or worse on a web of 1.1 mm."""
    for point in chart_points(size_mm):
        if point.process == "drawn arc with gas":
            window = process_window(
                stud_diameter_mm=size_mm,
                web_mm=1.1,
                current_a=point.current_a,
                time_ms=point.time_ms,
            )
            assert str(window.state) in ("hot", "burnt through")


def test_shop_setting_is_on_the_map_of_the_six_millimetre_stud():
    """600 A and 30 ms is listed as the shop gives it, with no tenth taken off."""
    (shop,) = [point for point in chart_points(6) if point.rule.startswith("shop")]
    assert (shop.current_a, shop.time_ms, shop.basis) == (
        600.0,
        30.0,
        "common practice",
    )


def test_misprinted_time_stands_beside_the_likely_one():
    """The 5 mm pin keeps its printed 150 ms and the 100 ms read between its neighbours, side by side."""
    assert {point.time_ms for point in chart_points(5) if point.process == "drawn arc with gas"} == {
        150.0,
        100.0,
    }


def test_a_tenth_comes_off_the_current_only():
    """A stainless stud has a tenth less current at the charted time."""
    point = chart_points(4)[0]
    assert (point.current_a, point.time_ms) == (540.0, 15.0)


@given(st.floats(0, 2), st.floats(0, 3), ends, ends, ends)
def test_more_melt_is_never_colder(depth_mm, web_mm, cold, hot, least):
    """With any limits, a deeper melt over a thinner web is no colder state."""
    limits = {"cold": cold, "hot": hot, "least": least}
    state = state_of_melt(depth_mm, web_mm, **limits)
    assert state_of_melt(depth_mm + 0.1, web_mm, **limits) >= state
    assert state_of_melt(depth_mm, max(web_mm - 0.1, 0.0), **limits) >= state


@given(
    st.floats(*CURRENT_LIMITS_A),
    st.floats(2, 200),
    st.floats(0.3, 3),
    st.floats(0, 300),
    st.floats(0, 60),
)
def test_more_current_or_time_is_never_colder(current_a, time_ms, web_mm, more_a, more_ms):
    """Whatever the web, more current or time melts no less and leaves no more web."""

    def window(current_a, time_ms):
        return process_window(stud_diameter_mm=5, web_mm=web_mm, current_a=current_a, time_ms=time_ms)

    start = window(current_a, time_ms)
    hotter = window(min(current_a + more_a, CURRENT_LIMITS_A[1]), time_ms)
    longer = window(current_a, min(time_ms + more_ms, 200.0))
    for more in (hotter, longer):
        assert more.melted_depth_mm.best >= start.melted_depth_mm.best - 1e-9
        assert more.web_left_mm.best <= start.web_left_mm.best + 1e-9
        assert STATES.index(more.state) >= STATES.index(start.state)


def test_states_follow_one_another_along_the_current():
    """With rising current the head goes from cold over sound and hot to burnt through, never back."""
    window = process_window(
        stud_diameter_mm=6,
        web_mm=1.1,
        current_a=np.linspace(*CURRENT_LIMITS_A, 400),
        time_ms=30.0,
    )
    order = [STATES.index(state) for state in window.state]
    assert order == sorted(order)
    assert set(window.state) == set(STATES)


def test_fringe_lies_along_the_boundaries():
    """Doubtful places touch a boundary on either side; the middle of the sound field is not among them."""
    window = process_window(
        stud_diameter_mm=6,
        web_mm=1.1,
        current_a=np.linspace(300, 1100, 801),
        time_ms=30.0,
    )
    depth, sound = window.melted_depth_mm.best, window.state == "sound"
    assert window.doubtful[sound & (depth < LIMITS["cold limit"].high - 1e-3)].all()
    middle = np.abs(depth - np.sqrt(LIMITS["cold limit"].best * LIMITS["hot limit"].best)) < 0.02
    assert middle.any()
    assert not window.doubtful[middle].any()


def test_map_of_a_field():
    """Currents down and times across give a field of that shape."""
    window = process_window(
        stud_diameter_mm=5,
        web_mm=1.0,
        current_a=np.linspace(200, 1000, 30)[:, None],
        time_ms=np.linspace(5, 60, 40),
    )
    assert window.state.shape == window.doubtful.shape == window.melted_depth_mm.best.shape == (30, 40)


def test_deep_melt_is_hot_however_thick_the_web():
    """Beyond the hot limit a weld is hot though plenty of web is left."""
    assert STATES[int(state_of_melt(LIMITS["hot limit"].best + 0.01, 2.0))] == "hot"
    assert STATES[int(state_of_melt(LIMITS["hot limit"].best - 0.01, 2.0))] == "sound"


def test_thin_web_leaves_no_window():
    """A web of 0.4 mm has no current that is neither cold nor hot."""
    window = process_window(
        stud_diameter_mm=6,
        web_mm=0.4,
        current_a=np.linspace(*CURRENT_LIMITS_A, 300),
        time_ms=30.0,
    )
    assert "sound" not in window.state


@pytest.mark.parametrize("state", STATES[1:])
def test_boundary_parts_the_states(state):
    """A hundredth under the current of a boundary the state is not reached, a hundredth above it is."""
    times_ms = np.array([25.0, 30.0, 40.0, 50.0])
    band = boundary_current_a(state, stud_diameter_mm=6, web_mm=1.1, time_ms=times_ms)
    assert np.all((band.low < band.best) & (band.best < band.high))
    assert np.all(np.diff(band.best) < 0)
    for factor, reached in ((0.99, False), (1.01, True)):
        window = process_window(
            stud_diameter_mm=6,
            web_mm=1.1,
            current_a=factor * band.best,
            time_ms=times_ms,
        )
        level = np.array([STATES.index(each) for each in window.state])
        assert ((level >= STATES.index(state)) == reached).all()


def test_boundary_that_is_not_reached():
    """In 2 ms no flux of the model burns a thick web through: the current of its greatest flux is given."""
    band = boundary_current_a("burnt through", stud_diameter_mm=6, web_mm=3.0, time_ms=2.0)
    assert band.best == pytest.approx(2000 / 0.425 / 30 * np.pi / 4 * 49, rel=1e-6)  # best share, 30 V


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        (
            {"stud_diameter_mm": 7},
            "stud diameter must be one of 3, 4, 5, 6 mm, got 7 mm",
        ),
        ({"web_mm": 0.1}, "web must be between 0.3 mm and 3 mm, got 0.1 mm"),
        ({"current_a": 20}, "current must be between 50 A and 1500 A, got 20 A"),
        ({"time_ms": 1}, "time must be between 2 ms and 200 ms, got 1 ms"),
        ({"time_ms": float("nan")}, "time must be finite, got nan ms"),
        ({"voltage_v": 60}, "voltage must be between 10 V and 50 V, got 60 V"),
    ],
)
def test_refusals(change, sentence):
    """Each bad number is refused in one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        process_window(**({"stud_diameter_mm": 6, "web_mm": 1.1, "current_a": 600, "time_ms": 30} | change))


def test_names_are_refused():
    """Unknown states and ends of limits are refused with the list."""
    with pytest.raises(ValueError, match="^state must be one of sound, hot, burnt through, got 'cold'$"):
        boundary_current_a("cold", stud_diameter_mm=6, web_mm=1.0, time_ms=30)
    with pytest.raises(ValueError, match="^cold limit must be one of low, best, high, got 'middle'$"):
        state_of_melt(0.1, 1.0, cold="middle")
    with pytest.raises(ValueError, match="^melted depth must be at least 0 mm, got -1 mm$"):
        state_of_melt(-1.0, 1.0)
    with pytest.raises(ValueError, match="^web left must be at least 0 mm, got -1 mm$"):
        state_of_melt(1.0, -1.0)
