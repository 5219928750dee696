"""EN 485-2 Aluminium sheet. 5754, 6082 and 6016 read in reproductions; the rest from memory."""

import pytest

from secondplate.plate_forming import least_bend_radius_mm
from secondplate.sheet_alloys import sheet_properties
from tests.sheet_statements import said

SOURCE = "en_485_2"


@pytest.mark.parametrize(
    ("sheet", "thickness_mm", "proof", "strength", "elongation"),
    [
        ("5754-O", 1.0, (80, None), (190, 240), 14),
        ("5754-O", 2.0, (80, None), (190, 240), 16),
        ("6016-T4", 1.0, (80, 140), (170, 250), 24),
        ("6016-T6", 1.0, (180, 260), (260, 300), 10),
        ("6082-T4", 1.0, (110, None), (205, None), 12),
        ("6082-T4", 2.0, (110, None), (205, None), 14),
        ("6082-T6", 1.0, (260, None), (310, None), 6),
        ("6082-T6", 2.0, (260, None), (310, None), 7),
        ("6082-T6", 4.0, (260, None), (310, None), 10),
    ],
)
def test_specified_values(sheet, thickness_mm, proof, strength, elongation):
    """Least and greatest values by thickness."""
    for quantity, (least, greatest) in (("proof stress", proof), ("tensile strength", strength)):
        assert said(SOURCE, sheet, quantity, thickness_mm=thickness_mm) == (least, None, greatest)
    assert said(SOURCE, sheet, "elongation A50", thickness_mm=thickness_mm)[0] == elongation


@pytest.mark.parametrize(
    ("sheet", "proof_mpa", "strength_mpa"),
    [("6061-T6", 240, 290), ("7075-T6", 460, 540), ("5182-O", 110, 255)],
)
def test_remembered_values_say_so(sheet, proof_mpa, strength_mpa):
    """From memory: thin sheet of 6061, 7075 and 5182; the rows are marked."""
    for quantity, least in (("proof stress", proof_mpa), ("tensile strength", strength_mpa)):
        (found,) = (
            each for each in sheet_properties(sheet, quantity, thickness_mm=1.0) if each.source == SOURCE
        )
        assert (found.least, found.basis) == (least, "from memory")


@pytest.mark.parametrize(
    ("sheet", "thickness_mm", "angle_deg", "radius_mm"),
    [
        ("5754-O", 1.0, 90, 0.0),
        ("5754-O", 1.0, 180, 0.5),
        ("5754-O", 2.0, 90, 2.0),
        ("6082-T6", 1.0, 90, 2.5),
        ("6082-T6", 2.0, 90, 7.0),
        ("6082-T4", 1.0, 90, 1.5),
        ("6016-T4", 2.0, 90, 1.0),
    ],
)
def test_bend_radii(sheet, thickness_mm, angle_deg, radius_mm):
    """From memory: least inner radius of a cold bend."""
    found = least_bend_radius_mm(sheet, sheet_mm=thickness_mm, angle_deg=angle_deg)
    assert found == pytest.approx(radius_mm, rel=1e-12)  # exact
