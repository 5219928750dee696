"""Starts JupyterLab on the start page for this machine only, or finds the one that is running already.

Standard library only. The token goes to the server in a variable and to the browser through a door that opens
once, so that it never stands on a command line, where other users of the machine could read it.
"""

import argparse
import http
import http.client
import http.server
import json
import os
import secrets
import signal
import socket
import subprocess
import threading
import time
import urllib.error
import urllib.request
import webbrowser
from dataclasses import dataclass

from environment import WORKBOOK, lab_variables, only_one, state_folder
from set_up_steps import SetUpError

HOST = "127.0.0.1"
FIRST_PORT = 8888
PORTS_TRIED = 100
LAST_PORT = 65535
START_PAGE = "0_start_here.ipynb"
START_LIMIT_S = 180  # the first start on a slow disk compiles every package
END_LIMIT_S = 20
DOOR_LIMIT_S = 60


@dataclass(frozen=True, kw_only=True)
class Server:
    """A JupyterLab on this machine: where it listens, and the token that lets in."""

    port: int
    token: str

    def address(self, path):
        """Return a full address with the token in it."""
        return f"http://{HOST}:{self.port}/{path}?token={self.token}"

    def ask(self, path, *, method="GET"):
        """Send a request without any proxy and tell whether it was answered well."""
        opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
        headers = {"Authorization": f"token {self.token}"}
        request = urllib.request.Request(f"http://{HOST}:{self.port}/{path}", headers=headers, method=method)
        try:
            with opener.open(request, timeout=5) as answer:
                return answer.status == http.HTTPStatus.OK
        except (urllib.error.URLError, OSError, http.client.HTTPException):
            return False


def whole_port(text):
    """Read a port number from the command line."""
    if not text.isascii() or not text.isdigit() or not 1 <= int(text) <= LAST_PORT:
        message = f"port must be a whole number from 1 to {LAST_PORT}, got {text!r}"
        raise argparse.ArgumentTypeError(message)
    return int(text)


def lab_arguments(*, port, state, root_folder=WORKBOOK):
    """Return what stands behind `python -m jupyterlab`; the token is given in the variable JUPYTER_TOKEN."""
    return [
        "--no-browser",
        f"--ServerApp.ip={HOST}",
        f"--ServerApp.port={port}",
        "--ServerApp.port_retries=0",
        "--ServerApp.password=",
        *page_arguments(state=state, root_folder=root_folder),
    ]


def page_arguments(*, state, root_folder):
    """Return the arguments that make any Jupyter server show a folder's pages as the workbook's are shown."""
    lab = WORKBOOK / "exercise_forms" / "lab"
    arguments = [
        f"--ServerApp.root_dir={root_folder}",
        "--ServerApp.terminals_enabled=False",
        "--ServerApp.log_level=WARN",
        "--LabApp.extension_manager=readonly",
        "--LabApp.news_url=",
        "--LabApp.check_for_updates_class=jupyterlab.NeverCheckForUpdate",
        f"--LabApp.extra_labextensions_path={lab}",
        f"--LabApp.app_settings_dir={lab / 'settings'}",
        f"--LabApp.user_settings_dir={state / 'user_settings'}",
        f"--LabApp.workspaces_dir={state / 'workspaces'}",
    ]
    as_root = hasattr(os, "geteuid") and os.geteuid() == 0
    return arguments + (["--allow-root"] if as_root else [])


def open_workbook(python, *, port=None, browser=True):
    """Open the workbook, stay until it is stopped, and return the exit code."""
    state = state_folder()
    with only_one(state / "start.lock", "Another run is opening the workbook: waiting for it."):
        server, process = running_server(state), None
        if server is None:
            server, process = start_server(python, free_port(port), state)
    print(f"The workbook is open at {server.address(f'doc/tree/{START_PAGE}')}", flush=True)
    if browser:
        show_in_browser(server.address(f"doc/tree/{START_PAGE}"))
    if process is None:
        print("It was open already: stop it where it was started, or with File, Shut Down on its page.")
        return 0
    print("Press Ctrl-C here to stop it; every answer that the page called saved stays.", flush=True)
    return wait_for_end(process, server)


def running_server(state):
    """Return the server that an earlier run left open on this workbook, or None."""
    for path in sorted((state / "runtime").glob("jpserver-*.json")):
        try:
            content = json.loads(path.read_text(encoding="utf-8"))
            server = Server(port=int(content["port"]), token=str(content["token"]))
        except (OSError, ValueError, KeyError):
            continue  # half written or just removed: not a server that is up
        if server.ask("api/status"):
            return server
    return None


