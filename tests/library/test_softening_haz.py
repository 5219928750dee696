"""Factors beside an arc weld: every row is read, factors stay within 0 and 1, refusals."""

import numpy as np
import pytest

from secondplate import softening_haz as haz
from secondplate.tables import load

ROWS = sorted(
    {
        (row.keys["alloy"], row.keys["product"], float(row.keys["thickness_high_mm"]))
        for row in load("haz_factors")
    }
)


@pytest.mark.parametrize(("alloy", "product", "thickness"), ROWS)
def test_each_row_gives_factors(alloy, product, thickness):
    """Each row gives factors above 0 and at most 1, and a proof stress below the tensile strength."""
    found = haz.haz_factors(alloy, product=product, thickness_mm=thickness)
    assert 0 < found.proof_stress_share <= 1
    assert 0 < found.tensile_strength_share <= 1
    assert found.proof_stress_mpa < found.tensile_strength_mpa


def test_a_zone_of_full_strength_takes_nothing():
    """With a factor of 1 the whole area counts, with 0 only that beside the zone."""
    sizes = {"width_mm": 60, "thickness_mm": 2, "zone_width_mm": np.array([0.0, 40.0])}
    assert haz.haz_effective_area_mm2(strength_share=1, **sizes).tolist() == [120, 120]
    assert haz.haz_effective_area_mm2(strength_share=0, **sizes).tolist() == [120, 40]


@pytest.mark.parametrize(
    ("call", "sentence"),
    [
        (
            lambda: haz.haz_factors("6082-T6", product="sheet", thickness_mm=9),
            "sheet of 6082-T6 must be in the table of factors, got none for 9 mm",
        ),
        (
            lambda: haz.haz_factors("6082-T6", product="sheet", thickness_mm=[2, 3]),
            "thickness must be one number in mm, got 2 of them",
        ),
        (
            lambda: haz.haz_extent_mm(thickness_mm=[2, 3]),
            "thickness must be one number in mm, got 2 of them",
        ),
        (
            lambda: haz.haz_extent_mm(thickness_mm=2, interpass_c=[60, 80]),
            "temperature between passes must be one number in C, got 2 of them",
        ),
        (lambda: haz.haz_factors("6082", product="sheet", thickness_mm=2), "alloy must be one of 6082-T6"),
        (
            lambda: haz.haz_extent_mm(thickness_mm=8, seam_process="TIG"),
            "thickness must be between 0 mm and 6 mm, got 8 mm",
        ),
        (
            lambda: haz.haz_extent_mm(thickness_mm=2, interpass_c=300),
            "temperature between passes must be between 0 C and 180 C, got 300 C",
        ),
        (
            lambda: haz.haz_effective_area_mm2(
                width_mm=10, thickness_mm=2, zone_width_mm=20, strength_share=0.5
            ),
            "width of the zone over that of the plate must be between 0 and 1, got 2",
        ),
    ],
)
def test_bad_input_is_refused(call, sentence):
    """What the standard does not list is refused by one sentence."""
    with pytest.raises(ValueError, match=sentence):
        call()
