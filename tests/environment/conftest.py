"""Small projects to set up: one for each test, and one that a file's tests share."""

import signal

import pytest

from tests.environment.small_project import SmallProject


@pytest.fixture
def project(tmp_path):
    """Return a small project, not set up yet, in a folder with spaces and letters beyond ASCII."""
    return SmallProject(tmp_path / "Werkstatt Übung 2" / "second plate")


@pytest.fixture(scope="module")
def ready(tmp_path_factory):
    """Return a small project whose environment is made, after a strange one; a file's tests share it."""
    small = SmallProject(tmp_path_factory.mktemp("shared") / "Werkstatt Übung 1" / "second plate")
    small.venv.mkdir()
    (small.venv / "somebody's work").touch()
    small.first_run = small.run()
    return small


@pytest.fixture(autouse=True, scope="session")
def interruptible():
    """Let Ctrl-C reach what these tests start, even where they run in the background, which ignores it."""
    before = signal.signal(signal.SIGINT, signal.default_int_handler)
    yield
    signal.signal(signal.SIGINT, before)
