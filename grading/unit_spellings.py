"""The spellings of units that are read, and what each one is in terms of the others.

Only listed spellings count, so that a slip of the keyboard is asked about and never turned into a far-fetched
unit. How units relate comes from pint. What it says of the usual ones is kept in ``unit_measures.csv``, for
its registry takes longer to load than a class to mark; only a rarer unit loads it.
"""

import csv
import re
import unicodedata
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

MEASURES_FILE = Path(__file__).with_name("unit_measures.csv")
MEASURES_COLUMNS = ("unit", "kind", "scale", "offset")

# Words that count things: the answer is a plain number and the word may be left out.
_COUNTED = ("stud", "weld", "pull", "rivet", "hole", "cylinder", "time", "check", "piece", "test", "fastener")
COUNT_WORDS = frozenset(word + ending for word in _COUNTED for ending in ("", "s"))

# pint's name, the prefixes that are read before the symbols, the symbols, the words (read in any case).
_UNITS = (
    ("ampere", "k m \u03bc u", "A", "amp amps ampere amperes"),
    ("volt", "k m", "V", "volt volts"),
    ("ohm", "k m \u03bc u", "\u03a9 Ohm ohm", "ohm ohms"),
    ("watt", "k M m", "W", "watt watts"),
    ("joule", "k M m", "J", "joule joules"),
    ("newton", "k M m", "N", "newton newtons"),
    ("pascal", "k M G h", "Pa", "pascal pascals"),
    ("bar", "m", "bar", "bar bars"),
    ("tesla", "m \u03bc u", "T", "tesla teslas"),
    ("meter", "k c m \u03bc u", "m", "metre metres meter meters"),
    ("inch", "", "in", "inch inches"),
    ("foot", "", "ft", "foot feet"),
    ("liter", "m c", "L l", "litre litres liter liters"),
    ("gram", "k m \u03bc u", "g", "gram grams gramme grammes"),
    ("second", "m \u03bc u", "s sec", "secs second seconds"),
    ("minute", "", "min", "mins minute minutes"),
    ("hour", "", "h", "hr hrs hour hours"),
    ("hertz", "k M", "Hz", "hertz"),
    ("pound", "", "lb lbs", "pound pounds"),
    ("force_pound", "", "lbf", "lbf"),
    ("psi", "", "psi", "psi"),
    ("ksi", "", "ksi", "ksi"),
    ("kelvin", "", "K", "kelvin"),
    ("degC", "", "\u00b0C degC C", "celsius"),
    ("degF", "", "\u00b0F degF F", "fahrenheit"),
    ("degree", "", "\u00b0 deg", "degree degrees"),
    ("radian", "", "rad", "radian radians"),
    ("percent", "", "%", "percent pct"),
)
_PREFIX = {
    "k": "kilo",
    "M": "mega",
    "G": "giga",
    "h": "hecto",
    "c": "centi",
    "m": "milli",
    "u": "micro",
    "\u03bc": "micro",
}
_PREFIX_WORDS = ("kilo", "mega", "giga", "centi", "milli", "micro")

# Spellings of the trade that are not built from a symbol, a slash and an exponent.
_WHOLE = {
    "cfh": "ft3/h",
    "scfh": "ft3/h",
    "cfm": "ft3/min",
    "lpm": "L/min",
    "slpm": "L/min",
    "cc": "cm3",
    "in-lb": "lbf in",
    "in lb": "lbf in",
    "in-lbs": "lbf in",
    "in lbs": "lbf in",
    "in-lbf": "lbf in",
    "inch-pounds": "lbf in",
    "inch pounds": "lbf in",
    "ft-lb": "lbf ft",
    "ft lb": "lbf ft",
    "ft-lbs": "lbf ft",
    "ft lbs": "lbf ft",
    "ft-lbf": "lbf ft",
    "foot-pounds": "lbf ft",
    "foot pounds": "lbf ft",
    "nm": "N m",  # nanometres do not occur in this trade; newton metres do
    '"': "in",
    "''": "in",
    "\u2033": "in",
}
_ANGLES = frozenset({"degree", "radian"})
_OFFSETS = frozenset({"degC", "degF"})
_FACTOR = re.compile(r"(?:(sq|square|cu|cubic)\.? )?([^\W\d_]+|%|\u00b0[CF]?)\.?(?:\^?(-?[1-9]))?")
_POWERS = {"sq": 2, "square": 2, "cu": 3, "cubic": 3}
_SUPERSCRIPTS = str.maketrans(
    "0123456789-", "\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079\u207b"
)
_WRITTEN = {
    "deg": "\u00b0",
    "degC": "\u00b0C",
    "degF": "\u00b0F",
    "mOhm": "m\u03a9",
    "Ohm": "\u03a9",
    "vol %": "vol %",
}
# The letter u that stands for micro where no Greek letters can be typed, before the unit that it belongs to.
_MICRO = re.compile(r"\bu(?=(?:g|m|s|A|V|T|L|Ohm)(?![A-Za-z]))")


@dataclass(frozen=True, kw_only=True)
class Unit:
    """What a unit measures, and how it turns into the base unit of its kind: ``value * scale + offset``."""

    kind: str
    scale: float
    offset: float


@lru_cache(maxsize=1)
def _spellings():
    """Return two mappings to pint's names: exact symbols, and words in lower case."""
    exact, lower = {}, {}
    for name, prefixes, symbols, words in _UNITS:
        for symbol in symbols.split():
            exact[symbol] = name
            for prefix in prefixes.split():
                exact[prefix + symbol] = _PREFIX[prefix] + name
        for word in words.split():
            lower[word] = name
            for prefix in _PREFIX_WORDS if prefixes else ():
                lower[prefix + word] = prefix + name
    _add_other_case(exact, lower)
    return exact, lower


