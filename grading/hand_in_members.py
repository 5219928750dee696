"""The members of a hand-in's archive: which there may be, how large, and what is left of a damaged one."""

import io
import re
import struct
import zipfile
import zlib
from functools import lru_cache

from grading.plain_zips import plain_members

MANIFEST = "hand_in.json"
MEMBER = re.compile(r"(?P<kind>answers|pages)/(?P<page>[a-z][a-z0-9_]{0,63})\.(?P<ending>jsonl|ipynb)")
_FOLDERS = ("answers/", "pages/")  # entries of their own where somebody packed the files again by hand
_PACKINGS = (zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED)  # others can ask for gigabytes before the first byte
_ENDINGS = {"answers": "jsonl", "pages": "ipynb"}
_DAMAGE = (
    zipfile.BadZipFile,
    zlib.error,
    EOFError,
    NotImplementedError,
    RuntimeError,
    ValueError,
    struct.error,
    OSError,
)  # what the general reader raises on bytes that are no whole archive

MOST_MEMBERS = 64
MOST_BYTES = {"manifest": 64_000, "answers": 2_000_000, "pages": 5_000_000}
_MOST_DIRECTORY_BYTES = 64_000  # of the zip's own list of members


class HandInError(Exception):
    """A hand-in that cannot be made or is not one of ours; the message is one sentence."""


class Unread(str):
    """Why a member cannot be read, in the place of its bytes; the members beside it count all the same."""


def _require_small_directory(data):
    """Refuse a zip whose own list of members is long, before that list is parsed; return how many it names.

    A plain archive ends with its 22-byte end record; we write no comment and never the 64-bit form.
    """
    end = data[-22:]
    if len(end) < 22 or end[:4] != b"PK\x05\x06":
        message = "this is not a hand-in: the file is no zip archive, or its end is missing"
        raise HandInError(message)
    count, size = struct.unpack("<HL", end[10:16])
    if count > MOST_MEMBERS or size > _MOST_DIRECTORY_BYTES or data[-42:-38] == b"PK\x06\x07":
        message = f"this is not a hand-in: it must hold at most {MOST_MEMBERS} files, got {count}"
        raise HandInError(message)
    return count


def members_of(data):
    """Return the members of the archive as bytes by name; anything unlisted or too large is refused."""
    count = _require_small_directory(data)
    members = plain_members(data, _limit_of)
    if members and MANIFEST in members:
        return members
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            infos = archive.infolist()
            if len(infos) != count:  # the reader passes over the rest of a list with a wrong length in it
                message = f"its list of {count} files breaks off after {len(infos)}"
                raise zipfile.BadZipFile(message)
            infos = [info for info in infos if info.file_size or info.filename not in _FOLDERS]
            _require_listed([info.orig_filename for info in infos])  # the other name ends at a zero byte
            members = {info.filename: _read_member(archive, info) for info in infos}
    except _DAMAGE as error:
        message = f"this hand-in is damaged and cannot be read: {error}"
        raise HandInError(message) from error
    return _require_readable(members)


def _require_readable(members):
    """Refuse members of which the manifest cannot be read, or nothing else can."""
    others = [data for name, data in members.items() if name != MANIFEST]
    for least in ([members[MANIFEST]], others):
        if least and all(isinstance(data, Unread) for data in least):
            raise HandInError(least[0])
    return members


@lru_cache(maxsize=256)
def _limit_of(name):
    """Return the most bytes that a member may unpack to, None where hand-ins have no member of this name."""
    kind = "manifest" if name == MANIFEST else _kind_of(name)
    return MOST_BYTES.get(kind)


def _kind_of(name):
    """Return ``answers`` or ``pages`` for the name of a member, None for a name that hand-ins do not have."""
    match = MEMBER.fullmatch(name)
    return match["kind"] if match and match["ending"] == _ENDINGS[match["kind"]] else None


def _require_listed(names):
    """Refuse names that a hand-in of ours does not have."""
    for name in names:
        if _limit_of(name) is None:
            message = f"this is not a hand-in: it holds {name[:60]!r}, which has no place in one"
            raise HandInError(message)
    if len(set(names)) != len(names):
        message = "this is not a hand-in: it holds two files of the same name"
        raise HandInError(message)
    if MANIFEST not in names:
        message = f"this is not a hand-in: it holds no {MANIFEST}"
        raise HandInError(message)


def _read_member(archive, info):
    """Return one member, or why it cannot be read; no more than its limit is unpacked, whatever it claims."""
    name, limit = info.filename, _limit_of(info.filename)
    if info.compress_type not in _PACKINGS:
        return Unread(f"{name} is packed in a way that hand-ins never are, so it was left out")
    too_large = Unread(f"{name} must be at most {limit:,} bytes, and it unpacks to more, so it was left out")
    if info.file_size > limit:
        return too_large
    try:
        with archive.open(info) as member:
            data = member.read(limit + 1)
    except _DAMAGE as error:
        return Unread(f"{name} is damaged and cannot be read: {error}")
    if len(data) > limit:
        return too_large
    if len(data) != info.file_size:  # the reader takes the end of the packed bytes for the end of the file
        return Unread(f"{name} is damaged: it must hold {info.file_size:,} bytes, got {len(data):,}")
    return data
