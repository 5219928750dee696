"""Marking on a real cluster: a scheduler and two workers on this machine, who see nothing of the class.

Folders are named from the one that the tests run in, which is another than the workers': what they mark
has come to them, and every page that is written was sent back.
"""

import random
import shutil
import signal
import socket
import sys

import distributed
import pytest
from click.testing import CliRunner

from grading import cluster, marking
from grading.cli import main
from grading.cluster import CHUNK_BYTES, ClusterError, NoClusterError, cluster_at, this_marking
from grading.demo_class import invent_records, learner_name
from grading.exercises import PAGES
from grading.gradebook_places import gradebook_at
from grading.marking_state import STATE_FILE
from grading.results import mark_folder
from tests.grading.gradebook_contents import contents
from tests.grading.made_hand_ins import MADE_AT, SETTINGS, journals, raw_hand_in
from tests.grading.servers import ROOT, postgresql_server, run_there, url_of
from tests.grading.servers import cluster as cluster_in_a_folder

FILES_TOGETHER = 3  # in one chunk, so that a small class makes several
EXERCISES_ANSWERED = [each.id for each in PAGES["rivet_anatomy"].exercises if each.counts][:4]


@pytest.fixture(scope="module")
def scheduler():
    """Give a cluster with two workers."""
    with cluster_in_a_folder() as found:
        found.workers = [found.worker(), found.worker()]
        found.wait_for_workers()
        yield found


def _write_class(folder):
    """Write the hand-ins of a small class: one learner handed in twice, two files are none of ours."""
    folder.mkdir()
    for number in range(11):
        name, dice = learner_name(number % 10), random.Random(number)
        records = invent_records(name, SETTINGS, dice, skill=0.6, until=MADE_AT, exercises=EXERCISES_ANSWERED)
        raw_hand_in(folder, name, journals(records), file_name=f"{number:02}.zip")
    (folder / "later.txt").write_text("none of ours")
    (folder / "later.zip").symlink_to("nowhere")


@pytest.fixture(scope="module")
def here(tmp_path_factory):
    """Give a folder with a small class in ``in`` and, in ``alone``, what this machine alone makes of it."""
    folder = tmp_path_factory.mktemp("here")
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(folder)
        patch.setattr(marking, "CHUNK", FILES_TOGETHER)
        _write_class(folder / "in")
        mark_folder("in", "alone", SETTINGS, report=False, processes=1)
    return folder


@pytest.fixture(autouse=True)
def in_folder(here, monkeypatch):
    """Work in the folder of the class, some files at a time."""
    monkeypatch.chdir(here)
    monkeypatch.setattr(marking, "CHUNK", FILES_TOGETHER)
    monkeypatch.setattr(cluster, "AHEAD", 1)


def _files(folder):
    """Return every file of a folder of results by name, but for the gradebook and locks."""
    return {
        str(path.relative_to(folder)): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.suffix not in (".db", ".lock")
    }


def _run(*arguments):
    """Run one command and return its result."""
    return CliRunner().invoke(main, [str(each) for each in arguments])


def test_a_worker_killed_in_mid_run(scheduler, here):
    """Interrupted, begun again, and a worker killed meanwhile: the results are those of one machine."""
    told = []

    def interrupt(done, total):
        told.append((done, total))
        raise KeyboardInterrupt

    def kill(done, total):
        if scheduler.workers[0].poll() is None:
            scheduler.workers[0].send_signal(signal.SIGKILL)
        told.append((done, total))

    with cluster_at(scheduler.address) as run_chunks:
        with pytest.raises(KeyboardInterrupt):
            mark_folder("in", "out", SETTINGS, report=False, run_chunks=run_chunks, progress=interrupt)
        mark_folder("in", "out", SETTINGS, report=False, run_chunks=run_chunks, progress=kill)
    assert scheduler.workers[0].wait(10) == -signal.SIGKILL
    assert told[:2] == [(3, 13), (6, 13)], "what was marked before the interruption is kept"
    alone, out = _files(here / "alone"), _files(here / "out")
    assert len(alone[STATE_FILE].splitlines()) == len(out[STATE_FILE].splitlines()) == 6, "5 chunks"
    assert out == alone
    assert sum(name.startswith("feedback") for name in out) == 10
    assert contents(here / "out" / "gradebook.db") == contents(here / "alone" / "gradebook.db")


def test_cluster_and_database_together(scheduler, here):
    """The command marks on the cluster into a database: the same tables, rows and pages again."""
    with postgresql_server() as server:
        run_there(server, "create database gradebook")
        url = url_of(server, "gradebook")
        arguments = ["in", "--out", "both", "--cluster", scheduler.address, "--no-report", "--gradebook", url]
        result = _run("mark", *arguments)
        assert result.exit_code == 0, result.output
        alone, both = _files(here / "alone"), _files(here / "both")
        assert both == alone
        assert not (here / "both" / "gradebook.db").exists()
        assert contents(gradebook_at(url, "both")) == contents(here / "alone" / "gradebook.db")


