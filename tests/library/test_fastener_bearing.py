"""Bearing and pull-through: limits of the forms, straight line between them, refusals."""

import numpy as np
import pytest

from secondplate import fastener_bearing as bearing

EACH = pytest.mark.parametrize("standard", bearing.BEARING_STANDARDS)


def alpha(thickness_mm, supporting_mm, standard, diameter_mm=5.3):
    """Shorten the call."""
    return bearing.bearing_coefficient(
        thickness_mm,
        shank_diameter_mm=diameter_mm,
        supporting_thickness_mm=supporting_mm,
        standard=standard,
    )


@EACH
def test_straight_line_between_equal_and_thick(standard):
    """Half way from equal to 2.5 times as thick, alpha is half way too; beyond it stays."""
    equal, middle, thick, beyond = alpha(1.0, np.array([1.0, 1.75, 2.5, 5.0]), standard)
    assert middle == pytest.approx((equal + thick) / 2, rel=1e-12)
    assert beyond == thick
    assert equal < thick


@EACH
def test_never_above_the_plateau_and_rising_with_thickness(standard):
    """Alpha of equal sheets rises with thickness up to its plateau."""
    thickness = np.linspace(0.3, 6.5, 100)
    values = alpha(thickness, thickness, standard)
    assert np.all(np.diff(values) >= 0)
    assert values[-1] == values.max() == alpha(1.0, 6.5, standard)


def test_thin_sheet_on_thick_gains_nothing_below_1_mm_in_steel():
    """EN 1993-1-3 keeps the value of equal sheets below 1 mm; the two others do not."""
    steel, aluminium, american = (alpha(0.9, 3.0, name) for name in bearing.BEARING_STANDARDS)
    assert steel == alpha(0.9, 0.9, bearing.STEEL_STANDARD)
    assert (aluminium, american) == (1.5, 2.7)


def test_strong_aluminium_counts_260():
    """EN 1999-1-4 does not take more than 260 MPa into account, the others do."""
    shared = {"shank_diameter_mm": 5.5, "supporting_thickness_mm": 2.0}
    strengths = np.array([260.0, 520.0])
    ratios = [
        np.divide(*bearing.screw_bearing_n(2.0, tensile_strength_mpa=strengths, standard=name, **shared))
        for name in bearing.BEARING_STANDARDS
    ]
    assert ratios == pytest.approx([0.5, 1.0, 0.5], rel=1e-12)


def test_partial_factor_divides():
    """A factor of 1.25 leaves four fifths."""
    shared = {"tensile_strength_mpa": 215, "head_diameter_mm": 7.75}
    whole = bearing.pull_through_n(1.5, **shared)
    assert bearing.pull_through_n(1.5, partial_factor=1.25, **shared) == pytest.approx(0.8 * whole, rel=1e-12)


def test_pull_through_ends_where_its_standard_ends():
    """EN 1993-1-3 prints it up to 1.5 mm; beyond that it has to be asked for, and goes on in line."""
    shared = {"tensile_strength_mpa": 215, "head_diameter_mm": 7.75}
    with pytest.raises(ValueError, match="sheet thickness must be between 0.3 mm and 1.5 mm, got 1.6 mm"):
        bearing.pull_through_n([1.5, 1.6], **shared)
    end, beyond = bearing.pull_through_n(np.array([1.5, 3.0]), beyond_range=True, **shared)
    assert beyond == pytest.approx(2 * end, rel=1e-12)
    assert bearing.pull_through_n(1.6, standard="AISI S100", **shared) > end


def test_repeated_wind_halves_and_is_printed_once_only():
    """Half under repeated wind in EN 1993-1-3; AISI S100 has no such line here."""
    shared = {"tensile_strength_mpa": 215, "head_diameter_mm": 7.75}
    whole = bearing.pull_through_n(1.5, **shared)
    assert bearing.pull_through_n(1.5, repeated_wind=True, **shared) == pytest.approx(whole / 2, rel=1e-12)
    with pytest.raises(ValueError, match="standard must be one of EN 1993-1-3, got 'AISI S100'"):
        bearing.pull_through_n(1.5, repeated_wind=True, standard="AISI S100", **shared)


@pytest.mark.parametrize(
    ("changes", "sentence"),
    [
        ({"thickness_mm": 0.2}, "sheet thickness must be between 0.3 mm and 6.5 mm, got 0.2 mm"),
        ({"shank_diameter_mm": 9}, "shank diameter must be between 3 mm and 8 mm, got 9 mm"),
        (
            {"supporting_thickness_mm": 1.5},
            "supporting thickness must be at least the sheet's 2 mm, got 1.5 mm",
        ),
        (
            {"tensile_strength_mpa": 3000},
            "tensile strength must be between 20 MPa and 2000 MPa, got 3000 MPa",
        ),
        ({"partial_factor": 0.9}, "partial factor must be at least 1, got 0.9"),
        (
            {"standard": "mine"},
            "standard must be one of EN 1993-1-3, EN 1999-1-4, AISI S100, EN 1993-1-3 blind rivets, got",
        ),
    ],
)
def test_ranges_are_kept(changes, sentence):
    """What lies outside a form is refused by one sentence."""
    call = {
        "thickness_mm": 2.0,
        "shank_diameter_mm": 5.3,
        "supporting_thickness_mm": 2.0,
        "tensile_strength_mpa": 215,
    } | changes
    with pytest.raises(ValueError, match=sentence):
        bearing.screw_bearing_n(**call)
