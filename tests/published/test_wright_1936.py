"""Wright, Factors affecting the cost of airplanes, 1936: the law of the cumulative average."""

import pytest

from secondplate.removal import learning_exponent, piece_min, series_min

SOURCE = "wright_1936"
CURVE = {"first_min": 1.0, "learning_rate": 0.8, "learning_model": "cumulative average"}


def test_exponent():
    """The exponent of an 80 % curve is -0.322, printed to three places."""
    assert learning_exponent(0.8) == pytest.approx(-0.3219, abs=1e-4)


def test_averages_and_second_unit():
    """Average of two 80 %, of four 64 %; the second piece alone takes 60 %. Exact but for rounding."""
    assert series_min([2, 4], **CURVE) / [2, 4] == pytest.approx([0.8, 0.64], abs=1e-12)
    assert piece_min(2, **CURVE) == pytest.approx(0.6, abs=1e-12)
