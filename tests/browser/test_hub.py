"""Many learners at once: a real hub with its proxy, three learners in their own folders, hand-ins of all marked.

Skipped, with one line that says so, where the hub's proxy is not installed.
"""

import csv
from contextlib import ExitStack

import pytest

from tests.browser.conftest import READY_MS, AtThePage
from tests.browser.hub_machine import Hub, what_is_missing

pytestmark = [pytest.mark.browser, pytest.mark.skipif(bool(what_is_missing()), reason=what_is_missing())]

LEARNERS = ("ann", "bert", "cleo")
START = "0_start_here.ipynb"
PRACTICE = "Practice: a number with its unit"


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
    """Sign all learners in at once, each in a browser of their own, and wait until their pages are ready."""
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
        for seat in seats.values():
            seat.window.wait_for_url(f"**/doc/tree/{START}", timeout=READY_MS)
            seat.path = START
            seat.wait_until_ready()
        yield seats


def test_each_learner_works_in_an_own_folder(class_at_work):
    """Signed in at once, all get the start page; what they save lies in their own journals, under their names."""
    for number, (name, seat) in enumerate(class_at_work.items(), start=1):
        exercise = seat.exercise(PRACTICE)
        exercise.part("length").locator("input").fill(f"{number} mm")
        exercise.save()
        (record,) = seat.journal
        assert (record["learner"], record["answers"]) == (name, {"length": f"{number} mm"})
