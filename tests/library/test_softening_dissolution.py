"""Dissolution model: steady holding in closed form, monotone, its own rate equation, refusals."""

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from secondplate import softening_dissolution as dissolution
from secondplate.softening_dissolution import DissolutionModel

MODEL = DissolutionModel()


def test_whole_time_dissolves_all():
    """Holding the full time leaves nothing, a quarter of it leaves one half with an exponent of 0.5."""
    for temperature in (320.0, 375.0, 500.0):
        time = MODEL.full_time_s(temperature)
        assert MODEL.fraction_left([0, time], [temperature] * 2) == pytest.approx(0, abs=1e-12)
        assert MODEL.fraction_left([0, time / 4], [temperature] * 2) == pytest.approx(0.5, rel=1e-12)


@pytest.mark.parametrize("peak", [380.0, 430.0, 480.0])
def test_same_as_its_rate_equation(peak):
    """The fraction left is that of the isokinetic rate equation, stepped by another program."""
    times, temperatures = np.array([0.0, 0.1, 1.0, 5.0]), np.array([20.0, peak, 300.0, 40.0])
    exponent = MODEL.time_exponent

    def slope(time, lost):
        # d(1 - f)/dt = n (1 - f)^((n - 1)/n)/t1*: depends on the state and the temperature alone.
        full = MODEL.full_time_s(float(np.interp(time, times, temperatures)))
        return exponent * np.maximum(lost, 1e-30) ** ((exponent - 1) / exponent) / full

    lost, start = [1e-9], 0.0
    for end in times[1:]:
        lost = solve_ivp(slope, (start, end), lost, rtol=1e-8, atol=1e-12, method="LSODA").y[:, -1]
        start = end
    assert 1 - MODEL.fraction_left(times, temperatures) == pytest.approx(lost[0], rel=1e-4)  # its start


def test_hotter_and_longer_is_never_milder():
    """The fraction left falls with temperature and with time and stays within 0 and 1."""
    hot = MODEL.fraction_left([0, 1.0], np.repeat(np.linspace(100, 600, 60)[:, None], 2, axis=1))
    assert np.all(np.diff(hot) <= 0)
    assert hot.min() == 0.0
    assert hot.max() <= 1.0


def test_hardness_between_its_ends():
    """With all particles left the hardness is that as delivered, with none the lowest."""
    assert MODEL.hardness_hv(np.array([0.0, 1.0])).tolist() == [42.0, 110.0]
    assert MODEL.proof_stress_share(1.0) == 1.0


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: DissolutionModel(lowest_hardness_hv=120),
            "highest less lowest hardness must be above 0 HV, got -10 HV",
        ),
        (
            lambda: DissolutionModel(time_exponent=0),
            "exponent of time must be between 0.01 and 1, got 0",
        ),
        (lambda: MODEL.full_time_s(-280), "temperature must be between -100 C and 660 C, got -280 C"),
        (lambda: MODEL.fraction_after(-1), "kinetic strength must be at least 0, got -1"),
        (
            lambda: dissolution.dissolution_proof_stress_mpa(0),
            "hardness must be between 40 HV and 130 HV, got 0 HV",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What is no model is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
