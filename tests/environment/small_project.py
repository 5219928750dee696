"""The project's real set-up code around two tiny packages, so that an environment takes seconds to make."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from tests.environment.tiny_packages import write_wheel

ROOT = Path(__file__).resolve().parents[2]
SET_UP_FILES = ("open.py", "environment.py", "set_up_steps.py", "python_version.py", "lab_server.py")
LIMIT_S = 120
NO_INDEX = "http://127.0.0.1:9/"


class SmallProject:
    """A copy of the set-up code with requirements of its own, started as a user starts it."""

    def __init__(self, root):
        """Lay out the folders; the one page check says which package it finds."""
        self.root, self.wheels = root, root.parent / "wheels"
        for folder in (root / "workbook", root / "tests", self.wheels):
            folder.mkdir(parents=True, exist_ok=True)
        for name in SET_UP_FILES:
            shutil.copy(ROOT / "workbook" / name, root / "workbook" / name)
        shutil.copy(ROOT / "tests" / "run.py", root / "tests" / "run.py")
        check = "import tiny_tool, sys\nprint('checked with', tiny_tool.version)\n"
        (root / "workbook" / "check_pages.py").write_text(check, encoding="utf-8")
        self.require("requirements.txt", write_wheel(self.wheels, "tiny_tool", "version = '1.0'\n"))
        stand_in = "import sys\nprint('tests with', *sys.argv[1:])\nsys.exit(5)\n"
        self.require("tests/requirements.txt", write_wheel(self.wheels, "pytest", stand_in))

    @property
    def venv(self):
        """Return the folder of the project's environment."""
        return self.root / ".venv"

    @property
    def stamp(self):
        """Return the stamp that is written last."""
        return self.venv / "second_plate.json"

    def require(self, requirement_file, wheel):
        """Let a requirement file of the project name one package."""
        text = f"{wheel.name.split('-')[0]} @ {wheel.as_uri()}\n"
        (self.root / requirement_file).write_text(text, encoding="utf-8")

    def require_from_index(self):
        """Let the project need a package that only an index could have."""
        (self.root / "requirements.txt").write_text("a-package-of-the-index==1.0\n", encoding="utf-8")

    def start(self, *arguments, script="workbook/open.py", python=sys.executable, **variables):
        """Start one of the two commands from another folder and return its process; opening only checks."""
        usual = () if script == "tests/run.py" else ("--check",)
        return subprocess.Popen(
            [str(python), str(self.root / script), *(arguments or usual)],
            cwd=self.root.parent,
            env=quiet_pip() | variables,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
            encoding="utf-8",
        )

    def run(self, *arguments, **options):
        """Run one of the two commands to its end; return exit code, output and complaint."""
        process = self.start(*arguments, **options)
        printed, complaint = process.communicate(timeout=LIMIT_S)
        return process.returncode, printed, complaint.strip()


def quiet_pip():
    """Return variables under which pip asks no index but one that is not there, and gives up at once."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith(("PIP_", "PYTHON"))}
    return kept | {"PIP_CONFIG_FILE": os.devnull, "PIP_RETRIES": "1", "PIP_INDEX_URL": NO_INDEX}


def one_sentence(complaint):
    """Tell whether a complaint is one line that ends like a sentence."""
    return "\n" not in complaint and complaint.endswith(".") and "Traceback" not in complaint
