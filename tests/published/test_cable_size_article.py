"""Article on the sizes of welding cables, section on circular mils. Read."""

import math

import pytest

from secondplate.electrics import cable_resistance_milliohm
from secondplate.units import mm_from_inch

SOURCE = "cable_size_article"


def test_circular_mil_foot():
    """One foot of copper wire of 0.001 inch diameter has 10.37 ohm."""
    area = math.pi / 4 * mm_from_inch(0.001) ** 2
    resistance = cable_resistance_milliohm(loop_length_m=mm_from_inch(12) / 1000, area_mm2=area) / 1000
    assert resistance == pytest.approx(10.37, abs=0.005)  # two decimals printed
