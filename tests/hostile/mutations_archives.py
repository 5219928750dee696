"""Spoilt archives: bits, bytes, cuts; members that lie, or are too many, too large or strange."""

import io
import json
import os
import pickle
import tarfile
import zlib
from dataclasses import replace
from functools import lru_cache

from grading.hand_in_members import MOST_MEMBERS
from tests.hostile.mutations_lines import BAD_LINE, with_bad_bytes, with_flips
from tests.hostile.mutations_made import (
    MANIFEST,
    REFUSED,
    Member,
    Mutant,
    Told,
    archive,
    packed,
    refused,
)

TOO_MUCH = 2_500_000  # bytes; more than a journal may unpack to
STRANGE_NAMES = (
    "../x", "../../../../tmp/x", "..\\..\\x", "/etc/passwd", "/tmp/x", "//server/share/x", "\\\\server\\x",
    "C:\\x", "C:x", "c:/windows/x", "answers/../../x.jsonl", "answers/stud_welding.jsonl/../x", "answers/",
    "pages/", "answers//stud_welding.jsonl", "./answers/stud_welding.jsonl", "answers\\stud_welding.jsonl",
    "answers/STUD_WELDING.jsonl", "Answers/stud_welding.jsonl", "answers/stud_welding.JSONL",
    "HAND_IN.JSON", "answers/stud_welding.jsonl\x00.txt", "hand_in.json\x00", "answers/stud_welding.jsonl ",
    "answers/CON.jsonl", "answers/con.jsonl/", "answers/nul", "aux", "answers/lpt1.txt",
    "answers/caf\u00e9.jsonl", "answers/cafe\u0301.jsonl", "answers/\uff53tud_welding.jsonl",
    "answers/\u202elnosj.jsonl", "=cmd()", "<script>alert(1)</script>", "answers/" + "a" * 65 + ".jsonl",
    "a" * 5000, "", ".", "..", "gradebook.db", "results.csv", "problems.csv", "class.toml",
    "sitecustomize.py", "conftest.py", "grading/__init__.py", "answers/stud_welding.pkl",
    "pages/stud_welding.py", "__pycache__/x.pyc", "answers/stud_welding.ipynb", "pages/stud_welding.jsonl",
    "~/.bashrc", "$HOME/x", "%TEMP%\\x", "a\nb", "-rf",
)  # fmt: skip


def whole_or_refused(sound, data):
    """Return a hand-in whose archive was damaged: read as it was, or what is lost told."""
    return Mutant(data=data, standing=sound.all, or_refused=True, surely=_surely_whole(sound, data))


@lru_cache(maxsize=1024)
def _regions(names_and_sizes):
    """Return the name of the member that each byte of an archive belongs to."""
    return [name for name, size in names_and_sizes for _ in range(30 + len(name) + size)]


def _surely_whole(sound, data):
    """Return the pages that no changed byte can touch: all lie in other members, none in the manifest."""
    before = _sound(sound)
    if len(before) != len(data):
        return frozenset()
    sizes = tuple((each.name.decode(), len(each.stored)) for each in _members(sound))
    owners = _regions(sizes)
    owners = {owners[place] if place < len(owners) else MANIFEST for place in _differing(before, data)}
    whole = {page for page in sound.pages if f"answers/{page}.jsonl" not in owners}
    return frozenset() if MANIFEST in owners else frozenset(whole)


def _differing(before, after):
    """Return the places at which two runs of bytes differ."""
    return [place for place, (one, other) in enumerate(zip(before, after, strict=True)) if one != other]


def _sound(sound):
    """Return the bytes of a sound hand-in."""
    return sound.with_members({})


def bits(sound, dice):
    """Turn bits round in the archive."""
    return whole_or_refused(sound, with_flips(_sound(sound), dice))


def some_bytes(sound, dice):
    """Put other bytes into the archive, or take some out."""
    return whole_or_refused(sound, with_bad_bytes(_sound(sound), dice))


def cut(sound, dice):
    """Cut the archive short at any place, at a member's beginning, in its list; or put something round it."""
    data = _sound(sound)
    marks = [place for sign in (b"PK\x03\x04", b"PK\x01\x02", b"PK\x05\x06") for place in _places(data, sign)]
    near = dice.choice(marks) + dice.choice((-1, 0, 1, 4, 30))
    place = dice.choice((dice.randrange(len(data)), near, len(data) - dice.randint(1, 22), 0))
    how = dice.randrange(8)
    if how < 5:
        return refused(data[: min(max(place, 0), len(data) - 1)])
    junk = dice.choice((b"\n", b"\x00" * 512, b"#!/bin/sh\n", b"<html>", data, dice.randbytes(40)))
    around = (data[place:], junk + data, data + junk)[how - 5]
    return whole_or_refused(sound, around)


def _places(data, sign):
    """Give every place of a sign in bytes."""
    place = data.find(sign)
    while place >= 0:
        yield place
        place = data.find(sign, place + 1)


def _members(sound):
    """Return the members of a sound hand-in as they are packed."""
    return [packed(name, data) for name, data in sound.members.items()]