def _add_other_case(exact, lower):
    """Let a symbol be typed in another case where only one can be meant (``MPA``, but not ``mj``)."""
    meant = {}
    for symbol, name in exact.items():
        meant.setdefault(symbol.lower(), set()).add(name)
    for symbol, names in meant.items():
        if len(names) == 1:
            lower.setdefault(symbol, next(iter(names)))


@lru_cache(maxsize=1)
def _registry():
    """Return pint's registry, loaded with the first unit that is not in the table."""
    import pint

    return pint.UnitRegistry(cache_folder=None)


@lru_cache(maxsize=1)
def _usual_measures():
    """Return the units of the table by their names and powers in pint."""
    with MEASURES_FILE.open(encoding="utf-8", newline="") as file:
        return {
            unit: Unit(kind=kind, scale=float(scale), offset=float(offset))
            for unit, kind, scale, offset in list(csv.reader(file))[1:]
        }


def load_all_units():
    """Load the usual units now, for instance before a process is divided into several."""
    _usual_measures()


def is_count(unit):
    """Tell whether a unit is a word that counts things."""
    return unit.lower() in COUNT_WORDS


def is_known(unit):
    """Tell whether answers in this unit can be read."""
    return isinstance(unit, str) and unit_of(unit) is not None


def shown_unit(unit):
    """Write a unit the way a page shows it: exponents raised, Greek letters and degree signs in place."""
    if unit in _WRITTEN or is_count(unit):
        return _WRITTEN.get(unit, unit)
    greek = _MICRO.sub("\u00b5", unit)
    raised = re.sub(r"(?<=[A-Za-z])\^?(-?[0-9])", lambda match: match[1].translate(_SUPERSCRIPTS), greek)
    return raised.replace(" ", "\u00b7") if re.fullmatch(r"[^ ]+( [^ ]+)+", raised) else raised


@lru_cache(maxsize=8192)
def unit_of(text):
    """Return the unit that a text spells, or None where it is not a listed spelling."""
    spelling = unicodedata.normalize("NFKC", text).replace("\u2212", "-").replace("\u2126", "\u03a9").strip()
    if not spelling or is_count(spelling):
        return Unit(kind="number", scale=1.0, offset=0.0)
    spelling = spelling.removesuffix(".")
    spelling = _WHOLE.get(spelling.lower() if spelling != "Nm" else "nm", spelling)
    factors = factors_of(spelling)
    if not factors:
        return None
    return _usual_measures().get(measured_name(factors)) or measure(factors)


def measured_name(factors):
    """Write pairs of pint's name and power as the table of usual units has them."""
    return " ".join(name if power == 1 else f"{name}^{power}" for name, power in factors if name)


def factors_of(spelling):
    """Split a spelling into pairs of pint's name and power, or return None."""
    over = re.sub(r"\s+per\s+|^per\s+", "/", spelling)
    parts = [part.strip() for part in over.split("/")]
    if len(parts) > 2 or not all(parts[1:]):
        return None
    below = parts[1] if len(parts) == 2 else ""
    if below.startswith("(") and below.endswith(")"):
        below = below[1:-1]
    elif re.search(r"[ *\u00b7\u22c5]", below) and not below.startswith(("sq", "cu")):
        return None  # W/m K can mean two things; W/(m K) cannot
    top = [] if parts[0] in ("", "1") and below else _product(parts[0], 1)
    bottom = _product(below, -1) if below else []
    return None if top is None or bottom is None else top + bottom


def _product(text, sign):
    """Split a product of units into pairs of name and power, or return None."""
    pairs = []
    text = re.sub(r"\s*[*\u00b7\u22c5]\s*", " ", text.strip())
    while text:
        match = _FACTOR.match(text)
        name = _name(match[2]) if match else None
        if name is None or (match[1] and match[3]) or (match.end() < len(text) and text[match.end()] != " "):
            return None
        power = _POWERS.get(match[1], 1) * int(match[3] or 1)
        pairs.append((name, sign * power))
        text = text[match.end() :].lstrip()
    return pairs or None


def _name(symbol):
    """Return pint's name of a symbol or word (empty for a counting word), or None where not listed."""
    exact, lower = _spellings()
    if symbol in exact:
        return exact[symbol]
    if is_count(symbol):
        return ""
    return lower.get(symbol.lower())


def measure(factors):
    """Return the unit that a product of named units is, by pint; None where it is none."""
    registry = _registry()
    named = [(name, power) for name, power in factors if name]
    if any(name in _OFFSETS for name, _ in named):
        return _temperature(registry, named)
    quantity = registry.Quantity(1.0, "")
    for name, power in named:
        quantity = quantity * registry.Quantity(1.0, name) ** power
    base = quantity.to_base_units()
    kind = str(base.dimensionality)
    if any(name in _ANGLES for name, _ in named):
        kind += " angle"  # pint holds an angle for a plain number; an answer in degrees is not one
    return Unit(kind=kind if kind != "dimensionless" else "number", scale=float(base.magnitude), offset=0.0)


def _temperature(registry, named):
    """Return a temperature scale, whose zero is not at absolute zero."""
    if len(named) != 1 or named[0][1] != 1:
        return None
    zero, hundred = (registry.Quantity(value, named[0][0]).to("kelvin").magnitude for value in (0.0, 100.0))
    kind = str(registry.Quantity(1.0, "kelvin").dimensionality)
    return Unit(kind=kind, scale=round((hundred - zero) / 100.0, 15), offset=float(zero))
