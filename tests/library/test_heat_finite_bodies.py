"""Wall, cylinder, rod and short cylinder: equations of their roots, limits, heat balance and refusals."""

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.special import j0, j1

from secondplate.heat.closed_forms import disc_steady_rise_k, half_space_flux_rise_k
from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.finite_bodies import (
    cylinder_series,
    cylinder_temperature,
    rod_flux_rise,
    wall_series,
    wall_temperature,
)
from secondplate.heat.rivet_head_forms import cylinder_steady_rise_k, lumped_rise_k

STEEL = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)
HEAD = {"cylinder_radius_mm": 4, "height_mm": 2, "heat_flux_w_mm2": 10, "metal": STEEL}


@pytest.mark.parametrize("biot", [1e-4, 0.03, 1, 50, 1e4])
def test_roots_solve_their_equations(biot):
    """All sixty roots solve their equation, rise, and lie one to a bracket."""
    wall, _ = wall_series(biot, terms=60)
    cylinder, _ = cylinder_series(biot, terms=60)
    # Relative to the larger of the two sides, near the last digits of a double.
    np.testing.assert_allclose(wall * np.sin(wall), biot * np.cos(wall), rtol=1e-6, atol=1e-9 * biot + 1e-9)
    np.testing.assert_allclose(
        cylinder * j1(cylinder), biot * j0(cylinder), rtol=1e-6, atol=1e-9 * biot + 1e-9
    )
    # One to a half wave: the n-th root of the wall lies in n pi to n pi + pi/2.
    np.testing.assert_array_equal(np.floor(2 * wall / np.pi), 2 * np.arange(60))
    assert np.all(np.diff(cylinder) > np.pi / 2)


@pytest.mark.parametrize("temperature", [wall_temperature, cylinder_temperature])
def test_bodies_start_whole_and_cool_as_one_at_a_small_biot_number(temperature):
    """Early the middle is untouched; with a weak film the body cools like a lump."""
    assert temperature(0, 0.001, biot_number=1) == pytest.approx(1, abs=1e-12)
    by_size = 1 if temperature is wall_temperature else 2  # surface over volume, times the size
    lump = np.exp(-by_size * 1e-4 * 5000)
    assert temperature(0.5, 5000, biot_number=1e-4) == pytest.approx(lump, rel=1e-4)  # a third of Bi


def test_wall_loses_what_its_film_takes():
    """What the wall has lost is the sum over time of its surface excess times the film."""
    left, _ = quad(lambda place: wall_temperature(place, 0.5, biot_number=1), 0, 1)
    lost, _ = quad(lambda time: wall_temperature(1, time, biot_number=1), 0.001, 0.5)
    early = 1 - quad(lambda place: wall_temperature(place, 0.001, biot_number=1), 0, 1)[0]
    assert left + lost + early == pytest.approx(1, abs=1e-8)  # quadrature


def test_places_and_times_broadcast():
    """A column of times and a row of places give a table that equals one by one."""
    times, places = np.array([[0.1], [0.5]]), np.array([0, 0.5, 1])
    table = rod_flux_rise(places, times, far_end="cold")
    assert table.shape == (2, 3)
    assert table[1, 1] == pytest.approx(rod_flux_rise(0.5, 0.5, far_end="cold"), rel=1e-14)
    assert cylinder_temperature(places, times, biot_number=2).shape == (2, 3)


@pytest.mark.parametrize("far_end", ["insulated", "cold"])
def test_early_rod_is_a_half_space(far_end):
    """Before the heat reaches the far end the rod is a half-space."""
    # A rod of 1 mm: Fourier number 0.02 is this time.
    time_s = 0.02 / STEEL.diffusivity_mm2_s
    half_space = half_space_flux_rise_k(0.25, time_s, heat_flux_w_mm2=1, metal=STEEL)
    rod = rod_flux_rise(0.25, 0.02, far_end=far_end) / STEEL.conductivity_w_mmk
    assert rod == pytest.approx(half_space, rel=1e-9)  # the far end is 7 heat reaches away


