"""Record of a repair: nothing missing, nothing out of order."""

import pytest

from secondplate import repair_record as record


def test_a_whole_record_has_no_gaps():
    """All entries in order have no fault, and no two may be swapped."""
    names = record.RECORD_ENTRY_NAMES
    assert record.record_gaps(names) == ()
    for place in range(len(names) - 1):
        written = list(names)
        written[place], written[place + 1] = written[place + 1], written[place]
        (fault,) = record.record_gaps(written)
        assert fault.startswith(f"{names[place]} must come before {names[place + 1]}: ")


def test_each_missing_entry_is_named():
    """An empty record lacks every entry, each with its reason."""
    gaps = record.record_gaps(())
    assert len(gaps) == len(record.RECORD_ENTRIES)
    for gap, entry in zip(gaps, record.RECORD_ENTRIES, strict=True):
        assert gap == f"{entry.name} is missing: {entry.reason}"


def test_what_is_no_entry_is_refused():
    """An unknown entry and one that stands twice are refused by one sentence."""
    with pytest.raises(ValueError, match="step must be one of vehicle and procedure, state before work"):
        record.record_gaps(["invoice"])
    with pytest.raises(ValueError, match="each step must stand once, got release, release"):
        record.record_gaps(["release", "release"])
