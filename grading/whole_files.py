"""Puts a file in place in one step, so that nobody reads half of it, and adds to files that only grow."""

import os
import tempfile
from contextlib import contextmanager
from pathlib import Path

from grading.carried_files import is_collected

_UNFINISHED = ".part"


def write_whole(path, data, *, on_disk=False):
    """Write a file whole or not at all; with ``on_disk`` wait until the disk has it."""
    write_whole_from(path, (data,), on_disk=on_disk)


def write_whole_from(path, pieces, *, on_disk=False):
    """Write a file from pieces, one after the other, whole or not at all."""
    if is_collected(path, pieces):
        return
    path = Path(path)
    with _named(path):
        handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.", suffix=_UNFINISHED)
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


def clear_unfinished(folder):
    """Delete what was left of files whose writing a crash ended, in this folder only."""
    for path in Path(folder).glob(f".*{_UNFINISHED}"):
        path.unlink(missing_ok=True)


def add_whole(file, data, *, on_disk=True):
    """Write at the end of a file opened without buffer; half of it is taken back where the disk refuses."""
    end = file.seek(0, os.SEEK_END)
    try:
        rest = memoryview(data)
        while rest:
            rest = rest[file.write(rest) :]
        if on_disk:
            os.fsync(file.fileno())
    except OSError:
        os.truncate(file.fileno(), end)
        raise


def add_to(path, data, *, on_disk=True):
    """Write at the end of the file at ``path``, made if it is not there, whole or not at all."""
    with _named(path), open(path, "ab", buffering=0) as file:
        add_whole(file, data, on_disk=on_disk)


@contextmanager
def _named(path):
    """Make a refusal of the disk name the file that was to be written."""
    try:
        yield
    except OSError as error:
        message = f"cannot be written: {error.strerror or error}"
        raise OSError(error.errno, message, str(path)) from error
