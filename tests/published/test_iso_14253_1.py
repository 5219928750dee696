"""ISO 14253-1: rules for proving conformity. Rule seen on a page, one-sided factor from memory."""

import numpy as np
import pytest

from secondplate.measuring_decision import conformity, guard_band_mm

SOURCE = "iso_14253_1"


def test_one_sided_factor():
    """From memory: the guard band at 95 % with one limit is 1.645 standard uncertainties, with two 1.960."""
    assert guard_band_mm(1.0) == pytest.approx(1.645, abs=5e-4)  # three decimals
    assert guard_band_mm(1.0, two_sided=True) == pytest.approx(1.960, abs=5e-4)  # three decimals


def test_limits_of_a_residual_thickness():
    """Lower limit 0.40 mm, u 0.0081 mm: conforms from 0.4133 mm, does not below 0.3867 mm, computed."""
    setting = {"standard_uncertainty_mm": 0.00810, "least_mm": 0.40}
    assert guard_band_mm(0.00810) == pytest.approx(0.0133, abs=5e-5)  # four decimals
    readings = np.array([0.4134, 0.4132, 0.40, 0.3868, 0.3866])
    assert conformity(readings, **setting).tolist() == [
        "conforms",
        "not decided",
        "not decided",
        "not decided",
        "does not conform",
    ]
