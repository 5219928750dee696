"""Spoilt journals: bits, bytes, cuts, copies, orders, line ends and encodings; and what must come of them.

What must come of a journal is found by comparing its lines with those that were there before, so nothing
here knows how a check sum is made.
"""

import json
from dataclasses import replace
from functools import lru_cache

from grading.answers import MOST_TOLD
from tests.hostile.mutations_made import MANIFEST, Mutant, Told, manifest_of

BAD_LINE = frozenset({"unreadable", "bad check", "torn"})
GAP = frozenset({"missing record"})
LOST = frozenset({"lost answers"})


def _meaning(line):
    """Return what a line says, laid out in one way, or None where it says nothing."""
    try:
        return json.dumps(json.loads(line.decode("utf-8")), sort_keys=True)
    except (ValueError, RecursionError):
        return None


@lru_cache(maxsize=1024)
def _known(lines):
    """Return the place of each line of a sound journal, by its bytes and by what it says."""
    by_meaning = {_meaning(line): place for place, line in enumerate(lines)}
    return {**by_meaning, **{line: place for place, line in enumerate(lines)}}


def spoilt_journal(sound, page, data, *, changes=None, **kept):
    """Return the hand-in with this journal for a page, and what must come of it.

    A line that says what one of the sound lines said counts, once; of every other line that is not blank
    something must be told, and of no whole one. Where lines are gone, or another one is the last, that must
    be told besides: the manifest counted them.
    """
    known = _known(sound.lines[page])
    whole, bad = [], []
    for number, line in enumerate(data.removeprefix(b"\xef\xbb\xbf").split(b"\n"), start=1):
        line = line.strip()
        if not line:
            continue
        place = known[line] if line in known else known.get(_meaning(line))
        if place is None:
            bad.append(number)
        else:
            whole.append(place)
    once = list(dict.fromkeys(whole))
    chained = whole == list(range(len(whole)))
    lost = once[-1:] != [len(sound.lines[page]) - 1] or len(once) < len(sound.lines[page])
    of_page = tuple(sound.numbers[page][place] for place in once)
    told = [Told(kinds=BAD_LINE, page=page, line=number) for number in bad[:MOST_TOLD]]
    if not bad and not chained:
        told.append(Told(kinds=GAP | {"copied record"}, page=page))
    if lost:
        told.append(Told(kinds=LOST, page=page))
    return Mutant(
        data=sound.with_members({f"answers/{page}.jsonl": data, **(changes or {})}),
        standing=_in_order(sound, page, of_page),
        told=tuple(told),
        told_lines={page: frozenset(bad)},
        quiet=chained and not bad and not lost,
        **kept,
    )


def _in_order(sound, page, of_page):
    """Return the places of all records that stand, those of one page being these."""
    return tuple(
        place for each in sound.pages for place in (of_page if each == page else sound.numbers[each])
    )


def _journal(sound, dice):
    """Return a page and the bytes of its journal."""
    page = dice.choice(sound.pages)
    return page, sound.members[f"answers/{page}.jsonl"]


def with_flips(data, dice, most=4):
    """Return bytes with one or a few bits turned round."""
    data = bytearray(data)
    for _ in range(dice.randint(1, most)):
        data[dice.randrange(len(data))] ^= 1 << dice.randrange(8)
    return bytes(data)


def with_bad_bytes(data, dice):
    """Return bytes with a run of others in place, put in between, or taken out, as a bad disk leaves them."""
    start, length = dice.randrange(len(data)), dice.choice((1, 1, 2, 3, 8, 64, 512))
    fresh = dice.choice((dice.randbytes(length), bytes(length), b"\xff" * length, b"\n" * length))
    how = dice.randrange(3)
    if how == 0:
        return (data[:start] + fresh + data[start + length :])[: len(data)]
    return data[:start] + fresh + data[start:] if how == 1 else data[:start] + data[start + length :]


def bits(sound, dice):
    """Turn bits round in a journal."""
    page, data = _journal(sound, dice)
    return spoilt_journal(sound, page, with_flips(data, dice))


def some_bytes(sound, dice):
    """Put other bytes into a journal, or take some out."""
    page, data = _journal(sound, dice)
    return spoilt_journal(sound, page, with_bad_bytes(data, dice))


def cut(sound, dice):
    """Cut a journal short: anywhere, at a line's end, one byte before or after it, or before its check."""
    page, data = _journal(sound, dice)
    ends = [place for place, byte in enumerate(data) if byte == 10]
    end = dice.choice(ends)
    check = data.rfind(b',"check"', 0, end)
    places = (dice.randrange(len(data)), dice.randrange(len(data)), end, end + 1, end - 1, end + 2, check, 0)
    place = min(dice.choice(places), len(data))
    half = dice.random() < 0.2  # the front was lost instead
    return spoilt_journal(sound, page, data[place:] if half else data[:place])


def cut_at_line_ends(sound, dice):
    """Take whole lines off a journal's end, down to none, or take the journal out of the archive.

    What is left is a sound journal; where the manifest counts nothing, as an older copy packs, it stays so.
    """
    page, data = _journal(sound, dice)
    lines = data.split(b"\n")[:-1]
    left = dice.randrange(len(lines))
    journal = b"".join(line + b"\n" for line in lines[:left])
    mutant = spoilt_journal(sound, page, journal)
    if dice.random() < 0.2:
        changes = {MANIFEST: manifest_of(sound, journals=None), f"answers/{page}.jsonl": journal}
        return replace(mutant, data=sound.with_members(changes), told=(), quiet=True)
    if not left and dice.random() < 0.5:
        return replace(mutant, data=sound.with_members({f"answers/{page}.jsonl": None}))
    return mutant


