"""One marking at a time writes into a folder of results; what an earlier one left unfinished is cleared."""

import errno
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from filelock import FileLock, Timeout

from grading.whole_files import clear_unfinished

FEEDBACK = "feedback"  # the folder of the learners' pages
LOCK_FILE = "marking.lock"
WAIT_S = 60.0  # of those who only write the table of results again


@contextmanager
def held(folder, *, wait_s=0.0) -> Iterator[None]:
    """Hold a folder of results, or raise ``OSError`` where another marking does."""
    lock = FileLock(str(Path(folder) / LOCK_FILE), timeout=wait_s)
    try:
        lock.acquire()
    except Timeout as error:
        message = "another marking is writing there, wait until it has ended"
        raise OSError(errno.EAGAIN, message, str(folder)) from error
    try:
        for each in (Path(folder), Path(folder) / FEEDBACK):
            clear_unfinished(each)
        yield
    finally:
        lock.release()
