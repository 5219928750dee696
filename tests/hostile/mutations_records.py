"""Hand-ins with forged records: answers and fields that no workbook writes, rounds, times, depth and size."""

import json
from functools import lru_cache

from grading.answers import claimed_check
from grading.exercises import BANK_VERSION, EXERCISES, PAGES
from grading.variants import normalise_learner, scenario, scenario_digest
from tests.grading.made_hand_ins import SETTINGS
from tests.hostile.mutations_forging import Changed, forged, inside, wrong_part
from tests.hostile.mutations_lines import BAD_LINE, GAP
from tests.hostile.mutations_made import Mutant, Told
from tests.hostile.mutations_texts import ACTING_TEXTS, HUGE_NUMBERS, HUGE_TEXTS, TIMES, WRONG_TYPES


def acting_answers(sound, dice):
    """Type what would act as a formula, a script, a template, a command; or turns the writing round."""
    changed = Changed(sound, dice)
    part = dice.choice(sorted(changed.content["answers"]))
    text = dice.choice(ACTING_TEXTS)
    typed = inside(changed.content["answers"][part], text, dice)
    data = changed.data({**changed.content, "answers": {**changed.content["answers"], part: typed}})
    return Mutant(data=data, standing=changed.with_instead(wrong_part(changed.content, part)))


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


def huge_typed(sound, dice):
    """Type numbers that no computer holds, and texts made to keep a reader of numbers busy."""
    changed = Changed(sound, dice)
    part = dice.choice(sorted(changed.content["answers"]))
    typed = inside(changed.content["answers"][part], dice.choice(HUGE_TEXTS), dice)
    data = changed.data({**changed.content, "answers": {**changed.content["answers"], part: typed}})
    return Mutant(data=data, standing=changed.with_instead(wrong_part(changed.content, part)))


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
    typed = inside(changed.content["answers"][part], "@@@", changed.dice)
    content = {**changed.content, "answers": {**changed.content["answers"], part: typed}}
    data = changed.data(content, raw)
    if raw in ("NaN", "Infinity", "-Infinity") or len(raw) > 4300 or _as_name(typed):
        told = Told(kinds=BAD_LINE, page=changed.page, line=changed.line)
        return Mutant(data=data, standing=changed.others, told=(told,))
    return Mutant(data=data, standing=changed.with_instead(wrong_part(changed.content, part)))


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


def _with_answer(changed, typed, *, raw=None):
    """Put an answer that nobody can be right with in place of one part's; the others stay as they were."""
    part = changed.dice.choice(sorted(changed.content["answers"]))
    answers = {**changed.content["answers"], part: typed}
    data = changed.data({**changed.content, "answers": answers}, raw)
    return Mutant(data=data, standing=changed.with_instead(wrong_part(changed.content, part)))


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


def times(sound, dice):
    """Put records into the far past and future, or into no time at all."""
    changed = Changed(sound, dice)
    return Mutant(data=changed.data({**changed.content, "at": dice.choice(TIMES)}), standing=sound.all)


DEPTHS = (50, 99, 150, 1_000, 20_000, 60_000)


def deep(dice):
    """Return how deep, and as many lists or objects in each other as text."""
    depth = dice.choice(DEPTHS)
    return depth, dice.choice(("[" * depth + "]" * depth, '{"a":' * depth + "1" + "}" * depth))


def nesting(sound, dice):
    """Put deep lists into an answer: too deep, and the line is told; else the part earns nothing."""
    changed, (depth, raw) = Changed(sound, dice), deep(dice)
    part = dice.choice(sorted(changed.content["answers"]))
    content = {**changed.content, "answers": {**changed.content["answers"], part: "@@@"}}
    data = changed.data(content, raw)
    if depth >= 99:
        told = Told(kinds=BAD_LINE, page=changed.page, line=changed.line)
        return Mutant(data=data, standing=changed.others, told=(told,))
    return Mutant(data=data, standing=changed.with_instead(wrong_part(changed.content, part)))


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
        data=changed.data(content), standing=changed.with_instead(wrong_part(changed.content, part))
    )


def _page_too_large(changed, data):
    """Return a hand-in of which one journal holds more than any may: it is named, and the others count."""
    kept = tuple(number for number in changed.sound.all if number not in changed.sound.numbers[changed.page])
    told = Told(kinds=frozenset({"hand-in"}), page=changed.page)
    return Mutant(data=data, standing=kept, told=(told,))


FAMILIES = {
    "acting texts in answers": (3, acting_answers),
    "acting texts in other fields": (2, acting_fields),
    "huge numbers as typed": (2, huge_typed),
    "huge numbers as JSON": (3, huge_numbers),
    "wrong types": (6, types),
    "forged check sums": (2, checks),
    "other class, learner, bank, exercise": (4, others),
    "other pages": (1, pages_changed),
    "rounds": (1, rounds),
    "times of records": (1, times),
    "deep nesting in answers": (1, nesting),
    "large answers": (0.3, large),
}
