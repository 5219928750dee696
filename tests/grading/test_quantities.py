"""Typed numbers: what is read, what is asked back, and that nothing is guessed."""

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from grading.quantities import LONGEST, read_quantity, require_unit, show_quantity


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("480 J", "J", 480.0),
        ("480J", "J", 480.0),
        ("  480  J ", "J", 480.0),
        ("0.48 kJ", "J", 480.0),
        ("1e3 A", "A", 1000.0),
        ("1E+3 A", "A", 1000.0),
        ("5x10^3 N", "N", 5000.0),
        ("5 \u00d7 10^3 N", "N", 5000.0),
        ("-5 mm", "mm", -5.0),
        ("\u22125 mm", "mm", -5.0),
        ("\u2013 5 mm", "mm", -5.0),
        ("+ 5 mm", "mm", 5.0),
        ("5. mm", "mm", 5.0),
        ("\uff14\uff18\uff10 J", "J", 480.0),
        ("600 A.", "A", 600.0),
        ("12 studs", "studs", 12.0),
        ("12", "studs", 12.0),
        ("1 stud", "studs", 1.0),
        ("50 per minute", "studs/min", 50.0),
        ("7", "", 7.0),
        ("7 %", "", 0.07),
        ("12.5 %", "%", 12.5),
        ("30\u00b0", "deg", 30.0),
        ('0.25"', "mm", 6.35),
        ("20 \u00b0C", "K", 293.15),
        ("10 ft3/h", "L/min", 4.719474432),
        ("1e-400 A", "A", 0.0),
        ("1.200 A", "A", 1.2),
    ],
)
def test_numbers_that_are_read(text, unit, value):
    """A number with any compatible unit is read in the unit asked for, without a note."""
    reading = read_quantity(text, unit)
    assert reading.problem == ""
    assert reading.note == ""
    assert reading.value == pytest.approx(value, rel=1e-12)  # rel: conversion factors are products of floats


@pytest.mark.parametrize(
    ("text", "value", "note"),
    [
        ("20,5 mm", 20.5, "20,5 was read as 20.5"),
        ("-0,125 mm", -0.125, "-0,125 was read as -0.125"),
        ("1200,5 mm", 1200.5, "1200,5 was read as 1200.5"),
        ("1 200 mm", 1200.0, "1 200 was read as 1200"),
        ("1\u2009200 mm", 1200.0, "1 200 was read as 1200"),
        ("1\u00a0200\u202f000,5 mm", 1200000.5, "1 200 000,5 was read as 1200000.5"),
        (".5 mm", 0.5, ".5 was read as 0.5"),
    ],
)
def test_numbers_that_are_read_with_a_note(text, value, note):
    """Where a reading is not plain to see, the learner is told how the text was understood."""
    reading = read_quantity(text, "mm")
    assert (reading.value, reading.problem, reading.note) == (value, "", note)


@pytest.mark.parametrize(
    ("text", "unit", "sentence"),
    [
        ("480", "J", 'the unit is missing: write it after the number, as in "12.5 J"'),
        ("50", "%", 'the unit is missing: write it after the number, as in "12.5 %"'),
        ("30", "deg", 'the unit is missing: write it after the number, as in "12.5 \u00b0"'),
        ("12", "J/mm2", 'the unit is missing: write it after the number, as in "12.5 J/mm\u00b2"'),
        ("480 A", "J", "A does not measure the same thing as J: write the answer in J"),
        ("30 %", "deg", "% does not measure the same thing as \u00b0: write the answer in \u00b0"),
        ("12 mm", "studs", "this answer is a plain number, got the unit mm: leave the unit out"),
        ("12 mm", "", "this answer is a plain number, got the unit mm: leave the unit out"),
        ("480 jolues", "J", "jolues is not a unit that can be read here: write the answer in J"),
        ("480 mj", "J", "mj is not a unit that can be read here: write the answer in J"),
        (
            "1,200 A",
            "A",
            "1,200 can mean 1200 or 1.200: write it without the comma or with a point",
        ),
        ("1,200.5 A", "A", "1,200.5 holds more than one point or comma"),
        ("1.200,5 A", "A", "1.200,5 holds more than one point or comma"),
        ("1,2,3 A", "A", "1,2,3 holds more than one point or comma"),
        ("1'200 A", "A", "1'200 A holds marks between the digits"),
        ("1_200 A", "A", "1_200 A holds marks between the digits"),
        ("six", "A", "six holds no digits: write the number in digits, such as 6 and not six"),
        ("six A", "A", "six A holds no digits"),
        ("\u0664\u0668\u0660 A", "A", "holds no digits"),
        ("", "A", "nothing was typed"),
        (" \u2009\t", "A", "nothing was typed"),
        ("NaN", "A", "NaN is not a finite number"),
        ("nan A", "A", "nan A is not a finite number"),
        ("inf A", "A", "inf A is not a finite number"),
        ("-Infinity", "A", "-Infinity is not a finite number"),
        ("\u221e A", "A", "is not a finite number"),
        ("1e999 A", "A", "the number must be finite, and this one is too large"),
        ("1e308 kA", "mA", "the number must be finite, and this one is too large"),
        ("9" * 10_000, "A", f"must be at most {LONGEST} characters long, got 10000"),
        ("1/2 in", "mm", "1/2 in is a fraction: write it with decimals"),
        ("1 1/2 in", "mm", "is a fraction"),
        ("\u00bd in", "mm", "write"),
        ("600-700 A", "A", "600-700 A looks like a range: write one number"),
        ("600 to 700 A", "A", "looks like a range"),
        ("~600 A", "A", "~600 A is not one value: write the number alone, without '~'"),
        ("> 600 A", "A", "is not one value"),
        ("about 600 A", "A", "about 600 A is not one value"),
        ("A 600", "A", "A 600 does not begin with a number"),
        ("--5 mm", "mm", "--5 mm cannot be read as one number with its unit"),
        ("5, mm", "mm", "5, mm cannot be read as one number with its unit"),
        ("12 5 mm", "mm", "cannot be read as one number with its unit"),
        ("1 20 mm", "mm", "cannot be read as one number with its unit"),
        ("10\u00b2 mm", "mm", "write"),
        ("0x10", "A", "is not a unit that can be read here"),
        ("5\x00 A", "A", "5\ufffd A cannot be read as one number"),
        ("5 A\x1b[2J", "A", "A\ufffd[2J is not a unit"),
        ("5 A; drop", "A", "is not a unit that can be read here"),
        (5, "A", "this answer is not a text"),
        (None, "A", "this answer is not a text"),
        (True, "A", "this answer is not a text"),
        (["5 A"], "A", "this answer is not a text"),
    ],
)
def test_texts_that_are_asked_back(text, unit, sentence):
    """Whatever cannot be read as exactly one number gets one sentence that says what to write instead."""
    reading = read_quantity(text, unit)
    assert reading.value is None
    assert sentence in reading.problem
    assert 0 < len(reading.problem) < 220
    assert "\n" not in reading.problem


