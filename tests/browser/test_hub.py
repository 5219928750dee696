"""Many learners at once: a real hub with its proxy, three learners in their own folders, all marked.

Skipped, with one line that says so, where the hub's proxy is not installed.
"""

import csv
import json
import os
import subprocess
import sys
from contextlib import ExitStack

import psutil
import pytest

from tests.browser.conftest import READY_MS, ROOT, AtThePage
from tests.browser.hub_machine import Hub, what_is_missing

pytestmark = [pytest.mark.browser, pytest.mark.skipif(bool(what_is_missing()), reason=what_is_missing())]

LEARNERS = ("ann", "bert", "cleo")
START = "0_start_here.ipynb"
PRACTICE = "Practice: a number with its unit"
MOST_BYTES = 1_610_612_736  # 1.5 GB, as the configuration says


class OwnLab:
    """What a learner at a window sees of a hub: the pages on their own server."""

    def __init__(self, hub, learner):
        """Remember whose server and folder it is."""
        self.hub, self.learner, self.folder = hub, learner, hub.folder(learner)

    def page_url(self, path):
        """Return the address of a page in single-document mode."""
        return self.hub.server_address(self.learner, f"doc/tree/{path}")


@pytest.fixture(scope="module")
def hub(tmp_path_factory):
    """Start a hub for the tests of this file."""
    running = Hub(tmp_path_factory.mktemp("hub"), LEARNERS)
    yield running
    running.stop()


@pytest.fixture(scope="module")
def class_at_work(browser, hub):
    """Sign all learners in at once, each in an own browser, and let each save an answer on the first page."""
    with ExitStack() as stack:
        seats = {}
        for name in LEARNERS:
            context = stack.enter_context(browser.new_context(viewport={"width": 1366, "height": 768}))
            seats[name] = AtThePage(context.new_page(), OwnLab(hub, name))
            window = seats[name].window
            window.goto(f"{hub.address}/hub/login")
            window.get_by_label("Username").fill(name)
            window.get_by_label("Password").fill("any")
            window.get_by_role("button", name="Sign in").click(no_wait_after=True)
        for number, seat in enumerate(seats.values(), start=1):
            seat.window.wait_for_url(f"**/doc/tree/{START}*", timeout=READY_MS)
            seat.path = START
            seat.wait_until_ready()
            exercise = seat.exercise(PRACTICE)
            exercise.part("length").locator("input").fill(f"{number} mm")
            exercise.save()
        yield seats


def test_each_learner_has_an_own_journal(class_at_work):
    """All signed in at once; what each saved lies in their own journal, under the name that the hub knows."""
    for number, (name, seat) in enumerate(class_at_work.items(), start=1):
        (record,) = seat.journal
        assert (record["learner"], record["answers"]) == (name, {"length": f"{number} mm"})


def test_nobody_comes_at_anothers_files(class_at_work, hub):
    """A learner reads the own journal through the hub and nobody else's; on the disk only its owner may."""
    asking = class_at_work["ann"].window.context.request
    journal = "api/contents/answers.jsonl"
    assert asking.get(hub.server_address("ann", journal)).ok
    for path in (journal, "files/answers.jsonl", f"doc/tree/{START}", "api/kernels"):
        assert asking.get(hub.server_address("bert", path), max_redirects=0).status in (302, 403, 404)
        assert asking.get(hub.server_address("bert", path)).status in (403, 404)
    for path in (hub.folder("bert"), *hub.folder("bert").rglob("*")):
        assert path.stat().st_mode & 0o077 == 0, path


def test_what_a_learners_server_may_do(class_at_work, hub):
    """No terminal, no more memory than the configuration says, and nobody else hears what its pages say."""
    asking = class_at_work["cleo"].window.context.request
    assert asking.get(hub.server_address("cleo", "api/terminals")).status == 404
    processes = psutil.Process(hub.process.pid).children(recursive=True)
    servers = [each for each in processes if "jupyterhub.singleuser" in each.cmdline()]
    kernels = [kernel for server in servers for kernel in server.children()]
    assert (len(servers), len(kernels)) == (len(LEARNERS), len(LEARNERS))
    for process in [*servers, *kernels]:
        assert process.rlimit(psutil.RLIMIT_DATA) == (MOST_BYTES, MOST_BYTES)
    listening = [one for each in processes for one in each.net_connections() if one.status == "LISTEN"]
    assert {one.laddr.ip for one in listening} == {"127.0.0.1"}
    connections = [path.read_text() for path in hub.homes.glob("*/.second_plate/runtime/kernel-*.json")]
    assert [bool(json.loads(text)["curve_publickey"]) for text in connections] == [True] * len(LEARNERS)


def test_hand_ins_of_all_are_collected_and_marked(class_at_work, hub, tmp_path):
    """Everybody hands in on their page; two commands of the instructor bring the marks of all."""
    for seat in class_at_work.values():
        assert seat.hand_in().stat().st_mode & 0o077 == 0
    made = instructor("collect", str(hub.homes), "--out", str(tmp_path / "class"), "--json")
    assert json.loads(made) == {"learners": len(LEARNERS), "files": len(LEARNERS), "left_out": []}
    instructor("mark", str(tmp_path / "class"), "--out", str(tmp_path / "results"), "--no-report")
    with (tmp_path / "results" / "results.csv").open(encoding="utf-8-sig", newline="") as table:
        assert [row["learner"] for row in csv.DictReader(table)] == list(LEARNERS)
    assert (tmp_path / "results" / "problems.csv").read_text(encoding="utf-8-sig").count("\n") == 1


def test_a_server_that_was_stopped(class_at_work, hub):
    """The page says what to do; loaded again, it comes back with the answer that was saved."""
    seat = class_at_work["ann"]
    home = seat.window.context.new_page()
    home.goto(f"{hub.address}/hub/home")
    home.get_by_role("button", name="Stop My Server").click()
    strip = seat.window.locator('.second-plate-strip[data-state="lost"]')
    assert "load this page again" in strip.inner_text(timeout=READY_MS)
    seat.window.reload()
    seat.window.get_by_text("Launch Server").click()
    seat.window.wait_for_url(f"**/doc/tree/{START}*", timeout=READY_MS)
    seat.wait_until_ready()
    assert "1 mm" in seat.exercise(PRACTICE).saved("length")


def instructor(*arguments):
    """Run one command of the instructor's and return what it printed."""
    return subprocess.run(
        [sys.executable, "-m", "grading", *arguments],
        cwd=ROOT,
        env=os.environ | {"PYTHONPATH": f"{ROOT}{os.pathsep}{ROOT / 'workbook'}"},
        capture_output=True,
        text=True,
        check=True,
    ).stdout