def test_rod_keeps_its_heat_or_comes_to_rest():
    """Insulated, the mean rise is the Fourier number; cold, the rise ends on a straight line."""
    mean, _ = quad(lambda place: rod_flux_rise(place, 0.3, far_end="insulated"), 0, 1)
    assert mean == pytest.approx(0.3, rel=1e-9)  # quadrature
    places = np.linspace(0, 1, 5)
    np.testing.assert_allclose(rod_flux_rise(places, 50, far_end="cold"), 1 - places, rtol=0, atol=1e-12)


def test_short_cylinder_heated_all_over_is_a_rod():
    """With the whole top heated the rise is a straight line down to the foot."""
    depths_mm = np.array([0.0, 0.5, 1.0, 2.0])
    found = cylinder_steady_rise_k(1.0, depths_mm, heated_radius_mm=4, **HEAD)
    # J1 at its own zeros: rounding times 4000 terms.
    np.testing.assert_allclose(found, 10 / 0.030 * (2 - depths_mm), rtol=0, atol=1e-6)


def test_short_cylinder_mean_rise_carries_the_heat():
    """The area mean over the top is the rod's rise with the flux spread over the whole."""
    around = {"heated_radius_mm": 3, **HEAD}
    total, _ = quad(
        lambda r: 2 * np.pi * r * cylinder_steady_rise_k(r, 0, **around), 0, 4, points=[3], epsrel=1e-5
    )
    assert total / (np.pi * 16) == pytest.approx(375.0, rel=1e-4)  # quadrature over 4000 waves


def test_wide_cylinder_is_a_half_space():
    """A small heated part on a large cylinder rises as on a half-space, less what the cold foot takes."""
    found = cylinder_steady_rise_k(
        0, 0, heated_radius_mm=1, cylinder_radius_mm=80, height_mm=80, heat_flux_w_mm2=10, metal=STEEL
    )
    whole = disc_steady_rise_k(disc_radius_mm=1, heat_flux_w_mm2=10, metal=STEEL)
    assert found == pytest.approx(whole, rel=0.02)  # a/H of 1/80


@pytest.mark.parametrize(("mass_g", "rise_k"), [(0.6, 667), (0.9, 444), (1.2, 333)])
def test_rivet_that_keeps_its_heat(mass_g, rise_k):
    """200 J in rivets of three masses with 500 J/kgK, worked apart."""
    assert lumped_rise_k(200, mass_g=mass_g, heat_capacity_j_kgk=500) == pytest.approx(rise_k, abs=0.5)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: wall_series(0), "Biot number must be between 0.0001 and 10000, got 0"),
        (lambda: cylinder_series(1, terms=61), "terms must be between 1 and 60, got 61"),
        (lambda: wall_temperature(1.1, 1, biot_number=1), "relative place must be between 0 and 1, got 1.1"),
        (
            lambda: cylinder_temperature(0, 1e-4, biot_number=1),
            r"relative time must be between 0.001 and 1e\+06, got 0.0001",
        ),
        (
            lambda: rod_flux_rise(0, 1, far_end="warm"),
            "far end must be one of insulated, cold, got 'warm'",
        ),
        (
            lambda: cylinder_steady_rise_k(0, 0, heated_radius_mm=5, **HEAD),
            "heated radius must be between 0 mm and 4 mm, got 5 mm",
        ),
        (
            lambda: cylinder_steady_rise_k(0, 3, heated_radius_mm=3, **HEAD),
            "depth must be between 0 mm and 2 mm, got 3 mm",
        ),
        (
            lambda: lumped_rise_k(1, mass_g=0, heat_capacity_j_kgk=500),
            "mass must be above 0 g, got 0 g",
        ),
    ],
)
def test_refusals(call, sentence):
    """Each argument out of its range is refused with its sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
