"""Conversions are exact, go both ways, and keep shapes."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from secondplate import units

CONVERSIONS = [
    units.l_min_from_ft3_h,
    units.ft3_h_from_l_min,
    units.m_min_from_ft_min,
    units.n_m_from_lbf_in,
    units.mm_from_inch,
    units.mpa_from_ksi,
    units.n_from_lbf,
]


@given(st.floats(1e-6, 1e6))
def test_flow_there_and_back(flow_l_min):
    """A flow taken to cubic feet an hour and back is the same flow."""
    assert units.l_min_from_ft3_h(units.ft3_h_from_l_min(flow_l_min)) == pytest.approx(flow_l_min, rel=1e-14)


@pytest.mark.parametrize("convert", CONVERSIONS)
def test_zero_stays_zero_and_arrays_stay_arrays(convert):
    """Conversions are proportional and work on arrays as on single numbers."""
    many = np.array([0.0, 1.0, -2.5])
    np.testing.assert_allclose(convert(many), [convert(one) for one in many], rtol=1e-15)  # same arithmetic
    assert convert(0) == 0


@pytest.mark.parametrize(("l_min", "ft3_h"), [(5, 10.59), (8, 16.95), (10, 21.19), (12, 25.43), (15, 31.78)])
def test_flow_of_usual_settings(l_min, ft3_h):
    """Usual settings, worked out separately to two decimals."""
    assert units.ft3_h_from_l_min(l_min) == pytest.approx(ft3_h, abs=0.005)


def test_kelvin_begins_at_absolute_zero():
    """Absolute zero is the lowest temperature."""
    assert units.k_from_c(-273.15) == 0
    with pytest.raises(ValueError, match="^temperature must be at least -273.15 C, got -300 C$"):
        units.k_from_c(-300)


@pytest.mark.parametrize("convert", [*CONVERSIONS, units.k_from_c])
@pytest.mark.parametrize("value", ["10", None, True, float("nan")], ids=repr)
def test_what_is_no_number_is_refused(convert, value):
    """Every conversion refuses what is not a finite number."""
    with pytest.raises(ValueError, match=" must be (a number|finite)"):
        convert(value)
