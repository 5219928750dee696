"""Arc energy, heat to each face, melted depth and time to melting."""

import numpy as np
import pytest
from scipy.optimize import brentq

from secondplate.arc import (
    arc_energy_j,
    depth_of_heat_mm,
    energy_per_area_j_mm2,
    face_heat_share,
    fusion_area_mm2,
    half_space_melting_ms,
    heat_flux_w_mm2,
    heat_to_face_j,
    melted_depth_mm,
    melting_start_ms,
    voltage_band_v,
)
from secondplate.materials import MATERIAL_NAMES, material

ENERGIES_J = np.array([120.0, 270.0, 480.0])


def test_energy_in_joules():
    """10 V at 100 A for 1 ms is 1 J."""
    assert arc_energy_j(voltage_v=10, current_a=100, time_ms=1) == 1.0


def test_energy_broadcasts():
    """A column of settings gives a column of energies."""
    found = arc_energy_j(voltage_v=30, current_a=np.array([400, 600, 800]), time_ms=np.array([10, 15, 20]))
    np.testing.assert_allclose(found, ENERGIES_J, rtol=1e-15)  # exact arithmetic


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"voltage_v": 9}, "voltage must be between 10 V and 50 V, got 9 V"),
        ({"current_a": 0}, "current must be above 0 A, got 0 A"),
        ({"time_ms": -1}, "time must be above 0 ms, got -1 ms"),
        ({"time_ms": 3001}, "time must be between 0 ms and 3000 ms, got 3001 ms"),
        ({"current_a": np.inf}, "current must be finite, got inf A"),
        ({"current_a": "800"}, "current must be a number in A, got '800'"),
    ],
)
def test_energy_refuses_what_is_out_of_range(change, sentence):
    """Each argument has its range and its sentence."""
    with pytest.raises(ValueError, match=sentence):
        arc_energy_j(**({"voltage_v": 30, "current_a": 800, "time_ms": 20} | change))


def test_face_is_a_circle():
    """A face of 2 mm is pi square millimetres; sizes out of range are refused."""
    assert fusion_area_mm2(2) == pytest.approx(np.pi, rel=1e-15)  # exact
    with pytest.raises(ValueError, match="face diameter must be between 1 mm and 30 mm, got 31 mm"):
        fusion_area_mm2(31)


def test_energy_per_area_falls_with_the_square_of_the_face():
    """Twice the face takes a quarter of the energy per area."""
    wide, narrow = (energy_per_area_j_mm2(480, face_diameter_mm=face) for face in (8, 4))
    assert wide == pytest.approx(narrow / 4, rel=1e-15)  # exact


def test_two_faces_never_take_more_than_the_arc_gives():
    """The best shares of both faces together stay under the whole."""
    share = face_heat_share()
    assert 2 * share.best < 1
    assert share.low == pytest.approx(0.80 * 0.4, rel=1e-12)  # product of the two low ends
    assert share.high == pytest.approx(0.90 * 0.6, rel=1e-12)


def test_heat_to_face_of_an_array():
    """A column of energies gives a band of columns, in order everywhere."""
    heat = heat_to_face_j(ENERGIES_J)
    assert np.all((heat.low < heat.best) & (heat.best < heat.high))
    np.testing.assert_allclose(heat.best, face_heat_share().best * ENERGIES_J, rtol=1e-15)  # exact
    with pytest.raises(ValueError, match="energy must be above 0 J, got 0 J"):
        heat_to_face_j(0)


@pytest.mark.parametrize(
    ("face_mm", "current_a", "flux_w_mm2"), [(5, 600, 389.6), (6, 700, 315.7), (7, 800, 265.0)]
)
def test_heat_flux(face_mm, current_a, flux_w_mm2):
    """Worked values at 30 V for three studs."""
    flux = heat_flux_w_mm2(voltage_v=30, current_a=current_a, face_diameter_mm=face_mm)
    assert flux.best == pytest.approx(flux_w_mm2, abs=0.06)  # one decimal


