"""A real JupyterLab on a copy of the workbook, and a learner in a real Chromium.

Skipped, with one line that says so, where no Chromium is found.
"""

import csv
import json
import os
import secrets
import shutil
import socket
import subprocess
import sys
import urllib.request
from pathlib import Path

import pytest

import lab_server
from grading.bench_settings import SETTINGS, Dial
from grading.row_plans import FIELDS

try:
    from playwright import sync_api
except ImportError:
    sync_api = None

ROOT = Path(__file__).parents[2]
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


# What each step of a log presses at the bench, and what is said then.
BENCH_BUTTONS = {
    "weld": ("Weld a stud", "Stud {studs}, welded."),
    "pull": ("Pull it", "Stud {studs}, pulled."),
    "row": ("Now the row", "The row is welded"),
    "stop": ("Stop: hand", "Stopped:"),
}
PLAN_LABELS = {field.name: field.label for field in FIELDS}
READY_MS = 180_000  # a machine that runs other tests besides is slow to start a kernel
REPLY_MS = 30_000


def chromium_path():
    """Return the Chromium to use, or None: the one named, Debian's, or the one of playwright."""
    for place in (os.environ.get("CHROMIUM", ""), "/usr/bin/chromium", "/usr/bin/chromium-browser"):
        if place and Path(place).is_file():
            return place
    with sync_api.sync_playwright() as playwright:
        own = playwright.chromium.executable_path
    return own if Path(own).is_file() else None


def pytest_collection_modifyitems(config, items):
    """Skip with one line, not with one for each test, where there is no browser to drive."""
    ours = [item for item in items if Path(__file__).parent in item.path.parents]
    if not ours:
        return
    if sync_api is None:
        reason = "playwright is not installed"
    elif chromium_path() is None:
        reason = "no Chromium is found: install it or set CHROMIUM to its path"
    else:
        return
    ours[0].add_marker(pytest.mark.skip(reason=f"none of the {len(ours)} browser tests is run: {reason}"))
    config.hook.pytest_deselected(items=ours[1:])
    items[:] = [item for item in items if item not in ours[1:]]


def any_free_port():
    """Return a port that the system picks, so that two runs of the tests do not choose the same one."""
    with socket.socket() as probe:
        probe.bind((lab_server.HOST, 0))
        return probe.getsockname()[1]


class Lab:
    """JupyterLab as open.py starts it, on a folder of its own."""

    def __init__(self, folder, state, *, plug_in=True):
        """Start the server, with the workbook's plug-in and settings or without, and wait for its answer."""
        self.folder = folder
        self.folder.mkdir()
        self.server = lab_server.Server(port=any_free_port(), token=secrets.token_urlsafe(8))
        log = state / "server.log"
        variables = {
            "PYTHONPATH": os.pathsep.join([str(ROOT), str(ROOT / "workbook")]),
            "JUPYTER_CONFIG_DIR": str(state / "config"),
            "JUPYTER_TOKEN": self.server.token,
        }
        arguments = lab_server.lab_arguments(port=self.server.port, state=state, root_folder=folder)
        if not plug_in:
            ours = ("--LabApp.extra_labextensions_path", "--LabApp.app_settings_dir")
            arguments = [argument for argument in arguments if not argument.startswith(ours)]
        with log.open("wb") as output:
            self.process = subprocess.Popen(
                [sys.executable, "-m", "jupyterlab", *arguments],
                env=os.environ | variables,
                stdout=output,
                stderr=subprocess.STDOUT,
            )
        lab_server.wait_until_it_answers(self.server, self.process, log)

    def page_url(self, path):
        """Return the address of a page in single-document mode."""
        return self.server.address(f"doc/tree/{path}")

    def ask(self, path, method="GET"):
        """Ask the server something and return what it says."""
        opener = urllib.request.build_opener(urllib.request.ProxyHandler({}))
        with opener.open(
            urllib.request.Request(self.server.address(path), method=method), timeout=30
        ) as answer:
            return json.loads(answer.read() or b"null")

    def begin_anew(self):
        """Stop all kernels and lay out fresh pages, without answers."""
        for session in self.ask("api/sessions"):
            self.ask(f"api/sessions/{session['id']}", method="DELETE")
        for place in self.folder.iterdir():
            shutil.rmtree(place) if place.is_dir() else place.unlink()
        copy_of_workbook(self.folder)

    def stop(self):
        """Stop the server and its kernels."""
        self.process.terminate()
        self.process.wait(timeout=20)


