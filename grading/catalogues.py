"""Catalogues that exercises draw from, worked out beforehand.

Who draws from all cases in which a question has one plain answer must know them before the first draw, and
asking the library for them takes longer than marking a class. What came out lies in ``catalogues.json``;
``tests/benchmarks/catalogues.py`` writes it again, and a test holds it to the library. So a change there that
gives learners other numbers is seen in the file, and ``BANK_VERSION`` has to rise.
"""

from collections import defaultdict
from functools import cache, wraps
from importlib import import_module
from pathlib import Path

import msgspec
import numpy as np

from secondplate.bands import Band

CATALOGUES_FILE = Path(__file__).with_name("catalogues.json")
_PACKAGE = "grading.exercises."
_PLAIN = (type(None), bool, int, float, str)
ASKED = defaultdict(dict)  # what the file did not have: by function, its results by their arguments
FUNCTIONS = {}  # those whose results the file may have, as they work them out


def worked_out(function):
    """Let a function give what the file holds for its arguments, and work out what the file has not.

    Arguments and results are plain values, tuples, lists, dictionaries, arrays, bands and named functions.
    """
    name = f"{function.__module__}.{function.__qualname__}".removeprefix(_PACKAGE)
    FUNCTIONS[name] = function

    @cache
    @wraps(function)
    def known(*arguments):
        found = _of_function(name).get(written(arguments))
        if found is not None:
            return read(found)
        ASKED[name][arguments] = function(*arguments)
        return ASKED[name][arguments]

    return known


@cache
def _stored():
    """Return what the file holds for each function, not read any further."""
    try:
        return msgspec.json.decode(CATALOGUES_FILE.read_bytes(), type=dict[str, msgspec.Raw])
    except FileNotFoundError:  # it is being written for the first time
        return {}


@cache
def _of_function(name):
    """Return the results of one function by their arguments, both as they are written."""
    pairs = msgspec.json.decode(_stored().get(name, b"[]"), type=list[tuple[msgspec.Raw, msgspec.Raw]])
    return {bytes(arguments): bytes(result) for arguments, result in pairs}


def stored_arguments():
    """Return ``{name of a function: [arguments, ...]}`` of all that the file holds."""
    found = defaultdict(list)
    for name in _stored():
        found[name] += map(read, _of_function(name))
    return dict(found)


def written(value):
    """Write a value as JSON that can be read back as it was."""
    return msgspec.json.encode(_as_json(value))


def read(text):
    """Return the value that was written."""
    return _from_json(msgspec.json.decode(text))


def _as_json(value):
    """Return a value as JSON has it; what JSON does not know stands under its name in an object of one."""
    if type(value) in _PLAIN:
        return value
    if isinstance(value, np.generic):
        return _as_json(value.item())
    if isinstance(value, list):
        return list(map(_as_json, value))
    if isinstance(value, tuple):
        return {"tuple": list(map(_as_json, value))}
    if isinstance(value, dict):
        return {"dict": [[_as_json(key), _as_json(each)] for key, each in value.items()]}
    if isinstance(value, np.ndarray) and value.dtype.kind in "bifU":
        return {"array": value.tolist()}
    if isinstance(value, Band):
        return {"band": [value.low, value.best, value.high, value.basis]}
    if getattr(value, "__qualname__", "").isidentifier():
        return {"function": [value.__module__, value.__qualname__]}
    message = f"what is kept in a catalogue must be plain values, got {type(value).__name__}"
    raise TypeError(message)


def _from_json(value):
    """Return a value from what JSON has of it."""
    if isinstance(value, list):
        return list(map(_from_json, value))
    if not isinstance(value, dict):
        return value
    ((kind, held),) = value.items()
    return _READ[kind](held)


def _read_band(held):
    low, best, high, basis = held
    return Band(low=low, best=best, high=high, basis=basis)


_READ = {
    "tuple": lambda held: tuple(map(_from_json, held)),
    "dict": lambda held: {_from_json(key): _from_json(each) for key, each in held},
    "array": np.array,
    "band": _read_band,
    "function": lambda held: getattr(import_module(held[0]), held[1]),
}