@pytest.mark.parametrize(
    ("face_mm", "energy_j", "bound_mm"), [(5, 270, 0.614), (6, 315, 0.498), (7, 480, 0.557)]
)
def test_energy_bound_of_depth(face_mm, energy_j, bound_mm):
    """Worked values of the energy bound, heat content 9.514 J/mm3."""
    depth_mm = depth_of_heat_mm(
        heat_to_face_j(energy_j).best, face_diameter_mm=face_mm, heat_content_j_mm3=9.514
    )
    assert depth_mm == pytest.approx(bound_mm, abs=6e-4)  # three decimals


@pytest.mark.parametrize("name", MATERIAL_NAMES)
def test_melted_depth_rests_on_the_materials(name):
    """The band runs from the leanest heat in the richest metal to the richest heat in the leanest metal."""
    depth = melted_depth_mm(energy_j=480, face_diameter_mm=7, material=name)
    heat, content = heat_to_face_j(480), material(name).heat_content_j_mm3()
    area = fusion_area_mm2(7)
    # Same arithmetic in another order.
    assert depth.low == pytest.approx(heat.low / (content.high * area), rel=1e-12)
    assert depth.high == pytest.approx(heat.high / (content.low * area), rel=1e-12)
    assert "bound" in depth.basis


def test_half_the_heat_melts_half_the_depth():
    """The melting share scales the depth; the worked example of M6 leaves 0.28 mm on each face."""
    names = {"energy_j": 480, "face_diameter_mm": 7, "material": "carbon steel"}
    half, whole = melted_depth_mm(**names, melting_share=0.5), melted_depth_mm(**names)
    assert half.best == pytest.approx(whole.best / 2, rel=1e-12)  # exact
    assert half.best == pytest.approx(0.279, rel=0.06)  # worked with 9.514, the table has 9.95 J/mm3
    with pytest.raises(ValueError, match="melting share must be between 0 and 1, got 1.2"):
        melted_depth_mm(**names, melting_share=1.2)


def test_computed_depths_stay_under_the_bound():
    """Depths of a half-space computed with stirred melt stay under the energy bound of the same weld."""
    for face_mm, energy_j, computed_mm in ((5, 270, 0.424), (6, 315, 0.321), (7, 480, 0.355)):
        bound = melted_depth_mm(energy_j=energy_j, face_diameter_mm=face_mm, material="carbon steel")
        assert 0.3 < computed_mm / bound.best < 0.8


def test_melting_begins_within_the_weld():
    """At the charted M6 setting steel begins to melt early in the 20 ms."""
    flux = heat_flux_w_mm2(voltage_v=30, current_a=800, face_diameter_mm=7)
    assert 1 < melting_start_ms(heat_flux_w_mm2=flux.best, material="carbon steel") < 10


def test_melting_time_falls_with_the_square_of_the_flux():
    """Twice the flux melts in a quarter of the time; arrays pass."""
    times = melting_start_ms(heat_flux_w_mm2=np.array([100.0, 200.0]), material="austenitic stainless")
    assert times[0] == pytest.approx(4 * times[1], rel=1e-12)  # exact
    with pytest.raises(ValueError, match="heat flux must be between 10 W/mm2 and 2000 W/mm2, got 5"):
        melting_start_ms(heat_flux_w_mm2=5, material="carbon steel")
    with pytest.raises(ValueError, match="material must be one of .* got 'cheese'"):
        melting_start_ms(heat_flux_w_mm2=100, material="cheese")


def test_melting_time_solves_the_surface_temperature():
    """The time found is the root of 2 q/k sqrt(alpha t/pi) = rise, found by bisection."""
    flux_w_m2, k, rho, c, rise = 2e8, 28.0, 7900.0, 600.0, 1400.0
    root_s = brentq(lambda t: 2 * flux_w_m2 / k * np.sqrt(k / (rho * c) * t / np.pi) - rise, 1e-6, 1)
    found = half_space_melting_ms(
        heat_flux_w_mm2=200, conductivity_w_mk=k, density_kg_m3=rho, heat_capacity_j_kgk=c, rise_k=rise
    )
    assert found == pytest.approx(1000 * root_s, rel=1e-6)  # tolerance of the root finder


def test_voltage_band_holds_the_typical_range():
    """25 to 35 V lies inside."""
    assert voltage_band_v().contains(25)
    assert voltage_band_v().contains(35)
