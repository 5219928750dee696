"""Sound hand-ins to be spoilt, what is kept of a spoilt one, and a writer of zip archives that may lie."""

import json
import random
import struct
import zlib
from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from functools import lru_cache
from pathlib import Path

from grading.answers import journal_bytes
from grading.demo_class import invent_records, learner_name
from grading.exercise import Number
from grading.exercises import EXERCISES, PAGES
from grading.keys import keys_for
from grading.packed_counts import packed_counts
from grading.quantities import show_quantity
from grading.variants import normalise_learner
from grading.written_answers import notebook_of
from tests.grading.made_hand_ins import MADE_AT, SETTINGS, manifest

CLASS_SIZE = 250
EXERCISES_EACH = 4  # on two pages; with second tries and rounds about seven records
MANIFEST = "hand_in.json"
ODD_NAMES = (
    "=HYPERLINK(\"http://example.invalid\",\"x\")", "=cmd|' /C calc'!A0", "+1+1", "-2+3", "@SUM(1)",
    "\t=1+1", "\uff1d2+2", "<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>",
    "' onmouseover='alert(1)", "</title><script>x</script>", "javascript:alert(1)", "{{ 7*7 }}",
    "{% import os %}", "${7*7}", "%n%s%x", "../../x", "..\\..\\x", "/etc/passwd", "C:\\x",
    "\\\\server\\share", "CON", "nul.zip", "LPT1", "a/b", "Ann\x1b[2JHolt", "Ann\x07Holt", "\u202eevil",
    "ab\u2066cd", "\u05d0\u05d1\u05d2 \u05d3\u05d4", "\u0645\u0631\u064a\u0645", "e\u0301" * 20,
    "a" + "\u0335" * 60, "\ud800x", "\U0001f6e0", "\ufeffMara", "Robert'); DROP TABLE grade;--", "null",
    "undefined", "0", "NaN", "1e400", "x" * 80, "\u0130stanbul", "\u1e9e", "Stra\u00dfe", "a,b;c",
    "\"quoted\"", "Ann, Holt",
)  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Sound:
    """A hand-in in which nothing is amiss.

    ``contents`` are its records page by page, ``lines`` the lines of each page's journal without their ends,
    ``numbers`` the places in ``contents`` of the records that stand in them. ``keys`` are the right answers.
    """

    name: str
    contents: tuple[dict, ...]
    lines: dict[str, tuple[bytes, ...]]
    numbers: dict[str, tuple[int, ...]]
    members: dict[str, bytes]
    keys: dict

    @property
    def learner(self):
        """The one spelling of the learner's name."""
        return normalise_learner(self.name)

    @property
    def pages(self):
        """The pages that answers were given on."""
        return tuple(self.lines)

    @property
    def all(self):
        """The places of all records."""
        return tuple(range(len(self.contents)))

    def with_members(self, changes):
        """Return the bytes of the hand-in with some members put in place or, where None, left out."""
        members = {name: data for name, data in {**self.members, **changes}.items() if data is not None}
        return archive([packed(name, data) for name, data in members.items()])


@dataclass(frozen=True, kw_only=True)
class Told:
    """A problem that must be named: its kind is one of these, its place this line of this page."""

    kinds: frozenset = frozenset()
    page: str = ""
    line: int = 0

    def matches(self, row):
        """Tell whether a row of the table of problems is this problem."""
        return (
            (not self.kinds or row["kind"] in self.kinds)
            and (not self.page or row["page"] == self.page)
            and (not self.line or row["line"] == str(self.line))
        )


@dataclass(frozen=True, kw_only=True)
class Mutant:
    """A spoilt hand-in, and what marking must make of it.

    ``standing`` are the records that must count, in order: places in the sound hand-in, or contents of
    their own. None: the file must be refused. ``or_refused`` allows that of the whole file or of some of its
    pages too, where its archive was damaged, but not of the pages that are ``surely`` whole. ``told`` must be
    named. ``told_lines`` are the lines, by page, of which something
    must be said, and of no others, where it is not None. With ``quiet`` nothing may be said.
    ``file_name`` goes before the number of the file; ``put`` puts it in its place.
    """

    data: bytes
    standing: tuple | None
    or_refused: bool = False
    surely: frozenset = frozenset()
    told: tuple[Told, ...] = ()
    told_lines: dict[str, frozenset] | None = None
    quiet: bool = False
    more: tuple[bytes, ...] = ()
    file_name: str = ""
    put: Callable = Path.write_bytes


REFUSED = Told(kinds=frozenset({"hand-in"}))


def refused(data, **kept):
    """Return a file that must be refused as a whole, with a word on it."""
    return Mutant(data=data, standing=None, told=(REFUSED,), **kept)


@dataclass(frozen=True, kw_only=True)
class Member:
    """One member of an archive: its bytes as they are, and what the archive claims about them.

    ``place`` claims that it begins elsewhere; then it brings no bytes of its own.
    """

    name: bytes
    stored: bytes
    size: int
    check: int
    packing: int = zlib.DEFLATED
    flags: int = 0
    attributes: int = 0
    place: int | None = None
    extra: bytes = b""


_LOCAL = struct.Struct("<4s5H3L2H")
_LISTED = struct.Struct("<4s6H3L5H2L")
_END = struct.Struct("<4s4H2LH")


def _deflated(data):
    """Pack bytes."""
    packer = zlib.compressobj(1, zlib.DEFLATED, -zlib.MAX_WBITS)
    return packer.compress(data) + packer.flush()


