"""Conduction of heat in solids, 2nd edition 1959. Forms from memory; tables computed apart from this library.

Set S is k 30 W/mK, rho 7850 kg/m3, c 650 J/kgK.
"""

import math

import numpy as np
import pytest

from secondplate.arc import half_space_melting_ms
from secondplate.heat.closed_forms import (
    disc_mean_steady_rise_k,
    disc_rise_k,
    disc_steady_rise_k,
    half_space_flux_rise_k,
    half_space_pulse_rise_k,
)
from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.cooling_times import plane_cooling_time_s, point_cooling_time_s
from secondplate.heat.finite_bodies import (
    cylinder_series,
    cylinder_temperature,
    rod_flux_rise,
    wall_series,
    wall_temperature,
)
from secondplate.heat.instant_sources import instantaneous_plane_rise_k, instantaneous_point_rise_k
from secondplate.heat.melting_forms import neumann_constant
from secondplate.heat.rivet_head_forms import cylinder_steady_rise_k

SOURCE = "carslaw_jaeger"
SET_S = {"conductivity_w_mk": 30, "density_kg_m3": 7850, "heat_capacity_j_kgk": 650}
STEEL = ConstantMetal(**SET_S)
SIX_DECIMALS = 6e-7
FOUR_DECIMALS = 6e-5


@pytest.mark.parametrize(("flux_w_mm2", "time_ms"), [(100, 26.334), (250, 4.2134)])
def test_time_to_melting(flux_w_mm2, time_ms):
    """A rise of 1480 K at constant flux (section 2.9)."""
    found_ms = half_space_melting_ms(heat_flux_w_mm2=flux_w_mm2, rise_k=1480, **SET_S)
    assert found_ms == pytest.approx(time_ms, rel=5e-5)  # five figures


@pytest.mark.parametrize(("time_ms", "rise_k"), [(1, 288.405093), (5, 644.893393)])
def test_surface_temperature_table(time_ms, rise_k):
    """Surface rise 2 q/k sqrt(alpha t/pi) at 100 W/mm2, read backwards as the time to that rise."""
    found_ms = half_space_melting_ms(heat_flux_w_mm2=100, rise_k=rise_k, **SET_S)
    assert math.isclose(found_ms, time_ms, rel_tol=1e-7)  # nine figures


@pytest.mark.parametrize(
    ("time_s", "rises_k"),
    [
        (0.001, [288.405093, 69.699761, 9.222585, 0.000290]),
        (0.005, [644.893393, 365.638571, 185.958172, 11.604324]),
    ],
)
def test_half_space_with_constant_flux(time_s, rises_k):
    """Rise at 0, 0.1, 0.2 and 0.5 mm under 100 W/mm2 (section 2.9)."""
    found = half_space_flux_rise_k(np.array([0, 0.1, 0.2, 0.5]), time_s, heat_flux_w_mm2=100, metal=STEEL)
    np.testing.assert_allclose(found, rises_k, rtol=0, atol=SIX_DECIMALS)


@pytest.mark.parametrize(
    ("depth_mm", "rises_k"),
    [(0, [418.040224, 267.123590, 104.651791]), (0.5, [20.488266, 62.059030, 83.642965])],
)
def test_half_space_after_a_pulse(depth_mm, rises_k):
    """Rise 6, 10 and 50 ms after the start of a pulse of 5 ms (section 2.9, superposed)."""
    found = half_space_pulse_rise_k(
        depth_mm, np.array([0.006, 0.010, 0.050]), pulse_s=0.005, heat_flux_w_mm2=100, metal=STEEL
    )
    np.testing.assert_allclose(found, rises_k, rtol=0, atol=SIX_DECIMALS)


@pytest.mark.parametrize(
    ("time_s", "rises_k"),
    [
        (0.02, [128.978679, 2.320865, 0.0]),
        (0.1, [288.284260, 69.625713, 0.613668]),
        (10, [1017.732851, 731.293868, 389.522249]),
    ],
)
def test_heated_disc(time_s, rises_k):
    """Rise on the axis at 0, 1 and 3 mm under a disc of radius 3.5 mm with 10 W/mm2 (section 10.5)."""
    found = disc_rise_k(
        np.array([0.0, 1.0, 3.0]), time_s, disc_radius_mm=3.5, heat_flux_w_mm2=10, metal=STEEL
    )
    np.testing.assert_allclose(found, rises_k, rtol=0, atol=SIX_DECIMALS)


def test_heated_disc_in_the_end():
    """The middle tends to q a/k and the mean to 8 q a/(3 pi k) (section 8.2)."""
    disc = {"disc_radius_mm": 3.5, "heat_flux_w_mm2": 10, "metal": STEEL}
    assert disc_steady_rise_k(**disc) == pytest.approx(1166.6667, abs=FOUR_DECIMALS)
    assert disc_mean_steady_rise_k(**disc) == pytest.approx(990.2974, abs=FOUR_DECIMALS)


def test_instantaneous_point():
    """480 J at a point of a half-space, 3 mm away after 0.1, 1 and 10 s (section 10.2)."""
    found = instantaneous_point_rise_k(3, np.array([0.1, 1, 10]), heat_j=480, metal=STEEL)
    np.testing.assert_allclose(found, [204.021232, 202.053786, 9.016670], rtol=0, atol=SIX_DECIMALS)


def test_cooling_time_of_plane_and_point():
    """10 J/mm2 over a face and 480 J at a point cool from 800 to 500 C in under a second, from 20 C."""
    assert plane_cooling_time_s(10, metal=STEEL) == pytest.approx(0.560746, abs=SIX_DECIMALS)
    assert point_cooling_time_s(480, metal=STEEL) == pytest.approx(0.200446, abs=SIX_DECIMALS)


