"""A learner's server under a hub: own pages, the workbook's settings; a configuration that lets nobody in."""

import json
import os
import re
import sys
from pathlib import Path

import pytest
from traitlets.config import PyFileConfigLoader

import hub_server
import lab_server
from grading.learners import learner_of
from tests.environment.small_project import ROOT

pytestmark = pytest.mark.skipif(os.name == "nt", reason="hubs run on Linux only")

HUB = ROOT / "instructor_notes" / "hub"


@pytest.fixture
def folder(tmp_path):
    """Return a learner's folder as the server lays it out."""
    hub_server.lay_out(tmp_path / "second_plate", learner="Ann Holt")
    return tmp_path / "second_plate"


def test_a_learner_gets_the_pages_and_nothing_else(folder):
    """Every page is there, byte for byte, with the learner signed in; code and class file are not copied."""
    pages = {path.relative_to(ROOT / "workbook") for path in (ROOT / "workbook").rglob("*.ipynb")}
    pages = {page for page in pages if ".ipynb_checkpoints" not in page.parts}
    files = {path.relative_to(folder) for path in folder.rglob("*") if path.is_file()}
    assert files == pages | {Path("learner.json")}
    assert all((folder / page).read_bytes() == (ROOT / "workbook" / page).read_bytes() for page in pages)
    assert learner_of(folder).display_name == "Ann Holt"
    assert folder.stat().st_mode & 0o077 == 0


def test_what_a_learner_has_stays(folder):
    """Starting again brings back a page that was deleted, and leaves changed pages, answers and the name."""
    changed, gone = folder / "0_start_here.ipynb", folder / "1_stud_welding" / "stud_welding.ipynb"
    changed.write_text("written in")
    gone.unlink()
    (folder / "answers.jsonl").write_text("{}\n")
    hub_server.lay_out(folder, learner="somebody else")
    assert changed.read_text() == "written in"
    assert gone.exists()
    assert (folder / "answers.jsonl").read_text() == "{}\n"
    assert learner_of(folder).display_name == "Ann Holt"


def test_pages_look_as_they_do_at_home(tmp_path):
    """The server gets every setting that `open.py` gives its own, but for where it listens."""
    own = lab_server.lab_arguments(port=9999, state=tmp_path, root_folder=tmp_path)
    where = ("--no-browser", "--ServerApp.ip", "--ServerApp.port", "--ServerApp.password")
    wanted = [argument for argument in own if not argument.startswith(where)]
    given = hub_server.server_arguments(tmp_path, tmp_path)
    assert [argument for argument in given if argument in wanted] == wanted
    assert not [argument for argument in given if argument.startswith(where)]
    assert "--ServerApp.terminals_enabled=False" in given


def test_configuration_lets_nobody_in_by_itself():
    """As it stands: one group of the system's own users, this machine's own address, no administrators."""
    config = PyFileConfigLoader(str(HUB / "jupyterhub_config.py")).load_config()
    assert config.JupyterHub.authenticator_class == "pam"
    assert config.Authenticator.allow_all is False
    assert "admin_users" not in config.Authenticator
    assert config.JupyterHub.bind_url.startswith("http://127.0.0.1:")
    assert config.Spawner.cmd == [sys.executable, "-m", "hub_server"]


def test_proxy_is_one_exact_version_and_names_no_place():
    """The lock holds the version that is asked for, a digest for each package, and no address."""
    lock = (HUB / "package-lock.json").read_text()
    wanted = json.loads((HUB / "package.json").read_text())["dependencies"]
    packages = json.loads(lock)["packages"]
    assert {name: packages[f"node_modules/{name}"]["version"] for name in wanted} == wanted
    assert all("integrity" in each for name, each in packages.items() if name)
    assert not re.search(r"https?://", lock)
