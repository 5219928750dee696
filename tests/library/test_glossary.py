"""The glossary covers every public name of the library and agrees with the docstrings on units."""

import re

import pytest

from secondplate.glossary import GLOSSARY, Entry, entry, entry_of_name
from tests.library_reader import FUNCTIONS, MEMBERS, closing_unit, parsed


def documented_units():
    """Collect the units that docstrings give to parameters, and to functions whose result has a unit."""
    units = {}
    for member in MEMBERS.values():
        for item in parsed(member)["Parameters"]:
            units.setdefault(item.name, set()).add(closing_unit(item))
    for name, function in FUNCTIONS.items():
        returned = {closing_unit(item) for item in parsed(function)["Returns"]}
        if returned != {"-"}:
            units.setdefault(name.rpartition(".")[2], set()).update(returned)
    return units


UNITS = documented_units()
# A checked thread comes back as two lengths; it is no quantity of its own.
NO_QUANTITY = {"checked_thread"}


@pytest.mark.parametrize("name", sorted(UNITS.keys() - NO_QUANTITY))
def test_each_name_is_listed_with_its_unit(name):
    """Each public parameter and each function that returns a quantity is listed, with its unit."""
    assert UNITS[name] == {entry_of_name(name).unit or "-"}


def test_no_name_is_listed_twice():
    """A name belongs to one entry only, and a term has one entry only."""
    names = [name for found in GLOSSARY for name in found.names]
    assert len(names) == len(set(names))
    terms = [found.term for found in GLOSSARY]
    assert len(terms) == len(set(terms))


def test_a_name_that_ends_in_a_unit_has_that_unit():
    """Names that end in a unit never belong to an entry without one."""
    ending = re.compile(r"_(a|v|ms|s|min|h|mm|mm2|m|m3|l|j|n|mpa|bar|percent|c|k|ut|hv)$")
    without = [name for found in GLOSSARY for name in found.names if ending.search(name) and not found.unit]
    assert without == []


def test_unknown_term_is_refused():
    """A term or name that is not there is refused by one sentence."""
    with pytest.raises(ValueError, match="term must be one of the glossary, got 'flash'"):
        entry("flash")
    with pytest.raises(ValueError, match="name must be listed in the glossary, got 'amps'"):
        entry_of_name("amps")


def test_entry_must_be_shown_somewhere():
    """An entry says whether pages show it."""
    with pytest.raises(ValueError, match="shown of the term lift must be one of page, library, got 'never'"):
        Entry(term="lift", symbol="L", meaning="m", unit="mm", names=(), shown="never")
