"""Donovan, Fortune and Trout 2015: re-heating of 6061-T6, seen; the rest computed apart from its points."""

import numpy as np
import pytest

from secondplate import softening_exposure as exposure

SOURCE = "donovan_2015"


@pytest.mark.parametrize(("temperature_f", "hours"), [(390, 16), (425, 4)])
def test_measured_lives(temperature_f, hours):
    """Yield reaches the specified minimum after 16 h at 390 F and 4 h at 425 F."""
    life = exposure.heat_life_s((temperature_f - 32) / 1.8)
    assert life / 3600 == pytest.approx(hours, rel=1e-9)  # the points that the law goes through


def test_never_within_64_hours_at_350():
    """At 350 F 64 h do not bring the yield to the minimum; the law agrees by a small margin."""
    used = exposure.exposure_index([0, 64 * 3600], [(350 - 32) / 1.8] * 2)
    assert used == pytest.approx(64 / 90.4, abs=2e-3)  # by hand: the law's life there is 90.4 h
    assert used < 1


def test_activation_energy():
    """Two points give 137 525 J/mol."""
    assert exposure.ACTIVATION_ENERGY_J_MOL.best == pytest.approx(137_525, rel=2e-4)  # rounded kelvins


def test_time_to_the_minimum_by_temperature():
    """Times in s at 200 to 400 C; above 218 C extrapolated."""
    found = exposure.heat_life_s(np.array([200, 225, 250, 275, 300, 350, 400]))
    assert found == pytest.approx([53_050, 9178, 1878, 444, 119, 11.8, 1.64], rel=5e-3)  # three digits


@pytest.mark.parametrize(
    ("peak_c", "decay_s", "index"), [(300, 10, 0.006), (400, 2, 0.0875), (400, 10, 0.438), (500, 2, 2.18)]
)
def test_exposure_of_a_decaying_pulse(peak_c, decay_s, index):
    """Pulses 20 + (peak - 20) exp(-t/tau), by quadrature."""
    times = decay_s * np.linspace(0, 6, 1201)
    found = exposure.exposure_index(times, 20 + (peak_c - 20) * np.exp(-times / decay_s))
    assert found == pytest.approx(index, rel=4e-3, abs=3e-4)  # three digits, or three decimals


def test_half_an_hour_at_200():
    """30 min at 200 C use 3.4 % of the life."""
    assert exposure.exposure_index([0, 1800], [200, 200]) == pytest.approx(0.034, abs=5e-4)  # two digits
