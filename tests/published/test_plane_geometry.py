"""Plane geometry: segments, lens of two circles, spherical caps. Formulas seen, table values from memory."""

import math

import numpy as np
import pytest

from secondplate.drilling_depth import bottom_volume_mm3, point_length_mm
from secondplate.eurocode9 import affected_diameter_mm, net_width_share
from secondplate.plate_button import die_room_mm3
from secondplate.plate_dome import ButtonDome, springing_rise_mm
from secondplate.plate_states import after_drilling
from secondplate.pull_tool import hydraulic_force_n, intensified_pressure_bar, nose_bearing_mpa
from secondplate.removal_work import most_wheel_speed_rpm, rim_speed_m_s
from secondplate.weld_sections import lens_area_mm2, segment_area_mm2, segment_centroid_mm, segment_of_share

SOURCE = "plane_geometry"


@pytest.mark.parametrize(
    ("angle_deg", "height", "area"),
    [(60, 0.13397, 0.0906), (90, 0.29289, 0.2854), (120, 0.5, 0.6142), (180, 1.0, 1.5708)],
)
def test_table_of_segments(angle_deg, height, area):
    """Handbook table of segments for radius 1: height and area by the angle of the arc, from memory."""
    assert 1 - math.cos(math.radians(angle_deg / 2)) == pytest.approx(height, abs=6e-6)  # five decimals
    # Four decimals of the table.
    assert segment_area_mm2(radius_mm=1.0, height_mm=height) == pytest.approx(area, abs=6e-5)


def test_half_circle():
    """The centroid of a half circle lies 4 R / (3 pi) from the centre."""
    assert segment_centroid_mm(radius_mm=3, height_mm=3) == pytest.approx(4 / math.pi, rel=1e-12)  # exact
    chord, centroid = segment_of_share(radius_mm=3, share=0.5)
    assert chord == pytest.approx(0, abs=1e-6)  # spacing of the table
    assert centroid == pytest.approx(4 / math.pi, rel=1e-6)


def test_each_circle_through_the_centre_of_the_other():
    """Two unit circles one radius apart share (4 pi - 3 sqrt 3) / 6."""
    area = lens_area_mm2(first_radius_mm=1, second_radius_mm=1, offset_mm=1)
    assert area == pytest.approx((4 * math.pi - 3 * math.sqrt(3)) / 6, rel=1e-12)  # exact


def test_half_overlap_of_two_discs():
    """Unit discs share half their area at a distance of 0.8079455; the digits from memory."""
    area = lens_area_mm2(first_radius_mm=1, second_radius_mm=1, offset_mm=0.8079455)
    assert area == pytest.approx(math.pi / 2, abs=2e-7)  # seven decimals of the distance


@pytest.mark.parametrize(
    ("stud", "head", "offset", "area", "share"),
    [(2.5, 3.875, 2.0, 17.58, 0.895), (3.0, 3.0, 2.0, 16.50, 0.584)],
)
def test_stud_over_the_shoulder(stud, head, offset, area, share):
    """Two worked overlaps of stud and flat of the head, computed apart from this library."""
    found = lens_area_mm2(first_radius_mm=stud, second_radius_mm=head, offset_mm=offset)
    assert found == pytest.approx(area, abs=0.006)  # two decimals
    assert found / (math.pi * stud**2) == pytest.approx(share, abs=6e-4)  # three decimals


DOMES = ButtonDome(
    base_radius_mm=np.array([4.0, 4.0, 4.0, 5.0]),
    rise_mm=np.array([0.5, 1.0, 1.5, 1.0]),
    sheet_mm=np.array([1.5, 1.5, 1.5, 2.0]),
)


@pytest.mark.parametrize(
    ("name", "expected", "decimals"),
    [
        ("sphere_radius_mm", [16.25, 8.5, 6.0833, 13.0], 4),
        ("arc_mm", [4.04154, 4.16464, 4.36504, 5.13228], 5),
        ("meridional_strain", [0.01033, 0.04033, 0.08733, 0.02611], 5),
        ("small_dome_strain", [0.01042, 0.04167, 0.09375, 0.02667], 5),
        ("area_ratio", [1.01562, 1.0625, 1.14062, 1.04], 5),
        ("thinning_strain", [-0.01550, -0.06062, -0.13158, -0.03922], 5),
        ("cap_volume_mm3", [12.6318, 25.6563, 39.4663, 39.7935], 4),
        ("skin_bending_strain", [0.04615, 0.08824, 0.12329, 0.07692], 5),
    ],
)
def test_four_domes(name, expected, decimals):
    """Four domes, each value computed by two independent routes."""
    assert getattr(DOMES, name) == pytest.approx(expected, abs=6 * 10.0 ** -(decimals + 1))


