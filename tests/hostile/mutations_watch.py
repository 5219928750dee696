"""Watches what the interpreter does while a class is marked: which files it writes, and what it runs."""

import os
import sys
from contextlib import contextmanager
from pathlib import Path

_WATCH = {"allowed": None, "acted": None}
_RUNS = {
    "subprocess.Popen", "os.system", "os.exec", "os.posix_spawn", "os.fork", "os.spawn",
    "pickle.find_class", "socket.connect", "socket.bind", "webbrowser.open", "pty.spawn",
}  # fmt: skip
_OURS = ("numpy", "matplotlib")  # pictures of the report are copied by way of pickles
_WRITES = {
    "os.rename", "os.remove", "os.mkdir", "os.rmdir", "os.symlink", "os.link", "os.chmod", "os.truncate",
    "shutil.copyfile", "shutil.move", "shutil.rmtree", "os.chown", "os.utime",
}  # fmt: skip


def _hook(event, arguments):
    """Note what the interpreter is about to do, while a class is marked."""
    if _WATCH["allowed"] is None:
        return
    if event in _RUNS and not str(arguments[0]).startswith(_OURS):
        _WATCH["acted"].append(f"ran {event} {arguments!r:.80}")
    elif event == "open":
        path, mode, flags = arguments
        writes = (mode and set(mode) & set("wax+")) or (flags or 0) & (os.O_WRONLY | os.O_RDWR | os.O_CREAT)
        if writes and isinstance(path, (str, bytes, os.PathLike)):
            _note(path, "opened")
    elif event in _WRITES:
        _note(arguments[0], event)
    elif event == "compile" and _is_theirs(arguments[0]):
        _WATCH["acted"].append("compiled their text")


def _is_theirs(source):
    """Tell whether text that is about to be compiled came out of a hand-in."""
    source = source if isinstance(source, bytes) else str(source or "").encode("utf-8", "replace")
    return b"__import__('os')" in source or b"ran_by" in source


def _note(path, what):
    """Note a file that is written outside the results."""
    if isinstance(path, int):
        return
    whole = os.path.abspath(os.fsdecode(path))
    if (
        not whole.startswith(_WATCH["allowed"])
        and not whole.endswith((".pyc", "/dev/null"))
        and "__pycache__" not in whole
    ):
        _WATCH["acted"].append(f"{what} {whole}")


_HOOKED = []


@contextmanager
def watched(folder, out):
    """Give a list that fills with what was done outside ``out`` or run, while the block runs."""
    if not _HOOKED:
        sys.addaudithook(_hook)  # it cannot be taken out again, so it sleeps between classes
        _HOOKED.append(True)
    acted, here, before = [], Path.cwd(), _seen(folder, out)
    os.chdir(folder)
    _WATCH.update(allowed=str(out), acted=acted)
    try:
        yield acted
    finally:
        _WATCH.update(allowed=None, acted=None)
        os.chdir(here)
    after = _seen(folder, out)
    acted += [f"made, changed or took away {each}" for each in sorted({*before.items()} ^ {*after.items()})]


def _seen(folder, out):
    """Return size, time and number of everything below a folder but the results."""
    found = {}
    for place, folders, names in os.walk(folder):
        folders[:] = [each for each in folders if Path(place, each) != out]
        for name in (*folders, *names):
            path = os.path.join(place, name)
            state = os.lstat(path)
            if path != str(out):
                found[path] = (state.st_size, state.st_mtime_ns, state.st_ino, state.st_mode)
    return found
