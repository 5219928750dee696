"""The tool that pulls: trends, bounds and refusals."""

import numpy as np
import pytest

from secondplate.pull_tool import (
    flight_speed_m_s,
    hydraulic_force_n,
    intensified_pressure_bar,
    nose_bearing_mpa,
    stored_energy_j,
    stroke_needed_mm,
    stud_stretch_mm,
    top_plate_dish_mm,
)

DISH = {
    "force_n": 2000,
    "support_radius_mm": 8,
    "thickness_mm": 1.5,
    "elastic_modulus_mpa": 70_000,
    "poisson_ratio": 0.33,
}


def test_two_pistons_carry_the_same_force():
    """What the air piston is pushed with is what the oil piston pushes with."""
    oil_bar = intensified_pressure_bar(pressure_bar=6, air_bore_mm=100, ram_bore_mm=16)
    air_n = hydraulic_force_n(pressure_bar=6, bore_mm=100)
    assert hydraulic_force_n(pressure_bar=oil_bar, bore_mm=16) == pytest.approx(air_n, rel=1e-12)  # exact


def test_energy_is_the_work_of_the_stretch():
    """A stud of known stretch stores half of force times stretch, and it all goes into the flight."""
    stretch_mm = stud_stretch_mm(force_n=8000, stretched_length_mm=40, stress_area_mm2=20.1)
    energy_j = stored_energy_j(force_n=8000, stiffness_n_mm=8000 / stretch_mm)
    assert energy_j == pytest.approx(8000 * stretch_mm / 2000, rel=1e-12)  # exact
    speed_m_s = flight_speed_m_s(energy_j=energy_j, mass_g=12)
    assert 0.012 * speed_m_s**2 / 2 == pytest.approx(energy_j, rel=1e-12)


def test_columns_in_columns_out():
    """A column of sizes gives a column of results, the same as one by one."""
    bores = np.array([12.0, 16.0, 20.0])
    column = hydraulic_force_n(pressure_bar=500, bore_mm=bores, efficiency=0.9)
    alone = [hydraulic_force_n(pressure_bar=500, bore_mm=bore, efficiency=0.9) for bore in bores]
    assert column == pytest.approx(alone, rel=1e-12)  # the same sums
    thick = top_plate_dish_mm(**DISH | {"thickness_mm": np.array([1.0, 2.0])})
    assert thick.low[0] / thick.low[1] == pytest.approx(8, rel=1e-12)  # third power of the thickness


def test_a_supported_edge_gives_more_than_a_clamped_one():
    """The band runs from clamped to supported, and holds its best."""
    dish = top_plate_dish_mm(**DISH)
    assert dish.low < dish.best < dish.high
    assert dish.high / dish.low == pytest.approx(3.33 / 1.33, rel=1e-12)  # exact


@pytest.mark.parametrize(
    ("call", "given", "said"),
    [
        (
            hydraulic_force_n,
            {"pressure_bar": 1200, "bore_mm": 20},
            "pressure must be between 0 bar and 1000 bar, got 1200 bar",
        ),
        (
            hydraulic_force_n,
            {"pressure_bar": "700", "bore_mm": 20},
            "pressure must be a number in bar, got '700'",
        ),
        (hydraulic_force_n, {"pressure_bar": 700, "bore_mm": 0}, "bore must be above 0 mm, got 0 mm"),
        (
            hydraulic_force_n,
            {"pressure_bar": 700, "bore_mm": 20, "efficiency": 1.2},
            "efficiency must be between 0 and 1, got 1.2",
        ),
        (
            intensified_pressure_bar,
            {"pressure_bar": 6, "air_bore_mm": 16, "ram_bore_mm": 100},
            "ram bore must be below the air bore of 16 mm, got 100 mm",
        ),
        (
            nose_bearing_mpa,
            {"force_n": 4000, "outer_diameter_mm": 12, "inner_diameter_mm": 20},
            "inner diameter must be below the outer diameter of 12 mm, got 20 mm",
        ),
        (
            stroke_needed_mm,
            {"rivet_length_mm": 6, "stretch_mm": -1},
            "stretch must be at least 0 mm, got -1 mm",
        ),
        (
            stored_energy_j,
            {"force_n": 5000, "stiffness_n_mm": 0},
            "stiffness must be above 0 N/mm, got 0 N/mm",
        ),
        (flight_speed_m_s, {"energy_j": 2, "mass_g": 0}, "mass must be above 0 g, got 0 g"),
        (
            top_plate_dish_mm,
            DISH | {"poisson_ratio": 0.6},
            "Poisson's ratio must be between 0 and 0.5, got 0.6",
        ),
    ],
)
def test_what_cannot_be_is_said(call, given, said):
    """Impossible tools are refused in one sentence with name, limit and value."""
    with pytest.raises(ValueError, match=said):
        call(**given)
