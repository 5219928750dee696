"""Hand-in files out of the learners' own folders, where many work on one machine.

Whoever collects may read everybody's files, and the folders are the learners': nothing in them is trusted.
Links are not followed, only files of the learner's own are copied, and a hand-in counts for the learner in
whose folder it lies.
"""

import os
import re
import stat
from dataclasses import dataclass
from pathlib import Path

from grading.export import printable
from grading.hand_in import TO_READ, HandInError, bytes_of_open, read_hand_in
from grading.learners import HOME_FOLDER
from grading.variants import normalise_learner
from grading.whole_files import write_whole

_HAND_IN = re.compile(r"hand_in_.+\.zip")
_PLAIN = TO_READ | getattr(os, "O_NOFOLLOW", 0)
_ONLY_OWNER = 0o700


class HomesError(ValueError):
    """Nothing can be collected; the message is one sentence for the instructor."""


@dataclass(frozen=True, kw_only=True)
class Collected:
    """What came of collecting: how many files of how many learners, and what was left out and why."""

    learners: int
    files: int
    left_out: tuple[str, ...]


def collect_hand_ins(homes, out, *, any_name=False):
    """Copy every learner's hand-in files into ``out``, each learner's into a folder of the account's name.

    A hand-in that names somebody else than the account in whose folder it lies is left out, unless
    ``any_name``: it would be marked as that other learner's.
    """
    homes, out = Path(homes), Path(out)
    if os.open not in os.supports_dir_fd:
        message = "hand-ins must be collected on the machine that the learners work on, a Linux machine"
        raise HomesError(message)
    learners, files, left_out = 0, 0, []
    out.mkdir(mode=_ONLY_OWNER, parents=True, exist_ok=True)
    for account in sorted(os.listdir(homes)):
        found = {}
        for name, data in _hand_ins_of(homes, account, left_out):
            place = out / account / name
            place.parent.mkdir(mode=_ONLY_OWNER, exist_ok=True)
            write_whole(place, data)
            found[name] = place
        for name, place in found.items() if not any_name else ():
            other = _other_learner(place, account)
            if other:
                place.unlink()
                left_out.append(printable(f"{account}/{name}: it is of {other!r}, not of {account}"))
        kept = sum(place.exists() for place in found.values())
        learners, files = learners + bool(kept), files + kept
    return Collected(learners=learners, files=files, left_out=tuple(left_out))


def _hand_ins_of(homes, account, left_out):
    """Give name and bytes of each hand-in in one learner's folder; what cannot be taken is named."""
    try:
        home = os.open(homes / account, _PLAIN | os.O_DIRECTORY)
    except OSError:
        return  # a link or a file, no home
    try:
        folder = os.open(HOME_FOLDER, _PLAIN | os.O_DIRECTORY, dir_fd=home)
    except OSError:
        return  # has not opened the workbook yet
    finally:
        owner = os.fstat(home).st_uid
        os.close(home)
    try:
        for name in sorted(filter(_HAND_IN.fullmatch, os.listdir(folder))):
            try:
                yield name, _bytes_of(folder, name, owner)
            except HandInError as error:
                left_out.append(printable(f"{account}/{name}: {error}"))
    finally:
        os.close(folder)


def _bytes_of(folder, name, owner):
    """Read a file that is the owner's own and of bearable size, else raise ``HandInError``."""
    try:
        handle = os.open(name, _PLAIN, dir_fd=folder)
    except OSError as error:
        message = f"it cannot be read: {error.strerror}"
        raise HandInError(message) from error
    try:
        found = os.fstat(handle)
        if not stat.S_ISREG(found.st_mode) or found.st_uid != owner or found.st_nlink != 1:
            message = "it is no file of the learner's own"
            raise HandInError(message)
        return bytes_of_open(handle, name)
    finally:
        os.close(handle)


def _other_learner(place, account):
    """Return the learner that a hand-in names where it is not the account's, else an empty text.

    A file that cannot be read as a hand-in names nobody; marking says what is wrong with it.
    """
    try:
        learner = read_hand_in(place).learner
    except HandInError:
        return ""
    return "" if learner == normalise_learner(account) else learner
