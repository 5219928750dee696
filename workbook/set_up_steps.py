"""Runs the two commands that make an environment, `venv` and `pip`, and puts their failures into a sentence.

Standard library only: this runs before anything is installed.
"""

import errno
import importlib.util
import os
import shutil
import subprocess
import sys
from collections import deque
from pathlib import Path

ROOM = "about 1 GB"
LITTLE_ROOM_BYTES = 20_000_000
PACKAGES_BEFORE_NEWS = 25
KEPT_LINES = 400
TELLING_LINES = 25  # a failure is explained at the end; earlier lines may be of retries that went well

# What venv, pip and the systems under them print, and what it means. The first that is found counts.
FULL_DISK = (
    "No space left on device",
    "Errno 28",
    "WinError 112",
    "not enough space on the disk",
    "Disk quota exceeded",
)
NO_INDEX = (
    "Failed to establish a new connection",
    "NameResolutionError",
    "ConnectTimeoutError",
    "ReadTimeoutError",
    "Read timed out",
    "ConnectionResetError",
    "ProxyError",
    "SSLError",
    "Max retries exceeded",
    "Failed to connect",
    "Unable to connect",
    "(from versions: none)",
)
NO_VENV = ("ensurepip is not available", "No module named venv", "No module named ensurepip")
LONG_PATH = ("Long Path support",)
NOT_ALLOWED = ("Permission denied", "WinError 5]", "Read-only file system")


class SetUpError(Exception):
    """The environment could not be made or the workbook not opened; the text is one sentence."""


class DiskFullError(SetUpError):
    """The disk has no room left."""


def disk_full(folder):
    """Return the error for a full disk."""
    place = f"{folder.parent} and the temporary folder"
    return DiskFullError(f"The disk is full: the environment needs {ROOM} free in {place}.")


def not_writable(folder):
    """Return the error for a folder that refuses to be written."""
    return SetUpError(
        f"{folder} cannot be written: copy the project to a folder of your own and start there."
    )


def failure(output, folder):
    """Return the error that explains a failed step, or None where its output says nothing known."""
    end = "\n".join(output.splitlines()[-TELLING_LINES:])
    meanings = (
        (FULL_DISK, disk_full(folder)),
        (NO_VENV, no_venv()),
        (LONG_PATH, SetUpError(f"The path {folder} is too long for Windows: move the project up.")),
        (NO_INDEX, SetUpError("pip cannot reach its package index: check the network, then run this again.")),
        (NOT_ALLOWED, not_writable(folder)),
    )
    found = next((error for signs, error in meanings if any(sign in end for sign in signs)), None)
    if found is None and shutil.disk_usage(folder.parent).free < LITTLE_ROOM_BYTES:
        return disk_full(folder)  # venv swallows what its own pip said
    return found


def os_failure(error, folder):
    """Return the error that explains a failure of the file system."""
    if error.errno in (errno.ENOSPC, errno.EDQUOT):
        return disk_full(folder)
    if error.errno in (errno.EACCES, errno.EPERM, errno.EROFS):
        return not_writable(folder)
    return SetUpError(f"The environment in {folder} cannot be made: {error}.")


def no_venv():
    """Return the error for a Python that came without its venv module."""
    return SetUpError(
        "This Python came without its venv module: on Debian or Ubuntu run `sudo apt install python3-venv`, "
        "elsewhere install Python from its own site."
    )


def base_python():
    """Return the Python behind this one, which is another where this one belongs to an environment."""
    return Path(getattr(sys, "_base_executable", None) or sys.executable)


def clean_variables():
    """Return the environment variables without those that would let another Python's packages in."""
    unwanted = ("PYTHONHOME", "PYTHONPATH", "PYTHONSTARTUP", "PIP_TARGET", "PIP_PREFIX", "PIP_ROOT")
    kept = {name: value for name, value in os.environ.items() if name not in unwanted}
    return kept | {"PYTHONNOUSERSITE": "1", "PYTHONUTF8": "1", "PIP_USER": "0"}


def run_step(command, folder, *, keep_open, each_line=None):
    """Run one command to its end and raise SetUpError with one sentence where it fails.

    `keep_open` is the file number of the lock: a child that outlives us keeps the lock until it ends as well.
    """
    kept = deque(maxlen=KEPT_LINES)
    inherited = {} if os.name == "nt" else {"pass_fds": (keep_open,)}
    process = subprocess.Popen(
        [str(part) for part in command],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        stdin=subprocess.DEVNULL,
        text=True,
        encoding="utf-8",
        errors="replace",
        env=clean_variables(),
        **inherited,
    )
    try:
        for line in process.stdout:
            kept.append(line)
            if each_line:
                each_line(line)
        process.wait()
    finally:
        process.kill()  # of use only when we were interrupted; else it has ended
        process.stdout.close()
        process.wait()
    if process.returncode:
        output = "".join(kept)
        raise failure(output, folder) or unknown_failure(command, output, folder)


def unknown_failure(command, output, folder):
    """Return an error with what a failed command first called one, and leave all it said in a file."""
    log = folder.with_name(".venv-failed.log")
    log.write_text(output, encoding="utf-8")
    lines = [line.strip() for line in output.splitlines() if line.strip()]
    errors = [line for line in lines if line.lower().startswith("error")]
    told = (errors or lines[-1:] or ["it printed nothing"])[0].rstrip(".")
    return SetUpError(f"{command[2]} failed: {told} (all it printed is in {log}).")


def make_venv(folder, *, keep_open):
    """Make an empty environment with pip in it."""
    missing = [name for name in ("venv", "ensurepip") if importlib.util.find_spec(name) is None]
    if missing:
        raise no_venv()
    run_step([base_python(), "-m", "venv", folder], folder, keep_open=keep_open)


def install(python, requirements, folder, *, keep_open):
    """Install pinned packages from requirement files, with a line of news now and then."""
    news = PackageNews(sum(count_pins(path) for path in requirements))
    command = [python, "-m", "pip", "install", "--disable-pip-version-check", "--no-input"]
    command += ["--progress-bar", "off", *(part for path in requirements for part in ("-r", path))]
    run_step(command, folder, keep_open=keep_open, each_line=news.hear)


def count_pins(path):
    """Return how many packages a requirement file names."""
    lines = path.read_text(encoding="utf-8").splitlines()
    return sum(1 for line in lines if line.strip() and not line.lstrip().startswith("#"))


class PackageNews:
    """Says how far pip is, from the lines it prints."""

    def __init__(self, expected):
        """Start counting towards the expected number of packages."""
        self.expected, self.collected = expected, 0

    def hear(self, line):
        """Count one line of pip's and speak up now and then."""
        if line.startswith(("Collecting ", "Processing ")):
            self.collected += 1
            if self.collected % PACKAGES_BEFORE_NEWS == 0:
                print(f"  {self.collected} of about {self.expected} packages fetched", flush=True)
        if line.startswith("Installing collected packages"):
            print("  all fetched; unpacking them", flush=True)


def remove(folder):
    """Remove a folder, or the link to one, that this project made."""
    if folder.is_symlink():
        folder.unlink()
    elif folder.exists():
        shutil.rmtree(folder)
