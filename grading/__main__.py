"""`python -m grading`: the command line, with the workbook's own Python where this one lacks a library."""

import importlib.util
import os
import subprocess
import sys

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
NEEDED = ("click", "rich", "jinja2", "sqlalchemy", "numpy", "pint", "filelock", "msgspec", "scipy")


def own_python():
    """Return the Python of the environment that `workbook/open.py` makes, or None where there is none yet."""
    parts = ("Scripts", "python.exe") if os.name == "nt" else ("bin", "python")
    path = os.path.join(ROOT, ".venv", *parts)
    return path if os.path.isfile(path) else None


def missing_libraries():
    """Return the names of the libraries that this Python lacks."""
    return [name for name in NEEDED if importlib.util.find_spec(name) is None]


def run_with(python):
    """Run the same command with another Python and end with its exit code."""
    environment = dict(os.environ, GRADING_OWN_PYTHON="1")
    command = [python, "-m", "grading", *sys.argv[1:]]
    environment["PYTHONPATH"] = os.pathsep.join(filter(None, (ROOT, os.environ.get("PYTHONPATH"))))
    sys.exit(subprocess.run(command, env=environment, check=False).returncode)


def start():
    """Start the command line, or say in one sentence what has to be done first."""
    if missing_libraries():
        python = own_python()
        if python and "GRADING_OWN_PYTHON" not in os.environ:
            run_with(python)
        sys.exit("Run `python3 workbook/open.py` first: it installs the libraries that marking needs.")
    if importlib.util.find_spec("secondplate") is None:
        sys.path.insert(1, os.path.join(ROOT, "workbook"))
    from grading.cli import main

    main(prog_name="python -m grading")


if __name__ == "__main__":
    start()
