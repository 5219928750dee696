"""JCGM 106: probability of conformity, normal case. Formula from memory, values computed apart."""

import numpy as np
import pytest

from secondplate.measuring_decision import conformity_probability

SOURCE = "jcgm_106"


def test_probability_by_reading():
    """Lower limit 0.40 mm, u 0.00810 mm, readings 0.40 to 0.43 mm: 0.5000, 0.8914, 0.9932, 0.9999."""
    found = conformity_probability(
        np.array([0.40, 0.41, 0.42, 0.43]), standard_uncertainty_mm=0.008101, least_mm=0.40
    )
    assert found == pytest.approx([0.5, 0.8914, 0.9932, 0.9999], abs=1e-4)  # four decimals
