"""Settings and jobs of the bench that are refused."""

from dataclasses import replace

import numpy as np
import pytest

from tests.bench_welds import CHART, TRUE_JOB


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"stud_diameter_mm": 7.0}, "stud diameter must be one of 3, 4, 5, 6 mm, got 7 mm"),
        ({"current_a": 40.0}, "current must be between 50 A and 1500 A, got 40 A"),
        ({"current_a": "600"}, "current must be a number in A, got '600'"),
        ({"time_ms": 250.0}, "time must be between 2 ms and 200 ms, got 250 ms"),
        ({"lift_mm": -1.0}, "lift must be between 0 mm and 6 mm, got -1 mm"),
        ({"protrusion_mm": 7.0}, "protrusion must be between 0 mm and 6 mm, got 7 mm"),
        ({"flow_l_min": 31.0}, "gas flow must be between 0 L/min and 30 L/min, got 31 L/min"),
        ({"tilt_deg": 21.0}, "tilt must be between 0 deg and 20 deg, got 21 deg"),
        ({"offset_mm": float("nan")}, "offset must be finite, got nan mm"),
        ({"gas": "helium"}, "gas must be one of none, I1, M12, M21, got 'helium'"),
        ({"polarity": 1}, "polarity must be one of stud negative, stud positive, got 1"),
        ({"head": np.array(["oily", "wet"])}, "head must be one of ground bright, coated, oily, got 'wet'"),
        ({"earth": ""}, "earth must be one of two clamps, opposite, one clamp, to one side, got ''"),
    ],
)
def test_settings_refusals(change, sentence):
    """Each bad setting is refused in one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        replace(CHART, **change)


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"head_diameter_mm": 2.0}, "head diameter must be between 3 mm and 15 mm, got 2 mm"),
        ({"web_mm": 5.0}, "web must be between 0.3 mm and 3 mm, got 5 mm"),
        ({"rivet_hold_n": 0.0}, "rivet hold must be between 100 N and 20000 N, got 0 N"),
        ({"current_share": 2.0}, "current share must be between 0.3 and 1.9, got 2"),
        ({"voltage_v": 50.0}, "voltage must be between 20 V and 40 V, got 50 V"),
        ({"scatter_share": -1.0}, "scatter share must be between 0 and 3, got -1"),
    ],
)
def test_job_refusals(change, sentence):
    """Each bad number of a job is refused in one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        replace(TRUE_JOB, **change)
