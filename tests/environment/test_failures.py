"""Each thing that can be wrong with a machine is said in one sentence, and the exit code says so as well."""

import os
import shutil
import socket
import subprocess
import sys
from pathlib import Path

import pytest

import environment
import lab_server
import set_up_steps
from tests.environment.small_project import ROOT, SmallProject, one_sentence
from tests.environment.tiny_packages import write_wheel

MEGABYTE = 2**20
OLD_PYTHONS = sorted(Path.home().glob(".pyenv/versions/*/bin/python"))
PRINTS_VERSION = "import sys; print(sys.version_info[:2] < (3, 11))"


@pytest.fixture
def small_disk(tmp_path):
    """Return a function that mounts a disk of so many megabytes, or makes it read-only afterwards."""
    if os.name == "nt" or os.geteuid() != 0 or not shutil.which("mount"):
        pytest.skip("a small disk can only be mounted by root")
    place = tmp_path / "small disk"
    place.mkdir()

    def mount(options):
        done = subprocess.run(
            ["mount", "-t", "tmpfs", "-o", options, "tmpfs", place], capture_output=True, check=False
        )
        if done.returncode:
            pytest.skip("this machine does not let a small disk be mounted")
        return place

    yield mount
    subprocess.run(["umount", "--lazy", place], capture_output=True, check=False)


@pytest.mark.parametrize(("megabytes", "filling"), [(6, 0), (60, 60)], ids=["venv", "pip"])
def test_full_disk(small_disk, megabytes, filling):
    """A disk that fills up, while venv or pip works, is named, and half an environment does not stay."""
    disk = small_disk(f"size={megabytes}m")
    project = SmallProject(disk / "second plate")
    elsewhere = disk.with_name("wheels elsewhere")
    elsewhere.mkdir()
    wheel = write_wheel(elsewhere, "tiny_tool", "version = '1.0'\n", filling_bytes=filling * MEGABYTE)
    project.require("requirements.txt", wheel)
    code, _, complaint = project.run()
    assert code == 1
    assert one_sentence(complaint)
    assert complaint.startswith("The disk is full")
    assert not project.venv.exists()


def test_folder_that_cannot_be_written(small_disk):
    """A project on a read-only disk cannot be set up, and the sentence says what to do."""
    project = SmallProject(small_disk("size=2m") / "second plate")
    small_disk("remount,ro")
    code, _, complaint = project.run()
    assert code == 1
    assert one_sentence(complaint)
    assert "copy the project to a folder of your own" in complaint


@pytest.mark.parametrize(
    ("output", "expected"),
    [
        (
            "ERROR: Could not install packages due to an OSError: [Errno 28] No space left on device",
            "disk is full",
        ),
        ("OSError: [WinError 112] There is not enough space on the disk", "disk is full"),
        ("because ensurepip is not\navailable. ensurepip is not available", "without its venv module"),
        ("HINT: ... does not have Windows Long Path support enabled", "too long for Windows"),
        ("WARNING: Retrying ... Failed to establish a new connection: [Errno 111]", "cannot reach"),
        ("ERROR: [Errno 13] Permission denied: 'x'", "cannot be written"),
    ],
)
def test_what_pip_and_venv_print_is_understood(tmp_path, output, expected):
    """The signs that pip and venv print on each system lead to the sentence for them."""
    error = set_up_steps.failure(output, tmp_path / ".venv")
    assert expected in str(error)
    assert one_sentence(str(error))


def test_retries_that_went_well_are_not_blamed(tmp_path):
    """A retry early in pip's output is not taken for the reason of a failure at its end."""
    output = (
        "WARNING: Retrying ... Read timed out\n"
        + "Collecting more\n" * 30
        + "ERROR: No matching distribution\n"
    )
    assert set_up_steps.failure(output, tmp_path / ".venv") is None


def test_unknown_failure_gives_the_error_and_the_place_of_the_rest(tmp_path):
    """A failure of a kind not met before gives its first error and a file with all that was printed."""
    error = set_up_steps.unknown_failure(
        ["python", "-m", "pip"], "Collecting x\nERROR: odd.\nmore\n", tmp_path / ".venv"
    )
    assert str(error).startswith("pip failed: ERROR: odd (all it printed is in ")
    assert one_sentence(str(error))
    assert "more" in (tmp_path / ".venv-failed.log").read_text()


def test_python_without_venv_module(tmp_path, monkeypatch):
    """A Python that came without its venv module is told apart before anything is made."""
    monkeypatch.setattr(
        set_up_steps.importlib.util, "find_spec", lambda name: None if name == "ensurepip" else name
    )
    with pytest.raises(set_up_steps.SetUpError, match="without its venv module.*python3-venv"):
        set_up_steps.make_venv(tmp_path / ".venv", keep_open=0)
    assert list(tmp_path.iterdir()) == []


def test_environment_in_use(tmp_path, monkeypatch):
    """An environment that a running program holds cannot be replaced; the sentence says what to close."""

    def refuse(folder):
        raise PermissionError(13, "in use", str(folder))

    monkeypatch.setattr(environment, "remove", refuse)
    with pytest.raises(set_up_steps.SetUpError, match="is in use: close the workbook's windows"):
        environment.clear(tmp_path)


def test_port_in_use():
    """A port that another program has is named with what to do; without a wish the next free one is taken."""
    with socket.create_server(("127.0.0.1", 0)) as other:
        port = other.getsockname()[1]
        with pytest.raises(
            set_up_steps.SetUpError, match=f"Port {port} is in use or not allowed: leave --port away"
        ):
            lab_server.free_port(port)
    with socket.create_server(("127.0.0.1", 0)) as other:
        first = other.getsockname()[1]
        assert lab_server.free_port(None) != first


@pytest.mark.parametrize("port", ["0", "65536", "eight", "-1", "1.5", "\u0661"])
def test_port_that_is_none(project, port):
    """A port that cannot be one is refused by name before anything is started."""
    code, printed, complaint = project.run(f"--port={port}")
    assert (code, printed) == (2, "")
    assert f"port must be a whole number from 1 to 65535, got '{port}'" in complaint


def too_old(python):
    """Tell whether an installed Python is older than the oldest that fits."""
    done = subprocess.run([python, "-c", PRINTS_VERSION], capture_output=True, text=True, check=False)
    return done.stdout.strip() == "True"


@pytest.mark.parametrize("script", ["workbook/open.py", "tests/run.py"])
def test_too_old_python_is_refused(script):
    """Each older Python on this machine reads both commands and says in one sentence what to install."""
    old = [python for python in OLD_PYTHONS if too_old(python)]
    if not old:
        pytest.skip("no older Python is installed beside this one")
    for python in old:
        done = subprocess.run(
            [python, ROOT / script, "--check"], env={"PATH": ""}, capture_output=True, text=True, check=False
        )
        assert done.returncode == 1
        assert one_sentence(done.stderr.strip())
        assert done.stderr.startswith("Too old: this is Python ")
        assert "needs Python 3.11 to 3.13" in done.stderr


def test_too_old_python_hands_over(tmp_path):
    """An older Python starts the same command with a fitting one that is installed as well."""
    old = [python for python in OLD_PYTHONS if too_old(python)]
    if not old:
        pytest.skip("no older Python is installed beside this one")
    name = "python{}.{}".format(*sys.version_info[:2])
    (tmp_path / name).symlink_to(sys.executable)
    done = subprocess.run(
        [old[-1], ROOT / "workbook" / "open.py", "--help"],
        env={"PATH": str(tmp_path)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0
    assert f"Using {name} instead of Python" in done.stderr
    assert "--no-browser" in done.stdout
