"""Servers for tests, each in a folder of its own and ended with the tests: a cluster, and a PostgreSQL."""

import json
import os
import shutil
import subprocess
import sys
import tempfile
import time
from contextlib import contextmanager
from pathlib import Path

import distributed
import psycopg
import pytest

ROOT = Path(__file__).resolve().parents[2]
START_S = 60.0  # two slow cores may be busy with other tests
PASSWORD = "own words, 7 of them"
_DASK = "from distributed.cli import dask_{0}; dask_{0}.main()"


class Cluster:
    """A scheduler, and workers as separate processes."""

    def __init__(self, folder):
        self._folder, self._processes = folder, []
        self._file = folder / "scheduler.json"
        self._start("scheduler", ROOT, "--host", "127.0.0.1", "--port", "0", "--scheduler-file", self._file)
        self.address = _waited_for(self._address)

    def _address(self):
        """Return the address of the scheduler once it is there."""
        try:
            return json.loads(self._file.read_text())["address"]
        except (FileNotFoundError, ValueError):
            return None

    def worker(self, root=ROOT):
        """Start one more worker, with the project that lies in a folder; return its process."""
        return self._start("worker", root, self.address, "--nthreads", "1", "--no-nanny")

    def wait_for_workers(self):
        """Wait until every worker that runs has joined."""
        running = sum(each.poll() is None for each in self._processes[1:])
        with distributed.Client(self.address, set_as_default=False) as client:
            client.wait_for_workers(running, timeout=START_S)

    def _start(self, what, root, *arguments):
        """Start a process of the cluster in a folder where nothing of the class lies."""
        paths = os.pathsep.join([str(root), str(root / "workbook")])
        with (self._folder / f"{what}_{len(self._processes)}.log").open("wb") as log:
            process = subprocess.Popen(
                [sys.executable, "-c", _DASK.format(what), *map(str, arguments), "--no-dashboard"],
                cwd=self._folder,
                env={**os.environ, "PYTHONPATH": paths},
                stdout=log,
                stderr=log,
            )
        self._processes.append(process)
        return process

    def close(self):
        """End everything."""
        for process in reversed(self._processes):
            process.kill()
            process.wait()


def _waited_for(what):
    """Return what a function gives as soon as it gives something."""
    end = time.monotonic() + START_S
    while time.monotonic() < end:
        found = what()
        if found:
            return found
        time.sleep(0.02)
    message = f"nothing came of {what} within {START_S:.0f} s"
    raise TimeoutError(message)


def postgresql_programs():
    """Return the folder of PostgreSQL's own programs, or None where it is not installed."""
    named = shutil.which("initdb")
    folders = [Path(named).resolve().parent] if named else []
    folders += sorted(Path("/usr/lib/postgresql").glob("*/bin"), reverse=True)
    return next((each for each in folders if (each / "postgres").is_file()), None)


@contextmanager
def cluster():
    """Give a ``Cluster`` that has no workers yet."""
    with tempfile.TemporaryDirectory(prefix="second_plate_") as folder:
        found = Cluster(Path(folder))
        try:
            yield found
        finally:
            found.close()


@contextmanager
def postgresql_server():
    """Give the folder of a running server, which is its address too; skip where none is installed."""
    programs = postgresql_programs()
    if programs is None:
        pytest.skip("no PostgreSQL server is installed")
    folder = Path(tempfile.mkdtemp(prefix="second_plate_"))
    other_user = _other_user(folder)
    data, words = folder / "data", folder / "password"
    words.write_text(PASSWORD)
    words.chmod(0o644)  # in a folder that only the server's user enters
    options = ["-A", "scram-sha-256", "-U", "teacher", "--pwfile", words, "-E", "UTF8", "--no-locale"]
    run = {"cwd": folder, "stdout": subprocess.DEVNULL, "stderr": subprocess.STDOUT, **other_user}
    try:
        subprocess.run([programs / "initdb", "-D", data, *options, "--no-sync"], check=True, **run)
        settings = ["listen_addresses=", "fsync=off", f"unix_socket_directories={folder}"]
        server = subprocess.Popen(
            [programs / "postgres", "-D", data, *(part for each in settings for part in ("-c", each))], **run
        )
        try:
            _waited_for(lambda: _answers(folder))
            yield folder
        finally:
            server.kill()
            server.wait()
    finally:
        shutil.rmtree(folder, ignore_errors=True)


def _other_user(folder):
    """Return what lets a process run as another user where this one is root: the server refuses root."""
    if os.name == "nt" or os.geteuid() != 0:
        return {}
    import pwd

    known = {each.pw_name: each for each in pwd.getpwall()}
    user = known.get("postgres") or known["nobody"]
    os.chown(folder, user.pw_uid, user.pw_gid)
    return {"user": user.pw_uid, "group": user.pw_gid, "extra_groups": []}


def run_there(folder, statement, *, database="postgres"):
    """Run one statement in a database of the server and return its rows."""
    with psycopg.connect(
        host=str(folder), user="teacher", password=PASSWORD, dbname=database, autocommit=True
    ) as connection:
        cursor = connection.execute(statement)
        return cursor.fetchall() if cursor.description else []


def _answers(folder):
    """Tell whether the server answers."""
    try:
        return run_there(folder, "select 1")
    except psycopg.OperationalError:
        return None


def url_of(folder, database, *, password=PASSWORD):
    """Return the URL of a database of the server, as an instructor would type it."""
    return f"postgresql+psycopg://teacher:{password.replace(' ', '%20')}@/{database}?host={folder}"
