"""Melting: the condition at the front, the table by moving cells, limits and refusals."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.special import erf, erfc

from secondplate.heat.constant_metal import ConstantMetal
from secondplate.heat.melting_forms import (
    ablation_speed_mm_s,
    constant_flux_melting,
    constant_flux_melting_table,
    neumann_constant,
    neumann_depth_mm,
)

STEEL = ConstantMetal(conductivity_w_mk=30, density_kg_m3=7850, heat_capacity_j_kgk=650)


@pytest.mark.parametrize(("stefan", "subcooling"), [(0.5, 0), (2, 3), (0.01, 4), (10, 0.2), (20, 20)])
def test_front_takes_the_difference_of_both_fluxes(stefan, subcooling):
    """By differences: the slope of the melt less that of the solid is what the front takes to melt."""
    constant, step = neumann_constant(stefan, subcooling_number=subcooling), 1e-6
    # In units of latent heat over heat capacity, at the time when sqrt(4 alpha t) is 1.
    melt = [stefan * (1 - erf(place) / erf(constant)) for place in (constant - step, constant)]
    solid = [subcooling * (erfc(place) / erfc(constant) - 1) for place in (constant, constant + step)]
    into, out = (melt[0] - melt[1]) / step, (solid[0] - solid[1]) / step
    assert into - out == pytest.approx(2 * constant, rel=1e-4, abs=1e-4)  # one-sided differences


def test_cold_body_melts_less():
    """The colder the solid, the shallower the melt; without subcooling the one-phase form holds."""
    constants = neumann_constant(2.0, subcooling_number=np.array([0, 0.5, 1, 3]))
    assert np.all(np.diff(constants) < 0)
    assert constants[0] * np.exp(constants[0] ** 2) * erf(constants[0]) == pytest.approx(
        2 / np.sqrt(np.pi), rel=1e-12
    )


def test_slow_melting_goes_with_the_root():
    """At a small Stefan number lambda tends to sqrt(Ste/2)."""
    assert neumann_constant(1e-6) == pytest.approx(np.sqrt(5e-7), rel=1e-6)


def test_depth_grows_with_the_root_of_time():
    """Four times the time, twice the depth; nothing at time 0."""
    melt = {"face_excess_k": 1000, "first_shortfall_k": 1480, "latent_heat_j_kg": 250e3, "metal": STEEL}
    depths_mm = neumann_depth_mm(np.array([0, 0.005, 0.02]), **melt)
    assert depths_mm[0] == 0
    assert depths_mm[2] == pytest.approx(2 * depths_mm[1], rel=1e-12)  # exact
    assert 0.1 < depths_mm[2] < 0.6  # less than the 0.599 of a body already at its melting point


def test_depth_by_the_handbook_constant():
    """An excess of one latent heat has Stefan number 1: 2 x 0.62006263 sqrt(alpha t) after 20 ms."""
    found_mm = neumann_depth_mm(
        0.02, face_excess_k=250e3 / 650, first_shortfall_k=0, latent_heat_j_kg=250e3, metal=STEEL
    )
    expected_mm = 2 * 0.62006263 * np.sqrt(5.8794708476 * 0.02)
    assert found_mm == pytest.approx(expected_mm, rel=1e-8)  # eight decimals of the constant


def moving_cells(times, *, cells):
    """Melt at rest, coordinate stretched to 0..1 over the melt: depths and face excess, by lines."""
    start = 0.001  # begin with the first terms of the series
    width = 1 / cells
    middles = (np.arange(cells) + 0.5) * width
    depth_0 = start - start**2 / 2

    def change(_, state):
        excess, depth = state[:-1], state[-1]
        # Second order at the front, where the excess is nothing.
        slope_at_front = (excess[-2] / 3 - 3 * excess[-1]) / width
        speed = -slope_at_front / depth
        inner = np.diff(excess) / width
        slopes = np.concatenate(([-depth], inner, [slope_at_front]))
        spreading = np.diff(slopes) / width / depth**2
        drift = middles * speed / depth * (slopes[1:] + slopes[:-1]) / 2
        return np.append(spreading + drift, speed)

    state = np.append(depth_0 * (1 - middles), depth_0)
    found = solve_ivp(change, (start, times[-1]), state, method="BDF", t_eval=times, rtol=1e-8, atol=1e-11).y
    depths = found[-1]
    faces = found[0] + depths * width / 2 + (found[0] - found[1] - depths * width) / 8
    return depths, faces


def test_table_is_found_by_moving_cells():
    """Lines on a stretched coordinate give the depths and face excesses of the table."""
    times, depths, faces = constant_flux_melting_table()
    found_depths, found_faces = moving_cells(times, cells=80)
    np.testing.assert_allclose(found_depths, depths, rtol=2e-4)  # 80 cells of second order
    np.testing.assert_allclose(found_faces, faces, rtol=2e-4)


def test_table_keeps_the_heat():
    """Depth plus heat in the overheated melt is the time; the melt's excess is close to a parabola's."""
    times, depths, faces = constant_flux_melting_table()
    stored = (times - depths) / (depths * faces)
    assert np.all((stored > 1 / 3) & (stored < 1 / 2))  # between a hollow parabola and a straight line


def test_series_begins_with_all_heat_melting():
    """At first the depth is the relative time, then it falls behind."""
    assert constant_flux_melting(0) == 0
    tau = np.array([1e-6, 0.01, 0.1])
    assert np.all(constant_flux_melting(tau) < tau)
    assert constant_flux_melting(1e-6) == pytest.approx(1e-6, rel=1e-6)


def test_ablation_is_an_array_over_an_array():
    """Twice the flux recedes twice as fast."""
    found = ablation_speed_mm_s(np.array([200.0, 400.0]), heat_content_j_mm3=10)
    np.testing.assert_allclose(found, [20, 40], rtol=1e-14)  # exact


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: neumann_constant(0), "Stefan number must be between 1e-06 and 20, got 0"),
        (
            lambda: neumann_constant(1, subcooling_number=-1),
            "subcooling number must be between 0 and 20, got -1",
        ),
        (lambda: constant_flux_melting(0.2), "relative time must be between 0 and 0.1, got 0.2"),
        (
            lambda: ablation_speed_mm_s(100, heat_content_j_mm3=0.5),
            "heat content must be between 1 J/mm3 and 20 J/mm3, got 0.5 J/mm3",
        ),
        (
            lambda: neumann_depth_mm(
                1, face_excess_k=0, first_shortfall_k=0, latent_heat_j_kg=1, metal=STEEL
            ),
            "face excess must be above 0 K, got 0 K",
        ),
    ],
)
def test_refusals(call, sentence):
    """Each argument out of its range is refused with its sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
