"""The checks against something outside: how many there are, and from how many named sources."""

import subprocess
import sys
from pathlib import Path

from secondplate.sources import BIBLIOGRAPHY

ROOT = Path(__file__).resolve().parents[1]
LEAST_CHECKS, LEAST_SOURCES = 300, 40


def collected(folder):
    """Return the ids of all tests of a folder, as pytest itself counts them."""
    command = [sys.executable, "-m", "pytest", folder, "--collect-only", "-q", "-p", "no:cacheprovider"]
    told = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    return [line for line in told.splitlines() if "::" in line]


def source_of(test_id):
    """Return the source that a file of published checks is named after."""
    return Path(test_id.partition("::")[0]).stem.removeprefix("test_")


def test_there_are_enough_outside_checks(capsys):
    """At least 300 checks from at least 40 sources, each with its entry in the bibliography."""
    ids = collected("tests/published")
    sources = {source_of(each) for each in ids}
    with capsys.disabled():
        print(f"\n{len(ids)} outside checks from {len(sources)} sources")
    assert sources <= set(BIBLIOGRAPHY)
    assert len(ids) >= LEAST_CHECKS
    assert len(sources) >= LEAST_SOURCES
