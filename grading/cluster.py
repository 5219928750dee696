"""The same marking on a cluster of computers: chunks go out to Dask workers, one writer gathers the results.

Hand-ins travel with their chunk, and feedback pages travel back with the marks: no worker needs to see the
folders of this computer, and none can take another file of the same name for the one that is meant.
"""

import asyncio
import logging
import math
import pickle
import platform
import threading
import warnings
from collections import deque
from concurrent.futures import CancelledError
from contextlib import contextmanager, suppress
from functools import lru_cache, partial
from importlib.metadata import version
from pathlib import Path

from grading.carried_files import carried, make_folder
from grading.collector import collector_paused
from grading.hand_in import HandInError, file_bytes
from grading.marking import AHEAD
from grading.marking_state import digest_of_marking
from grading.whole_files import write_whole

CONNECT_S = 10.0  # for the scheduler to answer, and for the first worker to be there
WAIT_S = 5.0  # for a parcel, before it is looked whether there are workers at all
CLOSE_S = 5.0
WITHOUT_WORKERS_S = 60.0  # all workers may be restarted in the middle of a marking
CHUNK_BYTES = 4_000_000  # hand-ins that travel together; they wait in the scheduler until they are marked
FILES_NAMED = 3  # in the sentence about a chunk that cannot be marked
INSTALL = '.venv/bin/python -m pip install -c tests/requirements.txt ".[cluster]"'
_RESULTS_REST_ON = ("numpy", "scipy", "Pint", "Jinja2")
_FILES = "exercises, library or code of the marking"
_MARKING = threading.Lock()  # a worker with several threads marks one chunk at a time


class ClusterError(ValueError):
    """The cluster cannot do the marking; the message is one sentence for the instructor."""


class NoClusterError(ClusterError):
    """There is no usable cluster at the address."""


@contextmanager
def cluster_at(address):
    """Connect to the scheduler at an address; give what ``mark_class`` takes as ``run_chunks``."""
    distributed = _distributed()
    quiet = _quiet_loggers()
    client = None
    try:
        client = _connected(distributed, address)
        _require_same_marking(client)
        yield partial(_run_chunks, _Cluster(distributed, client, address))
    finally:
        if client:
            client.close(timeout=CLOSE_S)
        for logger, level in quiet.items():
            logger.setLevel(level)


def _distributed():
    """Load the optional package."""
    try:
        import distributed
    except ImportError as error:
        message = f"--cluster needs the package distributed, which is not installed here: run {INSTALL}"
        raise NoClusterError(message) from error
    return distributed


def _quiet_loggers():
    """Keep the package's own lines off the terminal: what matters is said in one sentence."""
    found = {
        logging.getLogger(name): None for name in ("distributed", "distributed.client", "distributed.core")
    }
    for logger in found:
        found[logger] = logger.level
        logger.setLevel(logging.CRITICAL + 1)
    return found


def _connected(distributed, address):
    """Return a client of the scheduler, once it has at least one worker."""
    try:
        asyncio.run(_knock(distributed, address))  # a client that finds nobody takes long to give up
        with warnings.catch_warnings(action="ignore"):  # of unlike versions, which are looked at below
            client = distributed.Client(address, timeout=CONNECT_S, set_as_default=False)
    except (OSError, ValueError, TypeError, ImportError, RuntimeError) as error:
        message = (
            f"cluster must be the address of a scheduler that answers, such as tcp://192.168.0.10:8786, "
            f"got {address!r}: {_in_one_line(error)}"
        )
        raise NoClusterError(message) from error
    try:
        client.wait_for_workers(1, timeout=CONNECT_S)
    except (OSError, TimeoutError) as error:
        client.close(timeout=CONNECT_S)
        message = f"cluster must have at least one worker, the scheduler at {address} has none yet"
        raise NoClusterError(message) from error
    return client


async def _knock(distributed, address):
    """Connect to the scheduler and leave again; certificates are those of the package's settings."""
    settings = distributed.Security().get_connection_args("client")
    comm = await distributed.comm.connect(address, timeout=CONNECT_S, **settings)
    await comm.close()


def _in_one_line(error):
    """Return what an exception says, on one line."""
    return " ".join(str(error).split()) or type(error).__name__


@lru_cache(maxsize=1)
def this_marking():
    """Return all that marks rest on here: system, Python, packages, digest of code, tables and templates."""
    return {
        "system": platform.system(),
        "Python": ".".join(platform.python_version_tuple()[:2]),
        **{name: version(name) for name in _RESULTS_REST_ON},
        _FILES: digest_of_marking(),
    }


def _unlike(theirs):
    """Return in words how another computer's marking differs from the one here, or an empty text."""
    return ", ".join(
        f"other {_FILES}" if name == _FILES else f"{name} {theirs.get(name)} there and {mine} here"
        for name, mine in this_marking().items()
        if theirs.get(name) != mine
    )


