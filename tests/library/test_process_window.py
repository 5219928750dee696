"""Process window: cold, sound, hot and burnt through over current and time."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.process_window import (
    CURRENT_LIMITS_A,
    LIMITS,
    STATES,
    TIME_LIMITS_MS,
    WEB_LIMITS_MM,
    boundary_current_a,
    chart_points,
    head_melted_depth_mm,
    process_window,
    state_of_depth,
)

SIZES_MM = (3, 4, 5, 6)
fluxes = st.floats(0, 2000)
times = st.floats(*TIME_LIMITS_MS)
webs = st.floats(*WEB_LIMITS_MM)


@pytest.mark.parametrize("size_mm", SIZES_MM)
def test_charts_of_short_cycle_lie_inside(size_mm):
    """The printed short-cycle settings and the shop's lie in the sound field of a usual head."""
    inside = [point for point in chart_points(size_mm) if point.process == "short cycle"]
    assert inside
    for point in inside:
        window = process_window(
            stud_diameter_mm=size_mm, web_mm=1.1, current_a=point.current_a, time_ms=point.time_ms
        )
        assert str(window.state) == "sound"


@pytest.mark.parametrize("size_mm", SIZES_MM)
def test_drawn_arc_with_gas_is_too_much_for_a_rivet_head(size_mm):
    """The chart of the long arc, made for thick base, is hot or worse on a web of 1.1 mm."""
    for point in chart_points(size_mm):
        if point.process == "drawn arc with gas":
            window = process_window(
                stud_diameter_mm=size_mm, web_mm=1.1, current_a=point.current_a, time_ms=point.time_ms
            )
            assert str(window.state) in ("hot", "burnt through")


def test_shop_setting_is_on_the_map_of_the_six_millimetre_stud():
    """600 A and 30 ms is listed as the shop gives it, with no tenth taken off."""
    (shop,) = [point for point in chart_points(6) if point.rule.startswith("shop")]
    assert (shop.current_a, shop.time_ms, shop.basis) == (600.0, 30.0, "common practice")


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


@given(fluxes, times, webs, st.floats(0, 500), st.floats(0, 50))
def test_more_heat_never_melts_less(flux, time_ms, web_mm, more_flux, more_ms):
    """Depth rises with flux and time, and is a number between nothing and the web."""
    depth = head_melted_depth_mm(heat_flux_w_mm2=flux, time_ms=time_ms, web_mm=web_mm)
    hotter = head_melted_depth_mm(heat_flux_w_mm2=min(flux + more_flux, 2000), time_ms=time_ms, web_mm=web_mm)
    longer = head_melted_depth_mm(
        heat_flux_w_mm2=flux, time_ms=min(time_ms + more_ms, TIME_LIMITS_MS[1]), web_mm=web_mm
    )
    assert 0 <= depth <= web_mm
    assert hotter >= depth - 1e-9
    assert longer >= depth - 1e-9


def test_states_follow_one_another_along_the_current():
    """With rising current the head goes from cold over sound and hot to burnt through, never back."""
    window = process_window(
        stud_diameter_mm=6, web_mm=1.1, current_a=np.linspace(*CURRENT_LIMITS_A, 400), time_ms=30.0
    )
    order = [STATES.index(state) for state in window.state]
    assert order == sorted(order)
    assert set(window.state) == set(STATES)


def test_fringe_lies_along_the_boundaries():
    """Doubtful places touch a boundary on either side; the middle of the sound field is not among them."""
    window = process_window(
        stud_diameter_mm=6, web_mm=1.1, current_a=np.linspace(300, 1100, 801), time_ms=30.0
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


def test_thin_web_leaves_no_window():
    """Under half a millimetre of web no depth is both enough and little enough."""
    assert not np.any(state_of_depth(np.linspace(0, 0.45, 200), web_mm=0.45) == STATES.index("sound"))


@pytest.mark.parametrize("limit", ["cold limit", "hot limit"])
def test_boundary_leads_back_to_its_depth(limit):
    """The current of a boundary melts just to it, by the best share of heat."""
    times_ms = np.array([25.0, 30.0, 40.0, 50.0])
    depth_mm = LIMITS[limit].best
    band = boundary_current_a(depth_mm=depth_mm, stud_diameter_mm=6, web_mm=1.1, time_ms=times_ms)
    assert np.all((band.low < band.best) & (band.best < band.high))
    assert np.all(np.diff(band.best) < 0)
    reached = process_window(stud_diameter_mm=6, web_mm=1.1, current_a=band.best, time_ms=times_ms)
    np.testing.assert_allclose(reached.melted_depth_mm.best, depth_mm, rtol=1e-3)  # halving stops at 2e-9


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"stud_diameter_mm": 7}, "stud diameter must be one of 3, 4, 5, 6 mm, got 7 mm"),
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


def test_boundary_deeper_than_the_web_is_refused():
    """A depth beyond the web is no depth of it."""
    with pytest.raises(ValueError, match="^depth over web must be between 0 and 1, got 1.5$"):
        boundary_current_a(depth_mm=1.5, stud_diameter_mm=6, web_mm=1.0, time_ms=30)
    with pytest.raises(ValueError, match="^depth must be above 0 mm, got 0 mm$"):
        boundary_current_a(depth_mm=0, stud_diameter_mm=6, web_mm=1.0, time_ms=30)