_kept = lru_cache(maxsize=4096)(_deflated)  # the sound members of a class are packed again and again


def packed(name, data, *, packing=zlib.DEFLATED, **claims):
    """Return a member that holds these bytes; ``claims`` may say of it what is not so."""
    stored = data if packing != zlib.DEFLATED else (_kept if len(data) < 20_000 else _deflated)(data)
    name = name.encode("utf-8", "surrogatepass") if isinstance(name, str) else name
    honest = {"name": name, "stored": stored, "size": len(data), "check": zlib.crc32(data)}
    return Member(**{**honest, "packing": packing, **claims})


def archive(members, *, comment=b"", count=None):
    """Return a zip archive of members, one after the other."""
    body, listed = [], []
    at = 0
    for each in members:
        fields = (each.flags, each.packing, 0, 33, each.check, len(each.stored), each.size)
        place = at if each.place is None else each.place
        if each.place is None:
            head = _LOCAL.pack(b"PK\x03\x04", 20, *fields, len(each.name), len(each.extra))
            body += [head, each.name, each.extra, each.stored]
            at += sum(map(len, body[-4:]))
        sizes = (len(each.name), len(each.extra), 0, 0, 0, each.attributes, place)
        listed += [_LISTED.pack(b"PK\x01\x02", 20, 20, *fields, *sizes), each.name, each.extra]
    listing = b"".join(listed)
    count = len(members) if count is None else count
    end = _END.pack(b"PK\x05\x06", 0, 0, count, count, len(listing), at, len(comment))
    return b"".join([*body, listing, end, comment])


def sound_hand_ins(count=CLASS_SIZE):
    """Return the sound hand-ins of a class: ordinary names and, at the end, names that nobody has."""
    plain = count - len(ODD_NAMES)
    names = [learner_name(number) for number in range(plain)] + list(ODD_NAMES[: count - plain])
    chosen = [_chosen(number) for number in range(count)]
    wanted = [
        (exercise, normalise_learner(name), number)
        for name, exercises in zip(names, chosen, strict=True)
        for exercise in exercises
        for number in (1, 2)
    ]
    keys = keys_for(wanted, course_key=SETTINGS.course_key, exercises=EXERCISES)
    return [_sound(name, exercises, keys) for name, exercises in zip(names, chosen, strict=True)]


def _chosen(number):
    """Return some exercises of two pages; over the class all of them come up."""
    dice = random.Random(f"sound {number}")
    pages = dice.sample([*PAGES.values()], 2)
    first = dice.randint(1, EXERCISES_EACH - 1)
    counts = (first, EXERCISES_EACH - first)
    return [
        each.id
        for page, count in zip(pages, counts, strict=True)
        for each in dice.sample(page.exercises, count)
    ]


def _sound(name, exercises, keys):
    """Return one sound hand-in; many were right only with the third try of one exercise."""
    dice = random.Random(f"answers of {name!r}")
    records = invent_records(
        name, SETTINGS, dice, skill=0.75, until=MADE_AT, diligence=1.0, exercises=exercises, keys=keys
    )
    third = dice.choice(exercises)
    if any(isinstance(part, Number) for part in EXERCISES[third].parts):
        records = [each for each in records if each["exercise"] != third]
        records = _third_time_right(name, third, dice, keys) + records
    pages = [page for page in PAGES if any(each["page"] == page for each in records)]
    contents = tuple(each for page in pages for each in records if each["page"] == page)
    numbers = {
        page: tuple(place for place, each in enumerate(contents) if each["page"] == page) for page in pages
    }
    journals = {page: journal_bytes(contents[place] for place in numbers[page]) for page in pages}
    answers = {f"answers/{page}.jsonl": data for page, data in journals.items()}
    members = {MANIFEST: manifest(name, journals=packed_counts(answers)), **answers}
    if dice.random() < 0.5:
        members[f"pages/{pages[0]}.ipynb"] = notebook_of(pages[0], f"Welded one stud and pulled it, {name}.")
    lines = {page: tuple(data.split(b"\n")[:-1]) for page, data in journals.items()}
    own = {one: key for one, key in keys.items() if one[1] == normalise_learner(name)}
    return Sound(name=name, contents=contents, lines=lines, numbers=numbers, members=members, keys=own)


def _third_time_right(name, exercise, dice, keys):
    """Return three records of one exercise: two wrong ones that differ, then a right one."""
    options = {"exercises": [exercise], "diligence": 1.0, "until": MADE_AT - timedelta(days=1), "keys": keys}
    right = invent_records(name, SETTINGS, dice, skill=2.0, **options)[0]
    part = next(each for each in EXERCISES[exercise].parts if isinstance(each, Number))
    value = keys[exercise, normalise_learner(name), 1].keys[part.id].value
    typed = [show_quantity(times * value + 1.0, part.unit) for times in (3.0, 7.0)]
    wrong = [{**right, "answers": {**right["answers"], part.id: each}} for each in typed]
    times = [(MADE_AT - timedelta(hours=30 - each)).isoformat(timespec="milliseconds") for each in range(3)]
    return [{**each, "at": at} for each, at in zip((*wrong, right), times, strict=True)]


def manifest_of(sound, **changes):
    """Return the manifest of a sound hand-in with some fields changed."""
    return json.dumps({**json.loads(sound.members[MANIFEST]), **changes}).encode()
