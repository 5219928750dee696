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
from secondplate.heat.conduction import Body, Stage, conduct
from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.cooling_times import plane_cooling_time_s, point_cooling_time_s
from secondplate.heat.finite_bodies import (
    cylinder_series,
    cylinder_temperature,
    rod_flux_rise,
    wall_series,
    wall_temperature,
)
from secondplate.heat.grid import Grid, graded_edges
from secondplate.heat.instant_sources import instantaneous_plane_rise_k, instantaneous_point_rise_k
from secondplate.heat.melting_forms import neumann_constant
from secondplate.heat.rivet_head_forms import cylinder_steady_rise_k
from secondplate.heat.substances import constant
from tests.heat_bodies import (
    UNIT_RADIUS_MM,
    column,
    disc,
    down_axis,
    face_power,
    face_rise_k,
    fine_at_start,
    heated,
    solid,
)

SOURCE = "carslaw_jaeger"
SET_S = {"conductivity_w_mk": 30, "density_kg_m3": 7850, "heat_capacity_j_kgk": 650}
STEEL = ConstantMetal(**SET_S)
SIX_DECIMALS = 6e-7
FOUR_DECIMALS = 6e-5
HEAT_BALANCE = 1e-9  # the model promises 1e-6


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


# The heat model on simple bodies, held against the same solutions.

PER_CENT = 0.01  # what the heat model promises
CLOSE = 0.002  # what it holds on these grids
TAIL = 0.0005  # of the greatest rise, for places where nearly nothing has arrived yet


def model_of_half_space(time_s, *, flux_w_mm2=100):
    """Run a column of 4 mm, five times as deep as the heat gets, with a flux on its end."""
    body = column(fine_at_start(4, finest_mm=0.005, growth=0.04))
    run = heated(body, time_s, power_w=face_power(body, flux_w_mm2=flux_w_mm2), steps=80, growth=1.03)
    return body, run


@pytest.mark.parametrize(
    ("time_s", "rises_k"),
    [
        (0.001, [288.405093, 69.699761, 9.222585, 0.000290]),
        (0.005, [644.893393, 365.638571, 185.958172, 11.604324]),
    ],
)
def test_model_of_half_space_with_constant_flux(time_s, rises_k):
    """The heat model at 0, 0.1, 0.2 and 0.5 mm under 100 W/mm2 (section 2.9)."""
    body, run = model_of_half_space(time_s)
    found = [face_rise_k(run, body, flux_w_mm2=100)[0], *down_axis(run, body, [0.1, 0.2, 0.5])]
    np.testing.assert_allclose(found, rises_k, rtol=CLOSE, atol=TAIL * rises_k[0])
    assert run.balance < HEAT_BALANCE


def test_model_of_half_space_after_a_pulse():
    """The heat model at the face and 0.5 mm down, 10 and 50 ms after the start of 5 ms (section 2.9)."""
    body = column(fine_at_start(8, finest_mm=0.005, growth=0.04))
    on = Stage(duration_s=0.005, steps=60, growth=1.04, power_w=face_power(body, flux_w_mm2=100))
    for after_s, rises_k in (
        (0.001, [418.040224, 20.488266]),
        (0.005, [267.123590, 62.059030]),
        (0.045, [104.651791, 83.642965]),
    ):
        run = conduct(body, [on, Stage(duration_s=after_s, steps=60, growth=1.05)], start_c=0.0)
        found = [run.final_c[0, 0], down_axis(run, body, 0.5)]
        np.testing.assert_allclose(found, rises_k, rtol=CLOSE, atol=TAIL * rises_k[0])


