"""Operating manual of an arc welding power source, figure 3-1: nomogram for cable size. Example read."""

import math

import pytest

from secondplate.electrics import voltage_drop_v
from secondplate.units import mm_from_inch

SOURCE = "cable_nomogram_manual"


def test_example_1():
    """200 A through 400 ft of 4/0 cable lose 3.9 V (example 1); 4/0 is 0.46 inch in diameter."""
    area = math.pi / 4 * mm_from_inch(0.46) ** 2
    drop = voltage_drop_v(current_a=200, loop_length_m=mm_from_inch(400 * 12) / 1000, area_mm2=area)
    assert drop == pytest.approx(3.9, abs=0.1)  # read off a nomogram
