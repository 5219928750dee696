"""Drilled holes: grades, oversize, burr, and metal beside the hole."""

import numpy as np
import pytest

from secondplate.drilling_holes import (
    HOLE_FACTS,
    OVERSIZE_MM,
    TOLERANCE_GRADES,
    burr_height_mm,
    drilled_diameter_mm,
    finest_grade,
    hole_tolerance_mm,
    metal_beside_hole_mm,
)

HOLE = {"drill_diameter_mm": 6.5, "flange_width_mm": 18, "edge_distance_mm": 8}


def test_coarser_grades_and_bigger_holes_have_wider_fields():
    """The width rises with the grade and never falls with the diameter."""
    sizes = np.linspace(3.01, 18, 100)
    widths = np.array(
        [hole_tolerance_mm(tolerance_grade=grade, nominal_diameter_mm=sizes) for grade in TOLERANCE_GRADES]
    )
    assert np.all(np.diff(widths, axis=0) > 0)
    assert np.all(np.diff(widths, axis=1) >= 0)


def test_finest_grade_holds_the_hole_and_the_next_finer_not():
    """A hole is put in the first grade whose field holds it, ends included; beyond the last there is none."""
    for finer, grade in zip(TOLERANCE_GRADES, TOLERANCE_GRADES[1:], strict=False):
        just_too_wide = hole_tolerance_mm(tolerance_grade=finer, nominal_diameter_mm=8) + 1e-6
        assert finest_grade(oversize_mm=just_too_wide, nominal_diameter_mm=8) == grade
    assert finest_grade(oversize_mm=0, nominal_diameter_mm=8) == "IT11"
    assert finest_grade(oversize_mm=0.36, nominal_diameter_mm=8) == "IT14"
    assert finest_grade(oversize_mm=0.361, nominal_diameter_mm=8) is None


def test_usual_oversize_lies_in_the_grades_of_drilling():
    """The remembered oversize of 0.03 to 0.15 mm is IT11 to IT12 at 8 mm, as drilling should be."""
    grades = [
        finest_grade(oversize_mm=oversize, nominal_diameter_mm=8)
        for oversize in (OVERSIZE_MM.low, OVERSIZE_MM.high)
    ]
    assert grades == ["IT11", "IT12"]
    assert "IT11 to IT13" in HOLE_FACTS["grades of drilling"].value


def test_run_out_can_only_widen():
    """Run-out moves the high end by all of itself and leaves the low end."""
    true, wobbling = drilled_diameter_mm(6.5), drilled_diameter_mm(6.5, run_out_mm=0.1)
    assert wobbling.low == true.low > 6.5
    assert true.best == wobbling.best == pytest.approx((true.low + true.high) / 2, rel=1e-12)  # middle
    assert wobbling.high - true.high == pytest.approx(0.1, rel=1e-12)  # exact


def test_dull_drills_leave_more_burr():
    """The dull band lies above the sharp one at both ends."""
    sharp, dull = burr_height_mm(sharp=True), burr_height_mm(sharp=False)
    assert (dull.low > sharp.low, dull.high > sharp.high) == (True, True)


def test_metal_beside_the_hole():
    """The nearer side counts; a hole over the edge comes out below zero."""
    assert metal_beside_hole_mm(**HOLE) == 8 - 3.25
    assert metal_beside_hole_mm(**HOLE | {"edge_distance_mm": 16}) == pytest.approx(2 - 3.25, rel=1e-12)
    column = metal_beside_hole_mm(**HOLE | {"drill_diameter_mm": np.array([4.0, 6.5])})
    assert column.tolist() == [6.0, 4.75]


@pytest.mark.parametrize(
    ("call", "given", "said"),
    [
        (
            metal_beside_hole_mm,
            HOLE | {"drill_diameter_mm": 20},
            "drill diameter must be below the flange width of 18 mm, got 20 mm",
        ),
        (
            metal_beside_hole_mm,
            HOLE | {"edge_distance_mm": 25},
            "edge distance must be below the flange width of 18 mm, got 25 mm",
        ),
        (
            hole_tolerance_mm,
            {"tolerance_grade": "IT9", "nominal_diameter_mm": 8},
            "tolerance grade must be one of IT11, IT12, IT13, IT14, got 'IT9'",
        ),
        (
            hole_tolerance_mm,
            {"tolerance_grade": "IT11", "nominal_diameter_mm": 3},
            "nominal diameter must be above 3 mm, got 3 mm",
        ),
        (
            hole_tolerance_mm,
            {"tolerance_grade": "IT11", "nominal_diameter_mm": 20},
            "nominal diameter must be between 0 mm and 18 mm, got 20 mm",
        ),
        (
            finest_grade,
            {"oversize_mm": -0.1, "nominal_diameter_mm": 8},
            "oversize must be at least 0 mm, got -0.1 mm",
        ),
        (
            finest_grade,
            {"oversize_mm": [0.1, 0.2], "nominal_diameter_mm": 8},
            "oversize must be one number in mm, got 2 of them",
        ),
        (
            finest_grade,
            {"oversize_mm": 0.1, "nominal_diameter_mm": [8, 9]},
            "nominal diameter must be one number in mm, got 2 of them",
        ),
        (burr_height_mm, {"sharp": "no"}, "sharp must be true or false, got 'no'"),
        (
            drilled_diameter_mm,
            {"drill_diameter_mm": 3},
            "drill diameter must be between 6 mm and 8 mm, got 3 mm",
        ),
    ],
)
def test_what_cannot_be_is_said(call, given, said):
    """A drill wider than its flange and sizes beyond the tables are refused in one sentence."""
    with pytest.raises(ValueError, match=said):
        call(**given)
