"""Measurement systems analysis: the crossed study of the manual, ten per cent rule. All from memory."""

import numpy as np
import pytest

from secondplate.measuring_gauge import gauge_categories, gauge_study, largest_gauge_uncertainty_mm

SOURCE = "measurement_systems_analysis"
# Three appraisers by three trials, one line each; ten parts across.
READINGS = """
0.29 -0.56 1.34 0.47 -0.80 0.02 0.59 -0.31 2.26 -1.36
0.41 -0.68 1.17 0.50 -0.92 -0.11 0.75 -0.20 1.99 -1.25
0.64 -0.58 1.27 0.64 -0.84 -0.21 0.66 -0.17 2.01 -1.31
0.08 -0.47 1.19 0.01 -0.56 -0.20 0.47 -0.63 1.80 -1.68
0.25 -1.22 0.94 1.03 -1.20 0.22 0.55 0.08 2.12 -1.62
0.07 -0.68 1.34 0.20 -1.28 0.06 0.83 -0.34 2.19 -1.50
0.04 -1.38 0.88 0.14 -1.46 -0.29 0.02 -0.46 1.77 -1.49
-0.11 -1.13 1.09 0.20 -1.07 -0.67 0.01 -0.56 1.45 -1.77
-0.15 -0.96 0.67 0.11 -1.45 -0.49 0.21 -0.49 1.87 -2.16
"""


def test_study_of_the_manual():
    """Repeatability 0.199933, reproducibility 0.226838, gauge 0.302373, parts 1.042327, 4 categories."""
    rows = np.array([line.split() for line in READINGS.split("\n") if line], dtype=float)
    study = gauge_study(rows.reshape(3, 3, 10).transpose(2, 0, 1))
    found = (study.repeatability_mm, study.reproducibility_mm, study.gauge_spread_mm, study.part_spread_mm)
    assert found == pytest.approx((0.199933, 0.226838, 0.302373, 1.042327), abs=2e-6)  # six decimals
    assert study.categories == 4


def test_categories():
    """Parts of 0.05 mm and a gauge of 0.012 mm: 5.9 categories, at least 5 are wanted."""
    assert gauge_categories(0.05, 0.012) == pytest.approx(5.9, abs=0.05)  # one decimal


def test_ten_per_cent_of_the_window_of_a_hole():
    """A window of 0.1 mm wants a gauge better than 0.01 mm."""
    assert largest_gauge_uncertainty_mm(0.1) == pytest.approx(0.01, rel=1e-12)  # exact
