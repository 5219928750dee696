"""Conduction of heat in solids, 2nd edition 1959, section 2.9. From memory; values computed for set S."""

import math

import pytest

from secondplate.arc import half_space_melting_ms

SOURCE = "carslaw_jaeger"
SET_S = {"conductivity_w_mk": 30, "density_kg_m3": 7850, "heat_capacity_j_kgk": 650}


@pytest.mark.parametrize(("flux_w_mm2", "time_ms"), [(100, 26.334), (250, 4.2134)])
def test_time_to_melting(flux_w_mm2, time_ms):
    """A rise of 1480 K at constant flux."""
    found_ms = half_space_melting_ms(heat_flux_w_mm2=flux_w_mm2, rise_k=1480, **SET_S)
    assert found_ms == pytest.approx(time_ms, rel=5e-5)  # five figures


@pytest.mark.parametrize(("time_ms", "rise_k"), [(1, 288.405093), (5, 644.893393)])
def test_surface_temperature_table(time_ms, rise_k):
    """Surface rise 2 q/k sqrt(alpha t/pi) at 100 W/mm2, read backwards as the time to that rise."""
    found_ms = half_space_melting_ms(heat_flux_w_mm2=100, rise_k=rise_k, **SET_S)
    assert math.isclose(found_ms, time_ms, rel_tol=1e-7)  # nine figures
