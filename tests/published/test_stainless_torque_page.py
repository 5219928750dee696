"""Technical page on preload and tightening torque of stainless fasteners by friction. Read."""

import pytest

from secondplate.studs import (
    coarse_pitch_mm,
    property_class,
    stress_area_mm2,
    torque_coefficient,
    working_torque_n_m,
)

SOURCE = "stainless_torque_page"
# Printed torque over printed preload and diameter; both have two or three figures.
ROUNDING = 0.06


@pytest.mark.parametrize(
    ("diameter_mm", "friction", "preload_kn", "torque_n_m"),
    [
        (4, 0.1, 2.97, 1.7),
        (5, 0.1, 2.26, 1.6),
        (5, 0.1, 4.85, 3.4),
        (5, 0.2, 3.93, 5.1),
        (6, 0.1, 3.2, 2.8),
        (6, 0.1, 6.85, 5.9),
        (6, 0.2, 2.59, 4.1),
        (6, 0.2, 5.54, 8.8),
        (6, 0.3, 4.49, 10.4),
        (8, 0.1, 5.86, 6.8),
    ],
)
def test_torque_for_preload(diameter_mm, friction, preload_kn, torque_n_m):
    """Torque coefficient times preload times diameter gives the printed torque."""
    coefficient = torque_coefficient(
        diameter_mm=diameter_mm, pitch_mm=coarse_pitch_mm(diameter_mm), friction=friction
    )
    assert coefficient * preload_kn * diameter_mm == pytest.approx(torque_n_m, rel=ROUNDING)


@pytest.mark.parametrize(
    ("name", "diameter_mm", "breaking_torque_n_m"),
    [
        ("A2-50", 4, 2.7),
        ("A2-50", 5, 5.5),
        ("A2-50", 6, 9.3),
        ("A2-70", 4, 3.8),
        ("A2-70", 5, 7.8),
        ("A2-70", 6, 13),
        ("A2-80", 4, 4.3),
        ("A2-80", 5, 8.8),
        ("A2-80", 6, 15),
    ],
)
def test_working_torque_stays_under_the_least_breaking_torque(name, diameter_mm, breaking_torque_n_m):
    """The working torque takes between a third and three quarters of the least breaking torque."""
    torque_n_m = working_torque_n_m(
        stress_area_mm2=stress_area_mm2(diameter_mm, pitch_mm=coarse_pitch_mm(diameter_mm)),
        proof_stress_mpa=property_class(name).proof_stress_mpa,
        diameter_mm=diameter_mm,
    )
    assert 1 / 3 < torque_n_m / breaking_torque_n_m < 3 / 4
