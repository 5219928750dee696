"""ISO 513 / VDI 3323 groups of work materials with specific cutting force. Read; worked torques computed."""

import pytest

from secondplate.drilling_kienzle import (
    CUTTING_GROUPS,
    chip_thickness_mm,
    cutting_force_at_chip_mpa,
    kienzle_torque_n_m,
)

SOURCE = "iso_513_groups"
# Group, kc1.1 in N/mm2, exponent; none is printed for 38 and 39, where 0.25 is assumed.
GROUPS = [
    ("1", 1350, 0.21), ("3", 1675, 0.24), ("5", 1900, 0.24), ("9", 1800, 0.24), ("11", 2500, 0.23),
    ("14", 2150, 0.20), ("21", 700, 0.25), ("22", 800, 0.25), ("38", 4600, 0.25), ("39", 4700, 0.25),
]  # fmt: skip


@pytest.mark.parametrize(("group", "force_mpa", "exponent"), GROUPS)
def test_rows(group, force_mpa, exponent):
    """Each group carries its printed force and exponent; copied, so exact."""
    found = CUTTING_GROUPS[group]
    assert (found.specific_cutting_force_mpa, found.force_exponent) == (force_mpa, exponent)


def test_no_other_groups():
    """Nothing beside the rows that were read is held."""
    assert list(CUTTING_GROUPS) == [group for group, _, _ in GROUPS]


@pytest.mark.parametrize(
    ("group", "kc11", "mc", "diameter", "feed", "point_deg", "thickness_mm", "force_mpa", "torque_n_m"),
    [
        ("38", 4600, 0.25, 8, 0.1, 140, 0.046985, 9880.3, 7.9042),
        ("22", 800, 0.25, 6.5, 0.12, 118, 0.05143, 1679.9, 1.06464),
        ("14", 2150, 0.2, 6.5, 0.1, 135, 0.046194, 3976.7, 2.10019),
    ],
)
def test_worked_torques(group, kc11, mc, diameter, feed, point_deg, thickness_mm, force_mpa, torque_n_m):
    """Chip, specific cutting force and torque of three cuts; computed apart from this library."""
    constants = {"specific_cutting_force_mpa": kc11, "force_exponent": mc}
    assert CUTTING_GROUPS[group].constants() == constants
    thickness = chip_thickness_mm(feed_mm_rev=feed, point_angle_deg=point_deg)
    assert thickness == pytest.approx(thickness_mm, rel=1e-4)  # four digits at least
    force = cutting_force_at_chip_mpa(**constants, chip_thickness_mm=thickness)
    assert force == pytest.approx(force_mpa, rel=1e-4)
    torque = kienzle_torque_n_m(
        **constants, drill_diameter_mm=diameter, feed_mm_rev=feed, point_angle_deg=point_deg
    )
    assert torque == pytest.approx(torque_n_m, rel=1e-4)
