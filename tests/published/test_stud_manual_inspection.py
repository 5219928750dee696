"""Operating manual (2021) of a stud-welding unit, pages 4 and 44. Read."""

from dataclasses import replace

import pytest

from secondplate import bench
from secondplate.inspection import length_verdict, weld_sign
from secondplate.stud_weld import process_limits

SOURCE = "stud_manual_inspection"


@pytest.mark.parametrize(
    ("sign_id", "length", "correction"),
    [
        ("necked", "too long", "protrusion"),
        ("cold", "too long", "raise current"),
        ("hot", "too short", "lower time"),
    ],
)
def test_signs(sign_id, length, correction):
    """Page 44: a drawn-in or dull collar goes with a long stud, a low glossy one with a short stud."""
    sign = weld_sign(sign_id)
    assert sign.source == SOURCE
    assert length in sign.sign
    assert correction in sign.correction.lower()


def test_good_weld_needs_no_correction():
    """Page 44: even, bright, closed, length within tolerance."""
    assert weld_sign("good").correction == ""


@pytest.mark.parametrize(
    ("measured_mm", "verdict"),
    [(19.0, "within tolerance"), (21.0, "within tolerance"), (21.5, "too long"), (18.5, "too short")],
)
def test_length_tolerance(measured_mm, verdict):
    """Page 44: 1 mm either way."""
    assert length_verdict(expected_length_mm=20.0, measured_length_mm=measured_mm) == verdict


def test_times():
    """Page 4: short cycle 10 to 100 ms; it ends the drawn arc at 1000 ms where another manual has 2000 ms."""
    short = process_limits("short cycle")
    assert (short.shortest_time_ms, short.longest_time_ms) == (10, 100)
    drawn = process_limits("drawn arc with gas")
    assert drawn.shortest_time_ms == 100
    assert drawn.longest_time_ms >= 1000


@pytest.mark.parametrize(
    ("sign_id", "cause", "too_long", "surface"),
    [
        ("necked", {"protrusion_mm": 0.4}, True, "bright"),
        ("cold", {"current_a": 380.0}, True, "dull"),
        ("hot", {"current_a": 900.0}, False, "bright"),
    ],
)
def test_signs_of_the_bench_have_the_lengths_of_the_manual(sign_id, cause, too_long, surface):
    """Page 44: too little protrusion or energy leaves the stud long, too much energy short; cold is dull."""
    job = bench.WeldJob(
        head_diameter_mm=7.75, web_mm=1.1, rivet_hold_n=2000.0, current_share=1.0, voltage_v=30.0
    )
    settings = replace(bench.chart_settings(stud_diameter_mm=6), **cause)
    outcome = bench.weld(settings, job, seed=None, number=1)
    assert outcome.sign_id == sign_id
    assert (outcome.length_off_mm > 0.1) == too_long
    assert (outcome.length_off_mm < -0.1) == (not too_long)
    assert outcome.surface == surface


def test_hot_collar_is_low_for_its_width():
    """Page 44: a hot weld has a low collar; it runs flat."""
    job = bench.WeldJob(
        head_diameter_mm=7.75, web_mm=1.1, rivet_hold_n=2000.0, current_share=1.0, voltage_v=30.0
    )
    good = bench.chart_settings(stud_diameter_mm=6)
    sound, hot = (
        bench.weld(settings, job, seed=None, number=1) for settings in (good, replace(good, current_a=900.0))
    )
    assert hot.collar_height_mm / hot.collar_width_mm < sound.collar_height_mm / sound.collar_width_mm
