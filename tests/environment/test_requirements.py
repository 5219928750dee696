"""The two requirement files are complete, exact, and name everything that the code imports."""

import ast
import re
import sys
import tomllib
from importlib.metadata import distributions, packages_distributions

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from tests.environment.small_project import ROOT

FILES = ("requirements.txt", "tests/requirements.txt")
COMES_WITH_VENV = {"pip", "setuptools", "wheel"}
OURSELVES = {"second-plate"}  # there where somebody installed an extra
BRING = "# What these bring with them"


def pins(name, *, direct_only=False):
    """Return the requirements of a file, or only those of its first part."""
    text = (ROOT / name).read_text(encoding="utf-8")
    lines = (text.split(BRING)[0] if direct_only else text).splitlines()
    return [Requirement(line.split("#")[0]) for line in lines if line.split("#")[0].strip()]


def extras():
    """Return the requirements of the optional extras."""
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    return [Requirement(each) for group in project["optional-dependencies"].values() for each in group]


def names(requirements):
    """Return the names of packages in the one spelling that compares."""
    return {canonicalize_name(requirement.name) for requirement in requirements}


def imported(folder):
    """Return the top-level modules that the code in a folder imports."""
    found = set()
    for path in (ROOT / folder).rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Import):
                found |= {alias.name.split(".")[0] for alias in node.names}
            elif isinstance(node, ast.ImportFrom) and node.module and not node.level:
                found.add(node.module.split(".")[0])
    return found


@pytest.mark.parametrize("name", FILES)
def test_every_line_is_one_exact_version(name):
    """Each package has one exact version and no address, so that every machine gets the same."""
    for requirement in pins(name):
        assert re.fullmatch(r"==[0-9][0-9A-Za-z.]*", str(requirement.specifier)), requirement
        assert requirement.url is None
        assert not requirement.extras


@pytest.mark.parametrize("name", FILES)
def test_files_name_no_place(name):
    """No index, no folder and no address stands in a requirement file."""
    lines = (ROOT / name).read_text(encoding="utf-8").splitlines()
    assert [line for line in lines if line.startswith("-") or "://" in line] == []


@pytest.mark.parametrize("name", FILES)
def test_each_direct_package_has_its_reason(name):
    """Each package of the first part has its reason beside it."""
    direct = (ROOT / name).read_text(encoding="utf-8").split(BRING)[0].splitlines()
    assert [line for line in direct if "==" in line and not re.search(r"  # \w.{5,}", line)] == []


def test_no_package_is_named_twice():
    """The two files share no package, so that they cannot disagree."""
    every = [canonicalize_name(requirement.name) for name in FILES for requirement in pins(name)]
    assert len(every) == len(set(every))


@pytest.mark.parametrize(
    ("folders", "files"),
    [(("workbook", "grading", "solutions"), FILES[:1]), (("tests",), FILES)],
    ids=["product", "tests"],
)
def test_what_the_code_imports_is_named(folders, files):
    """Each package that the code imports itself stands in the first part of a file, or in an extra."""
    modules = set().union(*(imported(folder) for folder in folders)) - set(sys.stdlib_module_names)
    owners = packages_distributions()
    packages = {canonicalize_name(name) for module in modules for name in owners.get(module, ())}
    named = set().union(names(extras()), *(names(pins(name, direct_only=True)) for name in files))
    assert packages - named - OURSELVES == set()


def test_extras_are_those_that_are_tested():
    """Each optional extra has the version that the tests run with."""
    tested = {canonicalize_name(pin.name): str(pin.specifier) for pin in pins(FILES[1], direct_only=True)}
    assert {each.name: str(each.specifier) for each in extras()} == {
        each.name: tested.get(canonicalize_name(each.name)) for each in extras()
    }


def test_environment_holds_the_pinned_versions_and_no_more():
    """In the project's own environment every package is pinned, with the version that is installed."""
    if sys.prefix != str(ROOT / ".venv"):
        pytest.skip("another environment runs these tests")
    wanted = {canonicalize_name(pin.name): str(pin.specifier)[2:] for name in FILES for pin in pins(name)}
    there = {canonicalize_name(found.metadata["Name"]): found.version for found in distributions()}
    odd = {name: version for name, version in there.items() if wanted.get(name) != version}
    assert {name: version for name, version in odd.items() if name not in COMES_WITH_VENV | OURSELVES} == {}
    needed = [pin for name in FILES for pin in pins(name) if pin.marker is None or pin.marker.evaluate()]
    assert names(needed) - set(there) == set()
