"""Importing the library pulls in nothing heavy."""

import subprocess
import sys
from pathlib import Path

LIBRARY = Path(__file__).resolve().parents[2] / "workbook"
HEAVY = ["pandas", "pint", "scipy", "matplotlib", "ipywidgets", "nbgrader"]
PROGRAM = f"""
import sys, pkgutil, importlib
sys.path.insert(0, {str(LIBRARY)!r})
import secondplate
for module in pkgutil.iter_modules(secondplate.__path__):
    importlib.import_module("secondplate." + module.name)
print(*[name for name in {HEAVY!r} if name in sys.modules])
"""


def test_import_is_light():
    """All modules together load no heavy package."""
    loaded = subprocess.run([sys.executable, "-c", PROGRAM], capture_output=True, text=True, check=True)
    assert loaded.stdout.split() == []
