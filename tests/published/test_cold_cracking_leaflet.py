"""Leaflet on cold cracking of welds, read."""

from secondplate.weldability_published import published_warnings

SOURCE = "cold_cracking_leaflet"


def test_cracks_come_late():
    """Cracks may open 24 to 48 hours after the weld; martensite, stress and hydrogen are needed."""
    (reason,) = (each for each in published_warnings("38B2", surface="bare") if each.source == SOURCE)
    assert all(words in reason.text for words in ("24 to 48 hours", "martensite", "stress", "hydrogen"))