def counts(sound, dice):
    """Forge what the manifest counts: wrong numbers, kinds, pages; all answers count whatever it says."""
    page = dice.choice(sound.pages)
    honest = json.loads(sound.members[MANIFEST])["journals"]
    many = len(sound.lines[page])
    told = True
    how = dice.randrange(4)
    if how == 0:
        forged = {
            **honest,
            page: {**honest[page], "records": dice.choice((many + 1, 19_999, -1, 10**30, True, "2"))},
        }
    elif how == 1:
        forged = {
            **honest,
            page: {**honest[page], "last": dice.choice(("", "x", "0" * 32, None, [], "\u202e" * 99))},
        }
    elif how == 2:
        forged = dice.choice(([], 7, "x", True, {**honest, page: None}, {**honest, page: [many]}))
    else:
        told = False
        forged = dice.choice(
            (None, {}, {**honest, "../x": 9, "arcs": {"records": 9, "last": ""}, "x" * 900: []})
        )
    data = sound.with_members({MANIFEST: manifest_of(sound, journals=forged)})
    return Mutant(data=data, standing=sound.all, told=(Told(kinds=LOST),) if told else (), quiet=not told)


def orders(sound, dice):
    """Copy lines, swap them, leave one out, join two, put an empty or a strange one in between."""
    page, data = _journal(sound, dice)
    lines = data.split(b"\n")[:-1]
    for _ in range(dice.randint(1, 3)):
        place, other = dice.randrange(len(lines)), dice.randrange(len(lines))
        how = dice.randrange(8)
        if how == 0:
            lines.insert(other, lines[place])
        elif how == 1:
            lines[place], lines[other] = lines[other], lines[place]
        elif how == 2 and len(lines) > 1:
            del lines[place]
        elif how == 3:
            lines[place : place + 2] = [b"".join(lines[place : place + 2])]
        elif how == 4:
            lines.insert(place, dice.choice((b"", b" \t", b"\r", b"\x0c")))
        elif how == 5:
            lines.insert(place, dice.choice(STRANGE_LINES))
        elif how == 6:
            lines = lines + lines
        elif lines[place] in sound.lines[page]:
            lines[place] = _other_layout(lines[place], dice)
    return spoilt_journal(sound, page, b"\n".join(lines) + b"\n")


STRANGE_LINES = (
    b"hello", b"{}", b"[]", b"null", b"true", b"0", b'""', b"{", b"}", b'{"check":"0"}', b"[" * 200_000,
    b'{"a":' * 50_000, b"\x00" * 100, b"\xff\xfe", b"#!/bin/sh", b"<<<<<<< HEAD", b"=======",
    b">>>>>>> mine", b"(dp0\nS'a'\np1\n", b"cos\nsystem\n(S'echo'\ntR.",
    b"!!python/object/apply:os.system [echo]", b"x" * 200_000, b"NaN", b"-Infinity", b"1e999999",
    b"9" * 5000, b'{"learner":"x"}', b"\xef\xbb\xbf",
)  # fmt: skip


def _other_layout(line, dice):
    """Return a line as another program would lay it out: the same content, or nearly."""
    content = json.loads(line)
    names = list(content)
    dice.shuffle(names)
    content = {name: content[name] for name in names}
    spaced = json.dumps(
        content, ensure_ascii=dice.random() < 0.5, separators=dice.choice(((", ", ": "), None))
    )
    return spaced.encode("utf-8", "surrogatepass")


def encodings(sound, dice):
    """Write a journal in another encoding, with other line ends, or with a mark at its head."""
    page, data = _journal(sound, dice)
    text = data.decode()
    how = dice.choice(
        (
            lambda: b"\xef\xbb\xbf" + data,
            lambda: data.replace(b"\n", b"\r\n"),
            lambda: data.replace(b"\n", b"\r"),
            lambda: data.replace(b"\n", b"\n\n"),
            lambda: data.replace(b"\n", "\u2028".encode()),
            lambda: data.replace(b"\n", "\u0085".encode()),
            lambda: data.replace(b"\n", b"\x0b\n\x0c"),
            lambda: text.encode("utf-16"),
            lambda: text.encode("utf-16-be"),
            lambda: text.encode("utf-32"),
            lambda: text.encode("cp500"),
            lambda: text.encode("utf-7"),
            lambda: b"\xef\xbb\xbf" * 2 + data,
            lambda: b"\xff\xfe" + data,
            lambda: data.replace(b'"', "\u201d".encode()),
            lambda: data.replace(b'"', b"'"),
            lambda: data.replace(b" ", b"\xa0"),
            lambda: data.replace(b" ", "\u00a0".encode()),
            lambda: data.upper(),
            lambda: data.lower(),
            lambda: b"\n".join(reversed(data.split(b"\n"))),
            lambda: b"[" + data.rstrip(b"\n").replace(b"\n", b",") + b"]",
            lambda: b"".join(_other_layout(line, dice) + b"\n" for line in data.split(b"\n")[:-1]),
            lambda: b"\n".join(
                json.dumps(json.loads(line), indent=1).encode() for line in data.split(b"\n")[:-1]
            ),
        )
    )
    return spoilt_journal(sound, page, how())


FAMILIES = {
    "bits turned in a journal": (13, bits),
    "bytes changed in a journal": (9, some_bytes),
    "journal cut short": (5, cut),
    "journal cut at a line's end": (2, cut_at_line_ends),
    "counts in the manifest": (1, counts),
    "lines copied, swapped, joined": (7, orders),
    "other encodings and line ends": (3, encodings),
}
