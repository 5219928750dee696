"""Runs every test in the project's own environment, which it makes on first use.

`python3 tests/run.py` runs everything: first what computes, on all cores, then what starts servers, browsers
and environments, two files at a time. What stands behind the command goes to pytest, as in `-k oxygen`.
"""

import os
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.dirname(os.path.abspath(__file__))), "workbook"))

from python_version import require_python  # noqa: E402  (only found through the line above)

require_python()

from environment import in_environment, prepare  # noqa: E402
from set_up_steps import SetUpError  # noqa: E402

APART = ["tests/browser", "tests/environment"]
TWO_AT_A_TIME = ["-n", "auto", "--maxprocesses=2", "--dist=loadfile", "--no-loadscope-reorder"]


def rounds(arguments):
    """Return the arguments of each run of pytest: those given, or the two runs that make up everything."""
    if arguments:
        return [arguments]
    return [["-n", "auto"] + ["--ignore=" + folder for folder in APART], TWO_AT_A_TIME + APART]


def main(arguments):
    """Make the environment, run pytest from the root and return the first exit code that is not 0."""
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)  # or each of hundreds of processes compiles everything
    try:
        python = prepare(with_tests=True)
        codes = [in_environment([python, "-m", "pytest"] + each) for each in rounds(arguments)]
        return next((code for code in codes if code), 0)
    except SetUpError as error:
        sys.exit(str(error))
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
