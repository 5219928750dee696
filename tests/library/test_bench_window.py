"""Window of the bench: which way a change leads, what it gains, and the map of the day."""

from dataclasses import replace

import numpy as np

from secondplate import bench
from tests.bench_welds import CHART, TRUE_JOB


def test_direction_of_a_step_too_far():
    """From cold a leap that ends hot still counts as the right way, a step down as the wrong one."""
    cold = replace(CHART, current_a=400.0)
    assert bench.right_direction(cold, replace(cold, current_a=1000.0), TRUE_JOB) == {"current_a": "better"}
    assert bench.right_direction(cold, replace(cold, current_a=380.0), TRUE_JOB) == {"current_a": "worse"}


def test_directions_are_told_one_by_one():
    """Two changes at once are judged each alone; what does not matter is no change."""
    cold = replace(CHART, current_a=400.0)
    after = replace(cold, time_ms=36.0, tilt_deg=10.0, flow_l_min=9.0)
    expected = {"time_ms": "better", "tilt_deg": "worse", "flow_l_min": "no change"}
    assert bench.right_direction(cold, after, TRUE_JOB) == expected
    assert bench.right_direction(cold, cold, TRUE_JOB) == {}


def test_direction_is_seen_far_outside():
    """Where nothing melts yet, and where all is burnt, the way to the window is still seen."""
    far = replace(CHART, current_a=60.0)
    assert bench.right_direction(far, replace(far, current_a=100.0), TRUE_JOB) == {"current_a": "better"}
    burnt = replace(CHART, current_a=1500.0)
    assert bench.right_direction(burnt, replace(burnt, current_a=1400.0), TRUE_JOB) == {"current_a": "better"}


def test_expected_improvement_is_the_way_gone():
    """The way from cold into the window is gained, and lost on the way back; inside nothing is gained."""
    cold = replace(CHART, current_a=400.0)
    gained = bench.expected_improvement(cold, CHART, TRUE_JOB)
    assert gained > 0
    assert bench.expected_improvement(CHART, cold, TRUE_JOB) == -gained
    assert bench.expected_improvement(CHART, replace(CHART, current_a=620.0), TRUE_JOB) == 0


def test_map_of_the_day_shows_the_shown_current():
    """The window over the shown current lies higher on a weak machine than on a true one."""
    weak = bench.draw_job(b"a day at the shop", machine="weak")
    currents = np.linspace(300, 1300, 101)

    def sound(job):
        found = bench.window(job, stud_diameter_mm=6, current_a=currents, time_ms=30.0)
        return currents[found.state == "sound"]

    assert sound(weak)[0] > sound(TRUE_JOB)[0]
    assert sound(weak)[-1] > sound(TRUE_JOB)[-1]