def copy_of_workbook(folder):
    """Copy the pages and the class file of the workbook; the code stays where it is."""
    shutil.copytree(
        ROOT / "workbook",
        folder,
        ignore=shutil.ignore_patterns(
            "*.py",
            "*.jsonl",
            "*.zip",
            "learner.json",
            "__pycache__",
            "secondplate",
            "drawings",
            "exercise_forms",
        ),
        dirs_exist_ok=True,
    )


class AtThePage:
    """A learner before a browser window."""

    def __init__(self, window, lab):
        """Remember what the browser complains about."""
        self.window = window
        self.lab = lab
        self.complaints = []
        window.on("pageerror", lambda error: self.complaints.append(str(error)))
        window.on("console", lambda said: self.complaints.append(said.text) if said.type == "error" else None)

    def open(self, path):
        """Open a page and wait until it has run by itself."""
        self.path = path
        self.window.goto(self.lab.page_url(path))
        self.wait_until_ready()
        return self

    def wait_until_ready(self):
        """Wait until the strip on top says that the page is ready, or fail with what it says instead."""
        strip = self.window.locator('.second-plate-strip:is([data-state="ready"], [data-state="stopped"])')
        strip.wait_for(timeout=READY_MS)
        assert strip.get_attribute("data-state") == "ready", (strip.inner_text(), self.complaints)

    def sign_in(self, name):
        """Type a name and press Enter."""
        form = self.window.locator(".sign-in")
        form.get_by_label("Your name or number").fill(name)
        form.get_by_label("Your name or number").press("Enter")
        form.locator('.status[data-kind="saved"]').wait_for(timeout=REPLY_MS)

    def exercise(self, title):
        """Return the exercise with a title."""
        form = self.window.locator(".exercise").filter(
            has=self.window.get_by_role("heading", name=title, exact=True)
        )
        return AtTheExercise(form)

    def hand_in(self):
        """Press the hand-in button and return the file that the page names."""
        form = self.window.locator(".hand-in")
        form.get_by_role("button", name="Make the hand-in file").click()
        name = form.locator(".file").inner_text(timeout=REPLY_MS)
        return self.lab.folder / name

    @property
    def journal(self):
        """Return what lies in the journal beside the page, record by record."""
        path = (self.lab.folder / self.path).parent / "answers.jsonl"
        lines = path.read_text(encoding="utf-8").splitlines() if path.exists() else []
        return [json.loads(line) for line in lines]


