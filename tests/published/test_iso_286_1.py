"""ISO 286-1:2010 Code system for tolerances on linear sizes, Table 1. Copies read; formula from memory."""

import math

import pytest

from secondplate.drilling_holes import TOLERANCE_GRADES, hole_tolerance_mm

SOURCE = "iso_286_1"
# Step of nominal sizes above and up to, in mm; IT11 to IT14 in micrometres.
TABLE_1 = [((3, 6), (75, 120, 180, 300)), ((6, 10), (90, 150, 220, 360)), ((10, 18), (110, 180, 270, 430))]
UNITS_OF_GRADE = (100, 160, 250, 400)


@pytest.mark.parametrize(("step", "widths_um"), TABLE_1)
def test_rows(step, widths_um):
    """Each step holds from just above its lower end up to and with its upper one."""
    for size in (step[0] + 0.001, step[1]):
        found = [
            hole_tolerance_mm(tolerance_grade=grade, nominal_diameter_mm=size) for grade in TOLERANCE_GRADES
        ]
        assert found == pytest.approx([width / 1000 for width in widths_um], rel=1e-12)  # copied


@pytest.mark.parametrize(("step", "widths_um"), TABLE_1)
def test_rows_follow_the_tolerance_unit(step, widths_um):
    """100, 160, 250 and 400 times i = 0.45 D^(1/3) + 0.001 D at the geometric mean of the step, rounded."""
    mean = math.sqrt(step[0] * step[1])
    unit_um = 0.45 * mean ** (1 / 3) + 0.001 * mean
    assert widths_um == pytest.approx(
        [grade * unit_um for grade in UNITS_OF_GRADE], rel=0.045
    )  # rounded to tens
