"""Units: what each listed spelling is, checked against published conversion factors."""

import csv

import pytest

from grading import unit_spellings
from grading.exercises import EXERCISES
from grading.unit_spellings import (
    COUNT_WORDS,
    MEASURES_COLUMNS,
    MEASURES_FILE,
    is_count,
    is_known,
    measure,
    shown_unit,
    unit_of,
)


@pytest.mark.parametrize(
    ("one", "factor", "other"),
    [
        # NIST SP 811 (2008), appendix B.8: factors printed in bold there are exact.
        ("in", 25.4, "mm"),
        ("ft", 0.3048, "m"),
        ("lbf", 4.4482216152605, "N"),
        ("lb", 0.45359237, "kg"),
        ("in-lb", 0.1129848290276167, "N m"),
        ("ft-lb", 1.3558179483314004, "N m"),
        ("psi", 6894.757293168361, "Pa"),
        ("ft3/h", 28.316846592 / 60.0, "L/min"),
        ("bar", 1e5, "Pa"),
        ("N/mm2", 1.0, "MPa"),
        # SI Brochure, 9th edition (2019), tables 7 and 8.
        ("mT", 1000.0, "uT"),
        ("A/m2", 100.0, "uA/cm2"),
        ("m\u03a9", 1e-3, "\u03a9"),
        ("h", 3600.0, "s"),
        ("L", 1e-3, "m3"),
        ("J/mm2", 1e6, "J/m2"),
        ("kN", 1000.0, "N"),
        ("rad", 57.29577951308232, "deg"),
    ],
)
def test_conversion_factors(one, factor, other):
    """One of the first unit is so many of the second."""
    # rel: the published factors carry 13 digits or more; a product of floats loses a few last bits
    assert unit_of(one).kind == unit_of(other).kind
    assert unit_of(one).scale / unit_of(other).scale == pytest.approx(factor, rel=1e-12)


@pytest.mark.parametrize(
    "spellings",
    [
        ("A", "amp", "Amps", "ampere", "AMPERES", "a"),
        ("mm2", "mm^2", "mm\u00b2", "sq mm", "square mm"),
        ("L/min", "l/min", "lpm", "LPM", "litres per minute", "L per min"),
        (
            "ft3/h",
            "ft\u00b3/h",
            "cfh",
            "CFH",
            "scfh",
            "cu ft/h",
            "cu. ft/h",
            "cubic feet per hour",
            "ft^3/hr",
        ),
        ("J/mm2", "J/mm\u00b2", "joules per square mm", "J mm^-2", "J\u00b7mm\u207b\u00b2"),
        ("N m", "Nm", "N\u00b7m", "N*m", "newton metres"),
        ("uT", "\u00b5T", "\u03bcT", "microtesla"),
        ("uA/cm2", "\u00b5A/cm\u00b2", "\u03bcA per square cm", "microamps per sq cm"),
        ("ug/m3", "\u00b5g/m\u00b3", "\u03bcg per cubic metre", "micrograms per cubic metre"),
        ("mOhm", "m\u03a9", "m\u2126", "milliohm", "mohm"),
        ("in-lb", "in lb", "lbf in", "inch pounds"),
        ("degC", "\u00b0C", "\u2103", "C", "celsius"),
        ("deg", "\u00b0", "degrees"),
        ("MPa", "MPA", "mpa", "megapascal"),
        ("ms", "msec", "milliseconds", "MS"),
        ("s", "sec", "seconds", "s."),
        ("in", '"', "inch", "IN", "in."),
        ("W/(m K)", "W/(m*K)"),
    ],
)
def test_spellings_of_one_unit(spellings):
    """Every listed spelling of a unit is that unit."""
    assert len({unit_of(spelling) for spelling in spellings}) == 1
    assert unit_of(spellings[0]) is not None


@pytest.mark.parametrize(
    "text",
    [
        "jolues",
        "mj",
        "W/m K",
        "m/s/s",
        "J/",
        "mm0",
        "xyz",
        "parsec",
        "kA2h",
        "__class__",
        "m**2",
        "sq mm2",
        "1",
        "\x00",
        "//",
        "C/s",
        "()",
    ],
)
def test_what_is_not_listed_is_no_unit(text):
    """A misspelt, ambiguous or far-fetched unit is not guessed at."""
    assert unit_of(text) is None
    assert not is_known(text)


