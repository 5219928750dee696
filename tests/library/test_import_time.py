"""Importing the library is quick and pulls in nothing heavy."""

import os
import subprocess
import sys
from pathlib import Path

LIBRARY = Path(__file__).resolve().parents[2] / "workbook"
HEAVY = ["pandas", "pint", "scipy", "matplotlib", "ipywidgets", "nbgrader"]
# Processor time of everything in the library beyond numpy itself, which a page loads anyway; the clock on
# the wall would measure what else the machine is doing.
PROGRAM = f"""
import sys, time, pkgutil, importlib
sys.path.insert(0, {str(LIBRARY)!r})
import numpy
start = time.process_time()
import secondplate
for module in pkgutil.iter_modules(secondplate.__path__):
    importlib.import_module("secondplate." + module.name)
print(time.process_time() - start, *[name for name in {HEAVY!r} if name in sys.modules])
"""


def run(compiled):
    """Import the whole library in a fresh process and return the seconds and the heavy modules found."""
    environment = os.environ | {"PYTHONPYCACHEPREFIX": str(compiled), "PYTHONDONTWRITEBYTECODE": ""}
    seconds, *heavy = subprocess.run(
        [sys.executable, "-c", PROGRAM], capture_output=True, text=True, check=True, env=environment
    ).stdout.split()
    return float(seconds), heavy


def test_import_is_quick_and_light(tmp_path):
    """All modules together import in under 150 ms once compiled, best of four, and load no heavy package."""
    runs = [run(tmp_path) for _ in range(5)]
    assert all(heavy == [] for _, heavy in runs)
    assert min(seconds for seconds, _ in runs[1:]) < 0.150
