"""ISO 15981 Open end blind rivets, AlA/AlA: recommended grips. Seen; column heads are inferred."""

import pytest

from secondplate.fasteners import GRIP_DIAMETERS_MM, blind_rivet_length_mm, grip_range_mm

SOURCE = "iso_15981"


@pytest.mark.parametrize(
    ("diameter_mm", "length_mm", "grip_mm"),
    [
        (2.4, 9, (3, 6)),
        (3.0, 5, (0.5, 1.5)),
        (3.2, 25, (17, 22)),
        (4.0, 10, (5.0, 6.5)),
        (4.0, 16, (8.5, 12.5)),
        (4.8, 6, (1.5, 2.5)),
        (4.8, 8, (2.5, 4.0)),
        (5.0, 30, (20, 25)),
        (6.0, 12, (3, 6)),
        (6.4, 30, (18, 23)),
    ],
)
def test_grips_as_printed(diameter_mm, length_mm, grip_mm):
    """One or two rows of each column."""
    assert grip_range_mm(diameter_mm, rivet_length_mm=length_mm) == grip_mm


def test_sizes():
    """Scope: 2.4 to 6.4 mm."""
    assert GRIP_DIAMETERS_MM == (2.4, 3.0, 3.2, 4.0, 4.8, 5.0, 6.0, 6.4)


@pytest.mark.parametrize(("diameter_mm", "length_mm"), [(3.0, 12), (4.0, 16), (4.8, 20), (4.0, 25)])
def test_greatest_grip_follows_length_and_diameter(diameter_mm, length_mm):
    """Computed from the table: greatest grip is about the length less 0.75 to 1.25 diameters."""
    greatest = grip_range_mm(diameter_mm, rivet_length_mm=length_mm)[1]
    assert 0.7 <= (length_mm - greatest) / diameter_mm <= 1.3


def test_a_body_joint():
    """1.5 and 2.0 mm with 0.2 mm of adhesive: 3.7 mm is in the range of the 8 mm rivet of 4.8 mm."""
    assert blind_rivet_length_mm(4.8, closed_grip_mm=3.7) == 8
