"""What the two commands do on first use, on later use, and with what an interrupted run left behind.

Making an environment takes seconds: the tests share one and go through its life in the order they stand in.
"""

import json
import signal
import socket
import subprocess

import pytest

import environment
from tests.environment.small_project import LIMIT_S, one_sentence
from tests.environment.tiny_packages import write_wheel

AT_ONCE_S = 20  # far below what pip would wait for its index


def inside(project, code):
    """Run Python code in the project's environment, from another folder, and return what it prints."""
    command = [str(project.venv / "bin" / "python"), "-c", code]
    return subprocess.run(command, cwd="/", capture_output=True, text=True, check=True).stdout.strip()


def test_first_run_makes_the_environment_and_says_so(ready):
    """The first run installs, tells what it is doing, and then does what it was asked."""
    code, printed, complaint = ready.first_run
    assert (code, complaint) == (0, "")
    assert "Making the environment" in printed
    assert "Installing packages" in printed
    assert printed.endswith("checked with 1.0\n")


def test_strange_environment_is_put_aside(ready):
    """An environment that this project did not make is in the way at first, and kept under another name."""
    (aside,) = ready.root.glob(".venv-before-*")
    assert str(aside) in ready.first_run[1]
    assert (aside / "somebody's work").exists()


def test_second_run_changes_nothing(ready):
    """A run with a whole environment says nothing of a set-up and installs nothing."""
    before = ready.stamp.stat().st_mtime_ns
    assert ready.run() == (0, "checked with 1.0\n", "")
    assert ready.stamp.stat().st_mtime_ns == before


def test_both_folders_of_code_are_found(ready):
    """The environment's Python imports what lies in project and workbook, whatever the path's letters."""
    found = inside(ready, "import check_pages, tests.run; print(check_pages.__file__)")
    assert found.endswith("checked with 1.0\n" + str(ready.root / "workbook" / "check_pages.py"))


def test_tests_command_adds_its_packages_and_gives_the_exit_code(ready):
    """The tests' command keeps the environment, adds the tests' packages and ends with pytest's exit code."""
    code, printed, complaint = ready.run("-k", "oxygen", script="tests/run.py")
    assert (code, complaint) == (5, "")
    assert printed.endswith("tests with -k oxygen\n")
    assert "Making the environment" not in printed
    assert ready.run("-q", script="tests/run.py") == (5, "tests with -q\n", "")


def test_everything_is_run_in_two_rounds(ready):
    """Without arguments browser and environment are tested after the others, even where those fail."""
    code, printed, complaint = ready.run(script="tests/run.py")
    assert (code, complaint) == (5, "")
    assert printed.splitlines()[-2:] == [
        "tests with -n auto --ignore=tests/browser --ignore=tests/environment",
        "tests with -n auto --maxprocesses=2 --dist=loadfile --no-loadscope-reorder "
        "tests/browser tests/environment",
    ]


def test_learner_programs_do_not_get_in(ready, tmp_path):
    """Another Python's packages, named in a variable of the shell, are not seen."""
    (tmp_path / "tiny_tool.py").write_text("version = 'a stranger'\n")
    assert ready.run(PYTHONPATH=str(tmp_path), PYTHONHOME="") == (0, "checked with 1.0\n", "")


@pytest.mark.parametrize(
    ("change", "value"),
    [("location", "/elsewhere/.venv"), ("python", "3.9.1"), ("requirements", 5)],
)
def test_stamp_that_does_not_fit_is_not_trusted(ready, monkeypatch, change, value):
    """A stamp of another folder or another Python, or a damaged one, counts as none."""
    whole = ready.stamp.read_text()
    assert environment.read_stamp(ready.root) is not None
    ready.stamp.write_text(json.dumps(json.loads(whole) | {change: value}))
    assert environment.read_stamp(ready.root) is None
    ready.stamp.write_text(whole[: len(whole) // 2])
    assert environment.read_stamp(ready.root) is None
    ready.stamp.write_text(whole)
    assert environment.read_stamp(ready.root) is not None


def test_comments_of_requirements_change_nothing(ready):
    """A new comment or blank line in a requirement file is no reason to install again."""
    path = ready.root / "requirements.txt"
    path.write_text(
        f"# a reason\n\n{path.read_text(encoding='utf-8').strip()}  # another\n", encoding="utf-8"
    )
    assert ready.run() == (0, "checked with 1.0\n", "")


def test_changed_requirements_are_installed(ready):
    """A new pin is installed into the environment that is there."""
    newer = write_wheel(ready.wheels, "tiny_tool", "version = '1.1'\n", version="1.1")
    ready.require("requirements.txt", newer)
    code, printed, _ = ready.run()
    assert code == 0
    assert "Making the environment" not in printed
    assert printed.endswith("checked with 1.1\n")


def test_moved_project_gets_a_new_environment(ready):
    """A project that was moved makes its environment again, since its programs point to the old place."""
    moved = ready.root.with_name("moved plate")
    ready.root.rename(moved)
    ready.root = moved
    code, printed, complaint = ready.run()
    assert (code, complaint) == (0, "")
    assert "making it again" in printed
    assert json.loads(ready.stamp.read_text())["location"] == str(ready.venv)


def test_index_out_of_reach(ready):
    """Where pip cannot reach its index, the sentence says so, and nothing counts as finished."""
    ready.require_from_index()
    code, _, complaint = ready.run()
    assert code == 1
    assert one_sentence(complaint)
    assert "pip cannot reach its package index" in complaint
    assert not ready.stamp.exists()


def test_unfinished_environment_is_made_again(ready):
    """After a run that did not come to its end, the next one clears away what it left and ends well."""
    (ready.venv / "rubbish").touch()
    ready.require("requirements.txt", ready.wheels / "tiny_tool-1.0-py3-none-any.whl")
    code, printed, complaint = ready.run()
    assert (code, complaint) == (0, "")
    assert "making it again" in printed
    assert not (ready.venv / "rubbish").exists()


def test_interrupted_run_is_noticed(ready):
    """A run stopped while pip waits for its index ends at once, with its pip, and leaves no stamp."""
    with socket.create_server(("127.0.0.1", 0)) as silent:
        ready.require_from_index()
        index = f"http://127.0.0.1:{silent.getsockname()[1]}/"
        process = ready.start(PIP_INDEX_URL=index, PIP_DEFAULT_TIMEOUT=str(LIMIT_S))
        silent.settimeout(LIMIT_S)
        connection, _ = silent.accept()
        process.send_signal(signal.SIGINT)
        _, complaint = process.communicate(timeout=AT_ONCE_S)
        connection.settimeout(LIMIT_S)
        while connection.recv(4096):
            pass  # ends when pip has gone
    assert process.returncode == 130
    assert "Stopped during the set-up" in complaint
    assert not ready.stamp.exists()


def test_two_runs_at_once_make_one_environment(project):
    """The second of two runs waits for the first, and both end well with one environment."""
    processes = [project.start() for _ in range(2)]
    printed = [process.communicate(timeout=LIMIT_S)[0] for process in processes]
    assert [process.returncode for process in processes] == [0, 0]
    assert sorted("waiting for it" in text for text in printed) == [False, True]
    assert sorted("Making the environment" in text for text in printed) == [False, True]
