"""Two tables of metric stud loads and torques (capacitor-discharge and arc studs). Read; inch units."""

import pytest

from secondplate.studs import coarse_pitch_mm, inch_stress_area_mm2, proof_load_n, working_torque_n_m
from secondplate.units import mm_from_inch, mpa_from_ksi, n_from_lbf, n_m_from_lbf_in

SOURCE = "stud_load_tables"
SQUARE_INCH_MM2 = mm_from_inch(1) ** 2


def _area_mm2(diameter_mm):
    """Area of the inch formula for a metric coarse thread, as the tables take it."""
    return inch_stress_area_mm2(diameter_mm, pitch_mm=coarse_pitch_mm(diameter_mm))


@pytest.mark.parametrize(
    ("diameter_mm", "area_in2"),
    [(5, 0.022), (6, 0.031), (8, 0.056), (10, 0.089), (12, 0.129), (16, 0.240)],
)
def test_areas(diameter_mm, area_in2):
    """Thread areas come out within the last printed digit."""
    assert _area_mm2(diameter_mm) / SQUARE_INCH_MM2 == pytest.approx(area_in2, abs=6e-4)


@pytest.mark.parametrize(
    ("diameter_mm", "stress_ksi", "load_lbf"),
    [
        (5, 40, 867),
        (5, 85, 1843),
        (6, 40, 1230),
        (6, 85, 2614),
        (8, 40, 2240),
        (10, 85, 7544),
        (5, 50, 1084),
        (6, 55, 1691),
        (3, 35, 269),
        (4, 75, 1005),
    ],
)
def test_loads(diameter_mm, stress_ksi, load_lbf):
    """Load is stress times area; the inch formula fits, the metric one would be 1.4 % too high."""
    load_n = proof_load_n(_area_mm2(diameter_mm), mpa_from_ksi(stress_ksi))
    assert load_n == pytest.approx(n_from_lbf(load_lbf), rel=2e-3)  # three or four printed figures


@pytest.mark.parametrize(
    ("diameter_mm", "stress_ksi", "torque_lbf_in"),
    [(5, 40, 34), (5, 85, 73), (6, 40, 58), (6, 85, 123), (6, 30, 44), (6, 75, 109), (5, 35, 30)],
)
def test_torques(diameter_mm, stress_ksi, torque_lbf_in):
    """Torque is 0.2 times load times diameter, here with the whole load."""
    torque_n_m = working_torque_n_m(
        stress_area_mm2=_area_mm2(diameter_mm),
        proof_stress_mpa=mpa_from_ksi(stress_ksi),
        diameter_mm=diameter_mm,
        preload_share=1.0,
    )
    assert torque_n_m == pytest.approx(n_m_from_lbf_in(torque_lbf_in), rel=0.02)  # two printed figures


def test_ultimate_torque_of_the_stainless_m5_stud_is_a_misprint():
    """The discharge table prints 32 in-lb for M5, its own load of 1626 lb gives 64 in-lb."""
    torque_n_m = working_torque_n_m(
        stress_area_mm2=_area_mm2(5), proof_stress_mpa=mpa_from_ksi(75), diameter_mm=5, preload_share=1.0
    )
    assert torque_n_m == pytest.approx(n_m_from_lbf_in(64), rel=0.01)
    assert torque_n_m == pytest.approx(2 * n_m_from_lbf_in(32), rel=0.01)
