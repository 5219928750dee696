"""Punching and grinding: force, rim speed, heat."""

import numpy as np
import pytest

from secondplate.removal_work import (
    USUAL_RIM_LIMIT_M_S,
    grinding_heat_j,
    most_wheel_speed_rpm,
    punch_force_n,
    rim_speed_m_s,
)
from secondplate.rivet import piercing_force_n

PLUG = {"plug_diameter_mm": 5.3, "plate_thickness_mm": 2.0, "shear_strength_mpa": 0.577 * 215}


def test_punching_is_piercing_with_the_shear_strength():
    """The plug of a punch takes what the slug of a setting takes, with the shear strength of von Mises."""
    pierced = piercing_force_n(shank_diameter_mm=5.3, thickness_mm=2.0, tensile_strength_mpa=215)
    assert punch_force_n(**PLUG) == pytest.approx(pierced, rel=1e-12)  # same formula
    plates = punch_force_n(**PLUG | {"plate_thickness_mm": np.array([1.0, 2.0, 3.0])})
    assert plates / plates[0] == pytest.approx([1, 2, 3], rel=1e-12)


def test_wheel_at_its_limit():
    """Turns at the limit give the limit, whatever the wheel."""
    wheels = np.array([25.0, 75, 125, 230])
    turns = most_wheel_speed_rpm(wheel_diameter_mm=wheels)
    at_limit = rim_speed_m_s(wheel_diameter_mm=wheels, wheel_speed_rpm=turns)
    assert at_limit == pytest.approx([USUAL_RIM_LIMIT_M_S] * 4, rel=1e-12)  # there and back
    assert USUAL_RIM_LIMIT_M_S == 80
    assert np.all(np.diff(turns) < 0)


def test_heat_of_grinding_is_a_band():
    """From 20 to 60 J for each cubic millimetre, by volume."""
    heat = grinding_heat_j(np.array([0.0, 10.0]))
    assert (heat.low.tolist(), heat.high.tolist()) == ([0, 200], [0, 600])
    assert "own judgement" in heat.basis


@pytest.mark.parametrize(
    ("call", "said"),
    [
        (
            lambda: punch_force_n(**PLUG | {"plate_thickness_mm": 0}),
            "plate thickness must be above 0 mm, got 0 mm",
        ),
        (lambda: punch_force_n(**PLUG | {"shear_strength_mpa": -1}), "shear strength must be above 0 MPa"),
        (
            lambda: rim_speed_m_s(wheel_diameter_mm=-75, wheel_speed_rpm=20_000),
            "wheel diameter must be above 0 mm, got -75 mm",
        ),
        (
            lambda: most_wheel_speed_rpm(wheel_diameter_mm=75, rim_limit_m_s=0),
            "rim speed limit must be above 0 m/s, got 0 m/s",
        ),
        (lambda: grinding_heat_j(-1), "ground volume must be at least 0 mm3, got -1 mm3"),
    ],
)
def test_what_cannot_be_is_said(call, said):
    """Impossible plugs and wheels are refused in one sentence."""
    with pytest.raises(ValueError, match=said):
        call()
