"""A school's machine for a test: the learners' bundle, a real hub with its proxy, learners without accounts.

The hub runs with the configuration of the instructor's notes as it stands. What a test cannot have, users of
the system and a fixed port, is given on the command line instead.
"""

import compileall
import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
import zipfile
from pathlib import Path

import lab_server
from grading.class_settings import SHIPPED_CLASS_FILE
from grading.pack import FOLDER as BUNDLE_FOLDER
from grading.pack import pack_workbook

ROOT = Path(__file__).parents[2]
CONFIGURATION = ROOT / "instructor_notes" / "hub" / "jupyterhub_config.py"
PROXY = CONFIGURATION.parent / "node_modules" / ".bin" / "configurable-http-proxy"
START_LIMIT_S = 90
END_LIMIT_S = 60


def what_is_missing():
    """Return a sentence on what a hub would need and is not there, or an empty text."""
    if shutil.which("node") is None:
        return "there is no node, which the hub's proxy runs on"
    if not PROXY.exists() and shutil.which(PROXY.name) is None:
        return f"the hub's proxy is not installed: run npm ci in {CONFIGURATION.parent}"
    return ""


def free_ports(count):
    """Return ports that the system picks, so that two runs of the tests do not choose the same ones."""
    probes = [socket.socket() for _ in range(count)]
    for probe in probes:
        probe.bind((lab_server.HOST, 0))
    ports = [probe.getsockname()[1] for probe in probes]
    for probe in probes:
        probe.close()
    return ports


class Hub:
    """A hub on a machine where every one of some names is a learner."""

    def __init__(self, place, learners, *, more=()):
        """Lay out the machine, start the hub and wait until it answers; ``more`` are arguments of its own."""
        self.homes = place / "homes"
        self.bundle = unpacked_bundle(place)
        port, own_port, proxy_port = free_ports(3)
        self.address = f"http://{lab_server.HOST}:{port}"
        state, self.log = place / "hub", place / "hub.log"
        for folder in (self.homes, state):
            folder.mkdir()
        arguments = [
            f"--JupyterHub.bind_url={self.address}",
            f"--JupyterHub.hub_bind_url=http://{lab_server.HOST}:{own_port}",
            f"--ConfigurableHTTPProxy.api_url=http://{lab_server.HOST}:{proxy_port}",
            "--JupyterHub.authenticator_class=dummy",
            f"--DummyAuthenticator.allowed_users={set(learners)!r}",
            "--JupyterHub.spawner_class=simple",
            f"--SimpleLocalProcessSpawner.home_dir_template={self.homes}/{{username}}",
            *more,
        ]
        code = os.pathsep.join((str(self.bundle), str(self.bundle / "workbook")))
        with self.log.open("wb") as output:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "jupyterhub", "-f", str(CONFIGURATION), *arguments],
                cwd=state,
                env=os.environ | {"PYTHONPATH": code},
                stdin=subprocess.DEVNULL,
                stdout=output,
                stderr=subprocess.STDOUT,
            )
        self._wait_until_it_answers()

    def _wait_until_it_answers(self):
        """Wait for the hub's first answer, or fail with the end of what it said."""
        limit = time.monotonic() + START_LIMIT_S
        while not answers(f"{self.address}/hub/health"):
            if self.process.poll() is not None or time.monotonic() > limit:
                self.process.kill()
                said = self.log.read_text(encoding="utf-8", errors="replace")[-2000:]
                message = f"the hub did not start: {said}"
                raise RuntimeError(message)
            time.sleep(0.2)

    def folder(self, learner):
        """Return the folder with a learner's pages and answers."""
        return self.homes / learner / "second_plate"

    def server_address(self, learner, path):
        """Return the address of something on a learner's server."""
        return f"{self.address}/user/{learner}/{path}"

    def stop(self):
        """Stop the hub, which stops the learners' servers and the proxy."""
        self.process.terminate()
        self.process.wait(timeout=END_LIMIT_S)


def unpacked_bundle(place):
    """Make the learners' bundle and unpack it as a school does; return its folder."""
    bundle, _ = pack_workbook(ROOT, place, class_file=SHIPPED_CLASS_FILE)
    with zipfile.ZipFile(bundle) as archive:
        archive.extractall(place / "machine")
    folder = place / "machine" / BUNDLE_FOLDER
    compileall.compile_dir(
        folder, quiet=2, workers=0
    )  # as the note says: learners cannot keep what they compile
    return folder


def answers(address):
    """Tell whether an address answers, without any proxy of the system's."""
    opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
    try:
        with opener.open(address, timeout=5) as answer:
            return answer.status == 200
    except (urllib.error.URLError, OSError):
        return False
