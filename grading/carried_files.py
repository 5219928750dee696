"""Files of another computer: what marking would read from its disk and write to it, carried along instead.

Inside ``carried`` hand-ins come from memory and finished files are collected, in this thread only, so that
marking far away needs no folder that both computers see, and writes nothing where it runs.
"""

from contextlib import contextmanager
from contextvars import ContextVar
from pathlib import Path

_READ = ContextVar("files that are read from memory", default=None)
_WRITTEN = ContextVar("files that are collected", default=None)


@contextmanager
def carried(contents):
    """Read these files in place of those on disk; give the list of ``(path, pieces)`` that is written.

    ``contents`` has by path the bytes of each file, or the exception that reading it raised.
    """
    read, written = _READ.set({str(Path(path)): each for path, each in contents.items()}), []
    collected = _WRITTEN.set(written)
    try:
        yield written
    finally:
        _READ.reset(read)
        _WRITTEN.reset(collected)


def carried_bytes(path):
    """Return the bytes of a file that was carried here, None where this computer's own disk is read."""
    contents = _READ.get()
    if contents is None:
        return None
    found = contents[str(Path(path))]
    if isinstance(found, Exception):
        raise found
    return found


def make_folder(path):
    """Make the folder of files to be written; of files that are carried back it is made where they arrive."""
    if _WRITTEN.get() is None:
        Path(path).mkdir(parents=True, exist_ok=True)


def is_collected(path, pieces):
    """Take a file that is to be carried back; False where this computer's own disk is written."""
    written = _WRITTEN.get()
    if written is None:
        return False
    written.append((str(path), b"".join(pieces)))
    return True
