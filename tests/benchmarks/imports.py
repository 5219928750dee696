"""Prints what importing the library costs beside numpy, which a page loads anyway; it judges nothing.

Processor time of a fresh process each time, best of four, so that other work on the machine counts little.
"""

import subprocess
import sys
from pathlib import Path

LIBRARY = Path(__file__).resolve().parents[2] / "workbook"
PROGRAM = f"""
import sys, time, pkgutil, importlib
sys.path.insert(0, {str(LIBRARY)!r})
start = time.process_time()
import numpy
loaded = time.process_time()
import secondplate
facade = time.process_time()
for module in pkgutil.iter_modules(secondplate.__path__):
    importlib.import_module("secondplate." + module.name)
print(loaded - start, facade - loaded, time.process_time() - loaded)
"""


def run():
    """Import numpy and the library in a fresh process and return the three times in seconds."""
    printed = subprocess.run(
        [sys.executable, "-c", PROGRAM], capture_output=True, text=True, check=True
    ).stdout
    return [float(word) for word in printed.split()]


def main():
    """Print the times and their ratio."""
    run()  # compiles
    numpy_s, facade_s, modules_s = (min(times) for times in zip(*(run() for _ in range(4)), strict=True))
    print(f"import numpy: {1000 * numpy_s:.0f} ms")
    print(f"import secondplate: {1000 * facade_s:.1f} ms")
    print(f"every module of it: {1000 * modules_s:.0f} ms, {modules_s / numpy_s:.1f} times numpy")


if __name__ == "__main__":
    main()
