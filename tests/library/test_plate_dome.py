"""The button as a dome: geometry by integration on random domes, limiting cases, trends."""

import numpy as np
import pytest
from scipy.integrate import quad

from secondplate import plate_dome as dome
from secondplate.plate_dome import ButtonDome

_RANDOM = np.random.default_rng(11)
BASES = _RANDOM.uniform(2, 6, 80)
RISES = BASES * _RANDOM.uniform(0.02, 1.0, 80)
DOMES = ButtonDome(base_radius_mm=BASES, rise_mm=RISES, sheet_mm=1.5)


def integrals(base, rise):
    """Return arc, area and volume of one dome by integration over its slope angle."""
    radius = (base**2 + rise**2) / (2 * rise)
    angle = 2 * np.arctan(rise / base)
    arc = quad(lambda _: radius, 0, angle)[0]
    area = quad(lambda t: 2 * np.pi * radius**2 * np.sin(t), 0, angle)[0]
    volume = quad(lambda t: np.pi * (radius * np.sin(t)) ** 2 * radius * np.sin(t), 0, angle)[0]
    return arc, area, volume


def test_same_as_integration_on_random_domes():
    """Arc, area and volume of 80 random domes are those of numerical integration."""
    arc, area, volume = np.transpose(list(map(integrals, BASES, RISES)))
    assert DOMES.arc_mm == pytest.approx(arc, rel=1e-10)  # integration
    assert DOMES.area_ratio == pytest.approx(area / (np.pi * BASES**2), rel=1e-10)  # integration
    assert DOMES.cap_volume_mm3 == pytest.approx(volume, rel=1e-10)  # integration


def test_volume_of_the_sheet_is_kept():
    """Area times mean thickness is the volume of the flat sheet."""
    assert DOMES.area_ratio * DOMES.mean_thickness_mm == pytest.approx(np.full(80, 1.5), rel=1e-12)  # exact


def test_a_flat_plate_has_no_strain():
    """Without a rise all strains are 0 and the sphere is endless."""
    flat = ButtonDome(base_radius_mm=4, rise_mm=0, sheet_mm=1.5)
    assert (flat.meridional_strain, flat.thinning_strain, flat.skin_bending_strain) == (0.0, 0.0, 0.0)
    assert (flat.arc_mm, flat.cap_volume_mm3, flat.press_back_strain) == (4.0, 0.0, 0.0)
    assert np.isinf(flat.sphere_radius_mm)


def test_low_domes_follow_the_small_form():
    """The form for low domes is right to a relative error of the square of the ratio."""
    low = ButtonDome(base_radius_mm=4, rise_mm=np.array([0.04, 0.08]), sheet_mm=1)
    assert low.small_dome_strain == pytest.approx(low.meridional_strain, rel=5e-4)  # (h/a)^2


def test_taller_domes_need_more_strain():
    """The strain of pressing back rises with the rise and with the sheet."""
    rises = np.linspace(0, 4, 50)
    tall = ButtonDome(base_radius_mm=4, rise_mm=rises, sheet_mm=1.5).press_back_strain
    thick = ButtonDome(base_radius_mm=4, rise_mm=rises, sheet_mm=2.0).press_back_strain
    assert np.all(np.diff(tall) > 0)
    assert np.all(thick[1:] > tall[1:])


def test_springing_ends_at_its_rise():
    """Just below the springing rise a dome springs back, just above it does not."""
    edge = dome.springing_rise_mm(base_radius_mm=4, proof_stress_mpa=140)
    pair = ButtonDome(base_radius_mm=4, rise_mm=edge * np.array([0.999, 1.001]), sheet_mm=1.5)
    assert pair.springs_back(proof_stress_mpa=140).tolist() == [True, False]


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: ButtonDome(base_radius_mm=4, rise_mm=4.1, sheet_mm=1),
            "rise of the dome must be at most its base radius in mm, got 4.1 mm",
        ),
        (
            lambda: ButtonDome(base_radius_mm=4, rise_mm=1, sheet_mm=0),
            "sheet thickness must be above 0 mm, got 0 mm",
        ),
        (
            lambda: ButtonDome(base_radius_mm=4, rise_mm=-1, sheet_mm=1),
            "rise of the dome must be at least 0 mm, got -1 mm",
        ),
        (
            lambda: dome.springing_rise_mm(base_radius_mm=4, proof_stress_mpa=0),
            "proof stress must be above 0 MPa, got 0 MPa",
        ),
        (
            lambda: dome.bending_strain(bend_radius_mm=-1, sheet_mm=1),
            "bend radius must be at least 0 mm, got -1 mm",
        ),
        (lambda: dome.least_bend_ratio(0), "reduction of area must be between 1 % and 90 %, got 0 %"),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What is no dome is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
