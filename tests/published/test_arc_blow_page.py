"""Manual page on arc blow. Read."""

from dataclasses import replace

import numpy as np

from secondplate import bench
from secondplate.inspection import weld_sign

SOURCE = "arc_blow_page"


def test_one_sided_collar():
    """Arc blow melts one side more; two symmetric earth clamps, added mass or a turned gun help."""
    sign = weld_sign("one_sided")
    assert sign.source == SOURCE
    assert "two earth clamps symmetrically" in sign.correction
    assert "grows with the current" in sign.note


def test_slug_of_the_base_is_a_good_weld():
    """A pulled-out slug or a broken shank is the sign of a good weld."""
    assert weld_sign("slug").source == SOURCE
    assert weld_sign("slug").correction == ""


def test_blow_grows_with_the_current_on_the_bench():
    """The page: the effect grows with current, and two clamps set symmetrically take it away."""
    chart = bench.chart_settings(stud_diameter_mm=6)
    job = bench.WeldJob(
        head_diameter_mm=7.75, web_mm=1.1, rivet_hold_n=2000.0, current_share=1.0, voltage_v=30.0
    )
    one = replace(chart, earth="one clamp, to one side", current_a=np.linspace(660, 850, 20), time_ms=20.0)
    gap_deg = bench.weld(one, job, seed=None, number=1).collar_gap_deg
    assert np.all(np.diff(gap_deg) >= 0)
    assert gap_deg[-1] > gap_deg[0] > 0
    two = replace(chart, current_a=650.0)
    assert bench.weld(two, job, seed=None, number=1).collar_gap_deg == 0
    back = bench.right_direction(replace(two, earth="one clamp, to one side"), two, job)
    assert back == {"earth": "better"}
