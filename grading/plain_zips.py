"""The members of a plain zip archive, read without the general reader, which takes four times as long.

Plain is what the workbook itself writes: members one after the other from the first byte on, stored or
deflated, no comments, no extra fields, sizes and check sums right. Anything else is left to the general
reader, so that there is one place that says what is wrong with an archive.
"""

import struct
import zlib

_END = struct.Struct("<4s4H2LH")
_LISTED = struct.Struct("<4s6H3L5H2L")
_HEAD = struct.Struct("<4s5H3L2H")
_STORED, _DEFLATED = 0, 8
_NEWEST_READER = 20  # version 2.0 of the format is all that stored and deflated members need


class _NotPlain(Exception):
    """Raised within this module where an archive is anything but plain."""


def plain_members(data, limit_of):
    """Return the members of a plain archive as bytes by name, or None where it is not plain.

    ``limit_of(name)`` gives the most bytes that a member may unpack to, None for one that has no place here.
    """
    try:
        return _members(data, limit_of)
    except (_NotPlain, struct.error, zlib.error, UnicodeDecodeError):
        return None


def _members(data, limit_of):
    """Walk through the list at the end and through the members themselves at the same time."""
    end = len(data) - _END.size
    if end < 0:
        raise _NotPlain
    signature, disk, first_disk, here, count, size, place, comment = _END.unpack_from(data, end)
    if signature != b"PK\x05\x06" or disk or first_disk or comment or here != count or place + size != end:
        raise _NotPlain
    members, begin, list_begins = {}, 0, place
    for _ in range(count):
        name, place, begin, content = _member(data, place, begin, limit_of)
        if name in members:
            raise _NotPlain
        members[name] = content
    if place != end or begin != list_begins:
        raise _NotPlain
    return members


def _member(data, place, begin, limit_of):
    """Return name, next place in the list, where the next member begins, and what this one holds."""
    entry = _LISTED.unpack_from(data, place)
    (signature, _, reader, flags, packing, _, _, crc, packed, size, letters, extra, comment, *_, offset) = (
        entry
    )
    plain = signature == b"PK\x01\x02" and reader <= _NEWEST_READER and offset == begin
    if not plain or flags or extra or comment or entry[13]:
        raise _NotPlain
    name_at = place + _LISTED.size
    name_bytes = data[name_at : name_at + letters]
    name = name_bytes.decode("ascii")
    limit = limit_of(name)
    begins = begin + _HEAD.size + letters
    head = _HEAD.unpack_from(data, begin)
    if limit is None or size > limit or data[begin + _HEAD.size : begins] != name_bytes:
        raise _NotPlain
    if (
        head[0] != b"PK\x03\x04"
        or head[2]
        or head[3] != packing
        or head[6:] != (crc, packed, size, letters, 0)
    ):
        raise _NotPlain
    ends = begins + packed
    content = _unpacked(data[begins:ends], packing, size)
    if zlib.crc32(content) != crc:
        raise _NotPlain
    return name, name_at + letters, ends, content


def _unpacked(packed, packing, size):
    """Unpack a member, never to more than the size that its head names."""
    if packing == _STORED:
        content, whole = packed, True
    elif packing == _DEFLATED:
        stream = zlib.decompressobj(-zlib.MAX_WBITS)
        content = stream.decompress(packed, size + 1)
        whole = stream.eof and not stream.unused_data
    else:
        raise _NotPlain
    if not whole or len(content) != size:
        raise _NotPlain
    return content