def _refuse(worker, how):
    """Raise where a worker is not of the same marking."""
    message = f"worker {worker} must run the same marking as this computer, got {how}"
    raise ClusterError(message)


def _require_same_marking(client):
    """Ask every worker; those that join later are asked with each parcel."""
    for worker, theirs in client.run(this_marking, on_error="return").items():
        how = _in_one_line(theirs) if isinstance(theirs, Exception) else _unlike(theirs)
        if how:
            _refuse(worker, how)


def _run_chunks(cluster, work, chunks):
    """Give what work makes of each chunk, in order; a chunk whose worker is gone is done by another."""
    given, chunks = deque(), list(chunks)
    most = math.ceil(sum(map(len, chunks)) / max(1, cluster.threads()))  # that every worker has some
    try:
        for files, contents in _parcels(chunks, most):
            given.append((cluster.begin(work, files, contents), files))
            if len(given) > AHEAD * max(1, cluster.threads()):
                yield _written(cluster.result(*given.popleft()))
        while given:
            yield _written(cluster.result(*given.popleft()))
    finally:
        cluster.drop([future for future, _ in given])


def _written(outcome):
    """Write the files that came back with a parcel, and return its results."""
    results, files = outcome
    for path, content in files:
        make_folder(Path(path).parent)
        write_whole(path, content)
    return results


class _Cluster:
    """A scheduler that takes parcels and gives what its workers make of them."""

    def __init__(self, distributed, client, address):
        self._distributed, self._client, self._address = distributed, client, address

    def begin(self, work, files, contents):
        """Hand in a parcel and return what stands for its results."""
        task = pickle.dumps((work, files, contents), protocol=5)
        with self._here(), warnings.catch_warnings(action="ignore"):  # of its size, which is bounded
            return self._client.submit(_mark_parcel, task, this_marking(), pure=False)

    def threads(self):
        """Return how many parcels are worked on at the same time."""
        with self._here():
            return sum(self._client.nthreads().values())

    def result(self, future, files):
        """Wait for a parcel; return its results and the files that are to be written."""
        waited_s = 0.0
        while True:
            try:
                with self._here():
                    error = future.exception(timeout=WAIT_S)
                    if error:
                        raise error
                    other, *outcome = future.result(timeout=WAIT_S)
                break
            except TimeoutError:
                waited_s = 0.0 if self.threads() else waited_s + WAIT_S
                if waited_s >= WITHOUT_WORKERS_S:
                    message = f"cluster must have at least one worker, none was there for {waited_s:.0f} s"
                    raise ClusterError(message) from None
            except self._distributed.KilledWorker as error:
                message = (
                    f"cluster gave up on {_named(files)}: one worker after another ended while it had them"
                )
                raise ClusterError(message) from error
            except ImportError as error:
                _refuse("that took a parcel", _in_one_line(error))
        if other:
            _refuse("that took a parcel", _unlike(other))
        return outcome

    def drop(self, futures):
        """Take back what was handed in and is not wanted any more."""
        with suppress(ClusterError), self._here():
            self._client.cancel(futures)

    @contextmanager
    def _here(self):
        """Say in one sentence that the scheduler is gone."""
        try:
            yield
        except (self._distributed.comm.CommClosedError, CancelledError) as error:
            message = f"scheduler at {self._address} is gone: what is marked is kept, mark again to go on"
            raise ClusterError(message) from error


def _parcels(chunks, most):
    """Give ``(files, contents)``: chunks with the bytes of their files, cut where there are too many."""
    for chunk in chunks:
        files, contents, size = [], {}, 0
        for file in chunk:
            content = _content(file)
            length = len(content) if isinstance(content, bytes) else 0
            if files and (size + length > CHUNK_BYTES or len(files) == most):
                yield files, contents
                files, contents, size = [], {}, 0
            files.append(file)
            contents[file] = content
            size += length
        if files:
            yield files, contents


def _content(file):
    """Return the bytes of a file, or why it cannot be read."""
    try:
        return file_bytes(Path(file))
    except HandInError as error:
        return error


def _mark_parcel(task, wanted):
    """On a worker: return its marking where that is another one, else None; results; files to write."""
    if _unlike(wanted):
        return this_marking(), None, None
    work, files, contents = pickle.loads(task)
    with _MARKING, collector_paused(), carried(contents) as written:
        return None, work(files), written


def _named(files):
    """Name the files of a parcel, the first few where there are many."""
    more = f" and {len(files) - FILES_NAMED} more" if len(files) > FILES_NAMED else ""
    return ", ".join(map(str, files[:FILES_NAMED])) + more
