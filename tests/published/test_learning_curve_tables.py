"""Learning-curve coefficients of operations management; from memory, recomputed."""

import pytest

from secondplate.removal import piece_min, series_min

SOURCE = "learning_curve_tables"
# learning rate: unit time of 10 and 20, sum to 10 and 20
ROWS = {0.8: ((0.4765, 0.3812), (6.3154, 10.4849)), 0.9: ((0.7047, 0.6342), (7.9945, 14.6078))}


@pytest.mark.parametrize(("rate", "printed"), ROWS.items())
def test_unit_times_and_sums(rate, printed):
    """Unit times and sums for 10 and 20 pieces, printed to four places."""
    curve = {"first_min": 1.0, "learning_rate": rate, "learning_model": "unit"}
    assert piece_min([10, 20], **curve) == pytest.approx(printed[0], abs=1e-4)
    assert series_min([10, 20], **curve) == pytest.approx(printed[1], abs=1e-4)
