"""JupyterLab as the command opens it: for this machine only, with its token, once for each workbook."""

import http.client
import json
import os
import shutil
import signal
import subprocess
import sys
import threading
import time
import urllib.error
import urllib.request
from pathlib import Path

import pytest

import lab_server
from tests.environment.small_project import LIMIT_S, ROOT, SET_UP_FILES


def answer_to(address):
    """Return status and target of an address, without following where it leads."""
    host, path = address.removeprefix("http://").split("/", 1)
    connection = http.client.HTTPConnection(host, timeout=10)
    connection.request("GET", f"/{path}")
    answer = connection.getresponse()
    return answer.status, answer.getheader("Location")


def test_server_listens_on_this_machine_only():
    """The server is told to use the loopback address, and no token stands on its command line."""
    arguments = lab_server.lab_arguments(port=9999, state=Path("/state"), root_folder=Path("/pages"))
    assert "--ServerApp.ip=127.0.0.1" in arguments
    assert "--ServerApp.root_dir=/pages" in arguments
    assert not any("token" in argument for argument in arguments)


def test_door_opens_once():
    """The browser's address leads to the page once; after that, and without the key, nobody gets in."""
    door = lab_server.Door("http://127.0.0.1:1/page?token=secret")
    keeper = threading.Thread(target=door.stay_open, daemon=True)
    keeper.start()
    assert answer_to(door.address.rsplit("/", 1)[0] + "/guess") == (404, None)
    assert answer_to(door.address) == (302, "http://127.0.0.1:1/page?token=secret")
    keeper.join(timeout=LIMIT_S)
    with pytest.raises(ConnectionRefusedError):
        answer_to(door.address)


def test_browser_is_sent_through_the_door(monkeypatch):
    """The browser is given an address without the token, and is led to the one with it."""
    seen = []

    class Browser:
        def open(self, address):
            seen.append(address)
            seen.append(answer_to(address))

    monkeypatch.setattr(lab_server.webbrowser, "get", Browser)
    lab_server.show_in_browser("http://127.0.0.1:1/page?token=secret")
    assert "secret" not in seen[0]


def test_no_browser_is_said(monkeypatch, capsys):
    """Where no browser can show a window the printed address has to do, and that is said."""
    monkeypatch.delenv("BROWSER", raising=False)
    monkeypatch.setattr(lab_server.webbrowser, "get", lambda: lab_server.webbrowser.GenericBrowser("lynx"))
    lab_server.show_in_browser("http://127.0.0.1:1/")
    assert "No browser was found" in capsys.readouterr().out


def test_server_that_ends_at_once(tmp_path):
    """A server that cannot start is reported with the last thing it said and the file with the rest."""
    log = tmp_path / "server.log"
    log.write_text("loading\nport taken\n\n")
    process = subprocess.Popen([sys.executable, "-c", "pass"])
    process.wait()
    server = lab_server.Server(port=lab_server.free_port(None), token="none")
    with pytest.raises(lab_server.SetUpError, match=r"JupyterLab stopped at once: port taken \(all it"):
        lab_server.wait_until_it_answers(server, process, log)


@pytest.fixture
def workbook(tmp_path):
    """Return a workbook folder of its own whose environment is the one of these tests."""
    root = tmp_path / "Übung 3" / "second plate"
    shutil.copytree(
        ROOT / "workbook" / "exercise_forms" / "lab", root / "workbook" / "exercise_forms" / "lab"
    )
    for name in SET_UP_FILES:
        shutil.copy(ROOT / "workbook" / name, root / "workbook" / name)
    shutil.copy(ROOT / "workbook" / "0_start_here.ipynb", root / "workbook")
    (root / ".venv" / "second_plate").mkdir(parents=True)
    return root / "workbook"


def opening(workbook, *arguments):
    """Start the command with the environment of these tests and return its process."""
    code = "import sys; from lab_server import *; "
    code += "sys.exit(open_workbook(sys.executable, browser=False, port=whole_port(sys.argv[1])))"
    return subprocess.Popen(
        [sys.executable, "-c", code, *arguments],
        env=os.environ | {"PYTHONPATH": str(workbook)},
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )


def wait_for_address(process):
    """Return the address that the command prints once the workbook is open."""
    printed = []
    for line in process.stdout:
        printed.append(line)
        if line.startswith("The workbook is open at "):
            return line.removeprefix("The workbook is open at ").strip()
    return pytest.fail(f"no address in what the command printed: {printed}")


@pytest.mark.slow
def test_workbook_opens_once_and_stops_in_order(workbook):
    """The page is there for who has the token; a second run finds the first; Ctrl-C stops all of it."""
    port = str(lab_server.free_port(None))
    process = opening(workbook, port)
    try:
        address = wait_for_address(process)
        token = address.split("token=")[1]
        server = lab_server.Server(port=int(port), token=token)
        assert address == f"http://127.0.0.1:{port}/doc/tree/0_start_here.ipynb?token={token}"
        assert server.ask("api/contents/0_start_here.ipynb")
        assert not lab_server.Server(port=int(port), token="guess").ask("api/contents/0_start_here.ipynb")
        assert server.ask("api/kernels", method="POST") or kernels(server)
        (kernel,) = kernels(server)
        again = opening(workbook, str(lab_server.free_port(None)))
        printed, _ = again.communicate(timeout=LIMIT_S)
        assert again.returncode == 0
        assert address in printed
        assert "It was open already" in printed
        process.send_signal(signal.SIGINT)
        printed, _ = process.communicate(timeout=LIMIT_S)
        assert process.returncode == 0
        assert "Stopping the workbook" in printed
        assert not server.ask("api/status")
        assert list(workbook.parent.glob(".venv/second_plate/runtime/jpserver-*")) == []
        assert not still_running(kernel["id"])
    finally:
        process.kill()


def kernels(server):
    """Return the kernels that run under a server."""
    request = urllib.request.Request(server.address("api/kernels"))
    with urllib.request.build_opener(urllib.request.ProxyHandler({})).open(request, timeout=10) as answer:
        return json.load(answer)


def still_running(kernel_id):
    """Tell whether a process with this kernel's connection file is there, after giving it a moment to end."""
    for _ in range(50):
        listed = subprocess.run(["ps", "-eo", "args"], capture_output=True, text=True, check=True).stdout
        if kernel_id not in listed:
            return False
        time.sleep(0.1)
    return True
