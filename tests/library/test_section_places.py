"""Where a caliper's lines stand on a section, against what the section measures."""

import pytest

from secondplate.section import FAULT_NAMES, measure, random_section, random_sections
from secondplate.section_places import PLACED, measuring_places


@pytest.mark.parametrize("name", PLACED)
def test_lines_stand_as_far_apart_as_the_measure(name):
    """On joints of every fault the two points are the measure apart, straight across or straight up."""
    for number, fault in enumerate(FAULT_NAMES * 3):
        joint, _ = random_section(b"places %d" % number, fault=fault)
        (x1, y1), (x2, y2) = measuring_places(joint, name)
        value = getattr(measure(joint), name)
        apart = y2 - y1 if x1 == x2 else abs(x2 - x1)
        assert apart == pytest.approx(value, abs=1e-9)  # the same corners, but for rounding
        assert x1 == x2 or y1 == y2


def test_points_lie_on_the_metal():
    """The tail's end is a corner of the rivet, the thinnest place lies on the second plate."""
    joint, _ = random_section(b"on the metal")
    rivet = {tuple(corner) for corner in joint.outlines["rivet"]}
    assert measuring_places(joint, "interlock_left_mm")[1] in rivet
    low, high = measuring_places(joint, "remaining_thickness_mm")
    second = joint.outlines["second plate"]
    assert second[:, 1].min() - 1e-9 <= low[1] < high[1] <= second[:, 1].max()


def test_what_cannot_be_placed_is_said():
    """Another measure and a column are refused by name."""
    joint, _ = random_section(b"refused")
    column, _ = random_sections([b"one", b"two"])
    with pytest.raises(ValueError, match="measure must be one of interlock_left_mm"):
        measuring_places(joint, "gap_mm")
    with pytest.raises(ValueError, match="section must be a single one, got a column of 2"):
        measuring_places(column, "tail_diameter_mm")
