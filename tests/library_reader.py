"""Reads the library for tests that look at all of it: its modules, public names and docstrings."""

import importlib
import inspect
import pkgutil
import re
import warnings
from functools import cache

from numpydoc.docscrape import FunctionDoc

import secondplate

MODULES = (
    "secondplate",
    *(module.name for module in pkgutil.walk_packages(secondplate.__path__, prefix="secondplate.")),
)
CLOSING_UNIT = re.compile(r"\[(?P<unit>[^\[\]]+)\]$")


def _public_members():
    """List every public function and class of the library with the name it is found under."""
    for module_name in MODULES:
        module = importlib.import_module(module_name)
        for name, member in vars(module).items():
            own = getattr(member, "__module__", None) == module_name
            if own and not name.startswith("_") and (inspect.isfunction(member) or inspect.isclass(member)):
                yield f"{module_name.removeprefix('secondplate.')}.{name}", member


MEMBERS = dict(_public_members())
FUNCTIONS = {name: member for name, member in MEMBERS.items() if inspect.isfunction(member)}


@cache
def parsed(member):
    """Parse a docstring of numpydoc form, or fail on whatever the parser complains about."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        return FunctionDoc(member)


def closing_unit(item):
    """Return the unit that closes the description of a parameter or return value, or None."""
    found = CLOSING_UNIT.search(" ".join(item.desc).strip())
    return found and found["unit"]