@pytest.mark.parametrize(
    ("time_s", "rises_k"),
    [
        (0.02, [128.978679, 2.320865, 0.0]),
        (0.1, [288.284260, 69.625713, 0.613668]),
        (10, [1017.732851, 731.293868, 389.522249]),
    ],
)
def test_model_of_heated_disc(time_s, rises_k):
    """The heat model on the axis at 0, 1 and 3 mm under a disc of 3.5 mm with 10 W/mm2 (section 10.5)."""
    reach_mm = 3.5 + 6 * math.sqrt(STEEL.diffusivity_mm2_s * time_s)
    radius = graded_edges([0, 3.5, reach_mm], fine_at_mm=[3.5], finest_mm=0.1, growth=0.15)
    body = solid(
        Grid(radius_edges_mm=radius, height_edges_mm=fine_at_start(reach_mm, finest_mm=0.02, growth=0.12))
    )
    run = heated(body, time_s, power_w=face_power(body, flux_w_mm2=10, within_mm=3.5), steps=50, growth=1.1)
    found = [face_rise_k(run, body, flux_w_mm2=10)[0], *down_axis(run, body, [1, 3])]
    np.testing.assert_allclose(found, rises_k, rtol=PER_CENT / 2, atol=TAIL * rises_k[0])
    assert run.balance < HEAT_BALANCE


def test_model_of_disc_mean_in_the_end():
    """After 10,000 s the mean over the disc lacks P/(2 k (pi^3 alpha t)^0.5) of the end (section 8.2)."""
    radius = graded_edges([0, 3.5, 1200], fine_at_mm=[3.5], finest_mm=0.1, growth=0.15)
    body = solid(
        Grid(radius_edges_mm=radius, height_edges_mm=fine_at_start(1200, finest_mm=0.05, growth=0.15))
    )
    time_s = 10_000
    run = heated(body, time_s, power_w=face_power(body, flux_w_mm2=10, within_mm=3.5), steps=70, growth=1.2)
    heated_rings = body.grid.radii_mm < 3.5
    found = np.average(
        face_rise_k(run, body, flux_w_mm2=10)[heated_rings], weights=body.grid.ring_areas_mm2[heated_rings]
    )
    late = 10 * math.pi * 3.5**2 / (2 * 0.030 * math.sqrt(math.pi**3 * STEEL.diffusivity_mm2_s * time_s))
    assert found == pytest.approx(990.2974 - late, rel=PER_CENT / 2)


@pytest.mark.parametrize(("time_s", "rise_k"), [(0.1, 204.021232), (1, 202.053786), (10, 9.016670)])
def test_model_of_instantaneous_point(time_s, rise_k):
    """480 J at a point of a half-space, 3 mm away; run with a part of it, for it is linear (section 10.2)."""
    reach_mm = 2 * math.sqrt(STEEL.diffusivity_mm2_s * time_s)
    edges = np.linspace(0, 4.2 * reach_mm, 71)
    body = solid(Grid(radius_edges_mm=edges, height_edges_mm=edges))
    start = np.zeros(body.grid.shape)
    start[0, 0] = 3000.0
    run = heated(body, time_s, start_c=start, steps=80, growth=1.06)
    part_j = STEEL.heat_by_volume_j_mm3k * body.grid.volumes_mm3[0, 0] * 3000
    # The rise falls like a bell, so its logarithm is what lies on a straight line between two cells.
    down = np.interp(3, body.grid.depths_mm, np.log(run.final_c[:, 0]))
    out = np.interp(3, body.grid.radii_mm, np.log(run.final_c[0]))
    np.testing.assert_allclose(np.exp([down, out]) * 480 / part_j, rise_k, rtol=PER_CENT)


def test_model_of_plane_cooling_time():
    """10 J/mm2 over a face cools from 800 to 500 C in 0.5607 s; run with a 1000th of it (section 10.3)."""
    body = column(fine_at_start(25, finest_mm=0.002))
    start = np.zeros(body.grid.shape)
    start[0] = 0.010 / (STEEL.heat_by_volume_j_mm3k * body.grid.heights_mm[0])
    face = np.zeros(body.grid.shape)
    face[0] = 1
    run = conduct(body, [Stage(duration_s=1.5, steps=300, growth=1.05)], start_c=start, keep={"face": face})
    rises = 1000 * run.traces_c["face"][::-1]
    times = np.exp(np.interp(np.log([780, 480]), np.log(rises), np.log(np.maximum(run.times_s[::-1], 1e-12))))
    assert times[1] - times[0] == pytest.approx(0.560746, rel=PER_CENT / 2)


