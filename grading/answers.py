"""The lines of a learner's journal: one answer as one line of JSON, with a check sum and the check before it.

Each record carries a check sum of itself and the check of the record before it, so that a damaged, edited or
removed record is seen. The check guards against accidents; it is no signature, and marks do not rest on it.
"""

import json
from dataclasses import dataclass
from hashlib import blake2b
from operator import itemgetter

import msgspec
from msgspec.structs import force_setattr

JOURNAL_FILE = "answers.jsonl"
LONGEST_LINE = 128 * 1024  # bytes; a form holds every field to far less
DEEPEST = 100  # lists and objects within each other
MOST_LINES = 20_000  # of one journal; what may be handed in holds a third of that
MOST_TOLD = 100  # problems of one journal; what a stranger filled with rubbish has a million

_FIELDS = {
    "at": str,
    "learner": str,
    "course": str,
    "page": str,
    "exercise": str,
    "round": int,
    "bank": str,
    "scenario": str,
    "answers": dict,
    "previous": str,
}
_KINDS = tuple(_FIELDS.values())
_values = itemgetter(*_FIELDS)
_CHECK_BYTES = 16
_CHECK_HEAD = b',"check":"'
_CHECK_TAIL = len(_CHECK_HEAD) + 2 * _CHECK_BYTES + len(b'"}')


@dataclass(frozen=True, kw_only=True)
class Problem:
    """Something that was set aside or needs a look: what kind, one sentence, and where it was found."""

    kind: str
    sentence: str
    place: str = ""
    line: int = 0
    exercise_id: str = ""


# Texts, and lists and objects of texts, as deep as an honest answer goes. Numbers are where readers differ.
_Text = str | None
_Flat = _Text | list[_Text] | dict[str, _Text]
_Nested = _Text | list[_Flat] | dict[str, _Flat]
_Answer = _Text | list[_Nested] | dict[str, _Nested]


class Record(
    msgspec.Struct, frozen=True, gc=False, forbid_unknown_fields=True, rename={"round_number": "round"}
):
    """One submission of one exercise, as saved.

    Not stored are ``line``, where it stood in its file, and ``after_loss``, which tells that a record before
    it there may be lost: a line could not be read, or the chain of checks is broken.
    In the order of the stored fields, and read straight from its line: a class has tens of thousands of them.
    """

    at: str
    learner: str
    course: str
    page: str
    exercise: str
    round_number: int
    bank: str
    scenario: str
    answers: dict[str, _Answer]
    previous: str
    check: str
    line: int = 0
    after_loss: bool = False


_STORED_LINES = msgspec.json.Decoder(Record).decode_lines


@dataclass(frozen=True, kw_only=True)
class JournalContents:
    """What a journal holds: the sound records in order, and everything that was set aside."""

    records: tuple[Record, ...]
    problems: tuple[Problem, ...]


def _refuse_constant(name):
    """Refuse NaN and infinities, which are not JSON."""
    message = f"{name} is not JSON"
    raise ValueError(message)


_DECODE = json.JSONDecoder(parse_constant=_refuse_constant).raw_decode
_ENCODE = json.JSONEncoder(sort_keys=True, separators=(",", ":"), allow_nan=False).encode


def _check_of(body):
    """Return the check sum of a record as canonical JSON: sorted names, no spaces, without check."""
    return blake2b(body, digest_size=_CHECK_BYTES).hexdigest()


def line_of(content):
    """Write a record without check as its line, check last, so that reading need not write it again."""
    body = _ENCODE(content).encode("ascii")
    return body[:-1] + _CHECK_HEAD + _check_of(body).encode("ascii") + b'"}'


def content_of(record):
    """Return what a record stores, without its chain."""
    content = {name: getattr(record, name) for name in _FIELDS if name not in ("round", "previous")}
    return {**content, "round": record.round_number}


def journal_bytes(contents):
    """Return the contents of records as the bytes of a journal, chained one to the next."""
    lines, previous = [], ""
    for content in contents:
        line = line_of({**content, "previous": previous})
        previous = claimed_check(line)
        lines.append(line + b"\n")
    return b"".join(lines)


def parse_journal(data, *, place=JOURNAL_FILE):
    """Read the bytes of a journal from anywhere; whatever is wrong with them becomes a problem."""
    sound = _sound_records(data)
    if sound:
        return JournalContents(records=tuple(sound), problems=())
    records, problems, checks, lost = [], [], set(), False
    previous = ""  # None after a line whose check cannot be known
    lines = data.removeprefix(b"\xef\xbb\xbf").split(b"\n", MOST_LINES)
    beyond = lines.pop() if len(lines) > MOST_LINES else b""
    for number, line in enumerate(lines, start=1):
        line = line.strip()
        if not line:
            continue
        record, kind, sentence = read_line(line, number)
        if record is None:
            if number == len(lines) and not beyond and kind != "bad check":
                kind, sentence = (
                    "torn",
                    "the last line is incomplete, so its answer was never confirmed as saved",
                )
            problems.append(
                Problem(kind=kind, sentence=f"{sentence} (line {number})", place=place, line=number)
            )
            previous, lost = claimed_check(line), True
            continue
        if record.check in checks:  # as another try it could cost the learner a later one
            problems.append(_problem_at(record, place, "copied record", "a record stands once more in"))
            continue
        if previous is not None and record.previous != previous:
            problems.append(
                _problem_at(record, place, "missing record", "a record is missing or was moved before")
            )
            lost = True
        previous = record.check
        checks.add(previous)
        if lost:
            force_setattr(record, "after_loss", lost)
        records.append(record)
    return JournalContents(records=tuple(records), problems=tuple(_at_most_told(problems, beyond, place)))


