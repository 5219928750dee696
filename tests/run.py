"""Runs every test in the project's own environment, which it makes on first use.

`python3 tests/run.py` runs everything; what stands behind it goes to pytest, as in `-k oxygen`.
"""

import os
import sys

sys.path.insert(0, os.path.join(os.path.dirname(os.path.dirname(os.path.abspath(__file__))), "workbook"))

from python_version import require_python  # noqa: E402  (only found through the line above)

require_python()

from environment import in_environment, prepare  # noqa: E402
from set_up_steps import SetUpError  # noqa: E402


def main(arguments):
    """Make the environment, run pytest from the project's root and return its exit code."""
    try:
        python = prepare(with_tests=True)
        return in_environment([python, "-m", "pytest"] + arguments)
    except SetUpError as error:
        sys.exit(str(error))
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
