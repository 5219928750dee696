"""Myhr and Grong 1991: dissolution in 6082-T6. Equations and constants from memory, values computed apart."""

import numpy as np
import pytest

from secondplate.softening_dissolution import DissolutionModel, dissolution_proof_stress_mpa

SOURCE = "myhr_grong_1991"
MODEL = DissolutionModel()
TEMPERATURES = np.array([200, 300, 350, 375, 400, 450, 500])


def test_time_to_full_dissolution():
    """Seconds at 200 to 500 C."""
    expected = [2.763e8, 6.051e4, 2469, 600, 162.0, 15.49, 2.007]
    assert MODEL.full_time_s(TEMPERATURES) == pytest.approx(expected, rel=1e-3)  # four digits


@pytest.mark.parametrize(
    ("seconds", "expected"),
    [
        (1, [0.9999, 0.9959, 0.9799, 0.9592, 0.9214, 0.7459, 0.2942]),
        (10, [0.9998, 0.9871, 0.9364, 0.8709, 0.7515, 0.1966, 0]),
    ],
)
def test_fraction_after_holding(seconds, expected):
    """Share left after 1 s and 10 s at 200 to 500 C."""
    found = MODEL.fraction_left([0, seconds], np.repeat(TEMPERATURES[:, None], 2, axis=1))
    assert found == pytest.approx(expected, abs=2e-4)  # four decimals


@pytest.mark.parametrize(
    ("peak_c", "decay_s", "strength", "fraction", "hardness", "proof"),
    [
        (400, 2, 6.408e-4, 0.9747, 108.3, 276.7),
        (450, 1, 3.406e-3, 0.9416, 106.0, 270.0),
        (500, 0.5, 1.342e-2, 0.8842, 102.1, 258.3),
        (500, 2, 5.368e-2, 0.7683, 94.2, 234.6),
    ],
)
def test_decaying_pulses(peak_c, decay_s, strength, fraction, hardness, proof):
    """Pulses 20 + (peak - 20) exp(-t/tau): kinetic strength, share left, hardness and proof stress."""
    times = decay_s * np.linspace(0, 4, 1601)
    temperatures = 20 + (peak_c - 20) * np.exp(-times / decay_s)
    assert MODEL.kinetic_strength(times, temperatures) == pytest.approx(strength, rel=1e-3)  # four digits
    left = MODEL.fraction_left(times, temperatures)
    assert left == pytest.approx(fraction, abs=1e-4)  # four decimals
    assert MODEL.hardness_hv(left) == pytest.approx(hardness, abs=0.06)  # one decimal
    assert dissolution_proof_stress_mpa(MODEL.hardness_hv(left)) == pytest.approx(
        proof, abs=0.1
    )  # one decimal
