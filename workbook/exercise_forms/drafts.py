"""Work at the bench that is not saved as an answer yet, kept beside the journal until it is.

A draft is no answer: it uses no try, is never marked and does not travel with the hand-in. It is there so
that a log of many studs outlives a kernel that dies or a page that is closed.
"""

import json
from pathlib import Path

from filelock import FileLock, Timeout

from grading.answers import JOURNAL_FILE
from grading.journal import LOCK_WAIT_S
from grading.whole_files import write_whole

DRAFTS_FILE = f"{JOURNAL_FILE}.drafts"
MOST_DRAFTS = 60  # of one page; the oldest go first
LARGEST_BYTES = 4_000_000


class NotKeptError(Exception):
    """Raised where a draft is not on the disk; the message is one sentence for the learner."""


class Drafts:
    """The drafts of one page, by name; several kernels may keep theirs at the same time."""

    def __init__(self, folder):
        self.path = Path(folder) / DRAFTS_FILE

    def read(self, name):
        """Return the draft of a name, or None; a file that cannot be read holds none."""
        return self._all().get(name)

    def keep(self, name, content):
        """Write a draft to the disk, or raise ``NotKeptError``."""
        self._change(lambda drafts: {**{key: drafts[key] for key in drafts if key != name}, name: content})

    def drop(self, name):
        """Take a draft away, where there is one."""
        if self.read(name) is not None:
            self._change(lambda drafts: {key: drafts[key] for key in drafts if key != name})

    def _all(self):
        """Return all drafts by name."""
        try:
            if self.path.stat().st_size > LARGEST_BYTES:
                return {}
            found = json.loads(self.path.read_text(encoding="utf-8"))
        except (OSError, ValueError, RecursionError):
            return {}
        return found if isinstance(found, dict) else {}

    def _change(self, change):
        """Read, change and replace the file while nobody else does."""
        try:
            with FileLock(f"{self.path}.lock", timeout=LOCK_WAIT_S):
                drafts = change(self._all())
                newest = dict(list(drafts.items())[-MOST_DRAFTS:])
                text = json.dumps(newest, separators=(",", ":"))
                write_whole(self.path, text.encode("utf-8"), on_disk=True)
        except (OSError, Timeout) as error:
            message = f"this log is not kept on the disk: {getattr(error, 'strerror', None) or error}"
            raise NotKeptError(message) from error
