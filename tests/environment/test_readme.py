"""What the README promises is there: files, commands and verbs."""

import re
import subprocess
import sys

import pytest

from tests.environment.small_project import ROOT, SET_UP_FILES

README = (ROOT / "README.md").read_text(encoding="utf-8")
COMMANDS = re.findall(r"^python3 (\S+\.py|-m \S+)(?: (\w+))?", README, re.MULTILINE)


@pytest.mark.parametrize("target", sorted(set(re.findall(r"\]\(([^)]+)\)", README))))
def test_each_link_leads_to_a_file(target):
    """Each link of the README leads to something in the project."""
    assert (ROOT / target).exists()


def test_first_screen_has_job_picture_and_limits():
    """The job, a picture and what the workbook is not come before the first command."""
    first = README.split("```")[0]
    assert re.search(r"!\[[^\]]{20,}\]\(workbook/pictures/", first)
    assert "not a repair procedure" in first.lower()


def test_commands_were_found():
    """The README shows the two commands and the marking of a class."""
    assert {
        ("workbook/open.py", ""),
        ("tests/run.py", ""),
        ("-m grading", "demo"),
        ("-m grading", "mark"),
    } <= set(COMMANDS)


@pytest.mark.parametrize("verb", sorted({verb for script, verb in COMMANDS if script == "-m grading"}))
def test_each_verb_answers(verb):
    """Each verb of marking that the README shows is there and explains itself."""
    command = [sys.executable, "-m", "grading", verb, "--help"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    assert "Usage: python -m grading" in done.stdout


def test_continuous_integration_runs_the_same_command():
    """The script for continuous integration is sound, can be run, and ends with the tests' command."""
    script = ROOT / ".ci" / "run"
    assert script.stat().st_mode & 0o111
    assert subprocess.run(["bash", "-n", script], check=False).returncode == 0
    assert script.read_text().rstrip().splitlines()[-1] == 'exec python3 tests/run.py "$@"'


def test_learners_bundle_can_open_the_workbook(tmp_path):
    """The bundle for learners holds all that the opening command needs."""
    import zipfile

    from grading.class_settings import SHIPPED_CLASS_FILE
    from grading.pack import pack_workbook

    path, _ = pack_workbook(ROOT, tmp_path, class_file=SHIPPED_CLASS_FILE)
    names = {name.split("/", 1)[1] for name in zipfile.ZipFile(path).namelist()}
    assert {
        "requirements.txt",
        "workbook/check_pages.py",
        *(f"workbook/{name}" for name in SET_UP_FILES),
    } <= names