def test_a_worker_of_another_version(scheduler, tmp_path):
    """A worker whose exercises, library or code differ is refused before anything is marked, and named."""
    for folder in ("grading", "workbook/secondplate"):
        shutil.copytree(ROOT / folder, tmp_path / folder, ignore=shutil.ignore_patterns("__pycache__"))
    with (tmp_path / "grading" / "times.py").open("a") as file:
        file.write("# corrected\n")
    other = scheduler.worker(tmp_path)
    scheduler.wait_for_workers()
    try:
        result = _run("mark", "in", "--out", tmp_path / "out", "--cluster", scheduler.address)
    finally:
        other.kill()
        other.wait()
    assert result.exit_code == 1
    assert "must run the same marking as this computer, got other exercises, library" in result.output
    assert len(result.output.splitlines()) == 1
    assert not (tmp_path / "out").exists()


def test_nothing_at_the_address(tmp_path, monkeypatch):
    """Where no scheduler answers the command says so in one sentence and ends with 2."""
    monkeypatch.setattr(cluster, "CONNECT_S", 0.5)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        address = f"tcp://127.0.0.1:{free.getsockname()[1]}"
        _refused(address, tmp_path / "out")


@pytest.mark.parametrize("address", ["nonsense", "", "http://127.0.0.1:1", "tls://127.0.0.1:1"])
def test_what_is_no_address(address, tmp_path):
    """An address of another form, or one that needs certificates that are not set up, is refused at once."""
    _refused(address, tmp_path / "out")


def _refused(address, out):
    """Check that the command ends with 2, says why in one line, and has written nothing."""
    result = _run("mark", "in", "--out", out, "--cluster", address)
    assert result.exit_code == 2
    assert result.output.startswith(
        "Error: cluster must be the address of a scheduler that answers, such as "
    )
    assert len(result.output.splitlines()) == 1
    assert not out.exists()


def test_a_scheduler_without_workers(scheduler, monkeypatch):
    """A scheduler that no worker has joined is named as such."""

    def wait(client, count, timeout):
        raise TimeoutError

    monkeypatch.setattr(distributed.Client, "wait_for_workers", wait)
    with pytest.raises(NoClusterError, match="must have at least one worker"), cluster_at(scheduler.address):
        pass


class _Future:
    """Stands for what a cluster was given to do."""

    def __init__(self, outcome):
        self._outcome = outcome

    def exception(self, timeout):
        """Return what went wrong on the worker, or raise what went wrong on the way."""
        if isinstance(self._outcome, TimeoutError):
            raise self._outcome
        return self._outcome if isinstance(self._outcome, Exception) else None

    def result(self, timeout):
        """Return the outcome."""
        return self._outcome


class _Empty:
    """Stands for a client whose workers are all gone."""

    def nthreads(self):
        """Return how many threads each worker has."""
        return {}


_LONELY = cluster._Cluster(distributed, _Empty(), "tcp://nowhere:1")


def test_a_worker_that_joins_later_is_asked_too():
    """Each chunk carries what it is to be marked with; a worker of another one does not touch it."""
    wanted = {**this_marking(), "Python": "3.99"}
    other, results, written = cluster._mark_parcel(b"", wanted)
    assert (other, results, written) == (this_marking(), None, None)
    future = _Future(({**this_marking(), "Python": "3.99"}, None, None))
    with pytest.raises(ClusterError, match=r"got Python 3\.99 there and 3\.\d+ here"):
        _LONELY.result(future, ["a.zip"])


def test_files_that_end_worker_after_worker():
    """A chunk is given to a few workers only; then its files are named."""
    future = _Future(distributed.KilledWorker("task", None, 3))
    files = [f"{letter}.zip" for letter in "abcde"]
    with pytest.raises(ClusterError, match=r"gave up on a\.zip, b\.zip, c\.zip and 2 more: one worker after"):
        _LONELY.result(future, files)


def test_the_scheduler_is_gone():
    """When the scheduler ends the marking ends too, and what is done is kept."""
    future = _Future(distributed.comm.CommClosedError("closed"))
    with pytest.raises(ClusterError, match="scheduler at tcp://nowhere:1 is gone: what is marked is kept"):
        _LONELY.result(future, ["a.zip"])


def test_no_worker_comes_back(monkeypatch):
    """When all workers are gone for long, the marking ends; what is done is kept."""
    monkeypatch.setattr(cluster, "WITHOUT_WORKERS_S", 1.0)
    with pytest.raises(ClusterError, match="cluster must have at least one worker, none was there for"):
        _LONELY.result(_Future(TimeoutError()), ["a.zip"])


def test_chunks_are_cut_into_parcels(tmp_path):
    """Large files travel apart, every worker gets some, all go once and in order, unreadable ones too."""
    for name in "abc":
        (tmp_path / name).write_bytes(name.encode() * (CHUNK_BYTES // 2))
    files = [str(tmp_path / name) for name in ("a", "b", "not there", "c")]
    for most, lengths in ((250, [3, 1]), (2, [2, 2])):
        parcels = list(cluster._parcels([files, []], most))
        assert [each for group, _ in parcels for each in group] == files
        assert [len(group) for group, _ in parcels] == lengths
        contents = {file: content for _, group in parcels for file, content in group.items()}
        assert contents[files[3]] == (tmp_path / "c").read_bytes()
        assert "cannot be read" in str(contents[files[2]])


def test_without_the_package(monkeypatch):
    """Where the package is not installed one sentence says what to do."""
    monkeypatch.setitem(sys.modules, "distributed", None)
    with pytest.raises(NoClusterError, match=r"needs the package distributed, .* run .*\[cluster\]"):
        cluster._distributed()
