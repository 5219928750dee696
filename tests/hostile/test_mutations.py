"""A hundred thousand spoilt hand-ins: nothing breaks, no valid answer is lost, all that is lost is named."""

import os
import tempfile
from pathlib import Path

import pytest

from tests.hostile.mutations import COUNT
from tests.hostile.mutations_checks import HEADS, Tally, check_class, warm_up
from tests.hostile.mutations_made import CLASS_SIZE, sound_hand_ins

SHARDS = 8
CLASSES = COUNT // CLASS_SIZE // SHARDS


@pytest.fixture(scope="module")
def sounds(tmp_path_factory):
    """Give the sound hand-ins of a class, marked once."""
    made = sound_hand_ins()
    warm_up(tmp_path_factory.mktemp("sound") / "hand_ins", made)
    return made


@pytest.fixture
def folder(tmp_path):
    """Give a folder, in memory where the system has one there: a hundred thousand files come and go."""
    in_memory = Path("/dev/shm")
    place = in_memory if os.access(in_memory, os.W_OK) else tmp_path
    with tempfile.TemporaryDirectory(dir=place) as made:
        yield Path(made)


@pytest.mark.slow
@pytest.mark.parametrize("shard", range(SHARDS))
def test_spoilt_hand_ins(shard, sounds, folder, record_property):
    """Marking returns, valid answers count, what is lost is told, nothing acts or is written elsewhere."""
    tally = Tally()
    for number in range(shard * CLASSES, (shard + 1) * CLASSES):
        tally.add(check_class(folder / str(number), sounds, number))
    record_property("table", ["spoilt hand-ins", tally.rows(), HEADS])
    assert sum(tally.marked.values()) == CLASSES * CLASS_SIZE
    assert not tally.faults, "\n".join(fault for _, fault in tally.faults[:20])
