"""Ultrasonic thickness: there and back, the paint trap, and its budget by the general one."""

import numpy as np
import pytest

from secondplate import measuring_ultrasonic as ultrasonic
from secondplate.measuring_budget import Budget, Contribution, sensitivities

THICKNESSES = np.linspace(0.4, 6, 40)
SPEED = 6320.0


def test_time_and_thickness_there_and_back():
    """The thickness from the time of a thickness is that thickness."""
    times = ultrasonic.echo_time_us(THICKNESSES, velocity_m_s=SPEED)
    assert ultrasonic.echo_thickness_mm(times, velocity_m_s=SPEED) == pytest.approx(THICKNESSES, rel=1e-12)


@pytest.mark.parametrize("number", [2, 3, 5])
def test_paint_traps_one_echo_and_not_two(number):
    """Through paint the single echo reads too much by the paint's share; the later echoes do not."""
    paint = 0.12
    through_paint = ultrasonic.echo_time_us(paint, velocity_m_s=2400)
    metal = ultrasonic.echo_time_us(THICKNESSES, velocity_m_s=SPEED)
    first, later = through_paint + metal, through_paint + number * metal
    single = ultrasonic.echo_thickness_mm(first, velocity_m_s=SPEED)
    excess = ultrasonic.paint_reading_mm(paint, velocity_m_s=SPEED, paint_velocity_m_s=2400)
    between = ultrasonic.echo_to_echo_thickness_mm(first, later, echo_number=number, velocity_m_s=SPEED)
    assert single - THICKNESSES == pytest.approx(np.full(40, excess), rel=1e-9)  # difference of near numbers
    assert between == pytest.approx(THICKNESSES, rel=1e-9)  # the same


def test_uncertainty_is_that_of_the_general_budget():
    """The formula is the budget of the single echo with sensitivities by differences."""
    time = ultrasonic.echo_time_us(THICKNESSES, velocity_m_s=SPEED)
    doubts = {"time_us": 0.002, "velocity_m_s": 50.0}
    slopes = sensitivities(
        ultrasonic.echo_thickness_mm,
        estimates={"time_us": time, "velocity_m_s": SPEED},
        standard_uncertainties=doubts,
    )
    budget = Budget(
        contributions=tuple(
            Contribution(name=name, standard_uncertainty=doubts[name], sensitivity=slopes[name])
            for name in doubts
        )
    )
    found = ultrasonic.echo_uncertainty_mm(
        thickness_mm=THICKNESSES,
        velocity_m_s=SPEED,
        time_uncertainty_us=0.002,
        velocity_uncertainty_m_s=50,
    )
    assert found == pytest.approx(budget.combined_uncertainty, rel=1e-9)  # the product has no curvature here


def test_warm_metal_is_slower():
    """The velocity falls with temperature and is unchanged at that of the set-up."""
    found = ultrasonic.velocity_at_m_s(SPEED, temperature_c=np.array([0, 20, 75, 130]))
    assert found[1] == SPEED
    assert np.all(np.diff(found) < 0)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: ultrasonic.echo_time_us(0, velocity_m_s=SPEED),
            "thickness must be above 0 mm, got 0 mm",
        ),
        (
            lambda: ultrasonic.echo_thickness_mm(0.4, velocity_m_s=6.32),
            "velocity of sound must be between 500 m/s and 15000 m/s, got 6.32 m/s",
        ),
        (
            lambda: ultrasonic.echo_to_echo_thickness_mm(0.5, 0.4, echo_number=2, velocity_m_s=SPEED),
            "time from the first to the later echo must be above 0 us",
        ),
        (
            lambda: ultrasonic.echo_to_echo_thickness_mm(0.4, 0.5, echo_number=1, velocity_m_s=SPEED),
            "number of the later echo must be at least 2, got 1",
        ),
        (
            lambda: ultrasonic.echo_to_echo_thickness_mm(0.4, 0.9, echo_number=2.5, velocity_m_s=SPEED),
            "number of the later echo must be a whole number, got 2.5",
        ),
        (
            lambda: ultrasonic.echo_uncertainty_mm(
                thickness_mm=1.5, velocity_m_s=SPEED, time_uncertainty_us=-1, velocity_uncertainty_m_s=0
            ),
            "uncertainty of the time must be at least 0 us, got -1 us",
        ),
        (
            lambda: ultrasonic.velocity_at_m_s(SPEED, temperature_c=-300),
            "temperature of the plate must be between -40 C and 150 C, got -300 C",
        ),
        (
            lambda: ultrasonic.thinnest_wall_mm(frequency_mhz=0),
            "frequency must be between 0.5 MHz and 50 MHz, got 0 MHz",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What no gauge shows is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
