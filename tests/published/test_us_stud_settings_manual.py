"""Manual with recommended stud-welding settings. Metric table, lift and plunge read."""

from dataclasses import replace

import pytest

from secondplate import bench
from secondplate.stud_weld import set_up

SOURCE = "us_stud_settings_manual"


def _best(advice):
    """Start values of this source."""
    return [rule.band.best for rule in advice.rules if rule.source == SOURCE]


@pytest.mark.parametrize(
    ("diameter_mm", "current_a", "time_ms"),
    [
        (6, 350, 250),
        (8, 420, 310),
        (10, 580, 430),
        (12, 720, 500),
        (14, 880, 590),
        (16, 1040, 660),
        (20, 1440, 780),
        (24, 1900, 850),
    ],
)
def test_metric_table(diameter_mm, current_a, time_ms):
    """Current and time of the metric table, ferrule."""
    found = set_up(
        stud_diameter_mm=diameter_mm,
        stud_material="carbon steel",
        base="steel sheet",
        process="drawn arc with ferrule",
    )
    assert _best(found.current_a) == [current_a]
    assert _best(found.time_ms) == [time_ms]
    assert _best(found.lift_mm) == [pytest.approx(25.4 * 3 / 32, abs=0.05)]  # 3/32 in
    assert _best(found.protrusion_mm) == [pytest.approx(25.4 / 8, abs=0.05)]  # plunge 1/8 in


@pytest.mark.parametrize(("process", "inch"), [("short cycle", 0.04), ("drawn arc with gas", 0.08)])
def test_protrusion_by_flange_thickness(process, inch):
    """Short arc: one flange thickness, 0.04 in; gas arc of standard time: two, 0.08 in."""
    found = set_up(stud_diameter_mm=6, stud_material="carbon steel", base="steel sheet", process=process)
    assert _best(found.protrusion_mm) == [pytest.approx(25.4 * inch, abs=0.05)]  # printed in 0.01 in


@pytest.mark.parametrize("protrusion_mm", [1.0, 2.0])
def test_one_and_two_flange_thicknesses_do_on_the_bench(protrusion_mm):
    """0.04 in and 0.08 in of protrusion both lie inside the window of the bench."""
    job = bench.WeldJob(
        head_diameter_mm=7.75, web_mm=1.1, rivet_hold_n=2000.0, current_share=1.0, voltage_v=30.0
    )
    settings = replace(bench.chart_settings(stud_diameter_mm=6), protrusion_mm=protrusion_mm)
    assert bench.in_window(settings, job)
