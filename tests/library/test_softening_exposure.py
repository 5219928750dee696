"""Exposure index: there and back, additive, monotone, and its band."""

import numpy as np
import pytest

from secondplate import softening_exposure as exposure

TEMPERATURES = np.linspace(100, 600, 60)


def test_a_life_at_heat_is_one_exposure():
    """Holding a temperature for its whole life gives an index of 1."""
    for temperature in (180.0, 250.0, 400.0):
        life = exposure.heat_life_s(temperature)
        assert exposure.exposure_index([0, life], [temperature] * 2) == pytest.approx(1, rel=1e-12)


def test_equivalent_times_use_the_same_life():
    """The equivalent time at another temperature uses the same share of the life, there and back."""
    other = exposure.equivalent_time_s(60.0, from_c=300, to_c=TEMPERATURES)
    assert other / exposure.heat_life_s(TEMPERATURES) == pytest.approx(
        np.full(60, 60 / exposure.heat_life_s(300)),
        rel=1e-12,  # arithmetic only
    )
    assert exposure.equivalent_time_s(other, from_c=TEMPERATURES, to_c=300) == pytest.approx(
        np.full(60, 60.0),
        rel=1e-12,  # arithmetic only
    )


def test_exposures_add():
    """Two histories one after the other use the sum of both."""
    whole = exposure.exposure_index([0, 1, 3, 10], [20, 420, 380, 40])
    parts = exposure.exposure_index([0, 1], [20, 420]) + exposure.exposure_index([1, 3, 10], [420, 380, 40])
    assert whole == pytest.approx(parts, rel=1e-7)  # nodes stand elsewhere


def test_hotter_is_never_milder():
    """The index rises with the temperature of the whole history, at each energy of the band."""
    histories = np.outer(np.linspace(0.5, 1, 30), [100, 450, 300, 60])
    band = exposure.exposure_band([0, 0.1, 2, 10], histories)
    for end in (band.low, band.best, band.high):
        assert np.all(np.diff(end) > 0)
    assert np.all((band.low <= band.best) & (band.best <= band.high))


def test_energies_meet_at_the_measured_point():
    """At 390 F for 16 h every energy gives an index of 1."""
    band = exposure.exposure_band([0, 57_600], [(390 - 32) / 1.8] * 2)
    assert (band.low, band.best, band.high) == pytest.approx((1, 1, 1), rel=1e-12)  # arithmetic only


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: exposure.heat_life_s(-300),
            "temperature must be between -100 C and 660 C, got -300 C",
        ),
        (
            lambda: exposure.heat_life_s(200, activation_energy_j_mol=137),
            "activation energy must be between 50000 J/mol and 300000 J/mol, got 137 J/mol",
        ),
        (
            lambda: exposure.equivalent_time_s(-1, from_c=200, to_c=300),
            "time must be at least 0 s, got -1 s",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What no plate meets is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