RODS = {
    "insulated": [
        (0.05, 0.25231325, 0.01536594, 0.00026934),
        (0.1, 0.35682625, 0.05931089, 0.00788529),
        (0.5, 0.83187595, 0.45833333, 0.33479071),
        (1, 1.33332285, 0.95833333, 0.83334381),
    ],
    "cold": [
        (0.05, 0.25231325, 0.01536568, 0.0),
        (0.1, 0.35682340, 0.05912576, 0.0),
        (0.5, 0.76395033, 0.33308960, 0.0),
        (1, 0.93125968, 0.45139325, 0.0),
    ],
}


@pytest.mark.parametrize("far_end", RODS)
@pytest.mark.parametrize("row", range(4))
def test_model_of_rod_with_flux(far_end, row):
    """The heat model at both ends and the middle of a rod of 10 mm with 3 W/mm2 on one end (section 3.8)."""
    relative_time, *rises = RODS[far_end][row]
    body = column(np.linspace(0, 10, 81), lower_end="insulated" if far_end == "insulated" else 0.0)
    time_s = relative_time * 100 / STEEL.diffusivity_mm2_s
    run = heated(body, time_s, power_w=face_power(body, flux_w_mm2=3), steps=60, growth=1.03)
    end = run.final_c[-1, 0] if far_end == "insulated" else 0.0
    found = np.array([face_rise_k(run, body, flux_w_mm2=3)[0], down_axis(run, body, 5.0), end]) / 1000
    np.testing.assert_allclose(found, rises, rtol=CLOSE, atol=2e-4)  # absolute: nearly nothing got there yet


TIMES = np.array([0.1, 0.2, 0.5, 1.0])
BIOT_1 = {
    "wall": ([0.993108, 0.950642, 0.772526, 0.533859], [0.723577, 0.643391, 0.504522, 0.348177]),
    "cylinder": ([0.976817, 0.870174, 0.548586, 0.249380], None),
}


def cooled(body, relative_time, size_mm):
    """Run a body that starts at 1000 C above its surroundings until a Fourier number."""
    time_s = relative_time * size_mm**2 / STEEL.diffusivity_mm2_s
    return heated(body, time_s, start_c=1000.0, steps=60, growth=1.05)


def film(biot, size_mm):
    """Return the ends and film of a body with a Biot number, in surroundings at 0 C."""
    return {"film_w_m2k": biot * 30 / (size_mm / 1000), "ambient_c": 0.0}


@pytest.mark.parametrize("biot", [0.1, 1, 10])
@pytest.mark.parametrize("relative_time", TIMES)
def test_model_of_wall_with_film(biot, relative_time):
    """The heat model in the middle and near the face of half a wall of 5 mm (section 3.11)."""
    body = column(np.linspace(0, 5, 61), lower_end="exposed", **film(biot, 5))
    run = cooled(body, relative_time, 5)
    places = body.grid.depths_mm[[0, -1]] / 5
    expected = wall_temperature(places, relative_time, biot_number=biot)
    np.testing.assert_allclose(run.final_c[[0, -1], 0] / 1000, expected, rtol=CLOSE)


@pytest.mark.parametrize("biot", [0.1, 1, 10])
@pytest.mark.parametrize("relative_time", TIMES)
def test_model_of_cylinder_with_film(biot, relative_time):
    """The heat model on the axis and near the face of a long cylinder of radius 5 mm (section 7.6)."""
    body = disc(np.linspace(0, 5, 61), outer_end="exposed", **film(biot, 5))
    run = cooled(body, relative_time, 5)
    places = body.grid.radii_mm[[0, -1]] / 5
    expected = cylinder_temperature(places, relative_time, biot_number=biot)
    np.testing.assert_allclose(run.final_c[0, [0, -1]] / 1000, expected, rtol=CLOSE, atol=TAIL)


