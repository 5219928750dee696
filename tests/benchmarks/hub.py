"""How many learners a machine carries: a real hub, one learner alone and then many at once, each with a page.

Each learner's server is started by the hub and runs every cell of the page in a kernel of its own, as the
page does when it is opened; no browser is started, since a school's browsers are not on that machine. Printed
are the seconds to a ready page, and what a learner's server and kernel take of memory and processor.

Run it as `python tests/benchmarks/hub.py [--learners 10]`; it takes two minutes and needs the hub's proxy.
"""

import argparse
import json
import os
import secrets
import statistics
import sys
import tempfile
import time
import urllib.request
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import psutil
from jupyter_client import BlockingKernelClient

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT), str(ROOT / "workbook")]

from tests.browser.hub_machine import Hub, what_is_missing  # noqa: E402, after the path is set

PAGE = "1_stud_welding/stud_welding.ipynb"
LIMIT_S = 600
MB = 1e6


class Load:
    """A hub on which a program of ours may start everybody's server."""

    def __init__(self, place, learners):
        """Start the hub with a token of ours."""
        self.token = secrets.token_hex(16)
        scopes = ["admin:users", "admin:servers", "access:servers"]
        more = (
            f"--JupyterHub.services=[{{'name': 'load', 'api_token': '{self.token}'}}]",
            f"--JupyterHub.load_roles=[{{'name': 'load', 'scopes': {scopes}, 'services': ['load']}}]",
        )
        self.hub = Hub(place, learners, more=more)

    def ask(self, path, method="GET", content=None):
        """Ask the hub or a learner's server something and return what it says."""
        data = None if content is None else json.dumps(content).encode()
        headers = {"Authorization": f"token {self.token}", "Content-Type": "application/json"}
        request = urllib.request.Request(f"{self.hub.address}/{path}", data, headers, method=method)
        with urllib.request.build_opener(urllib.request.ProxyHandler({})).open(
            request, timeout=LIMIT_S
        ) as answer:
            return json.loads(answer.read() or b"null")

    def learner_at_work(self, learner):
        """Start a learner's server, run the page, and return when the one and the other was ready."""
        start = time.perf_counter()
        self.ask(f"hub/api/users/{learner}/server", "POST", {})
        while not self.ask(f"hub/api/users/{learner}")["servers"].get("", {}).get("ready"):
            time.sleep(0.25)
        served_s = time.perf_counter() - start
        wanted = {"path": PAGE, "name": "", "type": "notebook", "kernel": {"name": "python3"}}
        kernel = self.ask(f"user/{learner}/api/sessions", "POST", wanted)["kernel"]["id"]
        run_page(self.hub.homes / learner, kernel, self.hub.folder(learner) / PAGE)
        return served_s, time.perf_counter() - start

    def processes(self, learner):
        """Return a learner's server and, after it, the kernels of its pages."""
        for process in psutil.Process(self.hub.process.pid).children():
            if process.cwd() == str(self.hub.folder(learner)):
                return [process, *process.children()]
        message = f"no server of {learner} is there"
        raise RuntimeError(message)


def run_page(home, kernel, page):
    """Run every cell of a page in a kernel, over the files that it listens on."""
    client = BlockingKernelClient(connection_file=str(home / f".second_plate/runtime/kernel-{kernel}.json"))
    client.load_connection_file()
    client.start_channels()
    wait_until_it_answers(client)
    for cell in json.loads(page.read_text(encoding="utf-8"))["cells"]:
        if cell["cell_type"] == "code" and "mark" not in cell["metadata"].get("tags", ()):
            code = "".join(cell["source"])
            reply = client.execute_interactive(code, timeout=LIMIT_S, output_hook=lambda message: None)
            if reply["content"]["status"] != "ok":
                message = f"a cell did not run: {reply['content']['evalue']}"
                raise RuntimeError(message)
    client.stop_channels()


def wait_until_it_answers(client):
    """Wait for a kernel; one that is slow to begin with is taken for dead by the client, and asked again."""
    limit = time.monotonic() + LIMIT_S
    while True:
        try:
            return client.wait_for_ready(timeout=LIMIT_S)
        except RuntimeError:
            if time.monotonic() > limit:
                raise


def show(load, learners, title):
    """Let learners begin at the same moment, print what came of it, return the seconds to the last page."""
    busy = psutil.cpu_percent(interval=1.0)
    with ThreadPoolExecutor(len(learners)) as pool:
        times = list(pool.map(load.learner_at_work, learners))
    processes = [load.processes(learner) for learner in learners]
    memory = [[each.memory_full_info() for each in pair] for pair in processes]
    work = statistics.median(sum(sum(each.cpu_times()[:2]) for each in pair) for pair in processes)
    served, ready = [max(each) for each in zip(*times, strict=True)]
    print(f"{title} ({busy:.0f} % of the processor was busy before)")
    print(f"  last server answers after {served:6.1f} s, last page is ready after {ready:6.1f} s")
    for name, which in (("server", 0), ("kernel", 1)):
        rss = statistics.median(each[which].rss for each in memory) / MB
        own = statistics.median(each[which].pss for each in memory) / MB
        print(f"  memory of a {name}: {rss:4.0f} MB resident, {own:4.0f} MB of it counted to it alone")
    each = statistics.median(sum(one.pss for one in pair) for pair in memory) / MB
    print(f"  each learner: {each:.0f} MB, {work:.1f} s of one core", flush=True)
    return ready


def main():
    """Measure one learner, then many at once, and print both."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--learners", type=int, default=10)
    many = [f"learner{number:03d}" for number in range(parser.parse_args().learners)]
    if what_is_missing():
        sys.exit(f"Nothing is measured: {what_is_missing()}")
    with tempfile.TemporaryDirectory(prefix="hub") as name:
        load = Load(Path(name), ["alone", *many])
        try:
            print(f"{os.cpu_count()} cores, page {PAGE}")
            one_s = show(load, ["alone"], "One learner alone")
            all_s = show(load, many, f"{len(many)} learners at once")
            print(f"the last of {len(many)} waits {all_s / one_s:.1f} times as long as one alone")
        finally:
            load.hub.stop()


if __name__ == "__main__":
    main()
