"""Introduction to Statistical Quality Control, example 9.1: tabular cumulative sums; data and sums seen."""

import pytest

from secondplate.trials import cumulative_sums

SOURCE = "control_textbook"
VALUES = (
    *(9.45, 7.99, 9.29, 11.66, 12.16, 10.18, 8.04, 11.46, 9.2, 10.34, 9.03, 11.47, 10.51, 9.4, 10.08),
    *(9.37, 10.62, 10.31, 8.52, 10.84, 10.9, 9.33, 12.29, 11.5, 10.6, 11.08, 10.38, 11.62, 11.31, 10.52),
)
ABOVE = (
    *(0, 0, 0, 1.16, 2.82, 2.5, 0.04, 1.0, 0, 0, 0, 0.97, 0.98, 0, 0),
    *(0, 0.12, 0, 0, 0.34, 0.74, 0, 1.79, 2.79, 2.89, 3.47, 3.35, 4.47, 5.28),
)


def test_sums_and_signal():
    """Sums for a rise to period 29, two places printed; the signal there, seven periods after the shift."""
    found = cumulative_sums(VALUES, target=10, scatter=1)
    assert found.above[:29] == pytest.approx(ABOVE, abs=6e-3)
    assert found.signals[0] + 1 == 29
    assert found.run_above[28] == 7
