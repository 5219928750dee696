"""Runs all crash tests and prints how many kills hit what: `python tests/hostile/crashes.py`.

Anything behind it goes to pytest, as in `-n 2`.
"""

import sys
from pathlib import Path

import pytest

if __name__ == "__main__":
    here = Path(__file__).resolve().parent
    sys.exit(pytest.main(["-q", *map(str, sorted(here.glob("test_crash_*.py"))), *sys.argv[1:]]))
