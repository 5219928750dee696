"""Strength of studs: ranges, shapes, limiting cases."""

import numpy as np
import pytest

from secondplate.studs import (
    PROPERTY_CLASSES,
    breaking_load_n,
    coarse_pitch_mm,
    proof_load_n,
    property_class,
    stress_area_mm2,
    torque_coefficient,
    working_torque_n_m,
)
from secondplate.tables import BASES

SIZES_MM = np.array([3.0, 4.0, 5.0, 6.0, 8.0])


@pytest.mark.parametrize("name", PROPERTY_CLASSES)
def test_each_class_is_whole(name):
    """A class knows its strengths in the right order, where they come from, and what welding does to it."""
    found = property_class(name)
    assert found.name == name
    assert 0 < found.proof_stress_mpa < found.tensile_strength_mpa
    assert found.basis in BASES
    assert found.as_weld_stud


def test_contracted_classes_are_held():
    """The seven classes of the workbook are there."""
    assert set(PROPERTY_CLASSES) == {"4.8", "8.8", "10.9", "12.9", "A2-50", "A2-70", "A2-80"}


def test_stainless_has_no_hardness_limit():
    """Hardness is None where the standard gives none, never a made-up number."""
    assert property_class("A2-70").lowest_hardness_hv is None
    assert property_class("4.8").highest_hardness_hv == 220


def test_unknown_class_is_refused():
    """An unknown class is refused with the list of classes."""
    with pytest.raises(ValueError, match="property class must be one of 4.8, 8.8, .* got 'A2-60'"):
        property_class("A2-60")


@pytest.mark.parametrize("function", [breaking_load_n, proof_load_n])
def test_load_is_area_times_stress(function):
    """1 mm2 at 1 MPa carries 1 N; arrays broadcast."""
    assert function(1, 1) == 1.0
    np.testing.assert_allclose(function(np.array([1.0, 2.0]), 500), [500, 1000], rtol=1e-15)  # exact
    with pytest.raises(ValueError, match="stress area must be above 0 mm2, got -1 mm2"):
        function(-1, 500)


def test_torque_array_equals_scalar():
    """A column of studs gives the same torques as one by one."""
    areas = stress_area_mm2(SIZES_MM, pitch_mm=coarse_pitch_mm(SIZES_MM))
    torques = working_torque_n_m(stress_area_mm2=areas, proof_stress_mpa=210, diameter_mm=SIZES_MM)
    singles = [
        working_torque_n_m(stress_area_mm2=area, proof_stress_mpa=210, diameter_mm=size)
        for area, size in zip(areas, SIZES_MM, strict=True)
    ]
    np.testing.assert_allclose(torques, singles, rtol=1e-15)  # same arithmetic


def test_torque_is_in_proportion():
    """Torque doubles with the preload share and with the torque coefficient."""
    names = {"stress_area_mm2": 20.1, "proof_stress_mpa": 210, "diameter_mm": 6}
    base = working_torque_n_m(**names, preload_share=0.4, torque_coefficient=0.1)
    assert working_torque_n_m(**names, preload_share=0.8, torque_coefficient=0.1) == pytest.approx(2 * base)
    assert working_torque_n_m(**names, preload_share=0.4, torque_coefficient=0.2) == pytest.approx(2 * base)


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"preload_share": 0}, "preload share must be above 0, got 0"),
        ({"preload_share": 1.01}, "preload share must be between 0 and 1, got 1.01"),
        ({"torque_coefficient": 0.02}, "torque coefficient must be between 0.05 and 0.5, got 0.02"),
        ({"diameter_mm": 50}, "diameter must be between 1 mm and 40 mm, got 50 mm"),
        ({"proof_stress_mpa": 0}, "proof stress must be above 0 MPa, got 0 MPa"),
    ],
)
def test_torque_refuses_what_is_out_of_range(change, sentence):
    """Each argument has its range and its sentence."""
    names = {"stress_area_mm2": 20.1, "proof_stress_mpa": 210, "diameter_mm": 6} | change
    with pytest.raises(ValueError, match=sentence):
        working_torque_n_m(**names)


@pytest.mark.parametrize(
    ("diameter_mm", "friction", "coefficient"),
    [
        (6, 0.10, 0.1430),
        (6, 0.12, 0.1663),
        (6, 0.15, 0.2012),
        (6, 0.20, 0.2594),
        (5, 0.15, 0.2005),
        (4, 0.15, 0.2021),
    ],
)
def test_torque_coefficient_by_friction(diameter_mm, friction, coefficient):
    """Worked values; 0.2 for plain steel means a friction of about 0.15."""
    found = torque_coefficient(
        diameter_mm=diameter_mm, pitch_mm=coarse_pitch_mm(diameter_mm), friction=friction
    )
    assert found == pytest.approx(coefficient, abs=1e-4)  # 0.159 and 0.577 have three figures


def test_torque_coefficient_array_equals_scalar():
    """Sizes and frictions broadcast; the default bearing follows each size."""
    found = torque_coefficient(diameter_mm=SIZES_MM, pitch_mm=coarse_pitch_mm(SIZES_MM), friction=0.15)
    singles = [
        torque_coefficient(diameter_mm=size, pitch_mm=coarse_pitch_mm(size), friction=0.15)
        for size in SIZES_MM
    ]
    np.testing.assert_allclose(found, singles, rtol=1e-15)  # same arithmetic


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"friction": 0.01}, "friction must be between 0.04 and 0.4, got 0.01"),
        ({"bearing_diameter_mm": 5}, "bearing diameter over diameter must be at least 1, got 0.833333"),
        ({"bearing_diameter_mm": -8}, "bearing diameter must be above 0 mm, got -8 mm"),
    ],
)
def test_torque_coefficient_refuses_what_is_out_of_range(change, sentence):
    """Friction and bearing have their ranges."""
    with pytest.raises(ValueError, match=sentence):
        torque_coefficient(**({"diameter_mm": 6, "pitch_mm": 1, "friction": 0.15} | change))


def test_order_of_magnitude_of_a_pull_stud():
    """An M6 stud of A2-70 breaks at about 14 kN, one of A2-50 at about 10 kN."""
    area_mm2 = stress_area_mm2(6, pitch_mm=1)
    assert 13_500 < breaking_load_n(area_mm2, property_class("A2-70").tensile_strength_mpa) < 14_500
    assert 9_500 < breaking_load_n(area_mm2, property_class("A2-50").tensile_strength_mpa) < 10_500