def test_a_dome_pressed_flat():
    """Foot 4, rise 1, sheet 1.5 mm: 0.121 in the membrane, 0.176 in the skin, 1.412 mm thick on average."""
    button = ButtonDome(base_radius_mm=4, rise_mm=1, sheet_mm=1.5)
    assert button.membrane_strain_there_and_back == pytest.approx(0.121, abs=6e-4)  # three decimals
    assert button.skin_strain_there_and_back == pytest.approx(0.176, abs=6e-4)  # three decimals
    assert button.mean_thickness_mm == pytest.approx(1.412, abs=6e-4)  # three decimals


def test_rise_that_only_springs():
    """With a proof strain of 0.002 a dome springs below a ratio of 0.055, 0.22 mm at a foot of 4 mm."""
    found = springing_rise_mm(base_radius_mm=4, proof_stress_mpa=140, elastic_modulus_mpa=70_000)
    assert found == pytest.approx(0.22, abs=0.005)  # two decimals
    assert found / 4 == pytest.approx(0.055, abs=5e-4)  # three decimals


def test_room_of_a_die_with_a_tip():
    """Cavity 10 by 1.6 mm: 125.66 mm3; a tip of radius 2.5 and height 1 takes 6.545, which leaves 119.12."""
    whole = die_room_mm3(die_diameter_mm=10, die_depth_mm=1.6)
    tipped = die_room_mm3(die_diameter_mm=10, die_depth_mm=1.6, tip_radius_mm=2.5, tip_height_mm=1)
    assert whole == pytest.approx(125.66, abs=0.005)  # two decimals
    assert whole - tipped == pytest.approx(6.545, abs=5e-4)  # three decimals
    assert tipped == pytest.approx(119.12, abs=0.005)  # two decimals


def test_old_site_as_an_open_hole():
    """1 - D/b: 6 mm in 30 mm leave 0.80; a crack of unknown length adds twice 3.81 mm (computed)."""
    assert net_width_share(6, width_mm=30) == pytest.approx(0.80, rel=1e-12)  # exact
    assert affected_diameter_mm(6, crack_possible=True) == pytest.approx(13.62, rel=1e-12)  # exact


def test_pressure_on_an_area():
    """700 bar on 20 mm push 22.0 kN; 4 kN press a ring of 20 by 12 mm with 19.9 MPa; computed."""
    assert hydraulic_force_n(pressure_bar=700, bore_mm=20) == pytest.approx(21_991, rel=1e-4)  # five digits
    assert hydraulic_force_n(pressure_bar=500, bore_mm=16, efficiency=0.9) == pytest.approx(9050, rel=1e-3)
    pressure = nose_bearing_mpa(force_n=4000, outer_diameter_mm=20, inner_diameter_mm=12)
    assert pressure == pytest.approx(19.894, rel=1e-4)
    oil_bar = intensified_pressure_bar(pressure_bar=6, air_bore_mm=100, ram_bore_mm=16)
    assert oil_bar == pytest.approx(234, abs=0.5)  # three digits


@pytest.mark.parametrize(
    ("angle_deg", "share"),
    [(90, 0.5), (118, 0.30043), (130, 0.23315), (135, 0.20711), (140, 0.18199), (180, 0)],
)
def test_length_of_a_drill_point(angle_deg, share):
    """Length of the cone over the diameter; computed."""
    found = point_length_mm(drill_diameter_mm=1, point_angle_deg=angle_deg)
    assert found == pytest.approx(share, abs=1e-5)  # five decimals


@pytest.mark.parametrize(
    ("angle_deg", "diameter_mm", "volume_mm3"), [(118, 1.6643, 0.36257), (140, 2.7475, 0.98811)]
)
def test_dimple_of_an_overrun(angle_deg, diameter_mm, volume_mm3):
    """A tip 0.5 mm below the interface: diameter 2 z tan(angle/2) and volume of the cone; computed."""
    cone = {"tip_depth_mm": 0.5, "drill_diameter_mm": 8, "point_angle_deg": angle_deg}
    found = after_drilling(metal_mm=1.5, **cone)
    assert found.mark_diameter_mm == pytest.approx(diameter_mm, rel=1e-4)  # five digits
    assert bottom_volume_mm3(**cone) == pytest.approx(volume_mm3, rel=1e-4)


def test_rim_of_a_wheel():
    """75 mm at 20,000 turns a minute are 78.54 m/s, just below 80; computed."""
    assert rim_speed_m_s(wheel_diameter_mm=75, wheel_speed_rpm=20_000) == pytest.approx(78.54, rel=1e-4)
    assert 20_000 < most_wheel_speed_rpm(wheel_diameter_mm=75, rim_limit_m_s=80) < 20_400
