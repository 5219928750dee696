"""Who may import whom, read from the syntax trees of every module; nothing is run.

The table is the one of the contributor's guide: the library knows nothing of the rest, marking works without
pictures and widgets, pictures know only the library, and the forms may use all of them.
"""

import ast
import json
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
WIDGETS = {"ipywidgets", "anywidget"}
PICTURES = {"matplotlib"}
HEAVY = {"pandas", "pint", "nbgrader", "nbformat", "jupyter_client", "IPython"}

# scipy may serve the library where a model needs a solver; a page that shows no such model does not load it.
# Package: its folder, and what it must not import anywhere.
FORBIDDEN = {
    "secondplate": (
        ROOT / "workbook" / "secondplate",
        {"grading", "drawings", "exercise_forms"} | WIDGETS | PICTURES | HEAVY,
    ),
    "grading": (ROOT / "grading", {"exercise_forms"} | WIDGETS),
    "drawings": (ROOT / "workbook" / "drawings", {"grading", "exercise_forms"} | WIDGETS),
    "exercise_forms": (ROOT / "workbook" / "exercise_forms", set()),
}
NOTEBOOKS = sorted(
    path
    for folder in ("workbook", "solutions")
    for path in (ROOT / folder).rglob("*.ipynb")
    if ".ipynb_checkpoints" not in path.parts
)
# In grading only the reports and the sheet to print may draw, and only when they are called.
LAZY_IN_REPORT = {"drawings"} | PICTURES


def modules_of(package):
    """List the Python files of a package."""
    return sorted(FORBIDDEN[package][0].rglob("*.py"))


def imported(tree):
    """Yield the top-level name of each import in a tree and whether it stands inside a function."""
    inside = {
        id(node)
        for function in ast.walk(tree)
        if isinstance(function, (ast.FunctionDef, ast.AsyncFunctionDef))
        for node in ast.walk(function)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield alias.name.partition(".")[0], id(node) in inside
        elif isinstance(node, ast.ImportFrom) and node.level == 0:
            yield node.module.partition(".")[0], id(node) in inside


ALL_MODULES = [(package, path) for package in FORBIDDEN for path in modules_of(package)]


@pytest.mark.parametrize(
    ("package", "path"), ALL_MODULES, ids=[str(path.relative_to(ROOT)) for _, path in ALL_MODULES]
)
def test_nothing_forbidden_is_imported(package, path):
    """No module imports what the table forbids its package."""
    names = {name for name, _ in imported(ast.parse(path.read_text(encoding="utf-8")))}
    assert names & FORBIDDEN[package][1] == set()


@pytest.mark.parametrize("path", modules_of("grading"), ids=lambda path: path.name)
def test_marking_draws_only_lazily_and_only_in_the_report(path):
    """Pictures are imported in grading only by what is to be looked at, and there only inside functions."""
    drawing = [
        pair for pair in imported(ast.parse(path.read_text(encoding="utf-8"))) if pair[0] in LAZY_IN_REPORT
    ]
    if path.name in ("report.py", "class_report.py", "section_sheet.py"):
        assert all(lazy for _, lazy in drawing)
    else:
        assert drawing == []


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.name)
def test_pages_leave_marking_and_widgets_to_the_forms(path):
    """Pages and solutions import the library, the pictures and the forms, never marking or widgets."""
    cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
    code = ["".join(cell["source"]) for cell in cells if cell["cell_type"] == "code"]
    names = {name for source in code for name, _ in imported(ast.parse(source))}
    assert names & ({"grading"} | WIDGETS | PICTURES) == set()


@pytest.mark.parametrize("package", FORBIDDEN)
def test_package_has_modules(package):
    """Each package of the table is there, so that a moved folder cannot make the rule empty."""
    assert modules_of(package)


def test_a_forbidden_import_would_be_seen():
    """The reader finds plain, dotted, aliased and lazy imports."""
    source = "import a.b as c\nfrom d.e import f\ndef g():\n    import h\nfrom . import own\n"
    assert set(imported(ast.parse(source))) == {("a", False), ("d", False), ("h", True)}
