"""Half-space under a flux, a pulse, a disc and a bell: against sums of point sources, limits and refusals."""

import numpy as np
import pytest
from scipy.integrate import quad

from secondplate.heat.closed_forms import (
    disc_mean_steady_rise_k,
    disc_rise_k,
    disc_steady_rise_k,
    gaussian_rise_k,
    gaussian_steady_rise_k,
    half_space_flux_rise_k,
    half_space_pulse_rise_k,
)
from secondplate.heat.constant_metal import ConstantMetal, mean_metal
from secondplate.heat.instant_sources import instantaneous_plane_rise_k
from secondplate.materials import MATERIAL_NAMES

STEEL = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
FACE = {"heat_flux_w_mm2": 100, "metal": STEEL}


def test_flux_is_a_sum_of_instants():
    """A flux for 5 ms is the sum over time of instantaneous planes."""

    def instant(before_s):
        return instantaneous_plane_rise_k(0.1, before_s, heat_per_area_j_mm2=100, metal=STEEL)

    summed, _ = quad(instant, 0, 0.005)
    # Tolerance of the quadrature.
    assert half_space_flux_rise_k(0.1, 0.005, **FACE) == pytest.approx(summed, rel=1e-7)


def test_slope_at_the_face_carries_the_flux():
    """Conductivity times the slope just under the face is the flux."""
    step_mm = 1e-5
    near, far = half_space_flux_rise_k(np.array([0.0, step_mm]), 0.005, **FACE)
    # One-sided difference over a step of 1e-5 of a heat reach of 0.3 mm.
    assert STEEL.conductivity_w_mmk * (near - far) / step_mm == pytest.approx(100, rel=1e-4)


def test_heat_in_the_half_space_is_the_heat_given():
    """The rise summed over depth holds all of the flux times time."""
    total, _ = quad(lambda depth_mm: half_space_flux_rise_k(depth_mm, 0.005, **FACE), 0, 5)
    assert STEEL.heat_by_volume_j_mm3k * total == pytest.approx(100 * 0.005, rel=1e-7)  # quadrature


def test_deep_and_early_rise_is_nothing_and_never_below():
    """A metre down after a microsecond the rise is 0, not a negative rest of rounding."""
    assert half_space_flux_rise_k(1000, 1e-6, **FACE) == 0.0
    depths_mm = np.linspace(0, 3, 301)
    assert np.all(half_space_flux_rise_k(depths_mm, 0.005, **FACE) >= 0)


def test_pulse_before_its_end_is_a_flux():
    """Until the pulse ends nothing tells it from a steady flux; after it the face cools."""
    times_s = np.array([0.001, 0.005, 0.006, 0.1])
    pulse = half_space_pulse_rise_k(0, times_s, pulse_s=0.005, **FACE)
    flux = half_space_flux_rise_k(0, times_s, **FACE)
    np.testing.assert_array_equal(pulse[:2], flux[:2])
    assert np.all(np.diff(pulse[1:]) < 0)


def test_pulse_long_ago_is_an_instant():
    """A second after a pulse of 5 ms its heat may as well have come at its middle."""
    pulse_k = half_space_pulse_rise_k(1, 1.0, pulse_s=0.005, **FACE)
    instant_k = instantaneous_plane_rise_k(1, 0.9975, heat_per_area_j_mm2=0.5, metal=STEEL)
    assert pulse_k == pytest.approx(instant_k, rel=1e-5)  # second order in 0.005 s over 1 s


def test_disc_is_a_sum_of_rings():
    """The disc's rise is the sum over its rings and over time of point sources on a half-space."""
    alpha, depth_mm, radius_mm = STEEL.diffusivity_mm2_s, 1.0, 3.5

    def instant(before_s):
        spread = 4 * alpha * before_s
        inner, outer = (np.exp(-(depth_mm**2 + r**2) / spread) for r in (0.0, radius_mm))
        return 2 * 10 / (STEEL.heat_by_volume_j_mm3k * np.sqrt(np.pi * spread)) * (inner - outer)

    summed, _ = quad(instant, 0, 0.1)
    found = disc_rise_k(depth_mm, 0.1, disc_radius_mm=radius_mm, heat_flux_w_mm2=10, metal=STEEL)
    assert found == pytest.approx(summed, rel=1e-7)  # tolerance of the quadrature


