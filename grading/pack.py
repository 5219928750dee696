"""The learner's bundle: a zip file with the workbook and what its pages need, nothing of the instructor's."""

import io
import re
import zipfile
from pathlib import Path

from grading.whole_files import write_whole

BUNDLE = "second_plate_workbook.zip"
FOLDER = "second_plate"  # inside the bundle, so that unpacking leaves one folder
PARTS = ("README.md", "requirements.txt", "pyproject.toml", "workbook", "grading")
_CLASS_FILE = "workbook/class.toml"
# What trying the workbook leaves behind.
_MADE_BY_USE = re.compile(
    r"answers\.jsonl.*|learner\.json.*|hand_in_.*\.zip|.*\.(pyc|lock)|\..*|__pycache__.*"
)
_WHEN = (2026, 1, 1, 0, 0, 0)  # the same content makes the same file, whenever it is packed


class PackError(ValueError):
    """The bundle cannot be made; the message is one sentence for the instructor."""


def pack_workbook(root, out, *, class_file):
    """Write the bundle into ``out`` and return its path and how many files it holds."""
    root, out = Path(root), Path(out)
    files = {path.relative_to(root).as_posix(): path for part in PARTS for path in _files(root / part)}
    if not any(name.startswith("workbook/") for name in files):
        message = f"{root} must hold the workbook, found no folder workbook in it"
        raise PackError(message)
    files[_CLASS_FILE] = Path(class_file)
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as bundle:
        for name, path in sorted(files.items()):
            entry = zipfile.ZipInfo(f"{FOLDER}/{name}", date_time=_WHEN)
            entry.external_attr = 0o644 << 16
            bundle.writestr(entry, path.read_bytes(), zipfile.ZIP_DEFLATED)
    out.mkdir(parents=True, exist_ok=True)
    write_whole(out / BUNDLE, data.getvalue())
    return out / BUNDLE, len(files)


def _files(path):
    """Give the files under a path that belong to the workbook itself."""
    if path.is_file():
        yield path
    elif path.is_dir():
        for each in path.iterdir():
            if not _is_left_behind(each.name):
                yield from _files(each)


def _is_left_behind(name):
    """Tell whether a file or folder was made by running or trying the workbook."""
    return bool(_MADE_BY_USE.fullmatch(name))
