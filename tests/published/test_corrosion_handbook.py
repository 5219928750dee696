"""Handbook of corrosion: mixed potential and oxygen limit. Formulas from memory, values computed twice."""

import numpy as np
import pytest

from secondplate.corrosion_rates import Electrode, galvanic_density, mixed_potential, oxygen_limit_ua_cm2

SOURCE = "corrosion_handbook"


def test_mixed_potential_by_area():
    """Anode to cathode 1:1, 10:1, 1:10 and 100:1: potential and density of the anode."""
    found = mixed_potential(
        anode=Electrode(
            potential_v=-0.75, density_a_cm2=1e-6, slope_v=0.06, area_cm2=np.array([1, 10, 1, 100])
        ),
        cathode=Electrode(
            potential_v=-0.60, density_a_cm2=1e-5, slope_v=0.12, area_cm2=np.array([1, 1, 10, 1])
        ),
    )
    assert found.potential_v == pytest.approx([-0.66, -0.70, -0.62, -0.74], abs=1e-9)  # exact by construction
    expected = [3.162e-5, 6.813e-6, 1.468e-4, 1.468e-6]
    assert found.density_a_cm2 == pytest.approx(expected, rel=2e-4)  # four digits


def test_oxygen_limit():
    """Still water in air lets a cathode draw 38.6 uA/cm2."""
    assert oxygen_limit_ua_cm2() == pytest.approx(38.6, abs=0.05)  # one decimal


def test_anode_under_an_oxygen_limit():
    """30 uA/cm2 at ratios of 0.01, 0.1, 1 and 10 load the anode with 0.3, 3, 30 and 300."""
    found = galvanic_density(factor=30, area_ratio=np.array([0.01, 0.1, 1, 10]))
    assert found == pytest.approx([0.3, 3, 30, 300], rel=1e-12)  # exact