def _at_most_told(problems, beyond, place):
    """Give problems, the first of very many with a word on the others and on what was not read at all."""
    yield from problems[:MOST_TOLD]
    more = len(problems) - MOST_TOLD
    if more > 0:
        sentence = f"{place} holds {more:,} more lines like the one before"
        yield Problem(kind="unreadable", sentence=sentence, place=place)
    if beyond.strip():
        sentence = f"{place} must hold at most {MOST_LINES:,} lines, and what comes after them was not read"
        yield Problem(kind="unreadable", sentence=sentence, place=place)


def _sound_records(data):
    """Return the records of a journal in which nothing is amiss, read all at once; else None.

    That each record carries the check of its own line shows that no line held two records and none a part
    of one. What two readers of JSON could take differently is left alone.
    """
    lines = data.removesuffix(b"\n").split(b"\n")
    try:
        records = _STORED_LINES(data)
    except (msgspec.MsgspecError, ValueError, RecursionError):
        return None
    if len(records) != len(lines) or max(map(len, lines)) > LONGEST_LINE:
        return None
    previous = ""
    for number, (line, record) in enumerate(zip(lines, records, strict=True), start=1):
        check = _check_of(line[:-_CHECK_TAIL] + b"}")
        if record.check != check or record.previous != previous or record.after_loss:
            return None
        if not line.startswith(_CHECK_HEAD, -_CHECK_TAIL):
            return None
        force_setattr(record, "line", number)
        previous = check
    return records


def _problem_at(record, place, kind, what):
    """Return a problem with the chain of records, at the record where it shows."""
    sentence = f"{what} line {record.line}"
    return Problem(kind=kind, sentence=sentence, place=place, line=record.line, exercise_id=record.exercise)


def read_line(line, number):
    """Return ``(record, "", "")`` for a sound line, else ``(None, kind, sentence)``."""
    if len(line) > LONGEST_LINE:
        return None, "unreadable", f"a line must be at most {LONGEST_LINE} bytes long, got {len(line)}"
    content = _content(line)
    if content is None:
        return None, "unreadable", "a line is not a record"
    try:
        values = _values(content)
    except KeyError:
        values = ()
    if tuple(map(type, values)) != _KINDS:
        name = next(name for name, kind in _FIELDS.items() if type(content.get(name)) is not kind)
        return None, "unreadable", f"a record has no usable {name}"
    check = content.get("check")
    if not _check_holds(line, content, check):
        return None, "bad check", "a record was changed after it was saved"
    return Record(*values, check, number), "", ""


def _content(line):
    """Return the object that a line holds, or None where it holds anything else."""
    try:
        text = line.decode("utf-8")
        content, end = _DECODE(text)
    except (ValueError, RecursionError):
        return None
    if end != len(text) or not isinstance(content, dict):
        return None
    return None if text.count("[") + text.count("{") > DEEPEST and _is_too_deep(content) else content


def _is_too_deep(content):
    """Tell whether lists and objects stand in each other deeper than any answer needs.

    The decoder gives up only where the memory for calls ends, so later in one process than in another.
    """
    level = [content]
    for _ in range(DEEPEST):
        level = [
            child
            for each in level
            for child in (each.values() if isinstance(each, dict) else each)
            if isinstance(child, (dict, list))
        ]
    return bool(level)


def _check_holds(line, content, check):
    """Tell whether the check belongs to the line.

    The line as written is tried first: that needs no second encoding. A line laid out in another way (by an
    editor that sorts or indents) is encoded again.
    """
    if not isinstance(check, str) or len(check) != 2 * _CHECK_BYTES:
        return False
    if line.endswith(b'"}') and line[-_CHECK_TAIL:].startswith(_CHECK_HEAD):
        body = line[:-_CHECK_TAIL] + b"}"
        if _check_of(body) == check:
            return True
    bare = {name: value for name, value in content.items() if name != "check"}
    try:
        return _check_of(_ENCODE(bare).encode("ascii")) == check
    except (ValueError, RecursionError):  # numbers beyond any float, or lists within lists by the thousand
        return False


def claimed_check(line):
    """Return the check that a spoilt line carries, or None; the next record's chain hangs on it."""
    check = (_content(line) or {}).get("check")
    return check if isinstance(check, str) else None
