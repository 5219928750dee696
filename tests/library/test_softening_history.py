"""Integrals over histories: against adaptive integration on random histories, exact cases, refusals."""

import numpy as np
import pytest
from scipy.integrate import quad

from secondplate import softening_history as history

_RANDOM = np.random.default_rng(2)
TIMES = np.array([0.0, 0.03, 0.4, 2.0, 20.0])
HISTORIES = np.column_stack([np.full(80, 20.0), _RANDOM.uniform(100, 620, (80, 3)), np.full(80, 60.0)])


def rate(temperature_c):
    """Return a rate of 160 kJ/mol, steeper than any of the models but one."""
    return np.exp(-160_000 / 8.314 * (1 / (np.asarray(temperature_c) + 273.15) - 1 / 673.15))


def adaptive(temperatures):
    """Return the integral of one history, piece by piece, by another program."""
    pieces = zip(TIMES[:-1], TIMES[1:], strict=True)
    return sum(
        quad(lambda time: rate(np.interp(time, TIMES, temperatures)), *ends, epsabs=0, epsrel=1e-11)[0]
        for ends in pieces
    )


def test_same_as_adaptive_integration_on_random_histories():
    """The integral over 80 random histories is that of adaptive integration."""
    found = history.integral_over_history(rate, TIMES, HISTORIES)
    assert found == pytest.approx([adaptive(each) for each in HISTORIES], rel=1e-7)  # five nodes a piece


def test_steady_temperature_is_time_times_rate():
    """At a steady temperature the integral is time times rate, however many points there are."""
    for points in (2, 7):
        found = history.integral_over_history(rate, np.linspace(0, 9, points), np.full(points, 400.0))
        assert found == pytest.approx(9 * rate(400.0), rel=1e-12)  # arithmetic only


def test_points_on_a_straight_line_change_nothing():
    """Points added on a straight piece leave the integral as it was."""
    few = history.integral_over_history(rate, [0, 4], [100, 500])
    many = history.integral_over_history(rate, np.linspace(0, 4, 41), np.linspace(100, 500, 41))
    assert many == pytest.approx(few, rel=1e-8)  # nodes stand elsewhere


@pytest.mark.parametrize(
    ("times", "temperatures", "sentence"),
    [
        ([0, 0], [20, 20], "times of a history must be two or more rising times"),
        ([0], [20], "times of a history must be two or more rising times"),
        ([0, 1], [20, 30, 40], "temperatures of a history must be one for each of 2 times"),
        ([0, 1], [20, -300], "temperature of a history must be between -100 C and 660 C, got -300 C"),
        ([0, 1], [20, 900], "temperature of a history must be between -100 C and 660 C, got 900 C"),
        ([0, 1], [20, np.nan], "temperature of a history must be finite"),
    ],
)
def test_bad_histories_are_refused(times, temperatures, sentence):
    """What is no history of solid aluminium is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        history.integral_over_history(rate, times, temperatures)