def test_disc_between_half_space_and_steady():
    """At first a disc knows nothing of its rim; in the end its middle stands at q a/k."""
    disc = {"disc_radius_mm": 3.5, "heat_flux_w_mm2": 10, "metal": STEEL}
    early = half_space_flux_rise_k(0, 0.01, heat_flux_w_mm2=10, metal=STEEL)
    assert disc_rise_k(0, 0.01, **disc) == pytest.approx(early, rel=1e-9)  # the rim is 7 reaches away
    # What is missing falls as a / (2 sqrt(pi alpha t)): 1e-4 of it after 5e7 s.
    assert disc_rise_k(0, 5e7, **disc) == pytest.approx(disc_steady_rise_k(**disc), rel=1.1e-4)
    share = disc_mean_steady_rise_k(**disc) / disc_steady_rise_k(**disc)
    assert share == pytest.approx(8 / (3 * np.pi), rel=1e-12)  # exact


def test_bell_is_a_sum_over_time():
    """The bell's rise is the integral of P / (rho c sqrt(pi alpha t) pi (2 sigma^2 + 4 alpha t))."""
    alpha, sigma_mm = STEEL.diffusivity_mm2_s, 2.0

    def instant(before_s):
        wide = 2 * np.pi * sigma_mm**2 + 4 * np.pi * alpha * before_s
        return 1000 / (STEEL.heat_by_volume_j_mm3k * np.sqrt(np.pi * alpha * before_s) * wide)

    summed, _ = quad(instant, 0, 0.1)
    found = gaussian_rise_k(0.1, heat_rate_w=1000, spread_mm=sigma_mm, metal=STEEL)
    assert found == pytest.approx(summed, rel=1e-7)  # tolerance of the quadrature


def test_bell_tends_to_its_steady_rise():
    """After a very long time the middle stands at the steady rise."""
    bell = {"heat_rate_w": 1000, "spread_mm": 2, "metal": STEEL}
    assert gaussian_rise_k(1e12, **bell) == pytest.approx(gaussian_steady_rise_k(**bell), rel=1e-6)


def test_properties_may_be_arrays():
    """A class of metals is computed at once and equals one by one."""
    conductivity = np.array([25.0, 30.0, 35.0])
    many = ConstantMetal(conductivity_w_mk=conductivity, density_kg_m3=7850, heat_capacity_j_kgk=650)
    found = half_space_flux_rise_k(0.1, 0.005, heat_flux_w_mm2=100, metal=many)
    one_by_one = [
        half_space_flux_rise_k(
            0.1,
            0.005,
            heat_flux_w_mm2=100,
            metal=ConstantMetal(conductivity_w_mk=each, density_kg_m3=7850, heat_capacity_j_kgk=650),
        )
        for each in conductivity
    ]
    np.testing.assert_allclose(found, one_by_one, rtol=1e-14)  # same arithmetic


@pytest.mark.parametrize("name", MATERIAL_NAMES)
def test_mean_metal_lies_within_its_curves(name):
    """A mean lies between the least and the greatest of what it is the mean of."""
    metal = mean_metal(name, up_to_c=500)
    assert 10 < metal.conductivity_w_mk < 250
    assert 400 < metal.heat_capacity_j_kgk < 1200
    with pytest.raises(ValueError, match="upper temperature must be above 20 C, got 20 C"):
        mean_metal(name, up_to_c=20)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: half_space_flux_rise_k(-1, 1, **FACE), "depth must be at least 0 mm, got -1 mm"),
        (lambda: half_space_flux_rise_k(0, 0, **FACE), "time must be above 0 s, got 0 s"),
        (
            lambda: half_space_flux_rise_k(0, 1, heat_flux_w_mm2=2001, metal=STEEL),
            "heat flux must be between 0 W/mm2 and 2000 W/mm2, got 2001 W/mm2",
        ),
        (lambda: half_space_pulse_rise_k(0, 1, pulse_s=0, **FACE), "pulse must be above 0 s, got 0 s"),
        (lambda: disc_rise_k(0, 1, disc_radius_mm=0, **FACE), "disc radius must be above 0 mm, got 0 mm"),
        (
            lambda: gaussian_rise_k(1, heat_rate_w=-1, spread_mm=1, metal=STEEL),
            "heat rate must be at least 0 W, got -1 W",
        ),
        (
            lambda: gaussian_rise_k(np.nan, heat_rate_w=1, spread_mm=1, metal=STEEL),
            "time must be finite, got nan s",
        ),
        (
            lambda: ConstantMetal(conductivity_w_mk=0, density_kg_m3=1, heat_capacity_j_kgk=1),
            "conductivity must be above 0 W/mK, got 0 W/mK",
        ),
    ],
)
def test_refusals(call, sentence):
    """Each argument out of its range is refused with its sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
