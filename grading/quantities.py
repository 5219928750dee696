"""Read what a learner typed: a number, with its unit, in the spellings that people really use.

Nothing is guessed. Where a text can be read in two ways the answer is a sentence that says what to write
instead.
"""

import math
import re
from dataclasses import dataclass
from functools import lru_cache

from grading.unit_spellings import is_count, is_known, shown_unit, unit_of

LONGEST = 60  # characters; no honest answer to one number comes near it

_SPACES = dict.fromkeys(map(ord, "\t\u00a0\u2002\u2003\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f"), " ")
_MINUS = dict.fromkeys(map(ord, "\u2212\u2012\u2013\ufe63\uff0d"), "-")
_WIDE = {0xFF10 + digit: str(digit) for digit in range(10)}  # digits of East Asian keyboards
_PLAIN = str.maketrans({**_SPACES, **_MINUS, **_WIDE})

# Sign, whole digits (also in groups of three set apart by spaces), decimals, power of ten, unit.
_QUANTITY = re.compile(
    r"""(?P<sign>[+-]?)\ ?
        (?P<whole>[0-9]{1,3}(?:\ [0-9]{3})+(?![0-9])|[0-9]*)
        (?P<rest>(?:[.,][0-9]+)*)[.]?
        (?:[eE](?P<power>[+-]?[0-9]{1,4})|\ ?[x\u00d7*]\ ?10\^(?P<ten>[+-]?[0-9]{1,4}))?
        \ ?(?P<unit>(?!(?:[/']|to|or|and)[ ]?[0-9])(?:[^\W\d_]|[%\u00b0/"'\u2033]).*|)""",
    re.VERBOSE,
)
_SOFT = re.compile(
    r"(?:about|approx\.?|approximately|around|circa|ca\.?|roughly|[~\u2248<>\u2264\u2265=])", re.IGNORECASE
)
_WORD = re.compile(r"[^\W\d_]+", re.UNICODE)


@dataclass(frozen=True, kw_only=True)
class Reading:
    """A typed text, read: ``value`` in the unit asked for, or None and a ``problem`` in one sentence.

    ``note`` tells how a text was understood where that is not plain to see, for instance a decimal comma.
    """

    value: float | None
    problem: str
    note: str


def read_quantity(text, unit):
    """Return the reading of a typed text where a value in ``unit`` is asked for.

    A unit that only counts things (``studs``) may be left out, every other unit must be typed.
    """
    if not isinstance(text, str):
        return _problem("this answer is not a text, so no number can be read from it")
    if len(text) > LONGEST:
        return _problem(
            f"the answer must be at most {LONGEST} characters long, got {len(text)}: "
            "write one number with its unit"
        )
    number, _, typed_unit = text.partition(" ")
    if typed_unit == unit and number[:1] != "." and number.isascii() and number.replace(".", "", 1).isdigit():
        return Reading(value=float(number), problem="", note="")  # most answers need no more than this
    return _read(text, unit)


def read_beside(text, unit):
    """Return the reading of a text typed beside its unit, which may then be left out."""
    reading = read_quantity(text, unit)
    if reading.value is None and isinstance(text, str) and text.strip():
        with_unit = read_quantity(f"{text.strip()[: LONGEST + 1]} {unit}", unit)
        return reading if with_unit.value is None else with_unit
    return reading


def require_unit(unit):
    """Return the unit of a part, or raise where it is not one that can be read."""
    if not is_known(unit):
        message = f"unit must be one that answers can be read in, got {unit!r}"
        raise ValueError(message)
    return unit


def show_quantity(value, unit, digits=4):
    """Write a value with its unit, to so many significant figures, without a power of ten where it can be."""
    text = f"{value:.{digits}g}"
    if "e" in text and abs(value) < 1e15 and abs(value) >= 1:
        text = f"{float(text):.0f}"
    return f"{text} {shown_unit(unit)}" if unit else text


def _problem(sentence):
    """Return a reading without a value; characters that cannot be seen are shown as such."""
    visible = "".join(letter if letter.isprintable() else "\ufffd" for letter in sentence)
    return Reading(value=None, problem=visible, note="")


@lru_cache(maxsize=32768)
def _read(text, unit):
    """Read a text of ordinary length; the same text and unit always give the same reading."""
    plain = " ".join((text if text.isascii() else text.translate(_PLAIN)).split())
    if not plain:
        return _problem("nothing was typed")
    match = _QUANTITY.fullmatch(plain)
    if match is None or not (match["whole"] or match["rest"]):
        return _problem(_why_no_number(plain))
    number, note, problem = _number(match)
    if problem:
        return _problem(problem)
    return _in_unit(number, match["unit"].strip(), unit, note)