def free_port(asked):
    """Return the port asked for, or the first free one; raise SetUpError where there is none."""
    wanted = [asked] if asked else range(FIRST_PORT, FIRST_PORT + PORTS_TRIED)
    for port in wanted:
        with socket.socket(socket.AF_INET, socket.SOCK_STREAM) as trial:
            if os.name != "nt":  # there it would let two programs share a port
                trial.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            try:
                trial.bind((HOST, port))
            except OSError:
                continue
            return port
    if asked:
        message = f"Port {asked} is in use or not allowed: leave --port away, or name another port."
    else:
        message = f"No port from {wanted[0]} to {wanted[-1]} is free: name another one with --port."
    raise SetUpError(message)


def start_server(python, port, state):
    """Start JupyterLab and return it with its process once it answers."""
    server = Server(port=port, token=secrets.token_urlsafe(24))
    log = state / "server.log"
    print("Starting JupyterLab ...", flush=True)
    with log.open("wb") as output:
        process = subprocess.Popen(
            [str(python), "-m", "jupyterlab", *lab_arguments(port=port, state=state)],
            cwd=WORKBOOK,
            env=lab_variables() | {"JUPYTER_TOKEN": server.token},
            stdin=subprocess.DEVNULL,
            stdout=output,
            stderr=subprocess.STDOUT,
            **apart(),
        )
    try:
        wait_until_it_answers(server, process, log)
    except BaseException:
        process.kill()
        raise
    return server, process


def apart():
    """Return what keeps Ctrl-C from the server itself: it is stopped in good order by `wait_for_end`."""
    if os.name == "nt":
        return {"creationflags": subprocess.CREATE_NEW_PROCESS_GROUP}
    return {"start_new_session": True}


def wait_until_it_answers(server, process, log):
    """Wait for the first answer; raise SetUpError where the process ends or nothing comes."""
    limit = time.monotonic() + START_LIMIT_S
    while not server.ask("api/status"):
        if process.poll() is not None:
            lines = log.read_text(encoding="utf-8", errors="replace").split("\n")
            last = next((line.strip() for line in reversed(lines) if line.strip()), "it printed nothing")
            message = f"JupyterLab stopped at once: {last} (all it printed is in {log})."
            raise SetUpError(message)
        if time.monotonic() > limit:
            message = f"JupyterLab did not answer within {START_LIMIT_S} s (what it printed is in {log})."
            raise SetUpError(message)
        time.sleep(0.2)


def wait_for_end(process, server):
    """Stay until the server ends by itself, or end it and its kernels on Ctrl-C or when the window closes."""
    for name in ("SIGTERM", "SIGHUP"):
        if hasattr(signal, name):
            signal.signal(getattr(signal, name), signal.default_int_handler)
    try:
        while process.poll() is None:
            time.sleep(0.2)  # waiting for the process itself would not let Ctrl-C in on Windows
        return process.returncode
    except KeyboardInterrupt:
        print("\nStopping the workbook ...", flush=True)
        server.ask("api/shutdown", method="POST")
        try:
            process.wait(END_LIMIT_S)
        except subprocess.TimeoutExpired:
            process.kill()
        return 0


def show_in_browser(address):
    """Open an address in the browser; where none can show a window, the printed address has to do."""
    try:
        controller = webbrowser.get()
    except webbrowser.Error:
        controller = None
    text_only = type(controller) is webbrowser.GenericBrowser and "BROWSER" not in os.environ
    if controller is None or text_only:
        print("No browser was found: open the address above in one on this machine.", flush=True)
        return
    door = Door(address)
    threading.Thread(target=door.stay_open, daemon=True).start()
    threading.Thread(target=controller.open, args=(door.address,), daemon=True).start()
    door.used.wait(DOOR_LIMIT_S)
    if not door.used.is_set():
        print("No browser came: open the address above in one on this machine.", flush=True)


class Door(http.server.HTTPServer):
    """Sends the first browser that knows the key on to an address, and is shut from then on."""

    def __init__(self, address):
        """Listen on any free port of this machine."""
        super().__init__((HOST, 0), DoorKeeper)
        self.key, self.leads_to, self.used = secrets.token_urlsafe(24), address, threading.Event()
        self.address = f"http://{HOST}:{self.server_port}/{self.key}"

    def stay_open(self):
        """Answer until the key was used or the time is up."""
        self.timeout, limit = 1, time.monotonic() + DOOR_LIMIT_S
        while not self.used.is_set() and time.monotonic() < limit:
            self.handle_request()
        self.server_close()


class DoorKeeper(http.server.BaseHTTPRequestHandler):
    """Answers one request at the door."""

    def do_GET(self):  # noqa: N802 (the name is the base class's)
        """Let in who brings the key, once."""
        if self.path != f"/{self.server.key}":
            self.send_error(http.HTTPStatus.NOT_FOUND)
            return
        self.send_response(http.HTTPStatus.FOUND)
        self.send_header("Location", self.server.leads_to)
        self.send_header("Cache-Control", "no-store")
        self.end_headers()
        self.server.used.set()

    def log_message(self, *_):
        """Keep the terminal quiet."""
