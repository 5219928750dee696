"""29 CFR 1910.252 General requirements of welding, paragraph (a)(2). Read in a rule of the same wording."""

import pytest

from secondplate.cautions import cautions_about
from secondplate.units import mm_from_inch

SOURCE = "osha_1910_252"
FIRE = {caution.name: caution for caution in cautions_about("fire")}


def test_clear_distance():
    """Combustible material within 35 feet calls for a fire watch: 10.7 m."""
    metres = mm_from_inch(35 * 12) / 1000
    assert FIRE["clear distance"].value == pytest.approx(metres, abs=0.05)  # one decimal


def test_fire_watch():
    """The watch lasts at least half an hour; newer rules ask for an hour, and both are shown."""
    assert (FIRE["fire watch"].value, FIRE["longer fire watch"].value) == (30, 60)
    assert FIRE["longer fire watch"].basis == "from memory"
