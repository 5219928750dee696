"""ISO 3452-1: penetrant testing, temperature and times. From memory."""

from secondplate.plate_penetrant import PENETRANT_RULES

SOURCE = "iso_3452_1"


def test_temperature_and_times():
    """Part at 10 to 50 C, dwell 5 to 60 min, developing 10 to 30 min."""
    names = ("part temperature", "penetrant dwell", "developing")
    found = [(PENETRANT_RULES[name].low, PENETRANT_RULES[name].high) for name in names]
    assert found == [(10, 50), (5, 60), (10, 30)]
