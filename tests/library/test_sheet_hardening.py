"""Hollomon's law: its constants from a tensile test and back."""

import numpy as np
import pytest

from secondplate import sheet_hardening as hardening

EXPONENTS = np.linspace(0.02, 0.5, 49)


def test_there_and_back():
    """Strength to coefficient and back is the same strength."""
    coefficient = hardening.strength_coefficient_mpa(tensile_strength_mpa=250, hardening_exponent=EXPONENTS)
    back = hardening.strength_at_necking_mpa(
        strength_coefficient_mpa=coefficient, hardening_exponent=EXPONENTS
    )
    assert back == pytest.approx(np.full(49, 250.0), rel=1e-12)  # arithmetic only


def test_load_is_greatest_at_a_strain_of_n():
    """Engineering stress, true stress times exp(-strain), has its top at n and its height is the strength."""
    strain = np.linspace(0.002, 0.9, 40001)
    stress = hardening.flow_stress_mpa(strain, strength_coefficient_mpa=400, hardening_exponent=0.25)
    engineering = stress * np.exp(-strain)
    top = engineering.argmax()
    assert strain[top] == pytest.approx(0.25, abs=1e-4)  # step of the strains
    expected = hardening.strength_at_necking_mpa(strength_coefficient_mpa=400, hardening_exponent=0.25)
    assert engineering[top] == pytest.approx(expected, rel=1e-8)  # flat top


def test_uniform_elongation_and_exponent():
    """The exponent of an elongation gives that elongation back."""
    assert np.expm1(hardening.hardening_exponent(np.array([5.0, 18.0, 30.0]))) == pytest.approx(
        [0.05, 0.18, 0.30], rel=1e-12
    )


def test_coefficient_is_above_the_strength():
    """K is the stress at a strain of 1, beyond necking: above the strength, the more the higher n."""
    ratio = hardening.strength_coefficient_mpa(tensile_strength_mpa=1, hardening_exponent=EXPONENTS)
    assert np.all(ratio > 1)
    assert np.all(np.diff(ratio) > 0)


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (lambda: hardening.hardening_exponent(0.5), "uniform elongation must be between 1 % and 80 %"),
        (
            lambda: hardening.strength_coefficient_mpa(tensile_strength_mpa=0, hardening_exponent=0.2),
            "tensile strength must be above 0 MPa",
        ),
        (
            lambda: hardening.strength_at_necking_mpa(strength_coefficient_mpa=400, hardening_exponent=0.7),
            "hardening exponent must be between 0.01 and 0.6, got 0.7",
        ),
        (
            lambda: hardening.flow_stress_mpa(1.5, strength_coefficient_mpa=400, hardening_exponent=0.2),
            "true strain must be between 0.002 and 1, got 1.5",
        ),
    ],
)
def test_ranges_are_kept(call, sentence):
    """What lies outside a range is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
