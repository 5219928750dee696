"""Strength of materials: round bar under eccentric pull. Formulas seen; worked values computed apart."""

import math

import numpy as np
import pytest

from secondplate.pull_tool import flight_speed_m_s, stored_energy_j, stud_stretch_mm
from secondplate.removal_work import punch_force_n
from secondplate.weld_loads import (
    edge_over_mean,
    edge_stresses_mpa,
    elastic_limit_n,
    elastic_load_share,
    plastic_limit_n,
    plastic_load_share,
    pull_eccentricity_mm,
)
from secondplate.weld_sections import kern_radius_mm, plastic_modulus_mm3, section_modulus_mm3
from secondplate.weld_strength import web_tear_n

SOURCE = "strength_of_materials"


def test_moduli_of_the_circle():
    """Elastic pi d^3/32, plastic d^3/6, their ratio 16/(3 pi), about 1.7; all seen."""
    assert section_modulus_mm3(10) == pytest.approx(math.pi * 1000 / 32, rel=1e-12)  # exact
    assert plastic_modulus_mm3(10) == pytest.approx(1000 / 6, rel=1e-12)
    assert plastic_modulus_mm3(7) / section_modulus_mm3(7) == pytest.approx(16 / (3 * math.pi), rel=1e-12)


def test_kern_of_the_circle():
    """An eighth of the diameter, seen, 0.75 mm of 6; there the far edge is free and the near one doubled."""
    assert (kern_radius_mm(8), kern_radius_mm(6)) == (1.0, 0.75)
    near, far = edge_stresses_mpa(force_n=1000, diameter_mm=8, eccentricity_mm=1.0)
    mean = 1000 / (math.pi * 16)
    assert near == pytest.approx(2 * mean, rel=1e-12)  # exact
    assert far == pytest.approx(0, abs=1e-9)


def test_worked_eccentric_pull():
    """3000 N half a millimetre off the middle of 5 mm: 152.8 becomes 275.0 and 30.6 MPa; computed."""
    near, far = edge_stresses_mpa(force_n=3000, diameter_mm=5, eccentricity_mm=0.5)
    assert (near + far) / 2 == pytest.approx(152.8, abs=0.06)  # one decimal
    assert near == pytest.approx(275.0, abs=0.06)
    assert far == pytest.approx(30.6, abs=0.06)


def test_square_bar_pulled_at_its_side():
    """Problem of a 1/2 inch square bar pulled 1/2 inch off its middle: 28 P beside 4 P, ratio 7; seen."""
    side, off = 0.5, 0.5
    ratio = edge_over_mean(eccentricity_mm=off, kern_mm=side / 6)
    assert ratio == pytest.approx(7, rel=1e-12)  # exact
    assert ratio / side**2 == pytest.approx(28, rel=1e-12) == pytest.approx(7 * 4, rel=1e-12)


def test_worked_askew_pull():
    """3000 N at 5 degrees and 20 mm above 6 mm: 105.7 and 246.6 make 352.3 MPa; computed."""
    near, far = edge_stresses_mpa(force_n=3000, diameter_mm=6, tilt_deg=5, lever_mm=20)
    assert (near + far) / 2 == pytest.approx(105.7, abs=0.06)  # one decimal
    assert (near - far) / 2 == pytest.approx(246.6, abs=0.06)
    assert near == pytest.approx(352.3, abs=0.06)


def test_five_degrees_are_worse_than_a_millimetre():
    """A tilt of 5 degrees at 20 mm is worse than an offset of 1 mm."""
    assert pull_eccentricity_mm(eccentricity_mm=0, tilt_deg=5, lever_mm=20) > 1


@pytest.mark.parametrize(("ratio", "share"), [(0.1, 0.556), (0.125, 0.5), (0.25, 0.333)])
def test_elastic_capacity(ratio, share):
    """1 / (1 + 8 e/d) at three offsets; computed."""
    assert elastic_load_share(ratio) == pytest.approx(share, abs=6e-4)  # three decimals


@pytest.mark.parametrize(
    ("ratio", "share", "last_digit"),
    [
        *((0.05, 0.949, 1e-3), (0.1, 0.8982, 1e-4), (0.2, 0.803, 1e-3), (0.25, 0.7594, 1e-4)),
        *((0.3, 0.7183, 1e-4), (0.4, 0.6440, 1e-4), (0.5, 0.5798, 1e-4), (1.0, 0.3702, 1e-4)),
    ],
)
def test_plastic_capacity(ratio, share, last_digit):
    """Exact plastic limit of the circle by e/R; computed, to three or four decimals."""
    assert plastic_load_share(ratio) == pytest.approx(share, abs=0.6 * last_digit)


def test_plastic_limit_far_off_the_middle_is_bending_alone():
    """Far off the middle the moment alone rules: F e = R d^3/6."""
    force = plastic_limit_n(diameter_mm=6, strength_mpa=500, eccentricity_mm=600)
    assert force * 600 == pytest.approx(500 * plastic_modulus_mm3(6), rel=1e-4)  # the axial part is left


def test_plastic_limit_against_strips():
    """The stress block cut into strips gives the same pull at the same offset."""
    radius, strips = 3.0, 400_000
    height = (np.arange(strips) + 0.5) / strips * 2 * radius - radius
    width = 2 * np.sqrt(radius**2 - height**2) * 2 * radius / strips
    for axis in (-2.5, -1.0, -0.2):
        sign = np.where(height > axis, 1.0, -1.0)
        pull, moment = (sign * width).sum(), (sign * width * height).sum()
        share = plastic_load_share(moment / pull / radius)
        assert share == pytest.approx(pull / (np.pi * radius**2), rel=1e-4)  # 400,000 strips


def test_full_face_bears_area_times_strength():
    """On the middle both limits are A R; pi/4 of 6 mm at 500 MPa is 14137 N."""
    for limit in (elastic_limit_n, plastic_limit_n):
        assert limit(diameter_mm=6, strength_mpa=500) == pytest.approx(14137.2, abs=0.06)  # one decimal


def test_pure_shear_share_of_von_mises():
    """The web shears at R / sqrt 3: 3.30 kN for 5 mm, 1.5 mm and 140 MPa of shear strength; computed."""
    force = web_tear_n(shank_diameter_mm=5, web_left_mm=1.5, strength_mpa=140 * math.sqrt(3))
    assert force == pytest.approx(3299, abs=1)  # printed with three figures


def test_plug_out_of_a_plate():
    """pi d t tau: 3298.7 N for 5 mm, 1.5 mm and 140 MPa of shear strength; computed."""
    force = punch_force_n(plug_diameter_mm=5, plate_thickness_mm=1.5, shear_strength_mpa=140)
    assert force == pytest.approx(3298.7, rel=1e-4)  # five digits


def test_stretch_and_stored_energy():
    """10 kN stretch 40 mm of M6 by 0.0995 mm; 20 kN/mm store 2.5 J, 10 g leave at 22 m/s; computed."""
    stretch = stud_stretch_mm(force_n=10_000, stretched_length_mm=40, stress_area_mm2=20.1)
    assert stretch == pytest.approx(0.0995, rel=1e-3)  # three digits
    energy = stored_energy_j(force_n=10_000, stiffness_n_mm=20_000)
    assert energy == pytest.approx(2.5, rel=1e-12)  # exact
    assert flight_speed_m_s(energy_j=energy, mass_g=10) == pytest.approx(22, abs=0.5)  # two digits
