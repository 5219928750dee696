"""Lesson on welding structural steel to stainless steel 309 with the Schaeffler diagram, 2008, read."""

import pytest

from secondplate.weldability_composition import Composition
from secondplate.weldability_equivalents import schaeffler_equivalents

SOURCE = "dissimilar_welding_lesson"


def test_chromium_equivalent_of_structural_steel():
    """0.30 + 0.08 + 1.5 x 0.50 = 1.13."""
    steel = Composition(
        carbon_percent=0.12,
        silicon_percent=0.50,
        manganese_percent=1.60,
        chromium_percent=0.30,
        nickel_percent=0.30,
        molybdenum_percent=0.08,
    )
    at = schaeffler_equivalents(steel)
    assert at.chromium_equivalent_percent == pytest.approx(1.13, abs=1e-9)  # exact decimals


def test_niobium_counts_half():
    """The formula as printed there: niobium counts half in the chromium equivalent."""
    plain = Composition(carbon_percent=0.05, chromium_percent=18)
    stabilised = Composition(carbon_percent=0.05, chromium_percent=18, niobium_percent=0.8)
    rise = (
        schaeffler_equivalents(stabilised).chromium_equivalent_percent
        - schaeffler_equivalents(plain).chromium_equivalent_percent
    )
    assert rise == pytest.approx(0.4, abs=1e-9)  # exact decimals
