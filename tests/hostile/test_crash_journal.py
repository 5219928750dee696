"""A journal whose program is killed at 150 random moments: nothing that was called saved is lost."""

import os

import pytest

from tests.hostile.crash_journal import killed_while_appending

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="this system splits no process off")

BATCHES, IN_BATCH = 2, 75


@pytest.mark.parametrize("batch", range(BATCHES))
def test_killed_while_appending(tmp_path, record_property, batch):
    """Every answer called saved is read back once, in order; a torn line is told; the next append works."""
    hits = killed_while_appending(IN_BATCH, tmp_path, seed=batch)
    torn = hits.pop("of all these, within a line")
    assert hits.total() == IN_BATCH
    assert torn > 0, "no kill came within a line"
    record_property("table", ["journal killed at a random moment while", dict(hits)])
    record_property("table", ["journal left with", {"half a line, set aside": torn}])
