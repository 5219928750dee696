"""Rivet, die, sheet and stack before setting."""

import numpy as np
import pytest

from secondplate.rivet import (
    Die,
    Rivet,
    Sheet,
    Stack,
    piercing_force_n,
    rivet_axial_capacity_n,
    steel_strength_mpa,
    volume_ratio,
)

SHEET = Sheet(thickness_mm=2.0)


def test_tube_area():
    """A tube of 5.3 mm with a bore of 3.34 mm has 13.30 mm2 of steel (pi/4 (5.3^2 - 3.34^2))."""
    rivet = Rivet(rivet_length_mm=5.0, bore_diameter_mm=3.34)
    assert rivet.tube_area_mm2 == pytest.approx(13.30, abs=0.005)  # rounding of the printed figure
    assert rivet.wall_mm == pytest.approx(0.98, abs=1e-12)  # exact


@pytest.mark.parametrize(("hardness", "kilonewtons"), [(280, 11.9), (410, 17.4), (480, 20.4), (555, 23.6)])
def test_capacity_of_the_tube(hardness, kilonewtons):
    """Tube section times 3.2 HV, worked out by hand."""
    rivet = Rivet(rivet_length_mm=5.0, bore_diameter_mm=3.34, hardness_hv=hardness)
    assert rivet_axial_capacity_n(rivet) / 1000 == pytest.approx(kilonewtons, abs=0.051)  # printed to 0.1 kN


def test_volumes_by_discs():
    """Volume of a rivet and of a die with a tip are those of 20,000 thin discs and rings."""
    rivet = Rivet(rivet_length_mm=4.0, shank_diameter_mm=5.28, bore_diameter_mm=3.3)
    depths = (np.arange(20_000) + 0.5) * 4.0 / 20_000
    area = np.pi / 4 * (5.28**2 - np.where(depths > 1.1, 3.3**2, 0.0))
    assert rivet.volume_mm3 == pytest.approx(area.sum() * 4.0 / 20_000, rel=1e-4)  # one disc at the web
    die = Die(die_diameter_mm=9.0, die_depth_mm=1.8, die_tip_mm=0.9)
    radii = (np.arange(20_000) + 0.5) * 4.5 / 20_000
    tip = 0.45 * (1 + np.cos(np.pi * np.minimum(radii / die.tip_radius_mm, 1)))
    rings = 2 * np.pi * radii * (1.8 - tip) * 4.5 / 20_000
    assert die.volume_mm3 == pytest.approx(rings.sum(), rel=1e-6)  # midpoint rule


def test_ratio_of_a_column():
    """A column of rivets against one die gives a column: longer rivets need more room."""
    ratio = volume_ratio(
        Rivet(rivet_length_mm=np.array([4.0, 5.0, 6.0])), Die(die_diameter_mm=9.0, die_depth_mm=1.6)
    )
    assert ratio.shape == (3,)
    assert np.all(np.diff(ratio) < 0)


def test_total_leaves_the_gap_out():
    """The stack is as thick as its sheets together; adhesive does not count."""
    stack = Stack(top=SHEET, middle=Sheet(thickness_mm=1.0), second=SHEET, gap_mm=0.3)
    assert stack.total_mm == 5.0
    assert len(stack.sheets) == 3


@pytest.mark.parametrize(
    ("make", "sentence"),
    [
        (
            lambda: Rivet(rivet_length_mm=5, bore_diameter_mm=5.3),
            "bore diameter must be below the shank diameter of 5.3 mm, got 5.3 mm",
        ),
        (
            lambda: Rivet(rivet_length_mm=5, head_diameter_mm=5.0),
            "shank diameter must be below the head diameter of 5 mm, got 5.3 mm",
        ),
        (
            lambda: Rivet(rivet_length_mm=1.1),
            "web must be below the rivet length of 1.1 mm, got 1.1 mm",
        ),
        (
            lambda: Rivet(rivet_length_mm=np.array([5, 1.05])),
            "web must be below the rivet length of 1.05 mm, got 1.1 mm",
        ),
        (
            lambda: Rivet(rivet_length_mm=5, hardness_hv=900),
            "hardness must be between 200 HV and 650 HV, got 900 HV",
        ),
        (
            lambda: Die(die_diameter_mm=9, die_depth_mm=1, die_tip_mm=1.2),
            "die tip must be at most the die depth of 1 mm, got 1.2 mm",
        ),
        (
            lambda: Die(die_diameter_mm=3, die_depth_mm=1),
            "die diameter must be between 4 mm and 16 mm, got 3 mm",
        ),
        (lambda: Sheet(thickness_mm=0), "sheet thickness must be between 0.3 mm and 6.5 mm, got 0 mm"),
        (lambda: Sheet(thickness_mm=1, family="wood"), "sheet family must be one of .*, got 'wood'"),
        (
            lambda: Sheet(thickness_mm=1, elongation_percent=-1),
            "elongation must be between 0 % and 100 %, got -1 %",
        ),
        (lambda: Stack(top=SHEET, second=SHEET, gap_mm=2), "gap must be between 0 mm and 1.5 mm, got 2 mm"),
        (lambda: steel_strength_mpa(True), "hardness must be a number in HV, got True"),
        (
            lambda: piercing_force_n(shank_diameter_mm=0, thickness_mm=1, tensile_strength_mpa=200),
            "shank diameter must be above 0 mm, got 0 mm",
        ),
    ],
)
def test_impossible_things_are_refused(make, sentence):
    """What cannot be made is refused by one sentence."""
    with pytest.raises(ValueError, match=f"^{sentence}$"):
        make()