@pytest.mark.parametrize(("time_s", "temperature_c"), [(0.341788, 800), (0.902534, 500)])
def test_plane_passes_800_and_500(time_s, temperature_c):
    """The two moments whose distance is the cooling time of the face with 10 J/mm2 (section 10.3)."""
    rise_k = instantaneous_plane_rise_k(0, time_s, heat_per_area_j_mm2=10, metal=STEEL)
    # Six decimals of a time of 0.3 s are 2e-6 of it, and the rise falls with its root.
    assert 20 + rise_k == pytest.approx(temperature_c, rel=2e-6)


@pytest.mark.parametrize(
    ("biot", "roots", "first_weight"),
    [
        (0.1, [0.311053, 3.173097, 6.299059], 1.016094),
        (1, [0.860334, 3.425618, 6.437298], 1.119132),
        (10, [1.428870, 4.305801, 7.228110], 1.261963),
    ],
)
def test_wall_roots(biot, roots, first_weight):
    """Roots of zeta tan zeta = Bi and the first weight (section 3.11 and its table of roots)."""
    found, weights = wall_series(biot)
    np.testing.assert_allclose(found, roots, rtol=0, atol=SIX_DECIMALS)
    assert weights[0] == pytest.approx(first_weight, abs=SIX_DECIMALS)


@pytest.mark.parametrize(
    ("biot", "roots", "first_weight"),
    [
        (0.1, [0.441682, 3.857710, 7.029825], 1.024579),
        (1, [1.255784, 4.079478, 7.155799], 1.207092),
        (10, [2.179497, 5.033212, 7.956883], 1.567692),
    ],
)
def test_cylinder_roots(biot, roots, first_weight):
    """Roots of zeta J1 = Bi J0 and the first weight (section 7.7 and its table of roots)."""
    found, weights = cylinder_series(biot)
    np.testing.assert_allclose(found, roots, rtol=0, atol=SIX_DECIMALS)
    assert weights[0] == pytest.approx(first_weight, abs=SIX_DECIMALS)


FOURIER = np.array([0.1, 0.2, 0.5, 1])


@pytest.mark.parametrize(
    ("temperature", "place", "excess"),
    [
        (wall_temperature, 0, [0.993108, 0.950642, 0.772526, 0.533859]),
        (wall_temperature, 1, [0.723577, 0.643391, 0.504522, 0.348177]),
        (cylinder_temperature, 0, [0.976817, 0.870174, 0.548586, 0.249380]),
    ],
)
def test_cooling_of_wall_and_cylinder(temperature, place, excess):
    """Excess at Biot number 1 (sections 3.11 and 7.7)."""
    np.testing.assert_allclose(temperature(place, FOURIER, biot_number=1), excess, rtol=0, atol=SIX_DECIMALS)


def test_cooling_of_a_short_cylinder():
    """Half as long as wide: the middle has the product of wall and cylinder (section 8.4)."""
    product = wall_temperature(0, FOURIER, biot_number=1) * cylinder_temperature(0, FOURIER, biot_number=1)
    np.testing.assert_allclose(product, [0.970085, 0.827224, 0.423797, 0.133134], rtol=0, atol=SIX_DECIMALS)


@pytest.mark.parametrize(
    ("far_end", "place", "rises"),
    [
        ("insulated", 0, [0.11283792, 0.25231325, 0.35682625, 0.83187595, 1.33332285]),
        ("insulated", 0.5, [0.00001435, 0.01536594, 0.05931089, 0.45833333, 0.95833333]),
        ("insulated", 1, [0, 0.00026934, 0.00788529, 0.33479071, 0.83334381]),
        ("cold", 0, [0.11283792, 0.25231325, 0.35682340, 0.76395033, 0.93125968]),
        ("cold", 0.5, [0.00001435, 0.01536568, 0.05912576, 0.33308960, 0.45139325]),
    ],
)
def test_rod_with_flux(far_end, place, rises):
    """k dT/(q L) at Fourier numbers 0.01 to 1 (section 3.8)."""
    found = rod_flux_rise(place, np.array([0.01, 0.05, 0.1, 0.5, 1]), far_end=far_end)
    np.testing.assert_allclose(found, rises, rtol=0, atol=6e-9)  # eight decimals


@pytest.mark.parametrize(
    ("radius_mm", "depth_mm", "rise_k"), [(0, 0, 575.0760), (0, 1, 268.8214), (4, 1, 137.2365)]
)
def test_short_cylinder_over_a_cold_face(radius_mm, depth_mm, rise_k):
    """Radius 4, height 2, 10 W/mm2 within 3 mm, foot cold (section 8.3); control volumes gave 575.0764."""
    found = cylinder_steady_rise_k(
        radius_mm,
        depth_mm,
        heated_radius_mm=3,
        cylinder_radius_mm=4,
        height_mm=2,
        heat_flux_w_mm2=10,
        metal=STEEL,
    )
    assert found == pytest.approx(rise_k, abs=FOUR_DECIMALS)


@pytest.mark.parametrize(
    ("stefan", "constant"),
    [
        (0.1, 0.22001627),
        (0.2, 0.30642391),
        (0.5, 0.46478592),
        (1, 0.62006263),
        (2, 0.80060136),
        (3, 0.91375127),
    ],
)
def test_neumann(stefan, constant):
    """lambda exp(lambda^2) erf(lambda) = Ste/sqrt(pi) (section 11.2)."""
    assert neumann_constant(stefan) == pytest.approx(constant, abs=6e-9)  # eight decimals
