"""Lieblein and Zelen, fatigue life of deep-groove ball bearings, 1956: 23 lives, from memory."""

import pytest

from secondplate.trials import fit_weibull

SOURCE = "bearing_lives"
# In millions of revolutions; the seventh is printed as 48.40 elsewhere.
LIVES = (
    *(17.88, 28.92, 33.00, 41.52, 42.12, 45.60, 48.48, 51.84, 51.96, 54.12, 55.56, 67.80),
    *(68.64, 68.64, 68.88, 84.12, 93.12, 98.64, 105.12, 105.84, 127.92, 128.04, 173.40),
)


def test_all_failed():
    """Shape 2.1021, scale 81.878, tenth part 28.07, mean 72.5; as many places as printed."""
    law = fit_weibull(LIVES)
    assert (law.shape, law.scale) == pytest.approx((2.1021, 81.878), rel=5e-5)
    assert (law.reached_by(0.1), law.mean) == pytest.approx((28.07, 72.5), abs=0.05)


def test_stopped_at_100():
    """The same lives with those above 100 stopped there: shape 2.2398, scale 80.315, computed."""
    law = fit_weibull([life for life in LIVES if life <= 100], held=[100 for life in LIVES if life > 100])
    assert (law.shape, law.scale) == pytest.approx((2.2398, 80.315), rel=5e-4)
