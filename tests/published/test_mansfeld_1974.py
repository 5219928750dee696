"""Mansfeld 1974: galvanic attack on aluminium alloys, seen."""

import numpy as np
import pytest

from secondplate.corrosion_couples import GALVANIC_RANKING, couple
from secondplate.corrosion_rates import anode_rate, galvanic_density

SOURCE = "mansfeld_1974"


def test_ranking():
    """Worst first: silver, copper, steel, then stainless and nickel, nickel alloy, titanium, tin, cadmium."""
    assert GALVANIC_RANKING == (
        "silver",
        "copper",
        "carbon steel",
        "stainless steel",
        "nickel",
        "nickel alloy",
        "titanium alloy",
        "cobalt alloy",
        "tin",
        "cadmium",
    )


def test_area_ratio_laws():
    """At ratios of 0.1, 1 and 10 the current follows the cathode, the rate of the anode 1 plus the ratio."""
    ratios = np.array([0.1, 1, 10])
    assert galvanic_density(factor=1, area_ratio=ratios) == pytest.approx(ratios, rel=1e-12)  # exact
    assert anode_rate(factor=1, area_ratio=ratios) == pytest.approx([1.1, 2, 11], rel=1e-12)  # exact


def test_potential_difference_is_a_poor_guide():
    """Steel attacks more than tin although its potential lies much closer."""
    steel, tin = couple("carbon steel"), couple("tin")
    assert steel.measured_rank < tin.measured_rank
    assert steel.potential_mv < tin.potential_mv
