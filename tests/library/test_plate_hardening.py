"""Three hardening laws: necking where the load is greatest, by search, and refusals."""

import numpy as np
import pytest
from scipy.optimize import minimize_scalar

from secondplate import plate_hardening as hardening
from secondplate.plate_hardening import HollomonLaw, SwiftLaw, VoceLaw

_RANDOM = np.random.default_rng(5)
RANDOM_LAWS = [
    law
    for _ in range(30)
    for law in (
        HollomonLaw(
            strength_coefficient_mpa=_RANDOM.uniform(150, 700), hardening_exponent=_RANDOM.uniform(0.05, 0.4)
        ),
        SwiftLaw(
            strength_coefficient_mpa=_RANDOM.uniform(150, 700),
            strain_offset=_RANDOM.uniform(0.001, 0.04),
            hardening_exponent=_RANDOM.uniform(0.08, 0.4),
        ),
        VoceLaw(
            saturation_stress_mpa=_RANDOM.uniform(300, 450),
            hardening_stress_mpa=_RANDOM.uniform(100, 250),
            hardening_rate=_RANDOM.uniform(5, 20),
        ),
    )
]


def searched(law):
    """Return strain and height of the greatest load on the first section, by search."""
    found = minimize_scalar(
        lambda strain: -law.flow_stress_mpa(strain) * np.exp(-strain),
        bounds=(0.002, 0.9),
        method="bounded",
        options={"xatol": 1e-10},
    )
    return found.x, -found.fun


def test_necking_is_where_the_load_is_greatest():
    """Strain and strength of 90 random laws are those that a search for the greatest load finds."""
    strain, strength = np.transpose([searched(law) for law in RANDOM_LAWS])
    assert [law.necking_strain for law in RANDOM_LAWS] == pytest.approx(strain, abs=1e-6)  # flat top
    assert [law.tensile_strength_mpa for law in RANDOM_LAWS] == pytest.approx(strength, rel=1e-10)


def test_voce_without_hardening_necks_at_once():
    """A law that levels off too low necks at a strain of 0, never below."""
    law = VoceLaw(saturation_stress_mpa=300, hardening_stress_mpa=10, hardening_rate=5)
    assert law.necking_strain == 0.0


def test_swift_without_offset_is_hollomon():
    """With no offset the two power laws are one."""
    strains = np.linspace(0.002, 0.5, 30)
    swift = SwiftLaw(strength_coefficient_mpa=400, strain_offset=0, hardening_exponent=0.25)
    power = HollomonLaw(strength_coefficient_mpa=400, hardening_exponent=0.25)
    assert swift.flow_stress_mpa(strains) == pytest.approx(power.flow_stress_mpa(strains), rel=1e-12)  # same


def test_strain_left_runs_out_and_stays_out():
    """What is left falls to 0 and not below."""
    law = HollomonLaw(strength_coefficient_mpa=450, hardening_exponent=0.3)
    assert law.strain_left(np.array([0.0, 0.1, 0.3, 0.5])) == pytest.approx([0.3, 0.2, 0, 0], abs=1e-12)


@pytest.mark.parametrize("sheet", hardening.HARDENING_SHEETS)
def test_band_spans_all_statements(sheet):
    """Each sheet's band runs from its lowest to its highest necking strain, all above 0 and below 0.6."""
    strains = hardening.necking_strains(sheet)
    band = hardening.necking_strain_band(sheet)
    assert (band.low, band.high) == (min(strains.values()), max(strains.values()))
    assert 0 < band.low <= band.best <= band.high < 0.6


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: HollomonLaw(strength_coefficient_mpa=0, hardening_exponent=0.2),
            "strength coefficient must be above 0 MPa, got 0 MPa",
        ),
        (
            lambda: SwiftLaw(strength_coefficient_mpa=400, strain_offset=0.3, hardening_exponent=0.2),
            "exponent less strain offset must be above 0, got -0.1",
        ),
        (
            lambda: VoceLaw(saturation_stress_mpa=100, hardening_stress_mpa=120, hardening_rate=10),
            "saturation stress less hardening stress must be above 0 MPa, got -20 MPa",
        ),
        (
            lambda: RANDOM_LAWS[2].flow_stress_mpa(-0.1),
            "true strain must be between 0 and 1, got -0.1",
        ),
        (lambda: RANDOM_LAWS[0].strain_left(-0.1), "strain used must be at least 0, got -0.1"),
        (lambda: hardening.necking_strains("7xxx"), "sheet must be one of 5754-O"),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What is no law is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