@pytest.mark.parametrize(
    ("relative_time", "share"), [(0.1, 0.970085), (0.2, 0.827224), (0.5, 0.423797), (1, 0.133134)]
)
def test_model_of_finite_cylinder_with_film(relative_time, share):
    """The centre of a cylinder as long as wide at Bi 1: the product of wall and cylinder (section 1.15)."""
    edges = np.linspace(0, 5, 41)
    grid = Grid(radius_edges_mm=edges, height_edges_mm=edges)
    body = solid(grid, lower_end="exposed", outer_end="exposed", **film(1, 5))
    run = cooled(body, relative_time, 5)
    assert run.final_c[0, 0] / 1000 == pytest.approx(share, rel=CLOSE)


def test_model_of_rivet_head_in_the_end():
    """Steady head, 4 mm in radius and 2 mm high, 10 W/mm2 within 3 mm, foot at 0 C (section 8.3)."""
    grid = Grid(radius_edges_mm=np.linspace(0, 4, 81), height_edges_mm=np.linspace(0, 2, 41))
    body = solid(grid, lower_end=0.0)
    run = heated(body, 20, power_w=face_power(body, flux_w_mm2=10, within_mm=3), steps=40, growth=1.3)
    halfway = run.final_c[19:21].mean(axis=0)
    top = face_rise_k(run, body, flux_w_mm2=10 * (grid.radii_mm < 3))
    assert top[0] == pytest.approx(575.0760, rel=CLOSE)
    assert halfway[0] == pytest.approx(268.8214, rel=CLOSE)
    assert halfway[-1] == pytest.approx(137.2365, rel=CLOSE)
    assert np.average(top, weights=grid.ring_areas_mm2) == pytest.approx(375.0, rel=CLOSE)


def test_model_of_two_bodies_that_touch():
    """Hot steel and cold aluminium meet at (e1 T1 + e2 T2)/(e1 + e2), e = sqrt(k rho c) (section 2.15)."""
    aluminium = ConstantMetal(conductivity_w_mk=190, density_kg_m3=2700, heat_capacity_j_kgk=900)
    edges = graded_edges([0, 20, 60], fine_at_mm=[20], finest_mm=0.02, growth=0.1)
    grid = Grid(radius_edges_mm=[0, UNIT_RADIUS_MM], height_edges_mm=edges)
    above = grid.depths_mm < 20
    body = Body(
        grid=grid,
        substances=(constant("steel", metal=STEEL), constant("aluminium", metal=aluminium)),
        where=np.where(above, 0, 1)[:, None],
    )
    run = heated(body, 0.5, start_c=np.where(above, 800.0, 20.0)[:, None], steps=60, growth=1.1)
    e_steel, e_aluminium = (
        math.sqrt(metal.conductivity_w_mmk * metal.heat_by_volume_j_mm3k) for metal in (STEEL, aluminium)
    )
    face = (e_steel * 800 + e_aluminium * 20) / (e_steel + e_aluminium)
    assert run.final_c[above, 0][-1] == pytest.approx(face, rel=CLOSE * 5)  # half a cell away from the face
    assert run.final_c[~above, 0][0] == pytest.approx(face, rel=CLOSE)
    assert run.balance < HEAT_BALANCE


@pytest.mark.parametrize(
    ("stefan", "constant_of_depth"),
    [
        (0.1, 0.22001627),
        (0.2, 0.30642391),
        (0.5, 0.46478592),
        (1, 0.62006263),
        (2, 0.80060136),
        (3, 0.91375127),
    ],
)
def test_model_of_melting_from_a_hot_face(stefan, constant_of_depth):
    """A solid at its melting point with its face held hot: depth 2 lambda sqrt(alpha t) (section 11.2)."""
    latent_j_kg = 650 * 500 / stefan  # the face is 500 K too hot
    wax = constant("metal", metal=STEEL, melting_c=1000.0, latent_heat_j_kg=latent_j_kg)
    body = column(np.linspace(0, 1.5, 301), substance=wax, upper_end=1500.0)
    time_s = 0.05
    run = heated(body, time_s, start_c=999.995, steps=400)
    expected = 2 * constant_of_depth * math.sqrt(STEEL.diffusivity_mm2_s * time_s)
    assert run.melted_share[:, 0] @ body.grid.heights_mm == pytest.approx(expected, rel=PER_CENT)
    assert run.balance < HEAT_BALANCE
