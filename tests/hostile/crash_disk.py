"""Disks that are full, and folders and files that may not be written."""

import ctypes
import os
import resource
import signal
from pathlib import Path

from tests.hostile.crash_forks import done

NOBODY = 65534
REFUSED = 77  # exit code where this system lets nobody make a small disk
_NEW_MOUNTS, _NEW_USER = 0x00020000, 0x10000000
_PRIVATE, _REMOUNT = 0x4000 | 0x40000, 0x20


def no_file_longer_than(size):
    """Let this process write no file beyond so many bytes, which its system says as a full disk is said."""
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (size, resource.getrlimit(resource.RLIMIT_FSIZE)[1]))


def _call(name, *arguments):
    """Call a function of the system and raise what it refuses."""
    if getattr(ctypes.CDLL(None, use_errno=True), name)(*arguments):
        raise OSError(ctypes.get_errno(), f"{name}: {os.strerror(ctypes.get_errno())}")


def small_disk(folder, size):
    """Put a small disk in the place of a folder, for this process only; end it where that is not allowed."""
    try:
        user = os.geteuid()
        _call("unshare", _NEW_MOUNTS | (_NEW_USER if user else 0))
        if user:
            Path("/proc/self/uid_map").write_text(f"0 {user} 1", encoding="ascii")
        _call("mount", b"none", b"/", None, _PRIVATE, None)
        _call("mount", b"small", os.fsencode(folder), b"tmpfs", 0, b"size=%d" % size)
    except (OSError, AttributeError):
        os._exit(REFUSED)


def make_room(folder):
    """Make the small disk in the place of a folder a large one."""
    _call("mount", b"small", os.fsencode(folder), b"tmpfs", _REMOUNT, b"size=64m")


def as_somebody_else():
    """Go on as a user whom permissions hold; the superuser may write everywhere."""
    if os.geteuid() == 0:
        os.setgroups([])
        os.setgid(NOBODY)
        os.setuid(NOBODY)


def refused(one, out, *, prepare, named=None):
    """Mark where something may not be written; check that one sentence names it; return it or ""."""
    output = out.with_name("output.txt")
    code = done(lambda: one.run(out, prepare=prepare), output=output)
    text = output.read_text(encoding="utf-8").strip()
    if code == 0:
        return ""
    assert code == 1, f"exit code {code}: {text}"
    assert text.startswith("Error: "), text
    assert len(text.splitlines()) == 1, text
    assert str(named or out) in text, text
    return text


def full_for(sentence, out):
    """Return what a sentence says there was no room for."""
    name = sentence.partition(f"{out}/")[2].replace(":", " ").split(" ")[0]
    return "a feedback page" if name.startswith("feedback") else name or "room enough"