# An independent statement of what may be read: digits in this form, then a unit that starts with no digit.
STRICT = re.compile(
    r"[+-]? ?([0-9]{1,3}( [0-9]{3})+|[0-9]+)?([.,][0-9]+)?\.?"
    r"(e[+-]?[0-9]{1,4}| ?[x*] ?10\^[+-]?[0-9]{1,4})?( ?[^0-9.,].*)?",
    re.IGNORECASE,
)


@given(
    st.text(alphabet="0123456789.,+-eExX^* AmJkNn/%\u2212\u00b2\u00d7six", max_size=14),
    st.sampled_from(["A", "", "studs", "J"]),
)
def test_every_text_is_read_or_asked_back(text, unit):
    """Any text gives either a finite value, of a text in the strict form, or one sentence."""
    reading = read_quantity(text, unit)
    assert (reading.value is None) == bool(reading.problem)
    if reading.value is not None:
        assert math.isfinite(reading.value)
        plain = text.strip().replace("\u2212", "-").replace("\u00d7", "x")
        assert STRICT.fullmatch(" ".join(plain.split()))


@given(st.text(max_size=80))
def test_no_text_crashes(text):
    """Text in any script gives a value or a sentence."""
    reading = read_quantity(text, "mm")
    assert (reading.value is None) == bool(reading.problem)


@given(st.floats(allow_nan=False, allow_infinity=False, width=64))
def test_a_number_python_writes_is_read_exactly(number):
    """What ``repr`` writes is read back to the last bit."""
    assert read_quantity(f"{number!r} A", "A").value == number


@given(st.decimals(min_value=-9999, max_value=9999, places=3), st.sampled_from("\u2212-"))
def test_comma_and_point_agree(number, minus):
    """A decimal comma means what the point means, except where it could part thousands."""
    with_point = f"{number:f}".replace("-", minus)
    with_comma = read_quantity(with_point.replace(".", ",") + " mm", "mm")
    whole = with_point.lstrip(minus).partition(".")[0]
    if int(whole) > 0 and len(whole) <= 3:
        assert "can mean" in with_comma.problem
    else:
        assert with_comma.value == read_quantity(with_point + " mm", "mm").value == float(number)


def test_require_unit_guards_the_bank():
    """A unit that answers could not be read in is refused when an exercise is written."""
    assert require_unit("J/mm2") == "J/mm2"
    with pytest.raises(ValueError, match="unit must be one that answers can be read in, got 'jolues'"):
        require_unit("jolues")
    with pytest.raises(ValueError, match="got None"):
        require_unit(None)


@pytest.mark.parametrize(
    ("value", "unit", "shown"),
    [
        (480.0, "J", "480 J"),
        (12.4711, "J/mm2", "12.47 J/mm\u00b2"),
        (12.0, "studs", "12 studs"),
        (0.07, "", "0.07"),
        (123456.0, "mm", "123500 mm"),
        (0.000012345, "m", "1.234e-05 m"),
    ],
)
def test_quantities_as_shown(value, unit, shown):
    """A value is shown with four figures and its unit, and what is shown can be typed."""
    assert show_quantity(value, unit) == shown
    assert read_quantity(shown, unit).value == pytest.approx(value, rel=1e-3)  # rel: four figures