class AtTheExercise:
    """A learner at one exercise."""

    def __init__(self, form):
        """Take the exercise's form."""
        self.form = form

    def part(self, part_id):
        """Return one part of the exercise."""
        return self.form.locator(f'[data-part="{part_id}"]')

    def fill(self, part_id, typed):
        """Fill in one part of any kind with what a record of it would hold."""
        part = self.part(part_id)
        if part.locator(".row_run").count():
            for name, text in typed.items():
                part.get_by_label(PLAN_LABELS[name]).fill(text)
        elif part.locator(".work").count():
            self._work_at_the_bench(part, typed)
        elif part.locator(".measured").count():
            part.get_by_label("Line 1", exact=True).fill(typed["from"])
            part.get_by_label("Line 2", exact=True).fill(typed["to"])
        elif isinstance(typed, str) and part.locator("input[type=text]").count():
            part.locator("input").fill(typed)
        elif isinstance(typed, str):
            part.locator(f'input[value="{typed}"]').check()
        elif isinstance(typed, list) and part.locator("li").count():
            self._put_in_order(part, typed)
        elif isinstance(typed, list):
            for option in typed:
                part.locator(f'input[value="{option}"]').check()
        elif part.locator(".row").count():
            for row, verdict in typed.items():
                part.locator(f'[data-row="{row}"] input[value="{verdict}"]').check()
        else:
            part.get_by_label("Lowest").fill(typed["low"])
            part.get_by_label("Highest").fill(typed["high"])

    def _work_at_the_bench(self, part, steps):
        """Do the steps of a log one after the other, each once the one before is answered."""
        studs = 0
        for step in steps:
            for name, text in step.get("settings", {}).items():
                field = part.get_by_label(SETTINGS[name].label, exact=True)
                if isinstance(SETTINGS[name], Dial):
                    field.fill(text)
                else:
                    field.select_option(text)
            if step["do"] == "stop":
                part.get_by_label("Why you stop").select_option(step["why"])
            studs += step["do"] == "weld"
            button, said = BENCH_BUTTONS[step["do"]]
            part.get_by_role("button", name=button).click()
            answer = part.locator(".status").filter(has_text=said.format(studs=studs))
            answer.wait_for(timeout=REPLY_MS)

    def _put_in_order(self, part, wanted):
        """Move each thing up until it stands where it is wanted."""
        for place, option in enumerate(wanted):
            item = part.locator(f'[data-option="{option}"]')
            while item.evaluate("(node) => [...node.parentNode.children].indexOf(node)") > place:
                item.get_by_role("button", name="Move up").click()

    def save(self):
        """Press the button and wait for the reply; return what the status line says."""
        self.form.get_by_role("button", name="Save my answer").click()
        return self.wait_for("saved")

    def wait_for(self, kind):
        """Wait until the status line is of a kind, and return its words."""
        status = self.form.locator(f'.buttons .status[data-kind="{kind}"]')
        status.wait_for(timeout=REPLY_MS)
        return status.inner_text()

    def feedback(self, part_id):
        """Return the words of the feedback on a part."""
        return self.part(part_id).locator(".feedback").inner_text()

    def saved(self, part_id):
        """Return what the page says it has saved for a part."""
        return self.part(part_id).locator(".saved-text").inner_text()


@pytest.fixture(scope="session")
def browser():
    """Start Chromium once."""
    with sync_api.sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=chromium_path(), args=FLAGS)
        yield started
        started.close()


@pytest.fixture
def at_a_new_lab(browser, tmp_path):
    """Return a function that sits a learner down at their own JupyterLab, with the plug-in or without."""
    begun = []

    def sit(*, plug_in):
        lab = Lab(tmp_path / "workbook", tmp_path, plug_in=plug_in)
        begun.append(lab)
        lab.begin_anew()
        return AtThePage(browser.new_page(viewport={"width": 1366, "height": 768}), lab)

    yield sit
    for lab in begun:
        lab.stop()


@pytest.fixture(scope="session")
def lab(browser, tmp_path_factory):
    """Start JupyterLab once, on a workbook whose path holds spaces."""
    place = tmp_path_factory.mktemp("browser")
    server = Lab(place / "my work book", place)
    yield server
    server.stop()


def at_a_new_workbook(browser, lab):
    """Sit a learner down at a new workbook, before the window of an ordinary small laptop."""
    lab.begin_anew()
    window = browser.new_page(viewport={"width": 1366, "height": 768})
    yield AtThePage(window, lab)
    window.close()


# A page takes seconds to open: where one check leaves the page to the next, all tests of a file share one.
learner = pytest.fixture(name="learner")(at_a_new_workbook)
shared_learner = pytest.fixture(name="shared_learner", scope="module")(at_a_new_workbook)


def instructors_marks(hand_in, results):
    """Mark one hand-in file the way an instructor does, and return the row of the results table."""
    subprocess.run(
        [sys.executable, "-m", "grading", "mark", str(hand_in), "--out", str(results), "--no-feedback"],
        cwd=ROOT,
        check=True,
        env=os.environ | {"PYTHONPATH": f"{ROOT}{os.pathsep}{ROOT / 'workbook'}"},
    )
    with (results / "results.csv").open(encoding="utf-8-sig", newline="") as table:
        (row,) = csv.DictReader(table)
    return row


@pytest.fixture(name="instructors_marks")
def instructors_marks_fixture():
    """Give tests the instructor's marking."""
    return instructors_marks
