"""The map of the process window: its borders are where the library changes its mind."""

import numpy as np
import pytest

from drawings.state_map import state_map, strips
from secondplate.process_window import STATES, process_window


def find(current_a, time_ms):
    """Ask the library about a 6 mm stud on a web of 1.1 mm."""
    return process_window(stud_diameter_mm=6, web_mm=1.1, current_a=current_a, time_ms=time_ms)


@pytest.fixture(scope="module")
def plan():
    """Give the map of the usual stud."""
    return state_map(find, longest_ms=72, largest_a=1000, limits_a=(50.0, 1500.0))


def test_state_changes_across_every_border(plan):
    """Half a per cent below and above each border the library gives two different states."""
    # Five halvings of a step of about 4 % leave less than 0.2 %.
    for level in range(1, len(STATES)):
        row, column = np.nonzero(np.isfinite(plan.borders_a[level - 1]))
        border, times = plan.borders_a[level - 1, row, column], plan.times_ms[column]
        below, above = find(border * 0.995, times).state, find(np.minimum(border * 1.005, 1500), times).state
        assert (below != above).all()
        assert (above == STATES[level]).mean() > 0.9


def test_doubt_changes_across_its_borders(plan):
    """Half a per cent either side of each edge of the fringe the library's doubt differs."""
    row, column = np.nonzero(np.isfinite(plan.borders_a[-1]))
    border, times = plan.borders_a[-1, row, column], plan.times_ms[column]
    assert (find(border * 0.995, times).doubtful != find(border * 1.005, times).doubtful).all()


def test_strips_hold_what_the_map_holds(plan):
    """The area of the strips of a state is that of its places in the map."""
    for level in range(1, len(STATES)):
        [strip] = strips(plan, level - 1)
        drawn = np.trapezoid(strip[:, 2] - strip[:, 1], strip[:, 0])
        held = np.trapezoid(
            np.trapezoid(plan.masks[level - 1].astype(float), plan.currents_a, axis=0), plan.times_ms
        )
        # Steps of 4 % in current and 6 % in time.
        np.testing.assert_allclose(drawn, held, rtol=0.05)


def test_state_at_a_place_is_the_librarys(plan):
    """At its own places the map answers as the library does."""
    currents, times = plan.currents_a[[5, 40, 60, 79]], plan.times_ms[[50, 40, 55, 59]]
    index, doubtful = plan.at(currents, times)
    found = find(currents, times)
    assert [STATES[i] for i in index] == found.state.tolist()
    assert doubtful.tolist() == found.doubtful.tolist()
