"""Table of allowable screw capacities after AISI S100 in a building permit file. Read in part, inch units."""

import pytest

from secondplate.fastener_bearing import AMERICAN_STANDARD, pull_through_n, screw_bearing_n
from secondplate.units import mm_from_inch, mpa_from_ksi, n_from_lbf

SOURCE = "screw_capacity_table"
SAFETY_FACTOR = 3.0
STRENGTH_MPA = mpa_from_ksi(33)
# diameter and head in inches; allowable shear and pull-over in lbf for sheets of 0.0188 and 0.0283 inch
SCREWS = [
    (0.138, 0.272, {0.0188: (44, 84), 0.0283: (82, 127)}),
    (0.164, 0.272, {0.0188: (48, 84), 0.0283: (89, 127)}),
    (0.190, 0.340, {0.0188: (52, 105), 0.0283: (96, 159)}),
    (0.216, 0.340, {0.0188: (55, 105), 0.0283: (102, 159)}),
    (0.250, 0.409, {0.0188: (60, 127), 0.0283: (110, 191)}),
]
CASES = [
    (diameter, head, thickness, shear, pull)
    for diameter, head, sheets in SCREWS
    for thickness, (shear, pull) in sheets.items()
]


@pytest.mark.parametrize(("diameter_in", "head_in", "thickness_in", "shear_lbf", "pull_over_lbf"), CASES)
def test_allowable_shear_and_pull_over(diameter_in, head_in, thickness_in, shear_lbf, pull_over_lbf):
    """Equal sheets: both columns come out within the last printed digit."""
    thickness_mm = mm_from_inch(thickness_in)
    shared = {
        "tensile_strength_mpa": STRENGTH_MPA,
        "standard": AMERICAN_STANDARD,
        "partial_factor": SAFETY_FACTOR,
    }
    shear = screw_bearing_n(
        thickness_mm,
        shank_diameter_mm=mm_from_inch(diameter_in),
        supporting_thickness_mm=thickness_mm,
        **shared,
    )
    pull = pull_through_n(thickness_mm, head_diameter_mm=mm_from_inch(head_in), **shared)
    assert shear == pytest.approx(n_from_lbf(shear_lbf), abs=n_from_lbf(0.6))
    assert pull == pytest.approx(n_from_lbf(pull_over_lbf), abs=n_from_lbf(0.6))
