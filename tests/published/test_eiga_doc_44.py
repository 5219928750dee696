"""EIGA Doc 44/18 Hazards of oxygen-deficient atmospheres. Summary read."""

from secondplate.cautions import cautions_about

SOURCE = "eiga_doc_44"


def test_least_oxygen_for_entry():
    """The minimum safe oxygen concentration for entry into a space is 19.5 %."""
    entry = next(caution for caution in cautions_about("air") if caution.source == SOURCE)
    assert entry.value == 19.5
