"""Opens the workbook in the browser; on first use it makes the environment that the workbook runs in.

`python3 workbook/open.py` opens it; `--check` runs every page without a browser and says what fails.
"""

import sys

from python_version import require_python

require_python()

import argparse  # noqa: E402  (only after the version is known to fit)

from environment import in_environment, prepare  # noqa: E402
from lab_server import open_workbook, whole_port  # noqa: E402
from set_up_steps import SetUpError  # noqa: E402


def read_arguments(arguments):
    """Read the command line."""
    parser = argparse.ArgumentParser(prog="open.py", description="Open the workbook in the browser.")
    parser.add_argument("--no-browser", action="store_true", help="only print the address of the start page")
    parser.add_argument("--port", type=whole_port, help="port to use (default: the first free one from 8888)")
    parser.add_argument("--check", action="store_true", help="run every page without a browser, in a copy")
    return parser.parse_args(arguments)


def main(arguments):
    """Do what the command line asks for and return the exit code."""
    asked = read_arguments(arguments)
    try:
        python = prepare()
        if asked.check:
            return in_environment([python, "-m", "check_pages"])
        return open_workbook(python, port=asked.port, browser=not asked.no_browser)
    except SetUpError as error:
        sys.exit(str(error))
    except KeyboardInterrupt:
        return 130


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
