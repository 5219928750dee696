"""Elastic and plastic limits of a round face under an eccentric, askew pull."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate.weld_loads import (
    edge_stresses_mpa,
    elastic_limit_n,
    elastic_load_share,
    plastic_limit_n,
    plastic_load_share,
)

FACE = {"diameter_mm": 6.0, "strength_mpa": 500.0}
eccentricities = st.floats(0, 30)
tilts = st.floats(0, 45)


@given(eccentricities, tilts)
def test_plastic_limit_is_never_below_the_elastic_one(eccentricity, tilt):
    """Yield spreads before the face gives; with pull and bending together the gain stays under 1.9."""
    askew = {"eccentricity_mm": eccentricity, "tilt_deg": tilt, "lever_mm": 10.0}
    elastic, plastic = elastic_limit_n(**FACE, **askew), plastic_limit_n(**FACE, **askew)
    assert elastic <= plastic * (1 + 1e-9)
    assert plastic <= 1.9 * elastic  # 16 / (3 pi) for bending alone, at most 1.86 by a scan


@given(st.floats(0, 10), st.floats(0.01, 10), st.floats(0, 44), st.floats(0.01, 1))
def test_limits_fall_with_offset_and_tilt(eccentricity, more, tilt, more_tilt):
    """More offset or more tilt never bears more."""
    for limit in (elastic_limit_n, plastic_limit_n):
        start = limit(**FACE, eccentricity_mm=eccentricity, tilt_deg=tilt, lever_mm=10)
        assert limit(**FACE, eccentricity_mm=eccentricity + more, tilt_deg=tilt, lever_mm=10) <= start
        assert limit(
            **FACE, eccentricity_mm=eccentricity, tilt_deg=tilt + more_tilt, lever_mm=10
        ) <= start * (1 + 1e-12)


def test_elastic_limit_brings_the_edge_to_its_strength():
    """At the limit the near edge carries just the strength where there is no shear."""
    force = elastic_limit_n(**FACE, eccentricity_mm=0.4)
    near, _ = edge_stresses_mpa(force_n=force, diameter_mm=6, eccentricity_mm=0.4)
    assert near == pytest.approx(500, rel=1e-12)  # exact


def test_elastic_limit_with_shear_is_that_of_von_mises():
    """With tilt the near edge and the mean shear together carry the strength after von Mises."""
    force = elastic_limit_n(**FACE, tilt_deg=8, lever_mm=10)
    near, _ = edge_stresses_mpa(force_n=force, diameter_mm=6, tilt_deg=8, lever_mm=10)
    shear = force * np.sin(np.radians(8)) / (np.pi * 9)
    assert np.hypot(near, np.sqrt(3) * shear) == pytest.approx(500, rel=1e-12)  # exact


def test_first_yield_loses_more_than_the_ultimate():
    """At a tenth of the diameter the elastic limit loses 44 % and the plastic one about 20 %."""
    assert 1 - elastic_load_share(0.1) == pytest.approx(0.444, abs=0.001)
    assert 1 - plastic_load_share(0.2) == pytest.approx(0.197, abs=0.001)


def test_arrays_and_single_values_agree():
    """A column of offsets gives the single values."""
    offsets = np.array([0.0, 0.5, 2.0])
    for limit in (elastic_limit_n, plastic_limit_n):
        column = limit(**FACE, eccentricity_mm=offsets)
        single = [limit(**FACE, eccentricity_mm=float(offset)) for offset in offsets]
        np.testing.assert_allclose(column, single, rtol=1e-12)  # the same arithmetic


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"diameter_mm": 0.0}, "diameter must be above 0 mm, got 0 mm"),
        ({"strength_mpa": -5.0}, "strength must be above 0 MPa, got -5 MPa"),
        ({"eccentricity_mm": -0.1}, "eccentricity must be at least 0 mm, got -0.1 mm"),
        ({"tilt_deg": 50.0}, "tilt must be between 0 deg and 45 deg, got 50 deg"),
        ({"lever_mm": -1.0}, "lever must be at least 0 mm, got -1 mm"),
        ({"strength_mpa": float("nan")}, "strength must be finite, got nan MPa"),
    ],
)
def test_refusals(change, sentence):
    """Each bad number is refused in one sentence by both limits."""
    for limit in (elastic_limit_n, plastic_limit_n):
        with pytest.raises(ValueError, match=f"^{sentence}$"):
            limit(**(FACE | change))