@lru_cache(maxsize=64)
def _large(kind):
    """Return something that unpacks to far more than a journal may hold, and what it is packed to."""
    made = {
        "zeros": lambda: bytes(TOO_MUCH),
        "lines": lambda: b"\n" * TOO_MUCH,
        "spaces": lambda: b" " * TOO_MUCH,
        "one line": lambda: b"{" + b'"a":"b",' * (TOO_MUCH // 8),
        "brackets": lambda: b"[" * TOO_MUCH,
        "more": lambda: bytes(8 * TOO_MUCH),
    }[kind]()
    packer = zlib.compressobj(9, zlib.DEFLATED, -zlib.MAX_WBITS)
    return made, packer.compress(made) + packer.flush()


def _bomb(name, dice, **claims):
    """Return a member that unpacks to too much."""
    data, stored = _large(dice.choice(("zeros", "lines", "spaces", "one line", "brackets", "more")))
    honest = {"name": name.encode(), "stored": stored, "size": len(data), "check": zlib.crc32(data)}
    return Member(**{**honest, **claims})


def bombs(sound, dice):
    """Make a member unpack to too much, by its true size or a false one; archives in archives; too many."""
    page = dice.choice(sound.pages)
    name = f"answers/{page}.jsonl"
    others = [packed(each, data) for each, data in sound.members.items() if each != name]
    how = dice.randrange(9)
    if how == 0:
        return _page_lost(sound, page, archive([*others, _bomb(name, dice)]))
    if how == 1:
        claimed = dice.choice((0, 1, 100, 1_999_999, 2_000_000, 2**31, 2**32 - 1))
        return _page_lost(sound, page, archive([*others, _bomb(name, dice, size=claimed)]))
    if how == 2:
        packing = dice.choice((1, 9, 12, 14, 93, 98, 99))
        return _page_lost(sound, page, archive([*others, _bomb(name, dice, packing=packing)]))
    if how == 3:
        many = [
            packed(f"answers/p{number}.jsonl", b"") for number in range(MOST_MEMBERS + dice.randint(0, 900))
        ]
        return refused(archive([*_members(sound), *many], count=dice.choice((None, 3, 0xFFFF))))
    if how == 4:
        return refused(
            archive([*_members(sound), packed(dice.choice(("a.zip", "answers/a.zip")), _sound(sound))])
        )
    if how == 5:
        inner = packed(name, archive([_bomb(name, dice)]))
        return _page_lost(sound, page, archive([*others, inner]), BAD_LINE)
    if how == 6:
        return _overlapping(sound, dice)
    if how == 7:  # a bomb in place of the manifest
        return refused(archive([_bomb(MANIFEST, dice), *others[1:]]))
    claimed = dice.choice((None, 100, 2**32 - 1))
    notebook = _bomb(f"pages/{page}.ipynb", dice, **({} if claimed is None else {"size": claimed}))
    rest = [each for each in _members(sound) if each.name != notebook.name]
    told = Told(kinds=frozenset({"hand-in"}), page=page)
    return Mutant(data=archive([*rest, notebook]), standing=sound.all, told=(told,))


def _page_lost(sound, page, data, kinds=REFUSED.kinds):
    """Return a hand-in in which one page's journal is nothing of the kind."""
    standing = tuple(place for each in sound.pages if each != page for place in sound.numbers[each])
    return Mutant(data=data, standing=standing, told=(Told(kinds=kinds, page=page),))


def _overlapping(sound, dice):
    """Let the list name one member under several names: with little on the disk, much is unpacked."""
    members = _members(sound)
    at = sum(30 + len(each.name) + len(each.stored) for each in members[:1])
    names = [f"answers/{'abcdefghij'[number]}.jsonl".encode() for number in range(dice.randint(1, 10))]
    return whole_or_refused(
        sound, archive([*members, *(replace(members[1], name=each, place=at) for each in names)])
    )


def names(sound, dice):
    """Add a member with a name that would lie elsewhere, act, or pass for another; or rename a sound one."""
    strange = dice.choice(STRANGE_NAMES)
    flags = dice.choice((0, 0x800))
    link = (0o120777 << 16) if dice.random() < 0.2 else 0
    extra = packed(
        strange, dice.choice((b"x", b"/etc/passwd", b"../../x", b"")), flags=flags, attributes=link
    )
    members = _members(sound)
    how = dice.randrange(4)
    if how == 0:
        place = dice.randrange(len(members))
        members[place] = replace(members[place], name=extra.name, flags=flags)
    elif how == 1:
        members.insert(dice.randrange(len(members) + 1), extra)
    elif how == 2:
        members.append(extra)
    else:
        members.append(dice.choice(members))  # two of one name
    data = archive(members)
    if how in (1, 2) and strange in ("answers/", "pages/") and not extra.size:
        return Mutant(data=data, standing=sound.all, quiet=True)
    return refused(data)


def links(sound, dice):
    """Give members the marks of links, folders, devices and programs, which nothing may heed."""
    marks = (0o120777, 0o040755, 0o060666, 0o010666, 0o104755, 0o140777)
    members = [
        replace(each, attributes=dice.choice(marks) << 16 | dice.choice((0, 0x10)))
        for each in _members(sound)
    ]
    return Mutant(data=archive(members), standing=sound.all, quiet=True)


def strangers(sound, dice):
    """Hand in something else: a photograph, a program, a pickle, another kind of archive, a web page."""
    data = _sound(sound)
    return refused(dice.choice(_STRANGERS)(data, dice))


def _tar(data, _):
    """Return a tar archive with a path that leaves its folder."""
    file = io.BytesIO()
    with tarfile.open(fileobj=file, mode="w:gz") as tar:
        entry = tarfile.TarInfo("../../x")
        entry.size = len(data)
        tar.addfile(entry, io.BytesIO(data))
    return file.getvalue()


class _Runs:
    """A pickle of this runs a command when it is loaded."""

    def __reduce__(self):
        return (exec, ("open('ran_by_pickle', 'w').close()",))


_STRANGERS = (
    lambda data, dice: b"", lambda data, dice: b"my answers are on the other stick", lambda data,
    dice: dice.randbytes(dice.randint(1, 3000)), lambda data, dice: b"\x89PNG\r\n\x1a\n" + data[:100],
    lambda data, dice: b"MZ" + data[2:-22], lambda data, dice: pickle.dumps(_Runs()), lambda data,
    dice: b"<script>alert(1)</script>", lambda data, dice: b"=cmd|' /C calc'!A0", lambda data,
    dice: zlib.compress(data), lambda data, dice: data.hex().encode(), lambda data,
    dice: json.dumps({"format": "second plate hand-in", "version": 1}).encode(), lambda data,
    dice: archive([]), lambda data, dice: archive([packed("car.jpg", b"\xff\xd8")]), lambda data,
    dice: archive([packed(MANIFEST, b"{}")]), lambda data, dice: b"PK\x05\x06" + bytes(18), lambda data,
    dice: b"PK\x05\x06" + b"\xff" * 18, _tar,
)  # fmt: skip


def packings(sound, dice):
    """Pack members in ways that others use: stored, with an extra field, a comment, streamed, encrypted."""
    how = dice.randrange(6)
    if how == 0:
        members = [packed(name, data, packing=0) for name, data in sound.members.items()]
        return Mutant(data=archive(members), standing=sound.all, quiet=True)
    if how == 1:
        extra = b"UT\x05\x00\x03" + dice.randbytes(4)
        return Mutant(
            data=archive([replace(each, extra=extra) for each in _members(sound)]),
            standing=sound.all,
            quiet=True,
        )
    if how == 2:
        return whole_or_refused(sound, archive(_members(sound), comment=dice.randbytes(dice.randint(1, 60))))
    flags = dice.choice((0x1, 0x8, 0x20, 0x40, 0x800, 0x2000))
    members = _members(sound)
    place = dice.randrange(len(members))
    if how == 3:
        members[place] = replace(members[place], flags=flags)
    elif how == 4:
        members[place] = replace(members[place], check=dice.getrandbits(32))
    else:
        sizes = (0, 1, members[place].size - 1, members[place].size + 1, 2**32 - 1)
        members[place] = replace(members[place], size=dice.choice(sizes))
    return whole_or_refused(sound, archive(members))


FILE_NAMES = (
    "=cmd()", "+1", "-rf", "@SUM(1)", "<script>alert(1)<", "\u202epiz.", "a\nb", "a\tb", "\x1b[2J", "CON",
    "\udcff\udcfe", "x" * 200, "a,b", "'", '"', "  ", "%s%n", "{0}", "caf\u00e9", "cafe\u0301",
    "\u05d0\u05d1", "$(id)", "`id`", "\\", "C:", "a;b", "#", "~", "|id", "\u2028", "\ufeff", "\uff1d1",
)  # fmt: skip


def files(sound, dice):
    """Give the file itself a name that would act, or hand in what is no file: a link to nowhere, a pipe."""
    name = dice.choice(FILE_NAMES)
    how = dice.randrange(4)
    if how == 0:
        return Mutant(data=_sound(sound), standing=sound.all, quiet=True, file_name=name)
    if how == 1:
        return refused(_sound(sound)[:-1], file_name=name)
    return refused(b"", file_name=name, put=_as_link if how == 2 else _as_pipe)


def _as_link(path, _):
    """Put a link that leads to itself."""
    path.symlink_to(path.name)


def _as_pipe(path, _):
    """Put a pipe: whoever waits for its end waits for ever."""
    os.mkfifo(path)


FAMILIES = {
    "bits turned in the archive": (13, bits),
    "bytes changed in the archive": (8, some_bytes),
    "archive cut short": (5, cut),
    "bombs": (1, bombs),
    "names of members": (4, names),
    "links and devices": (1, links),
    "no hand-in at all": (2, strangers),
    "other packings": (2, packings),
    "names and kinds of files": (2, files),
}
