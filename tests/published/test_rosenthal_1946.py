"""Rosenthal 1946, moving sources. Forms from memory; values computed apart from this library."""

import numpy as np
import pytest

from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.cooling_times import (
    thick_plate_cooling_time_s,
    thin_plate_cooling_time_s,
    transition_thickness_mm,
)
from secondplate.heat.moving_sources import thick_plate_rise_k, thin_plate_rise_k

SOURCE = "rosenthal_1946"
PLATE = ConstantMetal(conductivity_w_mk=40, density_kg_m3=8000, heat_capacity_j_kgk=500)
SEAM = {"heat_rate_w": 3000, "travel_speed_mm_s": 5, "metal": PLATE}
SIX_DECIMALS = 6e-7


def test_thick_plate():
    """3000 W at 5 mm/s: 5 and 10 mm behind, 5 mm beside, and both."""
    found = thick_plate_rise_k(np.array([-5, -10, 0, -5]), np.array([0, 0, 5, 5]), 0, **SEAM)
    expected = [2387.324146, 1193.662073, 683.979820, 1005.849634]
    np.testing.assert_allclose(found, expected, rtol=0, atol=SIX_DECIMALS)


def test_thin_plate():
    """The same source through 3 mm: 10 mm behind, 10 mm beside, and 20 mm behind and 10 mm beside."""
    found = thin_plate_rise_k(np.array([-10, 0, -20]), np.array([0, 10, 10]), thickness_mm=3, **SEAM)
    np.testing.assert_allclose(found, [3022.148215, 248.073032, 1145.062434], rtol=0, atol=SIX_DECIMALS)


def test_cooling_times():
    """0.6 kJ/mm from 20 C: thick, 3 mm thin, and the thickness where the two meet."""
    assert thick_plate_cooling_time_s(0.6, metal=PLATE) == pytest.approx(1.912920, abs=SIX_DECIMALS)
    thin_s = thin_plate_cooling_time_s(0.6, thickness_mm=3, metal=PLATE)
    assert thin_s == pytest.approx(53.647596, abs=SIX_DECIMALS)
    assert transition_thickness_mm(0.6, metal=PLATE) == pytest.approx(15.887223, abs=SIX_DECIMALS)
