"""MIL-STD-889: order of metals in sea water, seen in part."""

from secondplate.corrosion_couples import couple

SOURCE = "mil_std_889"


def test_tin_plate_is_close_to_aluminium():
    """Tin plate stands right behind 2024-T4, as in the measured attack and against the other series."""
    assert couple("tin").measured_rank > couple("stainless steel").measured_rank
    assert couple("tin").contradiction
