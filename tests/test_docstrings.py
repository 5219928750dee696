"""Docstrings of the library: parameters match the signature, each carries its unit, every example runs.

The form is numpydoc; the unit stands in square brackets at the end of each description, ``[-]`` for none.
"""

import doctest
import importlib
import inspect
import re

import pytest

from tests.library_reader import FUNCTIONS, MEMBERS, MODULES, closing_unit, parsed

each_member = pytest.mark.parametrize("member", MEMBERS.values(), ids=MEMBERS)
each_function = pytest.mark.parametrize("function", FUNCTIONS.values(), ids=FUNCTIONS)


@each_member
def test_parameters_match_the_signature(member):
    """The documented parameters are those of the signature, in the same order."""
    documented = [item.name.lstrip("*") for item in parsed(member)["Parameters"]]
    assert documented == list(inspect.signature(member).parameters)


@each_member
def test_each_parameter_closes_with_its_unit(member):
    """Each parameter's description ends with its unit in square brackets."""
    without = [item.name for item in parsed(member)["Parameters"] if not closing_unit(item)]
    assert without == []


@each_function
def test_each_return_closes_with_its_unit(function):
    """Each function documents what it returns, and its unit."""
    returned = parsed(function)["Returns"]
    assert returned
    assert all(closing_unit(item) for item in returned)


@each_member
def test_each_has_a_summary_and_an_example(member):
    """Each public name has a summary and at least one example."""
    doc = parsed(member)
    assert doc["Summary"]
    assert any(line.startswith(">>>") for line in map(str.strip, doc["Examples"]))


@each_function
def test_functions_that_refuse_say_so(function):
    """A function that checks or raises documents ``Raises``."""
    body = inspect.getsource(function)
    if re.search(r"\b(require_\w+\(|raise )", body):
        assert parsed(function)["Raises"]


@pytest.mark.parametrize("module_name", MODULES)
def test_examples_run(module_name):
    """Every example of a module gives what it shows."""
    module = importlib.import_module(module_name)
    flags = doctest.ELLIPSIS | doctest.NORMALIZE_WHITESPACE
    result = doctest.testmod(module, optionflags=flags)
    assert result.failed == 0


@each_function
def test_body_is_short(function):
    """No function of the library has more than 30 lines of code below its docstring."""
    lines = inspect.getsource(function).count("\n") - (function.__doc__ or "").count("\n")
    assert lines <= 30