def test_lower_case_nm_is_torque():
    """The trade has no nanometres, so ``nm`` typed in haste is newton metres."""
    assert unit_of("nm") == unit_of("N m")


def test_counting_words_are_plain_numbers():
    """Counting words measure nothing, alone or in a rate."""
    for word in COUNT_WORDS:
        assert is_count(word)
        assert unit_of(word) == unit_of("")
    assert unit_of("studs/min") == unit_of("/min") == unit_of("per minute")
    assert not is_count("A")


def test_angles_are_not_plain_numbers():
    """Per cent is a plain number, a degree is not, though pint holds both for dimensionless."""
    assert unit_of("%").kind == unit_of("").kind == "number"
    assert unit_of("deg").kind == unit_of("rad").kind != "number"


def test_temperature_scales_have_their_zero():
    """Freezing water: 0 Celsius, 32 Fahrenheit, 273.15 kelvin (SI Brochure 2.3.1; NIST SP 811 B.8)."""
    celsius, fahrenheit, kelvin = (unit_of(name) for name in ("degC", "degF", "K"))
    assert celsius.kind == fahrenheit.kind == kelvin.kind
    # abs: three floats of about 300 are added and multiplied
    assert celsius.offset == pytest.approx(273.15, abs=1e-9)
    assert 32.0 * fahrenheit.scale + fahrenheit.offset == pytest.approx(273.15, abs=1e-9)
    assert (kelvin.scale, kelvin.offset) == (1.0, 0.0)


@pytest.mark.parametrize(
    ("unit", "shown"),
    [
        ("J/mm2", "J/mm\u00b2"),
        ("ft3/h", "ft\u00b3/h"),
        ("N m", "N\u00b7m"),
        ("uT", "\u00b5T"),
        ("ug/m3", "\u00b5g/m\u00b3"),
        ("um", "\u00b5m"),
        ("um2", "\u00b5m\u00b2"),
        ("m2", "m\u00b2"),
        ("m3", "m\u00b3"),
        ("mm2", "mm\u00b2"),
        ("J/m2", "J/m\u00b2"),
        ("bar m/s", "bar\u00b7m/s"),
        ("vol %", "vol %"),
        ("units", "units"),
        ("mOhm", "m\u03a9"),
        ("deg", "\u00b0"),
        ("degC", "\u00b0C"),
        ("studs/min", "studs/min"),
        ("studs", "studs"),
        ("A", "A"),
        ("%", "%"),
        ("", ""),
    ],
)
def test_units_as_shown(unit, shown):
    """A page shows exponents raised and Greek letters in place, and what it shows can be typed."""
    assert shown_unit(unit) == shown
    assert unit_of(shown) == unit_of(unit)


def test_the_table_of_usual_units_says_what_pint_says():
    """Every row of the table is what pint makes of its unit."""
    rows = list(csv.reader(MEASURES_FILE.open(encoding="utf-8", newline="")))
    assert tuple(rows[0]) == MEASURES_COLUMNS
    for written, kind, scale, offset in rows[1:]:
        pairs = (each.partition("^") for each in written.split())
        factors = [(name, int(power or 1)) for name, _, power in pairs]
        found = measure(factors)
        assert (found.kind, found.offset) == (kind, float(offset)), written
        # rel: pint keeps a product in the order in which it met it first, which may move the last bit
        assert found.scale == pytest.approx(float(scale), rel=4e-16), written


def test_usual_units_do_not_load_pint(monkeypatch):
    """What exercises ask for, and every unit alone, stands in the table; the rest is left to pint."""
    asked = {part.unit for each in EXERCISES.values() for part in each.parts if hasattr(part, "unit")}
    alone, _ = unit_spellings._spellings()

    def fail():
        raise AssertionError

    monkeypatch.setattr(unit_spellings, "_registry", fail)
    for unit in sorted(asked.union(alone)):
        assert unit_of.__wrapped__(unit) is not None
    with pytest.raises(AssertionError):
        unit_of.__wrapped__("kg3/s2")
