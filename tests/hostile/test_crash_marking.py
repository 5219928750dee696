"""Marking killed at 150 random moments and at every kind of place: gone on with, it comes to the same."""

import os

import pytest

from tests.hostile.crash_marking import four_markings, killed_at_moments, killed_at_places

pytestmark = pytest.mark.skipif(not hasattr(os, "fork"), reason="this system splits no process off")

BATCHES, IN_BATCH = 6, 25


@pytest.fixture(scope="module")
def markings(tmp_path_factory):
    """Give the four markings that are killed, with what they come to undisturbed."""
    return four_markings(tmp_path_factory.mktemp("crash"))


@pytest.mark.parametrize("batch", range(BATCHES))
def test_killed_at_random_moments(markings, tmp_path, record_property, batch):
    """Killed at any moment and started again: gradebook, tables and pages equal an undisturbed marking's."""
    hits = killed_at_moments(markings, IN_BATCH, tmp_path, seed=batch)
    assert hits.total() == IN_BATCH
    record_property("table", ["marking killed at a random moment in", dict(hits)])


def test_killed_at_every_kind_of_place(markings, tmp_path, record_property):
    """Killed before each kind of statement, and around each end of a transaction: the same comes of it."""
    hits = killed_at_places(markings[1], tmp_path)
    assert hits.total() > 20
    record_property("table", ["marking killed at a place", dict(hits)])


def test_killed_while_pages_are_put_in_place(markings, tmp_path, record_property):
    """Killed around the writing of a page: every page is there at the end, and no scrap of one."""
    hits = killed_at_places(markings[3], tmp_path, only=".html")
    assert hits.total() == 2
    record_property("table", ["marking killed at a place", {"around a feedback page": hits.total()}])