def _number(match):
    """Return the number in a matched text as ``(number, note, problem)``."""
    whole, rest = match["whole"], match["rest"]
    problem = _unclear(whole, rest)
    if problem:
        return 0.0, "", problem
    grouped = whole.replace(" ", "")
    power = match["power"] or match["ten"] or "0"
    number = float(f"{match['sign']}{grouped or '0'}{rest.replace(',', '.')}e{power}")
    if not math.isfinite(number):
        return 0.0, "", "the number must be finite, and this one is too large to be read"
    typed = f"{match['sign']}{whole}{rest}"
    plain = f"{match['sign']}{grouped or '0'}{rest.replace(',', '.')}"
    return number, "" if typed == plain else f"{typed} was read as {plain}", ""


def _unclear(whole, rest):
    """Say why separators cannot be read, or return an empty text."""
    marks = rest.count(",") + rest.count(".")
    if marks > 1:
        return (
            f"{whole}{rest} holds more than one point or comma: write it without marks between thousands, "
            "and with a point before the decimals"
        )
    if rest.startswith(",") and len(rest) == 4 and whole.lstrip("0") and " " not in whole and len(whole) <= 3:
        joined = f"{whole}{rest[1:]}"
        pointed = f"{whole}.{rest[1:]}"
        return f"{whole}{rest} can mean {joined} or {pointed}: write it without the comma or with a point"
    return ""


def _in_unit(number, typed_unit, unit, note):
    """Bring a number from the typed unit to the unit asked for."""
    if not typed_unit:
        if unit == "" or is_count(unit):
            return Reading(value=number, problem="", note=note)
        return _problem(f"the unit is missing: write it after the number, as in {_example(unit)}")
    if typed_unit == unit:
        return Reading(value=number, problem="", note=note)
    scale, offset, problem = _conversion(typed_unit, unit)
    if problem:
        return _problem(problem)
    value = number * scale + offset
    if not math.isfinite(value):
        return _problem("the number must be finite, and this one is too large to be read")
    return Reading(value=value, problem="", note=note)


def _example(unit):
    """Return a quantity that shows how to write the unit."""
    return f'"12.5 {shown_unit(unit)}"'


@lru_cache(maxsize=8192)
def _conversion(typed_unit, unit):
    """Return ``(scale, offset, problem)`` from a typed unit to the unit asked for."""
    asked = shown_unit(unit)
    have = unit_of(typed_unit)
    if have is None:
        expected = f"write the answer in {asked}" if unit else "write the number without a unit"
        return 0.0, 0.0, f"{typed_unit} is not a unit that can be read here: {expected}"
    want = unit_of(unit)
    if have.kind != want.kind:
        if not unit or is_count(unit):
            return 0.0, 0.0, f"this answer is a plain number, got the unit {typed_unit}: leave the unit out"
        return (
            0.0,
            0.0,
            f"{typed_unit} does not measure the same thing as {asked}: write the answer in {asked}",
        )
    offset = (have.offset - want.offset) / want.scale
    return have.scale / want.scale, offset, ""


def _why_no_number(plain):
    """Say why a text is not one number with a unit, and what to write instead."""
    shown = plain if len(plain) <= 30 else plain[:27] + "..."
    lower = plain.lower().lstrip("+- ")
    if lower.startswith(("nan", "inf", "\u221e")):
        return f"{shown} is not a finite number: write a number in digits"
    if _SOFT.match(plain):
        return f"{shown} is not one value: write the number alone, without {_SOFT.match(plain)[0]!r}"
    if not any(letter in "0123456789" for letter in plain):
        return f"{shown} holds no digits: write the number in digits, such as 6 and not six"
    if re.search(r"[0-9] ?/ ?[0-9]|[\u00bc-\u00be\u2150-\u215e]", plain):
        return f"{shown} is a fraction: write it with decimals, such as 0.5 and not 1/2"
    if re.search(r"[0-9].*(?:-|\b(?:to|or|and)\b|\.\.|\u2026)+ ?[0-9]", plain):
        return f"{shown} looks like a range: write one number"
    if re.search(r"[0-9]['\u2019_][0-9]", plain):
        return f"{shown} holds marks between the digits: write the number without them"
    if _WORD.match(plain):
        return f"{shown} does not begin with a number: write the number first, then its unit"
    return f"{shown} cannot be read as one number with its unit"
