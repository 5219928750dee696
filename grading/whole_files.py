"""Puts a file in place in one step, so that nobody ever reads half of it."""

import os
import tempfile
from pathlib import Path


def write_whole(path, data, *, on_disk=False):
    """Write a file whole or not at all; with ``on_disk`` wait until the disk has it."""
    write_whole_from(path, (data,), on_disk=on_disk)


def write_whole_from(path, pieces, *, on_disk=False):
    """Write a file from pieces, one after the other, whole or not at all."""
    path = Path(path)
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            for piece in pieces:
                file.write(piece)
            if on_disk:
                file.flush()
                os.fsync(file.fileno())
        os.chmod(temporary, 0o644)  # mkstemp makes files that only their owner may read
        os.replace(temporary, path)
    except BaseException:
        os.unlink(temporary)
        raise
