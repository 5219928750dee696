"""Who works in a workbook: the small file that signing in writes, and a learner's name as a file name."""

import json
import re
import unicodedata
from dataclasses import dataclass
from hashlib import blake2b
from pathlib import Path

from grading.variants import PRACTICE, normalise_learner

LEARNER_FILE = "learner.json"
HOME_FOLDER = "second_plate"  # a learner's pages and answers at home, where many work on one machine
LONGEST_NAME = 80  # characters of a learner's name
_WINDOWS_DEVICES = re.compile(r"(con|prn|aux|nul|com[0-9]|lpt[0-9])")


@dataclass(frozen=True, kw_only=True)
class Learner:
    """Who works in a workbook: the name as typed and its one spelling, both empty for practice.

    ``problem`` is one sentence where a learner file is there but cannot be used.
    """

    display_name: str
    learner: str
    problem: str = ""


def save_learner(workbook_folder, name):
    """Write down who works in this workbook, and return them."""
    display_name = " ".join(str(name).split())
    learner = normalise_learner(display_name)
    if not learner or len(display_name) > LONGEST_NAME:
        message = f"name must be 1 to {LONGEST_NAME} characters that can be seen, got {len(display_name)}"
        raise ValueError(message)
    path = Path(workbook_folder) / LEARNER_FILE
    fresh = path.with_name(path.name + ".new")
    fresh.write_text(json.dumps({"name": display_name}, ensure_ascii=False) + "\n", encoding="utf-8")
    fresh.replace(path)
    return Learner(display_name=display_name, learner=learner)


def learner_of(folder):
    """Return who works in a folder, from the nearest learner file in it or above it."""
    folder = Path(folder).resolve()
    for place in (folder, *folder.parents):
        path = place / LEARNER_FILE
        if path.is_file():
            return _read_learner(path)
    return Learner(display_name="", learner=PRACTICE)


def _read_learner(path):
    """Read one learner file."""
    try:
        content = json.loads(path.read_text(encoding="utf-8-sig"))
        name = content["name"] if isinstance(content, dict) else None
    except (OSError, ValueError, KeyError, RecursionError):
        name = None
    learner = normalise_learner(name) if isinstance(name, str) and len(name) <= LONGEST_NAME else PRACTICE
    if learner == PRACTICE:
        sentence = f"{path.name} cannot be read, so nobody is signed in: sign in again"
        return Learner(display_name="", learner=PRACTICE, problem=sentence)
    return Learner(display_name=name, learner=learner)


def learner_slug(learner):
    """Return a learner's name as a file name that is safe on every system, and differs between learners.

    A name that had to be changed carries a short hash, so that two names never fall together.
    """
    name = normalise_learner(learner)
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    slug = re.sub(r"[^a-z0-9]+", "_", plain.lower()).strip("_")[:40]
    if slug and slug == name and not _WINDOWS_DEVICES.fullmatch(slug):
        return slug
    digest = blake2b(name.encode("utf-8", "surrogatepass"), digest_size=4).hexdigest()
    return f"{slug or 'learner'}_{digest}"
